/**
 * The bench on which a run is done again. The runs of a class are on few scenarios: those on the very same one share a bench, with all that it has worked out, for equal states
 * give equal answers whatever was asked before (`src/bench/kept.ts`).
 */
import { ENGINE } from '../base/engine.ts';
import { good, type Result } from '../base/result.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { benchSetup } from '../certify/benchSetup.ts';
import type { KnownSet } from '../certify/knownSet.ts';
import type { LoadedReceiver } from '../files/library.ts';
import { onBenchOf } from '../run/onBenchOf.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { once } from './once.ts';

/** Scenarios of an evening, and some to spare; each holds a bench with its solvers. */
const MOST_SETUPS = 8;

/** By the receiver that is known here: a run has no say in it. */
const kept = new WeakMap<LoadedReceiver['receiver'], Map<string, Result<BenchSetup>>>();

export function judgedSetup(
  parts: LoadedReceiver,
  scenario: Scenario,
  known: KnownSet | null,
  file: string,
  engine: string = ENGINE,
): Result<BenchSetup> {
  const ofReceiver = kept.get(parts.receiver) ?? new Map<string, Result<BenchSetup>>();
  kept.set(parts.receiver, ofReceiver);
  const make = (): Result<BenchSetup> => {
    const made = benchSetup(parts, scenario, known, file);
    return made.ok ? good(onBenchOf(engine, made.value)) : made;
  };
  const found = once(ofReceiver, MOST_SETUPS, JSON.stringify([scenario, known, engine]), make);
  // A problem is told by the name of the file that has it.
  return found.ok ? found : make();
}
