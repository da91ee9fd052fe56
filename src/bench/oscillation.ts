/**
 * The set's own oscillator as a loose loop beside its coil has it: a carrier that stands there whatever the source does, and beats with whatever else comes
 * to the loop: the sweep as it goes by, a source that stands still, markers that are sent along the RF lead.
 *
 * With the oscillator's carrier A and another's B at the diode the envelope swings between A + B and A - B at |f - f_osc|. Diode load, lead and tube pass
 * that beat through one pole at 1 / (2 pi tau), so the sweep leaves a pip where it crosses f_osc, and a carrier that stands still a wave all along the
 * line: too fast to see far off, broad near by, at rest at zero beat. Phase of the crossing and how the pole follows it: physics/pip.ts.
 * Source: heterodyne beat of a strong and a weak carrier, any text (from memory). Not modelled: that a strong generator pulls the oscillator along (Adler,
 * Proc. IRE June 1946).
 */
import { nodeKey } from '../physics/deck.ts';
import { addPip, type PipShape, type PipSweep, pipShape } from '../physics/pip.ts';
import type { LocalOscillator } from '../receiver/receiver.ts';
import type { BenchState } from './benchState.ts';
import type { LineVolts } from './conditions.ts';
import type { Connections } from './connections.ts';
import { THROUGH_PER_DIV } from './instruments.ts';
import { keepLast } from './kept.ts';
import type { ActiveMarker } from './markers.ts';
import { type Moment, TRACE_POINTS } from './moment.ts';
import type { Observation } from './observation.ts';

export interface Oscillation {
  readonly hz: number;
  /** of its carrier at the loop, peak */
  readonly carrierVolts: number;
  /** what diode, lead and tube still pass of a beat */
  readonly halfWidthHz: number;
  readonly beats: readonly LoopBeat[];
  /** how far the beats together swing the line to either side as they are shown: one that is swept is over before the pole lets it rise to its full height */
  readonly shownVolts: number;
}

export interface LoopBeat {
  /** where the other carrier stands; null: it is swept */
  readonly hz: number | null;
  /** half of its swing at the Y input */
  readonly volts: number;
}

/** Share of the emission below which a valve does not keep an oscillation up. */
const STARTS_AT = 0.1;
/** Beats beyond this many widths are gone. */
const GONE = 40;

/** Null where the Y lead is not at the loop, or the oscillator does not run. `moment.full` must have been solved. */
export function oscillationAt(
  moment: Moment,
  lineVolts: LineVolts,
  observation: Observation,
  markers: readonly ActiveMarker[],
): Oscillation | null {
  const { connections, full, running, setup } = moment;
  const { oscillator } = setup.receiver;
  if (oscillator === undefined || !running || !atLoop(connections.y, oscillator)) return null;
  const conditions = moment.conditions(lineVolts);
  if (conditions.stages.warmth.emission < STARTS_AT) return null;
  const hz = full.solvers.oscillatorHz();
  if (hz === null) return null;
  const { detect, loadSeconds, leadSeconds, raw } = observation;
  const carrierVolts = oscillator.loopVolts;
  const halfWidthHz = 1 / (2 * Math.PI * (loadSeconds + leadSeconds));
  const swing = (other: number): number =>
    raw ? other : (detect(carrierVolts + other) - detect(Math.abs(carrierVolts - other))) / 2;
  const beats = othersAt(moment, oscillator, conditions.sourceVolts, markers).map((other) => ({
    ...other,
    volts: swing(other.volts),
  }));
  const shown = (beat: LoopBeat): number =>
    beat.hz === null ? beat.volts * sweptPeak(moment, hz, halfWidthHz) : waveVolts(beat, hz, halfWidthHz);
  return { hz, carrierVolts, halfWidthHz, beats, shownVolts: beats.reduce((sum, beat) => sum + shown(beat), 0) };
}

/** Share of the full swing that a sweep leaves where it crosses the oscillator, whatever the phase. */
function sweptPeak({ centreHz, state, sweepHz }: Moment, hz: number, halfWidthHz: number): number {
  const sweep: PipSweep = { centreHz, spanHz: state.controls.spanHz, mainsHz: sweepHz, points: TRACE_POINTS };
  const [forward] = pipShape(sweep, hz, halfWidthHz);
  let peak = 0;
  forward?.re.forEach((re, i) => {
    peak = Math.max(peak, Math.hypot(re, forward.im[i]!));
  });
  return peak;
}

