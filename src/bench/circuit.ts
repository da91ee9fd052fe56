/**
 * One deck on the bench, with the leads as they are, ready to be solved at several sets of frequencies: the whole sweep, a thin sweep (for the bias lines,
 * which only need an average), single frequencies, and the lines of a fast sweep. Each set keeps its own solver, so that a turned slug re-solves its own
 * block only.
 */
import type { Chirp } from '../physics/chirp.ts';
import { type Deck, nodeKey } from '../physics/deck.ts';
import { createLimitCycleFinder, type LimitCycle, type LimitCycleFinder } from '../physics/limitCycle.ts';
import { nodesBehind, quietingOf } from '../physics/limiterQuieting.ts';
import type { ChirpedNodes } from '../receiver/chirpedPart.ts';
import type { PathLoad } from '../receiver/pathLoad.ts';
import { createReceiverNoise, type NodeNoise, type ReceiverNoise } from '../receiver/receiverNoise.ts';
import {
  createSignalPath,
  type LevelShare,
  type LoneLoad,
  type SignalPath,
  type SourceKind,
} from '../receiver/signalPath.ts';
import { LOWEST_HZ, SOURCE_OHMS } from '../receiver/sourceLevel.ts';
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

export interface SolverSet {
  /** brings the circuit up to date; results stand until the next call */
  solve(hz: Float64Array, conditions: Conditions): void;
  /** see `SignalPath`; null where nothing is fed in */
  solveChirped(hz: Float64Array, conditions: Conditions, along: Float64Array, chirp: Chirp): ChirpedNodes | null;
  /** carrier volts (peak) at a node */
  magnitude(node: string, out: Float64Array): Float64Array;
  real(node: string): Float64Array;
  imag(node: string): Float64Array;
  /** see `SignalPath` */
  hzAt(node: string): Float64Array | null;
  /** see `SignalPath` */
  crestAt(node: string): Float64Array | null;
  /** see `SignalPath` */
  loneLoad(node: string): LoneLoad | null;
  /** where the set's own oscillator runs or would run; null where it has none */
  oscillatorHz(): number | null;
  /** how much of the set's noise its limiters leave at a node, frequency by frequency; null where none stands before it or nothing is fed in. Its own buffer, until the next */
  quieting(node: string): Float64Array | null;
  /** gain compression of the hardest-driven stage that is no limiter, on the way to a node, decibels */
  compressionDb(node?: string): number;
}

/** Where the set's own noise is read, under the same conditions. */
export interface NoiseSolvers {
  /** `carrierVolts`: what stands on a loaded node, peak */
  at(conditions: Conditions, node: string, carrierVolts: (node: string) => number): NodeNoise;
}

/** Whether the set sings by itself, under the same conditions. */
export interface SongSolvers {
  at(conditions: Conditions): LimitCycle | null;
}

export interface Circuit {
  readonly sweep: SolverSet;
  readonly thin: SolverSet;
  readonly spots: SolverSet;
  readonly lines: SolverSet;
  /** a source that sweeps at one rate over the band that it hurries */
  readonly chirped: SolverSet;
  /** at twice the sweep's frequencies */
  readonly harmonic: SolverSet;
  readonly noise: NoiseSolvers;
  readonly song: SongSolvers;
}

export function createCircuit(setup: BenchSetup, connections: Connections): Circuit {
  const deck = connectedDeck(setup, connections);
  const solvers = (): SolverSet => createSolverSet(setup, connections, deck);
  const noise = createNoiseSolvers(setup, connections, deck);
  return {
    sweep: solvers(),
    thin: solvers(),
    spots: solvers(),
    lines: solvers(),
    chirped: solvers(),
    harmonic: solvers(),
    noise,
    song: createSongSolvers(setup, connections, deck),
  };
}

/** Sets a path's elements to where slugs, bias and power have them; only what has changed since the last call is set. */
function createFollower(setup: BenchSetup, { steelIn }: Connections): (path: FollowingPath, now: Conditions) => void {
  const cores = new Map<string, number>();
  let stages: StageConditions | null = null;
  return (path, now) => {
    for (const id in now.slugs) {
      const core = now.slugs[id]!.coreTurns;
      if (cores.get(id) === core) continue;
      cores.set(id, core);
      for (const v of slugElementValues(setup, id, core, steelIn === id)) path.setValue(v);
    }
    if (stages === null || !sameStages(stages, now.stages)) {
      stages = now.stages;
      for (const v of stageElementValues(setup, stages)) path.setValue(v);
    }
  };
}

type FollowingPath = Pick<SignalPath, 'setValue'>;

function createNoiseSolvers(setup: BenchSetup, connections: Connections, deck: Deck): NoiseSolvers {
  let noise: ReceiverNoise | null = null;
  const follow = createFollower(setup, connections);
  return {
    at(conditions, node, carrierVolts) {
      noise ??= createReceiverNoise(setup.receiver, deck);
      follow(noise.path, conditions);
      noise.stand(conditions.loads.map((load) => ({ ...load, carrierVolts: carrierVolts(load.node) })));
      return noise.at(node);
    },
  };
}

