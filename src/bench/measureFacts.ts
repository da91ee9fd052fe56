/** What is measurably true of the bench, from its state and its picture. */
import type { SheetResponse } from '../receiver/receiver.ts';
import { offersParts } from '../scenario/diagnosis.ts';
import { lifeOf } from '../scenario/life.ts';
import { PROOFS } from '../scenario/proofId.ts';
import { type BenchState, TUBE_X } from './benchState.ts';
import { clampedVolts } from './biasLine.ts';
import { divFor, divPerVolt, xSense } from './deflection.ts';
import { phaseRadians } from './face.ts';
import type { Facts } from './facts.ts';
import { HALF_HEIGHT_DIV, HALF_WIDTH_DIV } from './instruments.ts';
import { isSwept, trueCentreHz } from './moment.ts';
import type { Picture } from './picture.ts';
import { pipsOn } from './proofs.ts';
import { type BenchSetup, initialState } from './setup.ts';
import { sheetFittings } from './sheetSetUp.ts';
import { steelIn } from './tools.ts';

/** Figures that have no limit (a pip on no trace) stop here, so that all of them are numbers. */
const MOST_RATIO = 100;

/** Of the brightness knob's travel: below this the trace is lost in a lit room. */
const LEAST_BRIGHTNESS = 0.1;

/** `response`: the sheet's that the bench is set up for; `sheetPeakVolts`: what the sheet's level gives with the slugs right. */
export function measureFacts(
  setup: BenchSetup,
  state: BenchState,
  response: SheetResponse,
  picture: Picture,
  sheetPeakVolts: number,
): Facts {
  const { receiver } = setup;
  const { controls, leads, crystals } = state;
  const { mains } = receiver;
  const { setUp } = response;
  const trace = traceOf(setup, state, picture);
  return {
    response: response.id,
    cautionsAcknowledged: state.cautionsAcknowledged || receiver.cautions.length === 0,
    isolated: mains === null || state.isolated,
    powered: mains === null || state.powered,

    rfAtSheetPoint: leads.rf === setUp.injectAt,
    rfAtStepPoint: leads.rf !== null && receiver.procedure.some(({ at }) => at === leads.rf),
    rfConnected: leads.rf !== null,
    rfTerminated: controls.rfTerminated,
    rfThroughCapacitor: controls.rfCapacitor,
    yAtSheetPoint: leads.y === setUp.observeAt,
    yTipAsSheet: controls.yTip === sheetFittings(setUp).yTip,
    xConnected: leads.x === TUBE_X,
    earthed: leads.earth !== null,
    biasConnected: setUp.biases.every((bias) => clampedVolts(bias.at, state) !== null),

    sourceAsSheet: (controls.sourceMode === 'video') === (setUp.source === 'video'),
    slowSweepAsSheet: setUp.slowSweep !== true || controls.slowSweep,
    carrierErrorHz: setUp.carrierHz === null ? null : controls.carrierHz - setUp.carrierHz,
    residualPhaseDegrees: residualPhaseDegrees(setup, state),
    blanking: controls.blanking,
    xDirectionAsSheet: lowFrequencyAtLeft(setup, state) === setUp.lowFrequencyAtLeft,
    spanCovers: spanCovers(setup, state, response),
    spanHz: controls.spanHz,
    biases: setUp.biases.map(({ at, volts, toleranceVolts }) => ({
      at,
      errorVolts: (picture.lineVolts[at] ?? 0) - volts,
      toleranceVolts,
      clamped: clampedVolts(at, state) !== null,
    })),
    compressionDb: picture.compressionDb,
    detectedPeakVolts: detectedPeak(picture),
    sheetPeakVolts,
    markersMissingHz: setUp.markersHz.filter((hz) => !crystals.includes(hz)),
    markersAdded: controls.markerRoute === 'added',
    pipHeightRatio: pipHeightRatio(setup, state, picture, trace.heightDiv),
    traceHeightDiv: trace.heightDiv,
    traceOnScreen: trace.onScreen && acrossOnScreen(state),
    traceLit: controls.brightness >= LEAST_BRIGHTNESS,
    sweeping: isSwept(state),
    sweepLag: picture.sweepLag,
    dcCoupled: controls.yCoupling === 'DC',
    verticalLagDegrees: verticalLagDegrees(picture),
    humRatio: humRatio(setup, state, trace.heightDiv),
    dialErrorHz: controls.tunableOn ? setup.scenario.bench.dialErrorHz + controls.dialTrimHz : null,
    steelIn: steelIn(state),
    ...(offersParts(setup.scenario) ? { bridge: { across: state.bridged } } : {}),

    slugsTouched: slugsTouched(setup, state),
    secondsSinceSlugTurn: state.lastSlugTurnSeconds === null ? null : state.seconds - state.lastSlugTurnSeconds,
    crackedSlugs: receiver.adjusters.filter((a) => state.slugs[a.id]?.cracked === true).map((a) => a.id),

    proofsDone: PROOFS.filter((id) => state.proofs[id].done),
    stopped: state.stopped !== null,
    signedOff: state.signedOff,
  };
}

