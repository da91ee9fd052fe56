/** The small drawing on each drill's card (a plain curve where a drill has none of its own), and its ten straws. Ink, as strings. */
import type { DrillId } from '../../drills/drill.ts';
import { C, hatch, r1, rr, T } from '../../kit/theme/ink.ts';

type Level = (at: number) => number;

/** Two coupled circuits, k Q of `kq`; at in half bandwidths from the middle. */
const coupled =
  (kq: number, lean = 0): Level =>
  (at) => {
    const [a, b] = [at, at - lean];
    return (2 * kq) / Math.hypot(1 - a * b + kq * kq, a + b);
  };

export function cardArt(drill: DrillId, w: number, h: number): string {
  const foot = h - 4;
  const X = (at: number): number => r1(w / 2 + (at / 5) * (w / 2));
  const Y = (level: number): number => r1(foot - level * (h - 14));
  const solid = `stroke="${C.ink}" stroke-width="1.9"`;
  const dashed = `stroke="${C.petrolInk}" stroke-width="1.4" stroke-dasharray="3 3"`;
  const curve = (level: Level, look = solid, shift = 0): string => {
    let d = '';
    for (let i = 0; i <= 100; i++) {
      const at = -5 + i / 10;
      d += `${i ? 'L' : 'M'}${X(at)} ${Y(level(at - shift))}`;
    }
    return `<path d="${d}" fill="none" stroke-linejoin="round" ${look}/>`;
  };
  const base = `<path d="M0 ${foot}H${w}" stroke="${C.ink}"/>`;
  const can = coupled(1);
  const band: Level = (at) => 1 / (1 + (at / 2.2) ** 6);
  switch (drill) {
    case 'phase-it':
      return base + curve(can, solid, -0.7) + curve(can, solid, 0.7);
    case 'which-way':
      return base + curve(can, dashed) + curve(coupled(1.15, 1.7));
    case 'per-cent': {
      const [x, y] = [X(2.2), Y(band(2.2))];
      return `${base + curve(band)}<path d="M${x} ${foot}V${y}H0" fill="none" stroke="${C.rust}" stroke-width="1.3" stroke-dasharray="2 3"/><circle cx="${x}" cy="${y}" r="4.5" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.8"/>`;
    }
    case 'find-the-trap': {
      const bitten: Level = (at) => band(at) * (1 - 0.9 / (1 + ((at - 0.6) / 0.35) ** 2));
      return `${base + curve(bitten)}<path d="M${X(0.6)} ${foot - 5}l-4.500 -9h9z" fill="${C.petrol}" stroke="${C.ink}"/>`;
    }
    case 'overload':
      return base + curve(can, dashed) + curve((at) => Math.tanh(2.4 * can(at)) / 1.06);
    case 'zero': {
      const middle = r1(h / 2);
      let d = '';
      for (let i = 0; i <= 100; i++) {
        const at = -5 + i / 10 - 0.5;
        d += `${i ? 'L' : 'M'}${X(-5 + i / 10)} ${r1(middle - ((2 * at) / (1 + at * at)) * (h / 2 - 8))}`;
      }
      return `<path d="M0 ${middle}H${w}" stroke="${C.ink}"/><path d="M${X(0)} 2V${h - 2}" stroke="${C.rust}" stroke-width="1.3" stroke-dasharray="2 3"/><path d="${d}" fill="none" stroke="${C.ink}" stroke-width="1.9"/>`;
    }
    case 'which-part': {
      const x = w - 26;
      const y = h / 2;
      return `${base + curve(band, dashed, -1) + curve((at) => 0.42 * band(at), solid, -1)}<path d="M${x - 22} ${y - 22}v9M${x - 22} ${y + 13}v9M${x + 2} ${y - 22}v15M${x + 2} ${y + 7}v15" stroke="${C.ink}" stroke-width="1.4"/><rect x="${x - 28}" y="${y - 13}" width="12" height="26" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.6"/><path d="M${x - 8} ${y - 4}h20M${x - 8} ${y + 4}h20" stroke="${C.ink}" stroke-width="2.6"/>`;
    }
    case 'what-lies-here': {
      const marks = [-3.2, -1.9, 2.1, 3.3].map((at) => {
        const x = X(at);
        const top = Y(Math.max(0.25, band(at)));
        return `<path d="M${x} ${foot}V${top}" stroke="${C.rust}" stroke-width="1.4"/><circle cx="${x}" cy="${r1(top - 8)}" r="8" fill="${C.sheet}" stroke="${C.ink}" stroke-width="1.2"/>${T(x, r1(top - 3.5), '?', 'co', { anchor: 'middle' })}`;
      });
      return base + curve(band, `${solid} opacity="0.55"`) + marks.join('');
    }
    default:
      return base + curve(can);
  }
}

/** Hay for right, a rust stroke for wrong, dashes for what has not been tried. */
export function strawArt(w: number, looks: readonly boolean[]): string {
  let s = '';
  for (let i = 0; i < 10; i++) {
    const x = r1((i * w) / 10) + 0.5;
    const wide = Math.max(1, r1(w / 10 - 4));
    const right = looks[i];
    s += `<rect x="${x}" y="1" width="${wide}" height="10" fill="${right === true ? '#e3cfa0' : C.paper}" stroke="${C.ink}"${right === undefined ? ' stroke-dasharray="2 2" stroke-width="0.8"' : ''}/>`;
    if (right === true)
      s += hatch(rr(x, 1, wide, 10, 0.1), [x, 1, wide, 10], { a: 64, gap: 3.4, sw: 0.8, op: 0.9, col: C.brassInk });
    if (right === false) s += `<path d="M${x + 3} 8.500l${r1(wide - 6)} -5" stroke="${C.rust}" stroke-width="1.6"/>`;
  }
  return s;
}
