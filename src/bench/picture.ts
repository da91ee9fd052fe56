/**
 * From the state of the bench to volts at the tube's Y input over one period of the sweep: bias lines, circuit, markers that go through it, detector, lead.
 *
 * The carrier's envelope at the node (envelopes.ts) has every stage saturating by its describing function; then the diode's law, its load's time constant,
 * lead and tube. Blanking takes the carrier away in the retrace.
 */
import type { LimitCycle } from '../physics/limitCycle.ts';
import type { PipSweep } from '../physics/pip.ts';
import { NO_NOISE } from '../receiver/receiverNoise.ts';
import type { BenchState, Controls } from './benchState.ts';
import { lineVoltsAt } from './biasLine.ts';
import type { LineVolts } from './conditions.ts';
import { CONTROL_ROWS } from './controls/rows.ts';
import { createDetection, hurries, observedAt } from './detection.ts';
import { createEnvelopes } from './envelopes.ts';
import type { FaultBook } from './faultsNow.ts';
import { createGhost } from './ghost.ts';
import { type Grass, grassOf, liftRaw, noiseAt, noisyDiode, quietingAt, withNoise } from './grass.ts';
import { warmthOf } from './heat.ts';
import { createHum } from './hum.ts';
import { keepLast } from './kept.ts';
import { type ActiveMarker, activeMarkers } from './markers.ts';
import { createMeter } from './meter.ts';
import { createMoments, type Moment, TRACE_POINTS } from './moment.ts';
import { type Observation, observe, rawShare } from './observation.ts';
import { type Oscillation, oscillationAt } from './oscillation.ts';
import type { BenchSetup } from './setup.ts';
import { besideSong, joinSong, singingAt, songBeat } from './singing.ts';
import { type ThroughMarkers, throughMarkers, withMarkers } from './throughMarkers.ts';
import { createTone, type Tone } from './tone.ts';

/** Its arrays are used again for the next picture. */
export interface Picture {
  readonly running: boolean;
  /** null while the source stands still */
  readonly sweep: PipSweep | null;
  readonly sweepHz: number;
  readonly rfConnected: boolean;
  readonly observation: Observation | null;
  readonly markers: readonly ActiveMarker[];
  readonly through: ThroughMarkers | null;
  /** the set's own oscillator, where the Y lead is at its loop and it runs; its beats are the tube's business, as pips are */
  readonly oscillation: Oscillation | null;
  /** of a set that sings, as the Y lead has it; the tube's business alone */
  readonly song: Oscillation | null;
  /** largest carrier (volts peak) of the source at the observed node, without markers; of an FM detector, at the larger of its two */
  readonly peakCarrierVolts: number;
  /** largest of the volts below, without sign */
  readonly peakVolts: number;
  /** at the tube's Y input, a whole period: detected volts with their sign, or the carrier's envelope for the raw input; without pips, hum and noise */
  readonly volts: Float64Array;
  /** the same with the source's harmonic, with hum on the gain and with what the receiver's noise adds on the average; and how far it strays. The tube's business: facts read `volts` */
  readonly shownVolts: Float64Array;
  readonly grass: Grass | null;
  readonly lineVolts: LineVolts;
  readonly compressionDb: number;
  /** see envelopes.ts */
  readonly sweepLag: number;
  readonly meterVolts: number;
  /** null unless the source sends one */
  readonly tone: Tone | null;
}

