/** The areas of the bench as a key walks through them: header, sheet, tube, each instrument, leads, chassis, slug, tools. Each is entered at the first thing in it that can be worked; the tube, where nothing is, as a whole. */
import type { Phase } from '../../session/phase.ts';

const AREAS =
  'main > header, main > section, main > nav, .sheet, .panel, .leads-layer, .chassis-scene, .slug-inset, .tool-rack, .finding';
const WORKED = 'button, a[href], input, select, textarea, [tabindex="0"]';

/** Where the work of a phase lies. */
const WORK: Readonly<Record<Phase, string>> = {
  safe: '#panel-safe, #panel-bias',
  connect: '.leads-layer',
  setUp: '#panel-sweep',
  align: '.chassis-scene',
  prove: '#panel-tube',
};

/** From the area that holds `from` to the next one or the one before, round and round; from none, to where the work is. */
export function stepToArea(from: Element | null, by: 1 | -1, phase: Phase): HTMLElement | null {
  const areas = [...document.querySelectorAll<HTMLElement>(AREAS)].filter(
    (area, _, all) => entry(area) !== null && !all.some((other) => other !== area && area.contains(other)),
  );
  const at = areas.findIndex((area) => area.contains(from));
  const start = areas.findIndex((area) => area.matches(WORK[phase]));
  const next = at === -1 ? Math.max(start, 0) : (at + by + areas.length) % areas.length;
  const first = areas[next] === undefined ? null : entry(areas[next]);
  first?.focus();
  return first;
}

function entry(area: HTMLElement): HTMLElement | null {
  const first = [...area.querySelectorAll<HTMLElement>(WORKED)].find(
    (one) => one.tabIndex >= 0 && !one.matches(':disabled') && one.getClientRects().length > 0,
  );
  return first ?? (area.matches('[tabindex]') ? area : null);
}

/** To the table of what the tube shows; where there is none, to the tube. */
export function goToPipTable(): void {
  document.querySelector<HTMLElement>('.bench-tube table, .bench-tube:not(:has(table))')?.focus();
}