/** Beyond the bands of the sheet by this much either way. */
const SONG_MARGIN = 1.6;

function createSongSolvers(setup: BenchSetup, connections: Connections, deck: Deck): SongSolvers {
  const { responses, stages } = setup.receiver;
  const fromHz = Math.min(...responses.map(({ specification }) => specification.fromHz)) / SONG_MARGIN;
  const toHz = Math.max(...responses.map(({ specification }) => specification.toHz)) * SONG_MARGIN;
  const follow = createFollower(setup, connections);
  let finder: LimitCycleFinder | null | undefined;
  return {
    at(conditions) {
      if (finder === undefined)
        finder = createLimitCycleFinder(deck, new Map(stages.map((one) => [one.element, one.saturationVolts])));
      const loop = finder;
      if (loop === null) return null;
      follow({ setValue: ({ element, value }) => loop.setValue(element, value) }, conditions);
      loop.setLoads(conditions.loads.map(({ node, law }) => ({ node, admittance: law.admittance })));
      return loop.find(Math.max(LOWEST_HZ, fromHz), toHz);
    },
  };
}

function createSolverSet(setup: BenchSetup, connections: Connections, deck: Deck): SolverSet {
  const { receiver } = setup;
  const { rf } = connections;
  let path: SignalPath | null = null;
  const follow = createFollower(setup, connections);
  const drive = rf?.inject?.kind === 'deckSource' ? rf.inject.element : RF_SOURCE;
  const siemens = rf?.inject?.kind === 'deckSource' ? rf.inject.siemens : 1 / SOURCE_OHMS;
  const limiters = receiver.stages.filter((stage) => stage.limiter).map((stage) => stage.element);

  const behind = new Map<string, ReadonlySet<string>>();
  const stands = (limiter: string, node: string): boolean => {
    const nodes = behind.get(limiter) ?? nodesBehind(deck, limiter);
    behind.set(limiter, nodes);
    return nodes.has(nodeKey(node));
  };
  let left = new Float64Array(0);
  let gain = new Float64Array(0);
  let ofChange = new Float64Array(0);
  let count = 0;

  const begin = (): SignalPath => {
    const fresh = createSignalPath(receiver, deck);
    for (const stage of receiver.stages) fresh.setSaturation(stage.element, stage.saturationVolts);
    return fresh;
  };
  const ready = (): SignalPath => {
    if (path === null) throw new Error('a solver set must be solved before it is read');
    return path;
  };

  return {
    solve(hz, conditions) {
      path ??= begin();
      follow(path, conditions);
      path.setLoads(conditions.loads);
      count = hz.length;
      if (rf !== null) path.solve(hz, drive, siemens * conditions.sourceVolts, conditions.source, conditions.share);
    },
    solveChirped(hz, conditions, along, chirp) {
      if (rf === null) return null;
      path ??= begin();
      follow(path, conditions);
      path.setLoads(conditions.loads);
      const { share } = conditions;
      const level = share === null ? along : along.map((v, f) => v * share(hz[f]!));
      return path.solveChirped(hz, drive, siemens * conditions.sourceVolts, level, chirp);
    },
    magnitude: (node, out) => (rf === null ? out.fill(0) : ready().magnitude(node, out)),
    real: (node) => ready().real(node),
    imag: (node) => ready().imag(node),
    crestAt: (node) => (rf === null ? null : ready().crestAt(node)),
    hzAt: (node) => ready().hzAt(node),
    loneLoad: (node) => (rf === null ? null : ready().loneLoad(node)),
    oscillatorHz: () => ready().oscillatorHz(),
    quieting(node) {
      const before = rf === null ? [] : limiters.filter((limiter) => stands(limiter, node));
      if (before.length === 0) return null;
      if (left.length !== count) {
        left = new Float64Array(count);
        gain = new Float64Array(count);
        ofChange = new Float64Array(count);
      }
      left.fill(1);
      for (const limiter of before) {
        ready().stageGain(limiter, gain, ofChange);
        for (let i = 0; i < count; i++) left[i] = left[i]! * quietingOf(gain[i]!, ofChange[i]!);
      }
      return left;
    },
    compressionDb: (node) => (rf === null ? 0 : ready().compressionDb(limiters, node)),
  };
}

function sameStages(a: StageConditions, b: StageConditions): boolean {
  if (a.takenUp !== b.takenUp) return false;
  if (a.running !== b.running || a.bareAt !== b.bareAt || a.fineTuning !== b.fineTuning) return false;
  if (a.warmth.emission !== b.warmth.emission || a.warmth.chill !== b.warmth.chill) return false;
  for (const line in b.lineVolts) if (a.lineVolts[line] !== b.lineVolts[line]) return false;
  return true;
}
