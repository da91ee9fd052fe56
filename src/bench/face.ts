/**
 * The face of the tube: the picture's volts with pips, hum, noise and tone, coupled, amplified and set against the X drive.
 *
 *   y = gain * couple(volts + the set's noise + hum + the tube's own noise) + position + added pips,   x = 5 gain sin(theta + p) + position
 * p is the bench's own lag plus the phasing control; mirror and a swapped X lead each turn x round. AC coupling is a high-pass at 2 Hz in its
 * periodic steady state, so it takes the mean away. The beam spends the same time on each point.
 * Raw input: a carrier far faster than the sweep fills +-A(t); the points go from edge to edge.
 * Spot and tone: the level stands still while X goes on sweeping, so the trace is a straight line, or the tone's wave across it.
 */
import { seededRandom } from '../base/random.ts';
import { clamp } from '../base/rounding.ts';
import { periodicHighPass } from '../physics/onePole.ts';
import { sweepAngle, xDrive, xOfFrequency } from '../physics/sweep.ts';
import { lifeOf } from '../scenario/life.ts';
import type { BenchState } from './benchState.ts';
import { divFor, divPerVolt, xSense } from './deflection.ts';
import type { MarkerTag } from './display.ts';
import type { Grass } from './grass.ts';
import {
  AC_COUPLING_HZ,
  DEFLECTION_LIMIT_DIV,
  HALF_WIDTH_DIV,
  HUM_RADIANS,
  HUM_SECOND_SHARE,
  NOISE_VOLTS,
  TONE_HZ,
} from './instruments.ts';
import { keepByKey, keepLast } from './kept.ts';
import { beatRadians, createPipStore } from './markers.ts';
import { TRACE_POINTS } from './moment.ts';
import { createLoopBeats } from './oscillation.ts';
import type { Picture } from './picture.ts';
import type { BenchSetup } from './setup.ts';

const COUNT = 2 * TRACE_POINTS;

export interface Face {
  /** x, y, energy for each point; used again for the next face */
  readonly data: Float32Array;
  readonly count: number;
  /** lowest and highest of the trace without pips, noise included, divisions */
  readonly lowDiv: number;
  readonly highDiv: number;
  /** hum from edge to edge, divisions */
  readonly humDiv: number;
  readonly grassDiv: number;
}

export function createFace(setup: BenchSetup): (state: BenchState, picture: Picture) => Face {
  const { strapHumVolts } = lifeOf(setup.scenario);
  const signal = createSignal(setup);
  const pips = new Float64Array(COUNT);
  const x = new Float64Array(COUNT);
  const data = new Float32Array(3 * COUNT);
  const pipStore = createPipStore();
  const drive = keepLast(
    (phase: number) => [phase],
    (phase) => xDrive(TRACE_POINTS, phase, x),
  );
  // The places and the light stay from face to face while nobody touches their knobs: only the heights are written anew.
  const writeAcross = keepLast(
    (phase: number, across: number, positionDiv: number, energy: number) => [phase, across, positionDiv, energy],
    (phase, across, positionDiv, energy) => {
      drive(phase);
      for (let i = 0; i < COUNT; i++) {
        data[3 * i] = deflection(across * x[i]! + positionDiv);
        data[3 * i + 2] = energy;
      }
    },
  );
  const grassOf = keepLast(
    (picture: Picture) => [picture],
    ({ grass }) => largest(grass),
  );

  return (state, picture) => {
    const { controls, leads } = state;
    const y = signal(state, picture);
    const pipped = writePips(pips, picture, state, pipStore);

    const perVolt = divPerVolt(setup, controls);
    const perPip = picture.through === null ? 1 : perVolt;
    const across = leads.x === null ? 0 : xSense(setup, state) * HALF_WIDTH_DIV * controls.xGain;
    writeAcross(phaseRadians(setup, state), across, controls.xPositionDiv, controls.brightness / COUNT);
    const positionDiv = controls.yPositionDiv;
    let lowDiv = Number.POSITIVE_INFINITY;
    let highDiv = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < COUNT; i++) {
      const plain = y[i]! * perVolt + positionDiv;
      if (plain < lowDiv) lowDiv = plain;
      if (plain > highDiv) highDiv = plain;
      data[3 * i + 1] = deflection(pipped ? plain + pips[i]! * perPip : plain);
    }
    const humDiv = isHumming(state) ? divFor(2 * strapHumVolts, setup, controls) : 0;
    const grassDiv = leads.y === null ? 0 : divFor(grassOf(picture), setup, controls);
    return { data, count: COUNT, lowDiv, highDiv, humDiv, grassDiv };
  };
}

