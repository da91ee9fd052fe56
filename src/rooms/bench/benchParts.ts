/** The parts of the bench as a key walks through them: header, sheet, tube, each instrument, leads, chassis, slug, tools. Each is entered at the first thing in it that can be worked; the tube, where nothing is, as a whole. */
import type { Phase } from '../../session/phase.ts';

const PARTS =
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

/** From the part that holds `from` to the next one or the one before, round and round; from nowhere to where the work is. */
export function stepToPart(from: Element | null, by: 1 | -1, phase: Phase): HTMLElement | null {
  const parts = [...document.querySelectorAll<HTMLElement>(PARTS)].filter(
    (part, _, all) => entry(part) !== null && !all.some((other) => other !== part && part.contains(other)),
  );
  const at = parts.findIndex((part) => part.contains(from));
  const start = parts.findIndex((part) => part.matches(WORK[phase]));
  const next = at === -1 ? Math.max(start, 0) : (at + by + parts.length) % parts.length;
  const first = parts[next] === undefined ? null : entry(parts[next]);
  first?.focus();
  return first;
}

function entry(part: HTMLElement): HTMLElement | null {
  const first = [...part.querySelectorAll<HTMLElement>(WORKED)].find(
    (one) => one.tabIndex >= 0 && !one.matches(':disabled') && one.getClientRects().length > 0,
  );
  return first ?? (part.matches('[tabindex]') ? part : null);
}

/** To what the tube shows as figures; where there are none, to the tube. */
export function goToFigures(): void {
  document.querySelector<HTMLElement>('.tube-station table, .tube-station:not(:has(table))')?.focus();
}
