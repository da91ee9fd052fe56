/**
 * A notch that is missing, or that its slug cannot bring to its place: something of that trap has failed. The parts that the chart has for it are replaced one after the other, those
 * beside the coil first, as a new coil comes with its core half way and changes the picture whether the old one was good or not.
 */
import { type AtBench, notchesInSight, slugsOf, standFor, timeToProve } from './atWork.ts';
import { replacePart, spoilers } from './faultFinding.ts';
import { readsMissed, slugDoesNothing } from './missedNotch.ts';
import type { PrintedResponse, PrintedSlug } from './sheet.ts';
import { placeTrap, wantedNotch } from './withNotebook.ts';

const MOST_PARTS = 4;

/** Parts that were replaced. Where every trap is missed it is no trap's doing. `untouched`: nobody has set a trap yet, and only a notch that is not to be seen, with a slug that does nothing, speaks against one. */
export function trapParts(bench: AtBench, main: PrintedResponse, untouched: boolean): readonly string[] {
  const { sheet } = bench;
  const curve = standFor(bench, main);
  const own = notchesInSight(bench, main);
  const missed = own.filter(
    (trap) =>
      isMissed(bench, main, trap, untouched) &&
      (!untouched || slugDoesNothing(bench.hands, bench.turner, { slug: trap.id, hz: trap.trapHz! }, curve)),
  );
  const missedHz = [...new Set(missed.map(({ trapHz }) => trapHz!))];
  const goodHz = [...new Set(own.map(({ trapHz }) => trapHz!))].filter((hz) => !missedHz.includes(hz));
  if (missedHz.length !== 1 || goodHz.length === 0) return [];
  const coils = missed.map(({ coil }) => coil);
  const spoils = [...spoilers(sheet, curve, missedHz, goodHz)];
  const inDoubt = [...spoils.filter((part) => !coils.includes(part)), ...spoils.filter((part) => coils.includes(part))];
  const replaced: string[] = [];
  for (const part of inDoubt.slice(0, MOST_PARTS)) {
    if (!timeToProve(bench) || !replacePart(bench, part)) break;
    replaced.push(part);
    const again = standFor(bench, main);
    for (const trap of missed) placeTrap(bench, main, again, trap, false);
    const mended = missed.every((trap) => !isMissed(bench, main, trap, false));
    bench.cured.set(part, mended);
    if (mended) break;
  }
  return replaced;
}

function isMissed({ hands, sheet }: AtBench, main: PrintedResponse, trap: PrintedSlug, gone: boolean): boolean {
  const curve = sheet.curves.find((c) => c.response === main.id && c.injectAt === main.setUp.injectAt)!;
  return readsMissed(hands, wantedNotch(main, trap, slugsOf(sheet, main)), curve, gone);
}
