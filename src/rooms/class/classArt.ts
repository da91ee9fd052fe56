/** Small drawings of the list: what a file is, whether a verdict stands, and bars. Told apart by shape before colour. */
import type { Outcome } from '../../judge/outcome.ts';
import { C, hatch, r1 } from '../../kit/theme/ink.ts';
import { cross, tick } from '../../kit/theme/pieces.ts';

export const GLYPH_PX = 18;

const box = (fill: string, stroke: string = C.ink, dash = ''): string =>
  `<rect x="1.5" y="1.5" width="15" height="15" fill="${fill}" stroke="${stroke}" stroke-width="1.5"${dash === '' ? '' : ` stroke-dasharray="${dash}"`}/>`;
const bar = (y: number): string => `<path d="M5 ${y}h8" stroke="${C.ink}" stroke-width="1.5"/>`;
const SQUARE = 'M1.5 1.5h15v15h-15z';

const STATES: Readonly<Record<Outcome, string>> = {
  verified: box(C.petrolInk) + tick(9, 9.5, 0.9, C.sheet),
  altered:
    box(C.sheet, C.rustInk) + hatch(SQUARE, [1.5, 1.5, 15, 15], { a: 45, gap: 3.6, sw: 1.3, op: 1, col: C.rustInk }),
  unfinished: `${box(C.sheet, C.ink, '3 2.4')}<path d="M6 9h6" stroke="${C.ink}" stroke-width="1.5"/>`,
  otherScenario: `${box(C.sheet)}<path d="M4.500 12.5C7 12.500 6.500 5.500 9 5.500S11 12.500 13.500 12.500" fill="none" stroke="${C.rustInk}" stroke-width="1.5" stroke-dasharray="2.5 1.5"/>`,
  otherRules: `${box(C.sheet)}${bar(5.5)}${bar(9)}${bar(12.5)}<path d="M3.5 9h11" stroke="${C.rustInk}" stroke-width="1.6"/>`,
  impossible: `${box(C.sheet, C.rustInk)}<path d="M9 4.500v5.500M9 12v1.800" stroke="${C.rustInk}" stroke-width="2.2"/>`,
  unreadable: `${box(C.sheet)}<circle cx="9" cy="9" r="4.6" fill="none" stroke="${C.ink}" stroke-width="1.4"/><path d="M4 14L14 4" stroke="${C.ink}" stroke-width="1.5"/>`,
};

export const stateArt = (outcome: Outcome): string => STATES[outcome];

/** Two squares, one behind the other. */
export const copyArt = `<rect x="1.500" y="5.500" width="10.500" height="10.500" fill="${C.sheet}" stroke="${C.rustInk}" stroke-width="1.5"/><rect x="5.500" y="2" width="10.500" height="10.500" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.5"/>`;

/** null: there is nothing to judge. */
export function verdictArt(stands: boolean | null): string {
  if (stands === null)
    return `<circle cx="9" cy="9" r="7.5" fill="none" stroke="${C.ink2}" stroke-width="1.3" stroke-dasharray="3 2.4"/><path d="M6 9h6" stroke="${C.ink2}" stroke-width="1.6"/>`;
  return stands
    ? `<circle cx="9" cy="9" r="8" fill="${C.petrolInk}"/>${tick(9, 9.5, 0.85, C.sheet)}`
    : `<circle cx="9" cy="9" r="7.5" fill="${C.sheet}" stroke="${C.rustInk}" stroke-width="1.5"/>${cross(9, 9, 0.75, C.rustInk, 1.9)}`;
}

const LOOKS = {
  hay: { a: 64, col: C.brassInk, tint: C.hay },
  work: { a: 45, col: C.petrol, tint: C.tolerance },
  loss: { a: 45, col: C.rustInk, tint: C.danger },
} as const;
export type BarLook = keyof typeof LOOKS;

/** Hay is well done, petrol is work under way, rust stripes are a loss. */
export function barArt(w: number, h: number, share: number, look: BarLook): string {
  const filled = r1(Math.max(0, Math.min(1, share)) * w);
  const { a, col, tint } = LOOKS[look];
  const d = `M0 0H${filled}V${h}H0Z`;
  const full =
    filled > 0
      ? `<path d="${d}" fill="${tint}"/>${hatch(d, [0, 0, filled, h], { a, gap: 4, sw: 0.9, op: 0.75, col })}`
      : '';
  const edge = filled > 0 && filled < w - 1 ? `<path d="M${filled} 0V${h}" stroke="${C.ink}"/>` : '';
  return `<rect width="${w}" height="${h}" fill="${C.sheet}"/>${full}${edge}<rect x=".5" y=".5" width="${w - 1}" height="${h - 1}" fill="none" stroke="${C.ink}"/>`;
}

export const DROP_ART = `<path d="M8 14H28L36 22V42H8Z" fill="${C.paper}" stroke="${C.ink}" stroke-width="1.5"/><path d="M14 8H34L42 16V36" fill="none" stroke="${C.ink}" stroke-width="1.2"/><path d="M22 4V30m-7 -7l7 8l7 -8" fill="none" stroke="${C.petrolInk}" stroke-width="2.4"/>`;