export function createPictureMaker(whole: BenchSetup, faults: FaultBook): (state: BenchState) => Picture {
  const momentOf = createMoments(whole, faults);
  const envelopeOf = createEnvelopes();
  const detection = createDetection(2 * TRACE_POINTS);
  const meterOf = createMeter();
  const toneOf = createTone();
  const ghost = createGhost();
  const hum = createHum(whole.scenario);
  const volts = new Float64Array(2 * TRACE_POINTS);
  const minus = new Float64Array(2 * TRACE_POINTS);
  const shownVolts = new Float64Array(2 * TRACE_POINTS);
  const shownMinus = new Float64Array(2 * TRACE_POINTS);
  const stray = new Float64Array(2 * TRACE_POINTS);
  const markersOf = keepLast(
    ({ controls, crystals }: BenchState) => [controls, crystals],
    (state) => activeMarkers(whole, state),
  );

  const draw = (state: BenchState): Picture => {
    const moment = momentOf(state);
    const { setup, connections, full, running, swept, sweepHz } = moment;
    const { controls } = state;
    const seen = observe(setup, state, connections);
    const lineVolts = lineVoltsAt(moment);
    const fed = connections.rf !== null;
    const cycle = singingAt(moment, lineVolts);
    const beside = cycle === null ? moment : besideSong(moment, cycle);
    if (cycle !== null) full.solvers.solve(full.hz, beside.conditions(lineVolts));
    const sungMeterVolts = cycle === null ? null : meterOf(beside, lineVolts, cycle);
    full.solvers.solve(full.hz, moment.conditions(lineVolts));
    const observation = seen === null ? null : observedAt(moment, seen);
    const compressionDb = fed && running ? full.solvers.compressionDb(observation?.node) : 0;
    const meterVolts = sungMeterVolts ?? meterOf(moment, lineVolts, null);
    let sweepLag = 0;
    let hurried = false;
    if (observation === null) volts.fill(0);
    else {
      const found = envelopeOf(moment, lineVolts, observation.node, volts);
      sweepLag = found.lag;
      hurried = hurries(found.mode, observation, moment);
      if (observation.minusNode !== null) {
        sweepLag = Math.max(sweepLag, envelopeOf(moment, lineVolts, observation.minusNode, minus).lag);
      }
    }
    const peakCarrierVolts = largest(volts, observation?.minusNode != null ? minus : null);
    const tone = controls.sourceMode === 'tone' && observation !== null ? toneOf(moment, lineVolts, observation) : null;

    const markers = markersOf(state);
    const oscillation = observation === null ? null : oscillationAt(moment, lineVolts, observation, markers);
    // What else the loop picks up is small against the oscillator, and beats with it instead.
    if (oscillation !== null) volts.fill(oscillation.carrierVolts);
    const listens = observation !== null && oscillation === null;
    // Both before the markers, which share the carrier's solver while the sweep stands still.
    const noise = listens ? noiseAt(moment, lineVolts, observation) : NO_NOISE;
    const quieting = listens ? quietingAt(moment, observation) : null;
    const sent = listens && fed && controls.markerRoute === 'through';
    const through = sent
      ? throughMarkers(markers, controls.pipHeightDiv, observation, moment.circuit.spots, moment.conditions(lineVolts))
      : null;
    let grass: Grass | null = null;
    let song: Oscillation | null = null;
    if (observation === null) shownVolts.fill(0);
    else {
      addMarkers(volts, minus, observation, through);
      const peak = Math.max(peakCarrierVolts, through?.carrierVolts ?? 0);
      if (cycle !== null && listens) {
        toInput(volts, minus, moment, observation, hurried);
        song = sing(beside, lineVolts, observation, cycle);
      } else {
        const noisy = noisyDiode(observation, noise, peak, quieting);
        shownVolts.set(volts);
        shownMinus.set(minus);
        const conditions = moment.conditions(lineVolts);
        const ghosts = listens && ghost(moment, conditions, observation.node, shownVolts);
        const second = observation.minusNode === null ? null : shownMinus;
        const carriers = [{ node: observation.node, carriers: shownVolts }];
        if (observation.minusNode !== null) {
          if (ghosts) ghost(moment, conditions, observation.minusNode, shownMinus);
          carriers.push({ node: observation.minusNode, carriers: shownMinus });
        }
        const hums = (listens && hum(moment, lineVolts, carriers)) || ghosts;
        if (noisy !== null) {
          const stepSeconds = 1 / (moment.sweepHz * volts.length);
          grass = grassOf(observation, noise, noisy, shownVolts, second, stepSeconds, stray);
          if (observation.raw) liftRaw(shownVolts, noisy);
        }
        if (hums || noisy !== null) toInput(shownVolts, shownMinus, moment, withNoise(observation, noisy), hurried);
        toInput(volts, minus, moment, observation, hurried);
        if (!hums && noisy === null) shownVolts.set(volts);
      }
    }
    return {
      running,
      sweep: swept ? sweepOf(moment) : null,
      sweepHz,
      rfConnected: fed,
      observation,
      markers,
      through,
      oscillation,
      song,
      peakCarrierVolts,
      peakVolts: largest(volts, null),
      volts,
      shownVolts,
      grass,
      lineVolts,
      compressionDb,
      sweepLag: oscillation === null ? sweepLag : 0,
      meterVolts,
      tone,
    };
  };

  const parts = partsDrawn(whole);
  return keepLast((state) => [...parts(state), faults(state)], draw);

  /** What the tube shows of a set that sings. */
  function sing(beside: Moment, lineVolts: LineVolts, observation: Observation, cycle: LimitCycle): Oscillation {
    beside.full.solvers.solve(beside.full.hz, beside.conditions(lineVolts));
    const { mode } = envelopeOf(beside, lineVolts, observation.node, shownVolts);
    if (observation.minusNode !== null) envelopeOf(beside, lineVolts, observation.minusNode, shownMinus);
    const song = songBeat(beside, cycle, observation, shownVolts, shownMinus);
    joinSong(shownVolts, cycle.volts(observation.node));
    if (observation.minusNode !== null) joinSong(shownMinus, cycle.volts(observation.minusNode));
    toInput(shownVolts, shownMinus, beside, observation, hurries(mode, observation, beside));
    return song;
  }

  /** Markers sent through the set join the carriers, in place. */
  function addMarkers(
    plus: Float64Array,
    other: Float64Array,
    observation: Observation,
    through: ThroughMarkers | null,
  ): void {
    const markerVolts = through?.carrierVolts ?? 0;
    if (markerVolts <= 0) return;
    for (let i = 0; i < plus.length; i++) plus[i] = withMarkers(plus[i]!, markerVolts);
    if (observation.minusNode === null) return;
    const minusVolts = through?.minusCarrierVolts ?? 0;
    for (let i = 0; i < other.length; i++) other[i] = withMarkers(other[i]!, minusVolts);
  }

  /** Carriers become volts at the Y input, in place. */
  function toInput(
    plus: Float64Array,
    other: Float64Array,
    moment: Moment,
    observation: Observation,
    hurried: boolean,
  ): void {
    if (observation.raw) {
      const { connections, full, swept } = moment;
      for (let i = 0; i < plus.length; i++) {
        const at = i < TRACE_POINTS ? i : 2 * TRACE_POINTS - 1 - i;
        plus[i] = plus[i]! * rawShare(connections, full.hz[swept ? at : 0]!);
      }
      return;
    }
    detection.detect(observation, plus, other, 1 / moment.sweepHz, hurried);
  }
}

