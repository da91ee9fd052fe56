/**
 * The bench at one moment, made ready for solving: which circuit, fed how strongly, at which frequencies.
 *
 * The centre dial has an error of its own (the scenario's): everything that is true uses the true centre. A slow sweep runs at an eighth of the mains.
 * An unterminated or unearthed lead makes the level depend on frequency (instruments.ts).
 */
import { sweepFrequencies } from '../physics/sweep.ts';
import type { FaultEffects } from '../receiver/faults/faultEffects.ts';
import { PLAIN_SWEEP, type SourceKind } from '../receiver/signalPath.ts';
import { LOWEST_HZ, VIDEO_DEPTH } from '../receiver/sourceLevel.ts';
import type { BenchState } from './benchState.ts';
import { type Circuit, type Conditions, createCircuit, type SolverSet } from './circuit.ts';
import { type LineVolts, stageConditions } from './conditions.ts';
import { type Connections, connectionKey, connectionsOf } from './connections.ts';
import type { FaultBook, FaultsNow } from './faultsNow.ts';
import { leadFactor, SLOW_SWEEP_DIVISOR } from './instruments.ts';
import { keepByKey, keepLast } from './kept.ts';
import { loadsNow } from './loads.ts';
import type { BenchSetup } from './setup.ts';
import { createSweepSource, type SweepSource } from './sweepSource.ts';

/** Samples of the forward half; the retrace has as many. */
export const TRACE_POINTS = 1024;
const THIN_POINTS = 128;
/** With a hand now at this slug and now at that one, each of which is a circuit of its own. */
const MOST_CIRCUITS = 16;

/** A run of the source over its frequencies, and the solver that follows it. With the sweep standing still, one frequency. */
export interface Scan {
  readonly solvers: SolverSet;
  readonly hz: Float64Array;
}

export interface Moment {
  /** receiver and deck with what has failed in them */
  readonly setup: BenchSetup;
  /** what is wrong with the bias lines */
  readonly lineFaults: FaultEffects['lines'];
  readonly state: BenchState;
  readonly connections: Connections;
  readonly circuit: Circuit;
  /** the set has power, or needs none */
  readonly running: boolean;
  readonly swept: boolean;
  /** where the sweep's centre really is */
  readonly centreHz: number;
  /** periods of the sweep a second */
  readonly sweepHz: number;
  /** second harmonic of the source over its fundamental */
  readonly harmonic: number;
  readonly full: Scan;
  /** as `full`, thinner: good enough for an average */
  readonly thin: Scan;
  /** `relative` scales the source: the crest of a modulated carrier is 1.3 */
  conditions(lineVolts: LineVolts, relative?: number): Conditions;
}

/** `state` as it really is (`really` in faultsNow.ts). */
export function createMoments(whole: BenchSetup, faults: FaultBook): (state: BenchState) => Moment {
  const circuits = keepByKey<Circuit>(MOST_CIRCUITS);
  const fullHz = new Float64Array(TRACE_POINTS);
  const thinHz = new Float64Array(THIN_POINTS);
  const spotHz = new Float64Array(1);
  const sweepSource = createSweepSource(whole.scenario);
  const fillScans = keepLast(
    (centreHz: number, spanHz: number) => [centreHz, spanHz],
    (centreHz, spanHz) => {
      fillSweep(centreHz, spanHz, fullHz);
      fillSweep(centreHz, spanHz, thinHz);
    },
  );

  const circuitFor = (connections: Connections, now: FaultsNow): Circuit =>
    circuits(`${now.key}#${connectionKey(connections)}`, () => createCircuit(now.setup, connections));

  return (state) => {
    const { controls, leads, slugs } = state;
    const now = faults(state);
    const { setup } = now;
    const connections = connectionsOf(setup, state);
    const circuit = circuitFor(connections, now);
    const swept = isSwept(state);
    const centreHz = trueCentreHz(setup, state);
    if (swept) fillScans(centreHz, controls.spanHz);
    else spotHz[0] = centreHz;
    const spot: Scan = { solvers: circuit.spots, hz: spotHz };

    const share = levelShare(connections, controls.rfTerminated, leads.earth !== null, sweepSource.evenness);
    const centreShare = share(centreHz);
    const even = controls.rfTerminated && leads.earth !== null && sweepSource.evenness === null;
    const drive = sweepSource.volts(controls.levelDb) * centreShare;
    const relativeShare = even ? null : (hz: number) => share(hz) / centreShare;
    const source = sourceOf(state);
    const loads = loadsNow(setup, state, connections);
    return {
      setup,
      lineFaults: now.effects.lines,
      state,
      connections,
      circuit,
      running: whole.receiver.mains === null || state.powered,
      swept,
      centreHz,
      sweepHz: sweepRateHz(setup, state),
      harmonic: sweepSource.harmonic,
      full: swept ? { solvers: circuit.sweep, hz: fullHz } : spot,
      thin: swept ? { solvers: circuit.thin, hz: thinHz } : spot,
      conditions: (lineVolts, relative = 1) => ({
        slugs,
        stages: stageConditions(setup, state, connections, lineVolts),
        sourceVolts: drive * relative,
        share: relativeShare,
        source,
        loads,
      }),
    };
  };
}

