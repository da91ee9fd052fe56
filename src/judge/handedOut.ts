/**
 * Scenarios that an instructor laid beside a class's runs, as what was handed out: each with the receiver that came with it. A run may carry the par that the learner's own bench
 * certified the scenario by, so it is certified here, too, before a run is said to be on another one.
 */
import { benchSetup } from '../certify/benchSetup.ts';
import { certifyScenario } from '../certify/certifyScenario.ts';
import type { SheetTerms } from '../files/eveningTerms.ts';
import { type LoadedReceiver, loadScenario } from '../files/library.ts';
import { type ReceiverPair, readReceiverPair } from '../files/readReceiverPair.ts';
import { scenarioHash } from '../files/scenarioFile.ts';
import { isDealtAfresh } from '../scenario/attempt.ts';
import type { Par } from '../scenario/par.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { FoundBench } from './judgeRun.ts';
import { once } from './once.ts';
import { type OwnVersion, ownHeld } from './ownHeld.ts';

export interface HandedOut {
  /** of the scenario */
  readonly id: string;
  readonly text: string;
  /** that came with it; null: it stands on one that is known by its name */
  readonly receiver: ReceiverPair | null;
}

/** One file of what was handed out. */
export interface Material {
  readonly title: string;
  readonly file: string;
  readonly scenarios: readonly HandedOut[];
  /** a receiver by itself, for scenarios that come without theirs */
  readonly receiver: (ReceiverPair & { readonly id: string }) | null;
  /** of a sheet: what it asks; left out: it is none */
  readonly terms?: SheetTerms;
}

/** What is worked out once for all runs of a class. */
export interface WorkedOut {
  readonly designs: Map<string, LoadedReceiver | null>;
  readonly pars: Map<string, Par | null>;
}

/** Enough for the sheets of many evenings. */
const MOST_KEPT = 200;

export const createWorkedOut = (): WorkedOut => ({ designs: new Map(), pars: new Map() });

/** null: it does not read as one. */
export function designIn(pair: ReceiverPair, { designs }: WorkedOut): LoadedReceiver | null {
  return once(designs, MOST_KEPT, JSON.stringify(pair), () => {
    const read = readReceiverPair(pair);
    return read.ok ? read.value : null;
  });
}

/** As `ownHeld`, and where no version is the run's as it stands, with the par that this bench certifies each by. */
export function heldOnOwn(versions: readonly OwnVersion[], run: Scenario, worked: WorkedOut): FoundBench | null {
  const held = ownHeld(versions, run);
  if (held === null || held.scenarioHash === scenarioHash(run)) return held;
  const tried = versions.map((one) => (one.par === null ? { ...one, par: parOf(one, run, worked) } : one));
  return ownHeld(tried, run);
}

function parOf({ text, design }: OwnVersion, run: Scenario, { pars }: WorkedOut): Par | null {
  return once(pars, MOST_KEPT, JSON.stringify([text, design.receiver, design.deck]), () => {
    const read = loadScenario({ file: `${run.id}.json`, text }, new Map([[run.receiver, design]]));
    if (!read.ok || isDealtAfresh(read.value)) return null;
    const setup = benchSetup(design, read.value);
    if (!setup.ok) return null;
    const certified = certifyScenario(setup.value);
    return certified.ok ? certified.certificate.par : null;
  });
}