function sweepOf({ state, centreHz, sweepHz }: Moment): PipSweep {
  return { centreHz, spanHz: state.controls.spanHz, mainsHz: sweepHz, points: TRACE_POINTS };
}

/** Knobs of the tube itself, which only the face reads (and the height of pips that are added there). */
const FACE_ONLY: readonly string[] = [
  'phasingDegrees',
  'mirror',
  'pipHeightDiv',
  'yVoltsPerDiv',
  'yPositionDiv',
  'xGain',
  'xPositionDiv',
  'yCoupling',
  'yInvert',
  'focus',
  'brightness',
  'phosphor',
] satisfies readonly (keyof Controls)[];
const DRAWN_CONTROLS = (Object.keys(CONTROL_ROWS) as (keyof Controls)[]).filter((id) => !FACE_ONLY.includes(id));

/** Everything that a picture depends on: once the set is warm, time and proofs may pass without a new picture. */
function partsDrawn(setup: BenchSetup): (state: BenchState) => readonly unknown[] {
  return (state) => {
    const { controls, slugs, leads, crystals, replaced, bridged, tool, toolIn, powered } = state;
    const { emission, chill } = warmthOf(setup, state);
    const pips = controls.markerRoute === 'through' ? controls.pipHeightDiv : 0;
    const parts: unknown[] = [slugs, leads, crystals, replaced, bridged, tool, toolIn, powered, emission, chill, pips];
    for (const control of DRAWN_CONTROLS) parts.push(controls[control]);
    return parts;
  };
}

function largest(samples: Float64Array, more: Float64Array | null): number {
  let most = 0;
  for (let i = 0; i < samples.length; i++) most = Math.max(most, Math.abs(samples[i]!));
  if (more !== null) for (let i = 0; i < more.length; i++) most = Math.max(most, Math.abs(more[i]!));
  return most;
}
