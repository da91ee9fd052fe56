/**
 * What a person says was wrong with the set, from what was done and seen: slugs that took more than a touch, parts with which the picture changed, clips that made contact anew.
 */
import type { BenchEvent } from '../../bench/benchEvent.ts';
import { type Sight, see } from './eyes.ts';
import type { Hands } from './hands.ts';
import { levelsWith } from './notebook.ts';
import type { PrintedSheet } from './sheet.ts';
import { away } from './toLimits.ts';
import type { Turner } from './turner.ts';

/** A slug that was left less far from where it was found was touched up and no more. */
const FAR_TURNS = 0.2;
/** And one that stood so wrong as to put a demand of the sheet so far from what is wanted, in tolerances, was astray; less was moved for another's sake. */
const ASTRAY_TOLERANCES = 1.5;
/** Two pictures of the same set differ by less than this, divisions on the average. */
export const SHOWS_DIV = 0.1;

interface Swap {
  readonly part: string;
  /** its core would not turn: no picture has to say so */
  readonly felt: boolean;
  readonly before: Sight;
  readonly after: Sight;
}

export interface Notes {
  /** the same hands; what they replace is noted, with the picture before and after */
  readonly hands: Hands;
  /** `cured`: of parts that were replaced, whether what was wrong went with them, where that was looked for */
  readonly diagnosis: (contacts: readonly ('rf' | 'earth')[], cured: ReadonlyMap<string, boolean>) => BenchEvent;
}

export function takingNotes(given: Hands, sheet: PrintedSheet, turner: Turner): Notes {
  const found = new Map(sheet.slugs.map(({ id }) => [id, turner.depthOf(id)]));
  const swaps: Swap[] = [];
  let last: Sight | null = null;
  let soldered: Omit<Swap, 'after'>[] = [];
  const lookAgain = (): void => {
    const after = soldered.length === 0 ? null : see(given);
    for (const one of soldered) swaps.push({ ...one, after: after! });
    soldered = [];
  };
  const hands: Hands = {
    ...given,
    act(event) {
      const offs = event.type === 'powerSwitched' && !event.on;
      if (sheet.asksDiagnosis && (offs || (event.type === 'partReplaced' && !sheet.mains))) last = see(given);
      const refused = given.act(event);
      if (!sheet.asksDiagnosis || refused !== null) return refused;
      if (event.type === 'partReplaced') {
        const felt = sheet.slugs.some(({ id, coil }) => coil === event.element && turner.stuck.has(id));
        soldered.push({ part: event.element, felt, before: last! });
      }
      if (!sheet.mains || (event.type === 'powerSwitched' && event.on)) lookAgain();
      return refused;
    },
  };
  return {
    hands,
    diagnosis(contacts, cured) {
      const parts = toBlame(swaps, cured);
      const slugs = sheet.slugs
        .filter(({ id, coil }) => !parts.includes(coil) && wasAstray(sheet, id, found.get(id)! - turner.depthOf(id)))
        .map(({ id }) => id);
      return { type: 'diagnosisStated', slugs, parts, setUp: [...contacts] };
    },
  };
}

/** By the notebook: a sound set with this slug alone so many turns deeper than right would be as far off its sheet as that. */
function wasAstray({ responses }: PrintedSheet, slug: string, turns: number): boolean {
  if (Math.abs(turns) <= FAR_TURNS) return false;
  return responses.some(({ effects, judge }) => {
    const own = effects.find((effect) => effect.slug === slug);
    if (own === undefined) return false;
    const demands = judge(levelsWith(own, turns));
    return demands.some((demand) => Math.abs(away(demand)) >= ASTRAY_TOLERANCES);
  });
}

/**
 * Where it was looked for, what went with the part says it. Else a part was good where the picture stayed as it was, unless it was the only one or a coil whose core was felt to be
 * stuck; of parts tried without a picture, by the needle, the last was it.
 */
function toBlame(swaps: readonly Swap[], cured: ReadonlyMap<string, boolean>): readonly string[] {
  const open = swaps.filter(({ part, felt }) => felt || cured.get(part) !== false);
  if (open.length < 2) return open.map(({ part }) => part);
  const seen = open.filter((swap, i) => {
    if (swap.felt || cured.get(swap.part) === true) return true;
    if (isBlank(swap.before) && isBlank(swap.after)) return open[i + 1] === undefined || !isBlank(open[i + 1]!.before);
    return apartDiv(swap.before, swap.after) > SHOWS_DIV;
  });
  return (seen.length === 0 ? open.slice(-1) : seen).map(({ part }) => part);
}

/** A part of the width over which an eye takes the middle of a line that is thick with grass. */
const BLOCKS = 64;

/** How far the lines of two pictures lie from each other, middle from middle, divisions on the average; off the graticule in one alone counts as a division. */
export function apartDiv(a: Sight, b: Sight): number {
  let sum = 0;
  let count = 0;
  for (const way of ['forward', 'back'] as const) {
    const one = a[way].yDiv;
    const other = b[way].yDiv;
    const length = Math.min(one.length, other.length);
    const size = Math.max(1, Math.floor(length / BLOCKS));
    for (let from = 0; from + size <= length; from += size) {
      const x = middleOf(one, from, size);
      const y = middleOf(other, from, size);
      if (x.seen === 0 && y.seen === 0) continue;
      const near = x.seen === 0 || y.seen === 0 ? 0 : Math.min(Math.abs(x.middle - y.middle), 1);
      const off = Math.abs(x.seen - y.seen) / size;
      sum += Math.max(near * (1 - off), 0) + off;
      count++;
    }
  }
  return count === 0 ? 0 : sum / count;
}

function middleOf(yDiv: Float64Array, from: number, size: number): { readonly middle: number; readonly seen: number } {
  let sum = 0;
  let seen = 0;
  for (let i = from; i < from + size; i++) {
    if (Number.isNaN(yDiv[i]!)) continue;
    sum += yDiv[i]!;
    seen++;
  }
  return { middle: sum / seen, seen };
}

const BLANK_DIV = 0.5;

function isBlank({ forward }: Sight): boolean {
  const seen = [...forward.yDiv].filter((y) => !Number.isNaN(y));
  return seen.length === 0 || Math.max(...seen) - Math.min(...seen) < BLANK_DIV;
}
