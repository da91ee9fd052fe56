/**
 * The markers that are switched on, and their pips.
 *
 * Added after detection: the sweep's sample beats with each crystal and the beat is laid on the trace, its height in divisions. The rack's low-pass follows
 * the span: 0.6 per cent of it, or 0.7 of the square root of the sweep rate where that is more, below which a beat cannot follow; the comb's teeth always
 * have the narrower. Its first section is physics/pip.ts; a second, equal one is taken at the beat's own frequency d, as 1 / sqrt(1 + (d / Bp)^2), so that
 * neighbouring pips leave the curve between them clean. The sample is the sweep itself, so a blanked retrace has no pips. The beat's phase slides from
 * sweep to sweep.
 * Comb: every harmonic of the rack's 1 MHz crystal, or of its division to 100 or 10 kHz when the span holds fewer than four; half as high.
 * Harmonics of a crystal: the n-th is as 2 / n of the second (common practice, no source); the sweep meets them like any other signal of the rack.
 * Tunable: its true frequency is the dial's plus the dial's own error and the trim.
 */
import { addPip, type PipShape, type PipSweep, pipShape } from '../physics/pip.ts';
import { rateHzPerSecond, sweepAngle } from '../physics/sweep.ts';
import { LOWEST_HZ } from '../receiver/sourceLevel.ts';
import { lifeOf } from '../scenario/life.ts';
import type { BenchState } from './benchState.ts';
import { keepByKey, keepLast } from './kept.ts';
import { trueCentreHz } from './moment.ts';
import type { BenchSetup } from './setup.ts';

export interface ActiveMarker {
  /** what it says on the crystal or the dial */
  readonly saysHz: number;
  readonly trueHz: number;
  readonly kind: 'crystal' | 'tunable' | 'comb' | 'harmonic';
  readonly number: number | null;
  /** share of the pip height */
  readonly share: number;
}

/** In order of frequency within each kind: crystals, tunable, comb, harmonics of the crystals. Comb and harmonics are limited to what the sweep reaches. */
export function activeMarkers(setup: BenchSetup, state: BenchState): ActiveMarker[] {
  const { scenario } = setup;
  const { controls, crystals } = state;
  const sorted = [...crystals].sort((a, b) => a - b);
  const markers = sorted.map((hz, i): ActiveMarker => marker(hz, hz, 'crystal', i + 1, 1));
  if (controls.tunableOn) {
    const hz = controls.tunableHz;
    const trueHz = Math.max(LOWEST_HZ, hz + scenario.bench.dialErrorHz + controls.dialTrimHz);
    markers.push(marker(hz, trueHz, 'tunable', null, 1));
  }
  if (controls.comb && controls.spanHz > 0) {
    const toothHz = combToothHz(controls.spanHz);
    const centreHz = trueCentreHz(setup, state);
    const last = Math.floor((centreHz + controls.spanHz / 2) / toothHz);
    let n = Math.max(1, Math.ceil((centreHz - controls.spanHz / 2) / toothHz));
    for (; n <= last; n++) markers.push(marker(n * toothHz, n * toothHz, 'comb', null, 0.5));
  }
  markers.push(...harmonicsOf(setup, state, sorted));
  return markers;
}

const MOST_HARMONIC = 12;

/** Pips of the crystals' harmonics wherever they fall in the sweep: nobody asked for them, and they have no number. */
function harmonicsOf(setup: BenchSetup, state: BenchState, crystals: readonly number[]): ActiveMarker[] {
  const { crystalHarmonics } = lifeOf(setup.scenario);
  const { spanHz } = state.controls;
  if (crystalHarmonics === 0 || spanHz === 0) return [];
  const centreHz = trueCentreHz(setup, state);
  return crystals.flatMap((crystal) =>
    Array.from({ length: MOST_HARMONIC - 1 }, (_, i) => i + 2)
      .filter((n) => Math.abs(n * crystal - centreHz) <= spanHz / 2)
      .map((n) => marker(n * crystal, n * crystal, 'harmonic', null, (2 * crystalHarmonics) / n)),
  );
}

/** Distance between the comb's teeth at a span. */
export function combToothHz(spanHz: number): number {
  if (spanHz >= 4e6) return 1e6;
  return spanHz >= 400e3 ? 100e3 : 10e3;
}

/** Half-width of the rack's low-pass. */
function beatHz(sweep: PipSweep, kind: ActiveMarker['kind']): number {
  const narrowest = 0.7 * Math.sqrt(rateHzPerSecond(sweep.spanHz, sweep.mainsHz));
  return kind === 'comb' ? narrowest : Math.max(0.006 * sweep.spanHz, narrowest);
}

/** Slides by an odd share of a turn each second and stands apart for each marker, so that no two shimmer together. */
export function beatRadians(marker: ActiveMarker, index: number, seconds: number): number {
  const turns = index * 0.382 + seconds * (1.7 + 0.31 * index) + (marker.trueHz % 7919) / 7919;
  return 2 * Math.PI * (turns % 1);
}

const MOST_SHAPES = 128;

export interface PipStore {
  /** adds one pip to a whole period */
  add(trace: Float64Array, sweep: PipSweep, marker: ActiveMarker, amplitude: number, phaseRadians: number): void;
}

/** Pip shapes are kept while the sweep stands; a knob that moves the sweep discards them. */
export function createPipStore(): PipStore {
  const shapesOf = keepLast(
    ({ centreHz, spanHz, mainsHz, points }: PipSweep) => [centreHz, spanHz, mainsHz, points],
    // A tunable marker being turned would fill the store without end.
    () => keepByKey<PipShape>(MOST_SHAPES),
  );
  return {
    add(trace, sweep, { trueHz, kind }, amplitude, phaseRadians) {
      const halfWidthHz = beatHz(sweep, kind);
      const shape = shapesOf(sweep)(`${trueHz}|${halfWidthHz}`, () =>
        secondSection(pipShape(sweep, trueHz, halfWidthHz), sweep, trueHz, halfWidthHz),
      );
      addPip(trace, shape, amplitude, phaseRadians);
    },
  };
}

function secondSection(shape: PipShape, sweep: PipSweep, trueHz: number, halfWidthHz: number): PipShape {
  return shape.map(({ first, re, im }) => {
    const share = (i: number): number => {
      const hz = sweep.centreHz + (sweep.spanHz / 2) * Math.sin(sweepAngle(first + i, sweep.points));
      return 1 / Math.hypot(1, (hz - trueHz) / halfWidthHz);
    };
    return { first, re: re.map((v, i) => v * share(i)), im: im.map((v, i) => v * share(i)) };
  });
}

function marker(
  saysHz: number,
  trueHz: number,
  kind: ActiveMarker['kind'],
  number: number | null,
  share: number,
): ActiveMarker {
  return { saysHz, trueHz, kind, number, share };
}
