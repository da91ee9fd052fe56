/**
 * One deck on the bench, with the leads as they are, ready to be solved at several sets of frequencies: the whole sweep, a thin sweep (for the bias lines,
 * which only need an average), single frequencies, and the lines of a fast sweep. Each set keeps its own solver, so that a turned slug re-solves its own
 * block only.
 */
import type { Deck } from '../physics/deck.ts';
import type { PathLoad } from '../receiver/pathLoad.ts';
import { createSignalPath, type LevelShare, type SignalPath, type SourceKind } from '../receiver/signalPath.ts';
import { SOURCE_OHMS } from '../receiver/sourceLevel.ts';
import type { SlugState } from './benchState.ts';
import { type StageConditions, slugElementValues, stageElementValues } from './conditions.ts';
import { type Connections, connectedDeck, RF_SOURCE } from './connections.ts';
import type { BenchSetup } from './setup.ts';

export interface Conditions {
  readonly slugs: Readonly<Record<string, SlugState>>;
  readonly stages: StageConditions;
  /** open-circuit volts of the source, peak, at the sweep's centre; and its level elsewhere over that, null where it is the same everywhere */
  readonly sourceVolts: number;
  readonly share: LevelShare | null;
  readonly source: SourceKind;
  /** the diodes that hang on it */
  readonly loads: readonly PathLoad[];
}

export interface Station {
  /** brings the circuit up to date; results stand until the next call */
  solve(hz: Float64Array, conditions: Conditions): void;
  /** carrier volts (peak) at a node */
  magnitude(node: string, out: Float64Array): Float64Array;
  real(node: string): Float64Array;
  imag(node: string): Float64Array;
  /** gain compression of the hardest-driven stage that is no limiter, on the way to a node, decibels */
  compressionDb(node?: string): number;
}

export interface Circuit {
  readonly sweep: Station;
  readonly thin: Station;
  readonly spots: Station;
  readonly lines: Station;
}

export function createCircuit(setup: BenchSetup, connections: Connections): Circuit {
  const deck = connectedDeck(setup, connections);
  const station = (): Station => createStation(setup, connections, deck);
  return { sweep: station(), thin: station(), spots: station(), lines: station() };
}

function createStation(setup: BenchSetup, { rf, steelIn }: Connections, deck: Deck): Station {
  const { receiver } = setup;
  let path: SignalPath | null = null;
  const cores = new Map<string, number>();
  let stages: StageConditions | null = null;
  const drive = rf?.inject?.kind === 'deckSource' ? rf.inject.element : RF_SOURCE;
  const siemens = rf?.inject?.kind === 'deckSource' ? rf.inject.siemens : 1 / SOURCE_OHMS;
  const limiters = receiver.stages.filter((stage) => stage.limiter).map((stage) => stage.element);

  const begin = (): SignalPath => {
    const fresh = createSignalPath(receiver, deck);
    for (const stage of receiver.stages) fresh.setSaturation(stage.element, stage.saturationVolts);
    return fresh;
  };
  const ready = (): SignalPath => {
    if (path === null) throw new Error('a station must be solved before it is read');
    return path;
  };

  return {
    solve(hz, conditions) {
      path ??= begin();
      for (const id in conditions.slugs) {
        const core = conditions.slugs[id]!.coreTurns;
        if (cores.get(id) === core) continue;
        cores.set(id, core);
        for (const v of slugElementValues(setup, id, core, steelIn === id)) path.setValue(v);
      }
      if (stages === null || !sameStages(stages, conditions.stages)) {
        stages = conditions.stages;
        for (const v of stageElementValues(setup, stages)) path.setValue(v);
      }
      path.setLoads(conditions.loads);
      if (rf !== null) path.solve(hz, drive, siemens * conditions.sourceVolts, conditions.source, conditions.share);
    },
    magnitude: (node, out) => (rf === null ? out.fill(0) : ready().magnitude(node, out)),
    real: (node) => ready().real(node),
    imag: (node) => ready().imag(node),
    compressionDb: (node) => (rf === null ? 0 : ready().compressionDb(limiters, node)),
  };
}

function sameStages(a: StageConditions, b: StageConditions): boolean {
  if (a.running !== b.running || a.bareAt !== b.bareAt) return false;
  for (const line in b.lineVolts) if (a.lineVolts[line] !== b.lineVolts[line]) return false;
  return true;
}
