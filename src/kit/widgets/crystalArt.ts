/** A two-pin crystal can with a paper label, in or over its socket. Drawn plugged in, 0 = left edge of the can, y = 0 at the socket's plate. */
import { C, hatch, r1, rr } from '../theme/ink.ts';

/** How tall a can stands over its socket's plate, how far it is lifted, where its label sits, px. Low ones are for boxes that stand in two rows. */
export interface CanSize {
  readonly height: number;
  readonly lift: number;
  readonly label: number;
}
export const CAN: CanSize = { height: 50, lift: 19, label: 16 };
export const LOW_CAN: CanSize = { height: 34, lift: 11, label: 8 };

/** The socket that stays. */
export function socketStill(w: number): string {
  const pin = w * 0.24;
  return (
    `<path d="${rr(-3, -2, w + 6, 17, 2)}" fill="${C.ink}"/>` +
    [-pin, pin].map((p) => `<ellipse cx="${r1(w / 2 + p)}" cy="6" rx="3.3" ry="2.6" fill="${C.paper}"/>`).join('')
  );
}

/** Dashed drop lines from the pins of a lifted can to its holes. */
export function dropLines(w: number, { lift }: CanSize): string {
  const pin = w * 0.24;
  return [-pin, pin]
    .map(
      (p) => `<path d="M${r1(w / 2 + p)} ${6 - lift}V3" stroke="${C.ink}" stroke-width="1" stroke-dasharray="2 2.4"/>`,
    )
    .join('');
}

/** The can with its pins (hidden behind the socket's plate while it is in). */
export function canArt(w: number, { height, label: labelAt }: CanSize): string {
  const top = 4 - height;
  const foot = top + height;
  const pin = w * 0.24;
  const label = Math.min(44, w + 2);
  const d = `M2 ${foot}V${top + 13}Q2 ${top} 15 ${top}H${w - 15}Q${w - 2} ${top} ${w - 2} ${top + 13}V${foot}Z`;
  const pins = [-pin, pin]
    .map(
      (p) =>
        `<path d="M${r1(w / 2 + p - 1.9)} ${foot}h3.8v8l-1.9 2.4l-1.9 -2.4z" fill="${C.brass}" stroke="${C.ink}" stroke-width=".9"/>`,
    )
    .join('');
  return (
    pins +
    `<g class="brass-ring"><path d="${d}" fill="none" stroke="${C.ink}" stroke-width="11" stroke-linejoin="round"/><path d="${d}" fill="none" stroke="${C.brass}" stroke-width="9" stroke-linejoin="round"/></g>` +
    `<path d="${d}" fill="#f7efdc" stroke="${C.ink}" stroke-width="1.5"/>` +
    hatch(d, [w - 12, top, 12, height], { a: 90, gap: 2.6, sw: 0.7, op: 0.75 }) +
    `<path d="M6 ${foot - 8}V${top + 14}Q6 ${top + 4.5} 15 ${top + 4.5}" fill="none" stroke="${C.ink}" stroke-width=".6" opacity=".7"/>` +
    `<rect x="-1" y="${foot - 5}" width="${w + 2}" height="6.5" fill="${C.wash2}" stroke="${C.ink}" stroke-width="1.3"/>` +
    `<rect x="${r1((w - label) / 2)}" y="${top + labelAt}" width="${label}" height="19" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1"/>`
  );
}
