/**
 * The carrier's envelope at a node over a whole period of the sweep, trace then retrace.
 *
 * Where the sweep is slow against every circuit, |H(f(t))| in both directions. Where it is not, the exact periodic steady state as long as its lines fit into a
 * frame, else the first order in the rate, and through a lens where the sweep hurries the circuits (physics/fastSweep.ts, gentleSweep.ts, sweepLens.ts): trace and retrace then part, and the peak moves. A limiter ahead of the node
 * is then reckoned as it stands at each frequency by itself.
 */
import { createFastSweep, linesFit, MOST_INDEX } from '../physics/fastSweep.ts';
import { createGentleSweep, type SweepMode, sweepMode } from '../physics/gentleSweep.ts';
import { wholePeriod } from '../physics/sweep.ts';
import { type HurriedBand, type Lens, lensFor, throughLens } from '../physics/sweepLens.ts';
import { LOWEST_HZ } from '../receiver/sourceLevel.ts';
import { modelOf } from './benchModel.ts';
import type { LineVolts } from './conditions.ts';
import { hurriedPair, layHurried } from './hurriedPair.ts';
import { keepLast } from './kept.ts';
import { leadFarads } from './loads.ts';
import { carrierAt, type Moment, TRACE_POINTS } from './moment.ts';
import type { BenchSetup } from './setup.ts';

export interface Envelopes {
  /** how far the sweep hurries the circuits up to the node: see `LAG_LIMIT`; 0 while the source stands still */
  readonly lag: number;
  /** how it was reckoned; exact also through a lens */
  readonly mode: SweepMode;
}

/** Writes to `out` (2 * TRACE_POINTS). The moment's full scan must have been solved. */
export type EnvelopeMaker = (moment: Moment, lineVolts: LineVolts, node: string, out: Float64Array) => Envelopes;

/** Of the highest: where the gentle sweep's error, its square and some, is still far below what the line shows. */
const HURRIED = 0.02;

/** Lag from which the steep middle of an S-curve shows it: what two halves have of it adds up. */
const SEEN = 0.002;

const ofPair = ({ receiver }: BenchSetup, node: string): boolean =>
  receiver.detectors.some((one) => one.kind !== 'envelope' && (one.plus === node || one.minus === node));

const STILL: Envelopes = { lag: 0, mode: 'quasiStatic' };

export function createEnvelopes(): EnvelopeMaker {
  const carrier = new Float64Array(TRACE_POINTS);
  const gentle = createGentleSweep(TRACE_POINTS);
  const fast = createFastSweep(TRACE_POINTS);
  const seen = new Float64Array(2 * TRACE_POINTS);

  /** Both nodes of a pair are asked about one after the other: what the first has had made serves the second. */
  const pairAt = keepLast(
    (moment: Moment, lineVolts: LineVolts, _band: HurriedBand, _lag: number) => [moment, lineVolts],
    hurriedPair,
  );

  return (moment, lineVolts, node, out) => {
    const { full, state, sweepHz, swept } = moment;
    const { spanHz, blanking } = state.controls;
    const found = swept && moment.connections.rf !== null ? lagOf(moment, node) : STILL;
    let { mode } = found;
    if (found.mode === 'quasiStatic') {
      carrierAt(moment, full, node, carrier);
      wholePeriod(carrier, out);
    } else {
      const whole = { centreHz: moment.centreHz, spanHz, sweepHz };
      if (found.mode === 'exact') lineByLine(moment, lineVolts, node, whole, blanking, out);
      else {
        gentle.envelope(full.solvers.real(node), full.solvers.imag(node), out);
        const { lens: looks, chirps } = modelOf(moment.setup.engine);
        const band = looks ? gentle.hurried(HURRIED) : null;
        const pair =
          band !== null && chirps && ofPair(moment.setup, node) ? pairAt(moment, lineVolts, band, found.lag) : null;
        const hurried = pair?.carriers(node) ?? null;
        const lens = band === null || hurried !== null ? null : lensFor(band, whole, found.lag, MOST_INDEX);
        if (lens !== null) {
          lineByLine(moment, lineVolts, node, lens, false, seen);
          throughLens(lens, seen, full.hz, out);
          mode = 'exact';
        }
        if (pair !== null && hurried !== null) {
          // Where anything is hurried so far it begins at nothing, and from half as much again on it is all.
          layHurried(pair, hurried, full.hz, Math.min(2 * (found.lag / HURRIED - 1), 1), out);
        }
      }
    }
    // In the exact answer to the whole sweep the circuits ring on into the blanked retrace; in the others they stop with the carrier.
    if (blanking && found.mode !== 'exact') out.fill(0, TRACE_POINTS);
    return { ...found, mode };
  };

  /** The exact answer to a sweep that has not too many lines. */
  function lineByLine(
    moment: Moment,
    lineVolts: LineVolts,
    node: string,
    { centreHz, spanHz, sweepHz }: Lens,
    gated: boolean,
    out: Float64Array,
  ): void {
    const { lines } = moment.circuit;
    const hz = fast.linesHz(centreHz, spanHz, sweepHz, LOWEST_HZ);
    lines.solve(hz, moment.conditions(lineVolts));
    const load = lines.loneLoad(node);
    if (load === null) {
      fast.envelope(lines.real(node), lines.imag(node), gated, out);
      return;
    }
    const own = moment.setup.receiver.detectors.find((one) => one.kind === 'envelope' && one.node === node);
    const hung = own === undefined ? 0 : leadFarads(moment.connections, own);
    const line = { ...load, leadFarads: hung, periodSeconds: 1 / sweepHz, hz: lines.hzAt(node) ?? hz };
    fast.loadedEnvelope(lines.real(node), lines.imag(node), gated, line, out);
    // Feedback may outdo what the load takes: then it has no steady course along the sweep, and is taken as it stands at each frequency.
    if (!out.every(Number.isFinite)) fast.envelope(lines.real(node), lines.imag(node), gated, out);
  }

  function lagOf({ full, state, sweepHz, setup }: Moment, node: string): Envelopes {
    // A video sweep stands on its carrier; its own circuits are wide against any sweep.
    if (state.controls.sourceMode === 'video') return STILL;
    const { spanHz } = state.controls;
    const lag = gentle.lag(full.solvers.real(node), full.solvers.imag(node), full.hz, spanHz, sweepHz);
    const mode = sweepMode(lag, linesFit(spanHz, sweepHz));
    const early = mode === 'quasiStatic' && lag > SEEN && modelOf(setup.engine).ownDiodes && ofPair(setup, node);
    return { lag, mode: early ? 'gentle' : mode };
  }
}
