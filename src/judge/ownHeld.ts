/**
 * What a run on a scenario of somebody's own is held against: of the versions of that name that are known here, the very one that the run says it was done on, told by its hash.
 * A run may have been begun before the scenario was certified, so it is looked for with its certified par and without.
 */

import { withPar } from '../certify/certifiedPar.ts';
import { type LoadedReceiver, loadScenario } from '../files/library.ts';
import { scenarioHash } from '../files/scenarioFile.ts';
import { isDealtAfresh } from '../scenario/attempt.ts';
import { PAR_ONCE_WRITTEN, type Par, parIsKnown } from '../scenario/par.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { heldAgainst } from './heldAgainst.ts';
import type { FoundBench } from './judgeRun.ts';

export interface OwnText {
  readonly text: string;
  /** of its certificate; null: it has none */
  readonly par: Par | null;
}

/** With the receiver that it was handed out on. */
export interface OwnVersion extends OwnText {
  readonly design: LoadedReceiver;
}

/** Where no version is the run's, the last opened is what it is held against; null: none can be read. */
export function ownHeld(versions: readonly OwnVersion[], run: Scenario): FoundBench | null {
  const hash = scenarioHash(run);
  let nearest: FoundBench | null = null;
  for (const { text, par, design } of versions.toReversed()) {
    const read = loadScenario({ file: `${run.id}.json`, text }, new Map([[run.receiver, design]]));
    if (!read.ok || read.value.id !== run.id) continue;
    const own = read.value;
    const ways = par === null || isDealtAfresh(own) ? [own] : [withPar(own, par), own];
    // A bench that had not certified it may have written down what stands for none.
    if (!parIsKnown(own)) ways.push({ ...own, par: PAR_ONCE_WRITTEN });
    for (const way of ways) {
      const held = heldAgainst(design, way, run, null);
      if (held.scenarioHash === hash) return held;
      nearest ??= held;
    }
  }
  return nearest;
}
