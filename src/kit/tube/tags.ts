/** Paper tags on the hood's lip, one for each pip, with a leader to its place; kept 48 px apart. */
import type { MarkerTag } from '../../bench/display.ts';
import { C, r1, rr, T } from '../theme/ink.ts';
import { TUBE_COLOURS, type TubeGeometry } from './hood.ts';

export const TAG_APART = 48;

export interface TagWords {
  /** what the tunable marker's tag says: never its frequency */
  readonly tunable: string;
  readonly frequency: (hz: number) => string;
}

/** Places wanted, moved apart to at least `apart` with the least sum of squared moves, inside low..high while there is room. */
export function moveApart(wanted: readonly number[], apart: number, low: number, high: number): number[] {
  // Least squares with a fixed order and fixed gaps is isotonic regression of (wanted - i * apart): pool neighbours that violate.
  const pools: { sum: number; count: number }[] = [];
  wanted.forEach((w, i) => {
    pools.push({ sum: w - i * apart, count: 1 });
    while (pools.length > 1) {
      const last = pools[pools.length - 1]!;
      const before = pools[pools.length - 2]!;
      if (before.sum / before.count <= last.sum / last.count) break;
      pools.pop();
      before.sum += last.sum;
      before.count += last.count;
    }
  });
  const most = Math.max(low, high - (wanted.length - 1) * apart);
  const out: number[] = [];
  for (const { sum, count } of pools) {
    const base = Math.min(most, Math.max(low, sum / count));
    for (let k = 0; k < count; k++) out.push(base + out.length * apart);
  }
  return out;
}

/** Tags that stand on the sweep, in order, of pips that have a name; combs are thinned to what the lip has room for. */
export function tagsToShow(tags: readonly MarkerTag[], room: number): (MarkerTag & { readonly xDiv: number })[] {
  const on = tags
    .filter((t): t is MarkerTag & { readonly xDiv: number } => t.xDiv !== null && t.kind !== 'unnamed')
    .sort((a, b) => a.xDiv - b.xDiv);
  const named = on.filter((t) => t.kind !== 'comb');
  const combs = on.filter((t) => t.kind === 'comb');
  const free = room - named.length;
  const stride = free > 0 ? Math.ceil(combs.length / free) : Number.POSITIVE_INFINITY;
  const kept = combs.filter((_, i) => i % stride === 0);
  return [...named, ...(Number.isFinite(stride) ? kept : [])].sort((a, b) => a.xDiv - b.xDiv);
}

export function drawTags(g: TubeGeometry, tags: readonly MarkerTag[], words: TagWords): string {
  const { cx, cy, cell, glassX, glassY, tagsY } = g;
  const low = cx - glassX + 24;
  const high = cx + glassX - 24;
  const shown = tagsToShow(tags, Math.max(1, Math.floor((high - low) / TAG_APART) + 1));
  const places = moveApart(
    shown.map((t) => cx + t.xDiv * cell),
    TAG_APART,
    low,
    high,
  );
  const bottom = cy + 4 * cell;
  return shown
    .map((tag, i) => {
      const px = cx + tag.xDiv * cell;
      const tx = places[i]!;
      const tunable = tag.kind === 'tunable';
      const label = tunable ? words.tunable : words.frequency(tag.hz);
      const width = label === '' ? 20 : tunable ? 46 : tag.number === null ? 36 : 46;
      const leader = tunable ? TUBE_COLOURS.wax : TUBE_COLOURS.body;
      let s = `<path d="M${r1(px)} ${r1(bottom + 2)}V${r1(bottom + 8)}L${r1(tx)} ${r1(cy + glassY + 7)}V${r1(tagsY - 9)}" stroke="${leader}" stroke-width="1.2" fill="none" opacity=".9"/>`;
      s += `<path d="${rr(tx - width / 2, tagsY - 9, width, 19, 2)}" fill="${tunable ? '#f3dcae' : C.sheet}" stroke="${TUBE_COLOURS.bezel}"/>`;
      if (tag.number !== null)
        s +=
          `<circle cx="${r1(tx - width / 2 + (label === '' ? 10 : 9))}" cy="${r1(tagsY + 0.5)}" r="6.6" fill="${C.rust}"/>` +
          T(tx - width / 2 + (label === '' ? 10 : 9), tagsY + 4.6, tag.number, 'ls', {
            anchor: 'middle',
            fill: '#fff',
            weight: 700,
          });
      return (
        s +
        T(tx + (tag.number === null ? 0 : 7.5), tagsY + 5, label, 'ls', {
          anchor: 'middle',
          weight: 600,
          tracking: 'none',
        })
      );
    })
    .join('');
}