/** Of an FM detector the output itself, which may be small between large diodes; else what the diode makes of the largest carrier. */
function detectedPeak({ observation, peakCarrierVolts, peakVolts }: Picture): number {
  if (observation === null) return 0;
  return observation.pair === null ? observation.detect(peakCarrierVolts) : peakVolts;
}

/** Angle of the poles of load, lead and tube together at the sweep's own rate: as much as X would have to wait for Y. */
function verticalLagDegrees({ observation, sweepHz }: Picture): number {
  if (observation === null || observation.raw) return 0;
  const { loadSeconds, leadSeconds } = observation;
  const radians = Math.atan(2 * Math.PI * sweepHz * loadSeconds) + Math.atan(2 * Math.PI * sweepHz * leadSeconds);
  return (radians * 180) / Math.PI;
}

function humRatio({ scenario }: BenchSetup, state: BenchState, traceHeightDiv: number): number {
  if (state.leads.y === null || state.leads.earth !== null) return 0;
  const humDiv = divFor(2 * lifeOf(scenario).strapHumVolts, { scenario }, state.controls);
  return traceHeightDiv > 0 ? Math.min(MOST_RATIO, humDiv / traceHeightDiv) : MOST_RATIO;
}

/** Folded to above -90 and up to 90 degrees: half a turn only swaps left and right. */
function residualPhaseDegrees({ scenario }: BenchSetup, { controls }: BenchState): number {
  const degrees = scenario.bench.phaseLagDegrees + controls.phasingDegrees;
  return degrees - 180 * Math.ceil((degrees - 90) / 180);
}

function lowFrequencyAtLeft(setup: BenchSetup, state: BenchState): boolean {
  return xSense(setup, state) * Math.cos(phaseRadians(setup, state)) > 0;
}

/** The sweep reaches every frequency that the sheet names, its markers included. */
function spanCovers(setup: BenchSetup, state: BenchState, { specification: spec, setUp }: SheetResponse): boolean {
  const { spanHz } = state.controls;
  const centreHz = trueCentreHz(setup, state);
  const named = [...setUp.markersHz, ...spec.points.map((p) => p.hz), ...spec.traps.map((t) => t.hz)];
  for (const w of spec.windows) named.push(w.fromHz, w.toHz);
  for (const t of spec.tilts) named.push(t.lowHz, t.highHz);
  for (const p of spec.peaks) named.push(p.hz);
  const low = centreHz - spanHz / 2;
  const high = centreHz + spanHz / 2;
  return named.every((hz) => hz >= low && hz <= high);
}

/** Height and place of the trace itself: hum and noise are not counted, nor pips. */
function traceOf(
  setup: BenchSetup,
  { controls, leads }: BenchState,
  picture: Picture,
): { readonly heightDiv: number; readonly onScreen: boolean } {
  if (leads.y === null || picture.observation === null) return { heightDiv: 0, onScreen: false };
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let sum = 0;
  for (const v of picture.volts) {
    if (v < low) low = v;
    if (v > high) high = v;
    sum += v;
  }
  // At an oscillator's loop the beats are the curve.
  const beat = picture.oscillation?.shownVolts ?? 0;
  low -= beat;
  high += beat;
  if (picture.observation.raw) {
    low = -high;
    sum = 0;
  }
  const mean = controls.yCoupling === 'AC' ? sum / picture.volts.length : 0;
  const perVolt = divPerVolt(setup, controls);
  const ends = [low, high].map((v) => (v - mean) * perVolt + controls.yPositionDiv);
  return {
    heightDiv: divFor(high - low, setup, controls),
    onScreen: picture.rfConnected && ends.every((y) => Math.abs(y) <= HALF_HEIGHT_DIV),
  };
}

function acrossOnScreen({ controls, leads }: BenchState): boolean {
  // A trace that just fills the ten divisions may stand a little out of the middle.
  const reach = HALF_WIDTH_DIV * controls.xGain + Math.abs(controls.xPositionDiv);
  return leads.x !== null && reach <= HALF_WIDTH_DIV * 1.05;
}

function pipHeightRatio(setup: BenchSetup, state: BenchState, picture: Picture, traceHeightDiv: number): number {
  if (!pipsOn(state)) return 0;
  const { controls } = state;
  const sent = picture.through?.beatVolts ?? null;
  const tall = sent === null ? controls.pipHeightDiv : divFor(2 * Math.max(0, ...sent), setup, controls);
  return traceHeightDiv > 0 ? Math.min(MOST_RATIO, tall / traceHeightDiv) : MOST_RATIO;
}

/** Slugs whose screw stands elsewhere than at the start, or that were forced. */
function slugsTouched(setup: BenchSetup, { slugs }: BenchState): number {
  const start = initialState(setup).slugs;
  return setup.receiver.adjusters.filter(({ id }) => {
    const slug = slugs[id];
    return slug !== undefined && (slug.screwTurns !== start[id]?.screwTurns || slug.forcedTurns > 0);
  }).length;
}