/** Of a carrier that stands still: what the pole lets through, which is nothing far off. */
function waveVolts(beat: LoopBeat, hz: number, halfWidthHz: number): number {
  const beatHz = Math.abs((beat.hz ?? hz) - hz);
  return beatHz > GONE * halfWidthHz ? 0 : beat.volts / Math.hypot(1, beatHz / halfWidthHz);
}

/** Carriers that come along the RF lead, volts peak at the loop. */
function othersAt(
  { centreHz, connections: { rf }, state: { controls }, swept }: Moment,
  oscillator: LocalOscillator,
  sourceVolts: number,
  markers: readonly ActiveMarker[],
): readonly LoopBeat[] {
  if (!atLoop(rf, oscillator) || rf?.inject?.kind !== 'deckSource' || controls.sourceMode === 'video') return [];
  const volts = rf.inject.siemens * sourceVolts * oscillator.loopOhms;
  const sent = controls.markerRoute === 'through' ? markers : [];
  return [
    { hz: swept ? null : centreHz, volts },
    ...sent.map(({ trueHz, share }) => ({
      hz: trueHz,
      volts: THROUGH_PER_DIV * controls.pipHeightDiv * share * volts,
    })),
  ];
}

function atLoop(point: Connections['y'], { node }: LocalOscillator): boolean {
  return point?.looseLoop === true && point.node !== null && nodeKey(point.node) === nodeKey(node);
}

/** Slides by an odd share of a turn each second, as the pips of the rack do. */
const TURNS_A_SECOND = 2.3;
export const SLIDES_ROUND_SECONDS = 1 / TURNS_A_SECOND;

/** Adds the beats to a whole period at the Y input. `sweep`: null while the source stands still. */
export function createLoopBeats(): (
  y: Float64Array,
  oscillation: Oscillation,
  sweep: PipSweep | null,
  sweepHz: number,
  state: Pick<BenchState, 'controls' | 'seconds'>,
) => void {
  let swept = new Float64Array(0);
  const shapeOf = keepLast(
    ({ centreHz, spanHz, mainsHz, points }: PipSweep, hz: number, width: number) => [
      ...[centreHz, spanHz, mainsHz, points],
      ...[hz, width],
    ],
    (sweep, hz, width): PipShape => pipShape(sweep, hz, width),
  );
  return (y, { hz, halfWidthHz, beats }, sweep, sweepHz, { controls, seconds }) => {
    for (const beat of beats) {
      if (beat.hz !== null) {
        addWave(y, waveVolts(beat, hz, halfWidthHz), Math.abs(beat.hz - hz), seconds, sweepHz);
        continue;
      }
      if (sweep === null) continue;
      if (swept.length !== y.length) swept = new Float64Array(y.length);
      swept.fill(0);
      addPip(swept, shapeOf(sweep, hz, halfWidthHz), beat.volts, 2 * Math.PI * ((TURNS_A_SECOND * seconds) % 1));
      // The oscillator goes on through a blanked retrace, alone.
      const lit = controls.blanking ? y.length / 2 : y.length;
      for (let i = 0; i < lit; i++) y[i] = y[i]! + swept[i]!;
    }
  };
}

/** Waves to a sample from which on points no longer follow them: a note of as many waves as there are points would stand still like zero beat. */
const MOST_WAVES = 1 / 4;
/** Turns from point to point that come round to no figure: the points fill the band that the eye sees of so quick a wave. */
const FILLING_TURNS = (Math.sqrt(5) - 1) / 2;

function addWave(y: Float64Array, size: number, beatHz: number, seconds: number, sweepHz: number): void {
  if (size === 0) return;
  const start = (beatHz * seconds) % 1;
  const waves = beatHz / (sweepHz * y.length);
  const turns = waves > MOST_WAVES ? FILLING_TURNS : waves;
  for (let i = 0; i < y.length; i++) y[i] = y[i]! + size * Math.cos(2 * Math.PI * (start + turns * i));
}
