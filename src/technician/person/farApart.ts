/** Narrow circuits that stand so far apart that next to nothing comes through all of them. */
import { type AtBench, isNarrow, slugsOf, standFor } from './atWork.ts';
import { PASSES, shareOnTube, turnUp } from './deadStage.ts';
import { set } from './hands.ts';
import { peakUp } from './peaking.ts';
import type { PrintedResponse } from './sheet.ts';
import type { AloneStep } from './withNotebook.ts';

/** They are peaked from the detector back, the source turned up, before anything is made of the curve. For a set that is not dead. */
export function peakFaint(bench: AtBench, main: PrintedResponse, steps: readonly AloneStep[]): void {
  const { hands, sheet, turner } = bench;
  if (!isNarrow(main) || shareOnTube(hands, standFor(bench, main)) > PASSES) return;
  const done = new Set<string>();
  const peak = (slugs: readonly string[], at?: string): void => {
    const curve = standFor(bench, main, at);
    hands.note({ kind: 'follows', slugs });
    if (shareOnTube(hands, curve) <= PASSES) turnUp(hands);
    peakUp(hands, turner, main.setUp.centreHz, slugs);
    set(hands, 'levelDb', curve.levelDb);
    for (const slug of slugs) done.add(slug);
  };
  for (const { slugs, at } of steps) peak(slugs, at);
  const front = slugsOf(sheet, main).map(({ id }) => id);
  peak(front.filter((id) => !done.has(id)));
}
