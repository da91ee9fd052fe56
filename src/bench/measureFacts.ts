/** What is measurably true of the bench, from its state and its picture. */
import type { BenchState } from './benchState.ts';
import { PROOFS } from './benchState.ts';
import { phaseRadians, xSense } from './face.ts';
import type { Facts } from './facts.ts';
import { HALF_HEIGHT_DIV, HALF_WIDTH_DIV } from './instruments.ts';
import type { Picture } from './picture.ts';
import { pipsOn } from './proofs.ts';
import { type BenchSetup, initialState, sheetLeadControls, TUBE_X } from './setup.ts';

export interface SheetFigures {
  /** detected volts at the curve's reference, at the sheet's level with nominal slugs */
  readonly sheetPeakVolts: number;
}

/** Figures that have no limit (a pip on no trace) stop here, so that all of them are numbers. */
const MOST_RATIO = 100;

export function measureFacts(
  setup: BenchSetup,
  state: BenchState,
  picture: Picture,
  { sheetPeakVolts }: SheetFigures,
): Facts {
  const { receiver } = setup;
  const { controls, leads, crystals } = state;
  const { setUp, mains } = receiver;
  const lead = sheetLeadControls(receiver);
  const trace = traceOf(state, picture);
  return {
    cautionsAcknowledged: state.cautionsAcknowledged || receiver.cautions.length === 0,
    isolated: mains === null || state.isolated,
    powered: mains === null || state.powered,

    rfAtSheetPoint: leads.rf === setUp.injectAt,
    rfConnected: leads.rf !== null,
    rfTerminated: controls.rfTerminated,
    yAtSheetPoint: leads.y === setUp.observeAt,
    yTipAsSheet: controls.yTip === lead.yTip,
    xConnected: leads.x === TUBE_X,
    earthed: leads.earth !== null,
    biasConnected: setUp.bias === null || leads.biasA === setUp.bias.at || leads.biasB === setUp.bias.at,

    residualPhaseDegrees: residualPhaseDegrees(setup, state),
    blanking: controls.blanking,
    xDirectionAsSheet: lowFrequencyAtLeft(setup, state) === setUp.lowFrequencyAtLeft,
    spanCovers: spanCovers(setup, state),
    biasErrorVolts: setUp.bias === null ? null : (picture.lineVolts ?? 0) - setUp.bias.volts,
    compressionDb: picture.compressionDb,
    detectedPeakVolts: picture.observation?.detect(picture.peakCarrierVolts) ?? 0,
    sheetPeakVolts,
    markersMissingHz: setUp.markersHz.filter((hz) => !crystals.includes(hz)),
    markersAdded: controls.markerRoute === 'added',
    pipHeightRatio: pipHeightRatio(state, picture, trace.heightDiv),
    traceHeightDiv: trace.heightDiv,
    traceOnScreen: trace.onScreen && acrossOnScreen(state),
    sweeping: controls.sourceMode === 'sweep' && controls.spanHz > 0,

    slugsTouched: slugsTouched(setup, state),
    secondsSinceSlugTurn: state.lastSlugTurnSeconds === null ? null : state.seconds - state.lastSlugTurnSeconds,
    crackedSlugs: receiver.adjusters.filter((a) => state.slugs[a.id]?.cracked === true).map((a) => a.id),

    proofsDone: PROOFS.filter((id) => state.proofs[id].done),
    stopped: state.stopped !== null,
    signedOff: state.signedOff,
  };
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
function spanCovers({ receiver }: BenchSetup, { controls }: BenchState): boolean {
  const { specification: spec, setUp } = receiver;
  const named = [...setUp.markersHz, ...spec.points.map((p) => p.hz), ...spec.traps.map((t) => t.hz)];
  for (const w of spec.windows) named.push(w.fromHz, w.toHz);
  for (const t of spec.tilts) named.push(t.lowHz, t.highHz);
  const low = controls.centreHz - controls.spanHz / 2;
  const high = controls.centreHz + controls.spanHz / 2;
  return named.every((hz) => hz >= low && hz <= high);
}

/** Height and place of the trace itself: hum and noise are not counted, nor pips. */
function traceOf(
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
  if (picture.observation.raw) {
    low = -high;
    sum = 0;
  }
  const mean = controls.yCoupling === 'AC' ? sum / picture.volts.length : 0;
  const perVolt = (controls.yInvert ? -1 : 1) / controls.yVoltsPerDiv;
  const ends = [low, high].map((v) => (v - mean) * perVolt + controls.yPositionDiv);
  return {
    heightDiv: (high - low) / controls.yVoltsPerDiv,
    onScreen: picture.rfConnected && ends.every((y) => Math.abs(y) <= HALF_HEIGHT_DIV),
  };
}

function acrossOnScreen({ controls, leads }: BenchState): boolean {
  // A trace that just fills the ten divisions may stand a little out of the middle.
  const reach = HALF_WIDTH_DIV * controls.xGain + Math.abs(controls.xPositionDiv);
  return leads.x !== null && reach <= HALF_WIDTH_DIV * 1.05;
}

function pipHeightRatio(state: BenchState, picture: Picture, traceHeightDiv: number): number {
  if (!pipsOn(state)) return 0;
  const { controls } = state;
  const sent = picture.through?.beatVolts ?? null;
  const tall = sent === null ? controls.pipHeightDiv : (2 * Math.max(0, ...sent)) / controls.yVoltsPerDiv;
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