/** Volts at the Y amplifier over a whole period: the picture with tone, hum and noise, coupled. */
function createSignal({ scenario }: BenchSetup): (state: BenchState, picture: Picture) => Float64Array {
  const y = new Float64Array(COUNT);
  const low = new Float64Array(COUNT);
  const noise = noiseTable(scenario.seed).map((v) => NOISE_VOLTS * v);
  const hum = humTable(lifeOf(scenario).strapHumVolts);
  const addLoopBeats = createLoopBeats();
  let table: Float64Array | null = null;
  // Made when first needed: most of a certifier's benches are never looked at.
  const chance = (): Float64Array => {
    table ??= noiseTable(scenario.seed + 1, GRASS_COUNT);
    return table;
  };

  return (state, picture) => {
    const { controls, seconds } = state;
    if (controls.sourceMode === 'tone') writeTone(y, picture, seconds, controls.blanking);
    else y.set(picture.shownVolts);
    const sweeps = Math.floor(seconds * picture.sweepHz);
    const { sweep, sweepHz } = picture;
    const carrier = picture.oscillation ?? picture.song;
    if (carrier !== null) addLoopBeats(y, carrier, sweep, sweepHz, state);
    if (picture.grass !== null) addGrass(y, picture.grass, chance(), sweeps);
    // The carrier is far faster than the sweep: from point to point it is anywhere between its edges.
    if (picture.observation?.raw === true) for (let i = 1; i < COUNT; i += 2) y[i] = -y[i]!;
    const humming = isHumming(state);
    const from = Math.floor(((seconds * picture.sweepHz * 0.618) % 1) * COUNT);
    // A slow sweep has several waves of hum in it.
    const waves = Math.round(scenario.bench.mainsHz / picture.sweepHz);
    // Places in the tables are counted up and wrapped at the end: a division for each point costs more than all the rest.
    for (let i = 0, at = from; i < COUNT; i++) {
      y[i] = y[i]! + noise[at]!;
      if (++at === COUNT) at = 0;
    }
    if (humming) for (let i = 0; i < COUNT; i++) y[i] = y[i]! + hum[(i * waves) % COUNT]!;
    if (controls.yCoupling === 'AC') {
      periodicHighPass(y, 1 / (2 * Math.PI * AC_COUPLING_HZ), 1 / picture.sweepHz, y, low);
    }
    return y;
  };
}

function largest(grass: Grass | null): number {
  let most = 0;
  if (grass !== null) for (const v of grass.strayVolts) most = Math.max(most, v);
  return most;
}

function isHumming({ leads }: BenchState): boolean {
  return leads.y !== null && leads.earth === null;
}

function deflection(div: number): number {
  return clamp(div, -DEFLECTION_LIMIT_DIV, DEFLECTION_LIMIT_DIV);
}

/** Where each marker's pip stands on the trace, divisions from the centre; null off the sweep. */
export function markerTags(setup: BenchSetup, state: BenchState, picture: Picture): MarkerTag[] {
  const { controls, leads } = state;
  const across = xSense(setup, state) * HALF_WIDTH_DIV * controls.xGain;
  const phase = phaseRadians(setup, state);
  return picture.markers.flatMap(({ saysHz, trueHz, kind, number }): MarkerTag[] => {
    // A crystal that nobody plugged in has no number on the lip.
    if (kind === 'harmonic') return [];
    const at = picture.sweep === null ? 2 : xOfFrequency(trueHz, picture.sweep.centreHz, controls.spanHz);
    const swept = Math.abs(at) <= 1 && leads.x !== null;
    const xDiv = swept ? across * Math.sin(Math.asin(at) + phase) + controls.xPositionDiv : null;
    return [{ hz: saysHz, number, kind, xDiv }];
  });
}