/** The source moves over a span: a plain sweep, or a video sweep on its carrier. */
export function isSwept({ controls }: BenchState): boolean {
  return (controls.sourceMode === 'sweep' || controls.sourceMode === 'video') && controls.spanHz > 0;
}

export function trueCentreHz({ scenario }: BenchSetup, { controls }: BenchState): number {
  return Math.max(LOWEST_HZ, controls.centreHz + (scenario.bench.centreErrorHz ?? 0));
}

function sweepRateHz({ scenario }: BenchSetup, { controls }: BenchState): number {
  return controls.slowSweep ? scenario.bench.mainsHz / SLOW_SWEEP_DIVISOR : scenario.bench.mainsHz;
}

function sourceOf({ controls }: BenchState): SourceKind {
  if (controls.sourceMode !== 'video') return PLAIN_SWEEP;
  return { kind: 'video', carrierHz: controls.carrierHz, depth: VIDEO_DEPTH };
}

/**
 * Carrier volts at a node of a solved scan; a scan that stands still fills `out` with its one value. All zero where no RF lead is on.
 */
export function carrierAt(moment: Moment, { solvers }: Scan, node: string, out: Float64Array): void {
  if (moment.connections.rf === null) {
    out.fill(0);
    return;
  }
  if (!moment.swept) {
    out.fill(solvers.magnitude(node, new Float64Array(1))[0]!);
    return;
  }
  solvers.magnitude(node, out);
}

/** Where the carrier at a node stands while a solved scan goes through its frequencies: behind a mixer elsewhere than the source, under a video sweep all the while at one. */
export function frequenciesAt({ connections }: Moment, { solvers, hz }: Scan, node: string): Float64Array {
  return (connections.rf === null ? null : solvers.hzAt(node)) ?? hz;
}

/** Mean of a detector over the sweep's period, without sign: nothing comes in a blanked retrace. `hz`: see `frequenciesAt`. */
export function meanDetected(
  moment: Moment,
  carrier: Float64Array,
  hz: Float64Array,
  detect: (volts: number, hz: number) => number,
): number {
  let sum = 0;
  for (let i = 0; i < carrier.length; i++) sum += detect(carrier[i]!, hz[hz.length === 1 ? 0 : i]!);
  return (sum / carrier.length) * (moment.state.controls.blanking ? 0.5 : 1);
}

function levelShare(
  { rf }: Connections,
  terminated: boolean,
  earthed: boolean,
  evenness: SweepSource['evenness'],
): (hz: number) => number {
  // On a node the missing termination is missing from the network, which doubles the level by itself.
  const already = rf?.inject?.kind === 'node' && !terminated ? 2 : 1;
  const lead = (hz: number): number => leadFactor(hz, terminated, earthed) / already;
  return evenness === null ? lead : (hz) => lead(hz) * evenness(hz);
}

function fillSweep(centreHz: number, spanHz: number, out: Float64Array): void {
  sweepFrequencies(centreHz, spanHz, out.length, out);
  for (let i = 0; i < out.length && out[i]! < LOWEST_HZ; i++) out[i] = LOWEST_HZ;
}
