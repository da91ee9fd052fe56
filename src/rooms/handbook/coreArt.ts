/** A coil in section with its core: the further in, the lower the frequency. Ink, as a string. */
import { C, hatch, r1 } from '../../kit/theme/ink.ts';

const WIDTH = 220;
export const CORE_BOX = { width: WIDTH, height: 76 } as const;
const MOST_TURNS = 4;

export function coreArt(turns: number): string {
  const middle = 34;
  const coil = Array.from({ length: 9 }, (_, i) => 104 + i * 9.4);
  const ring = (x: number, y: number): string =>
    `<circle cx="${r1(x)}" cy="${y}" r="4.400" fill="${C.brass}" stroke="${C.ink}"/>`;
  const x = 62 + ((turns + MOST_TURNS) / (2 * MOST_TURNS)) * 62;
  const body = `M${r1(x)} ${middle - 14}h56v28h-56z`;
  return (
    `<path d="M8 ${middle - 18}H${WIDTH - 8}M8 ${middle + 18}H${WIDTH - 8}" stroke="${C.ink}" stroke-width="2"/>` +
    coil.map((at) => ring(at, middle - 26) + ring(at, middle + 26)).join('') +
    `<path d="${body}" fill="#8d948f" stroke="${C.ink}" stroke-width="1.4"/>` +
    hatch(body, [x, middle - 14, 56, 28], { a: 45, gap: 3.4, sw: 0.8, op: 0.55 }) +
    `<path d="M${r1(x)} ${middle - 4}h12v8h-12z" fill="${C.ink}"/>` +
    `<path d="M${r1(x - 6)} ${middle}H20" stroke="${C.ink}" stroke-width="3"/>`
  );
}
