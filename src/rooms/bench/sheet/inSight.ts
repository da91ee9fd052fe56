/** Scrolls the paper so that a step stands whole between the edges of what can be seen of it. Nothing but the paper is moved. */

const MARGIN = 8;

export function bringInSight(step: Element | null | undefined): void {
  const paper = step?.closest('.sheet-text');
  if (step == null || paper == null) return;
  const box = step.getBoundingClientRect();
  const sheet = paper.getBoundingClientRect();
  const below = box.bottom + MARGIN - sheet.bottom;
  const above = sheet.top + MARGIN - box.top;
  // A step that is taller than the room is read from its top.
  if (above > 0 || box.height > sheet.height) paper.scrollBy({ top: -above });
  else if (below > 0) paper.scrollBy({ top: Math.min(below, -above) });
}