/** The bench's own lag plus the phasing control. */
export function phaseRadians({ scenario }: BenchSetup, { controls }: BenchState): number {
  return ((scenario.bench.phaseLagDegrees + controls.phasingDegrees) * Math.PI) / 180;
}

function writeTone(
  y: Float64Array,
  { tone, observation, volts, sweepHz }: Picture,
  seconds: number,
  blanked: boolean,
): void {
  if (tone === null || observation === null) {
    y.fill(0);
    return;
  }
  const lit = blanked ? TRACE_POINTS : COUNT;
  const start = (TONE_HZ * seconds) % 1;
  y.set(volts);
  for (let i = 0; i < lit; i++) {
    const turns = start + (TONE_HZ * i) / (sweepHz * COUNT);
    y[i] = tone.at(Math.sin(2 * Math.PI * turns));
  }
}

/** True where there is any pip. Added ones are in divisions from edge to edge, those sent through the set in volts. */
function writePips(
  pips: Float64Array,
  { sweep, markers, through, observation, rfConnected }: Picture,
  { controls, seconds }: BenchState,
  store: ReturnType<typeof createPipStore>,
): boolean {
  const sent = controls.markerRoute === 'through';
  if (sweep === null || markers.length === 0 || controls.pipHeightDiv === 0) return false;
  if (sent && (through === null || observation === null || !rfConnected)) return false;
  pips.fill(0);
  for (const [i, marker] of markers.entries()) {
    const amplitude = through === null ? (controls.pipHeightDiv / 2) * marker.share : through.beatVolts[i]!;
    store.add(pips, sweep, marker, amplitude, beatRadians(marker, i, seconds));
  }
  if (controls.blanking) pips.fill(0, TRACE_POINTS);
  return true;
}

function humTable(volts: number): Float64Array {
  return Float64Array.from({ length: COUNT }, (_, i) => {
    const angle = sweepAngle(i, TRACE_POINTS);
    return volts * Math.sin(angle + HUM_RADIANS) + volts * HUM_SECOND_SHARE * Math.sin(2 * angle);
  });
}

/** Noise that is kept for the set's own: a prime, so that no two sweeps of some minutes have the same. */
const GRASS_COUNT = 16_381;
const GRASS_STEP = 6_271;

/** The set's own noise: behind the poles of load and lead a sample keeps part of the one before it (a first-order chain with the same spread). */
function addGrass(y: Float64Array, { strayVolts, memory }: Grass, table: Float64Array, sweeps: number): void {
  const from = (sweeps * GRASS_STEP) % GRASS_COUNT;
  const fresh = Math.sqrt(1 - memory * memory);
  let kept = table[from]!;
  for (let i = 0, at = from; i < COUNT; i++) {
    kept = memory * kept + fresh * table[at]!;
    y[i] = y[i]! + strayVolts[i]! * kept;
    if (++at === GRASS_COUNT) at = 0;
  }
}

/** Near enough to a normal distribution: the sum of twelve uniform numbers, less six. */
function noiseTable(seed: number, length = COUNT): Readonly<Float64Array> {
  return noiseTables(`${seed} ${length}`, () => {
    const chance = seededRandom(seed);
    return Float64Array.from({ length }, () => {
      let sum = -6;
      for (let i = 0; i < 12; i++) sum += chance();
      return sum;
    });
  });
}

/** A scenario has one seed and often many benches: those of a fault chart, and of the cures that are tried. */
const noiseTables = keepByKey<Float64Array>(8);
