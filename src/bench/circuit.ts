/**
 * One deck on the bench, with the leads as they are, ready to be solved at three sets of frequencies: the whole sweep, a thin sweep (for the AGC
 * line, which only needs an average) and single frequencies. Each set keeps its own solver, so that a turned slug re-solves its own block only.
 */
import { problemLine } from '../base/result.ts';
import type { Deck } from '../physics/deck.ts';
import { buildNetwork } from '../physics/network.ts';
import { createSolver, type Solver } from '../physics/solver.ts';
import { SOURCE_OHMS } from '../receiver/sourceLevel.ts';
import type { SlugState } from './benchState.ts';
import { type StageConditions, slugElementValues, stageElementValues } from './conditions.ts';
import { type Connections, connectedDeck, RF_SOURCE } from './connections.ts';
import type { BenchSetup } from './setup.ts';

export interface Conditions {
  readonly slugs: Readonly<Record<string, SlugState>>;
  readonly stages: StageConditions;
  /** open-circuit volts of the source, peak */
  readonly sourceVolts: number;
}

export interface Station {
  /** brings the circuit up to date; results stand until the next call */
  solve(hz: Float64Array, conditions: Conditions): void;
  /** carrier volts (peak) at a node */
  magnitude(node: string, out: Float64Array): Float64Array;
  /** gain compression of the hardest-driven stage, decibels */
  compressionDb(): number;
}

export interface Circuit {
  readonly sweep: Station;
  readonly thin: Station;
  readonly spots: Station;
}

export function createCircuit(setup: BenchSetup, connections: Connections): Circuit {
  const deck = connectedDeck(setup, connections);
  const built = buildNetwork(deck, setup.receiver.deck);
  if (!built.ok) throw new Error(built.problems.map(problemLine).join('\n'));
  const station = (): Station => createStation(setup, connections, deck, (hz) => createSolver(built.value, hz));
  return { sweep: station(), thin: station(), spots: station() };
}

function createStation(
  setup: BenchSetup,
  { rf, steelIn }: Connections,
  deck: Deck,
  newSolver: (hz: Float64Array) => Solver,
): Station {
  const { receiver } = setup;
  let solver: Solver | null = null;
  const cores = new Map<string, number>();
  let stages: StageConditions | null = null;
  const drive = rf?.inject?.kind === 'deckSource' ? rf.inject.element : RF_SOURCE;
  const siemens = rf?.inject?.kind === 'deckSource' ? rf.inject.siemens : 1 / SOURCE_OHMS;

  const begin = (hz: Float64Array): Solver => {
    const fresh = newSolver(hz);
    for (const element of deck.elements) if (element.kind === 'I') fresh.setDrive(element.name, 0);
    for (const stage of receiver.stages) fresh.setSaturation(stage.element, stage.saturationVolts);
    return fresh;
  };
  const ready = (): Solver => {
    if (solver === null) throw new Error('a station must be solved before it is read');
    return solver;
  };

  return {
    solve(hz, conditions) {
      if (solver === null) solver = begin(hz);
      else if (!sameFrequencies(solver.hz, hz)) solver.setFrequencies(hz);
      for (const id in conditions.slugs) {
        const core = conditions.slugs[id]!.coreTurns;
        if (cores.get(id) === core) continue;
        cores.set(id, core);
        for (const v of slugElementValues(setup, id, core, steelIn === id)) solver.setValue(v.element, v.value);
      }
      if (stages === null || !sameStages(stages, conditions.stages)) {
        stages = conditions.stages;
        for (const v of stageElementValues(setup, stages)) solver.setValue(v.element, v.value);
      }
      if (rf !== null) solver.setDrive(drive, siemens * conditions.sourceVolts);
      solver.solve();
    },
    magnitude: (node, out) => ready().magnitude(node, out),
    compressionDb: () => ready().worstCompressionDb(),
  };
}

function sameFrequencies(a: Float64Array, b: Float64Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function sameStages(a: StageConditions, b: StageConditions): boolean {
  return a.lineVolts === b.lineVolts && a.running === b.running && a.bareAt === b.bareAt;
}
