/** Facts of a bench that is not there: all wrong, or all right, for tests that are about the session alone. */

import type { Facts } from '../../src/bench/facts.ts';
import type { Findings } from '../../src/bench/witness.ts';
import { PROOFS } from '../../src/scenario/proofId.ts';
import type { Alignment } from '../../src/session/alignment.ts';

/** Every line of the sheet inside its limits. */
export const IN_LIMITS: Alignment = { off: [], away: {}, moved: [] };

export const NOTHING_RIGHT: Facts = {
  response: 'if',
  cautionsAcknowledged: false,
  isolated: false,
  powered: false,
  rfAtSheetPoint: false,
  rfAtStepPoint: false,
  rfConnected: false,
  rfTerminated: false,
  rfThroughCapacitor: true,
  yAtSheetPoint: false,
  yTipAsSheet: false,
  xConnected: false,
  earthed: false,
  biasConnected: false,
  residualPhaseDegrees: 31,
  blanking: false,
  xDirectionAsSheet: false,
  spanCovers: false,
  spanHz: 12e6,
  sourceAsSheet: true,
  slowSweepAsSheet: true,
  carrierErrorHz: null,
  biases: [{ at: 'AGC', errorVolts: 4, toleranceVolts: 0.2, clamped: false }],
  compressionDb: 0,
  detectedPeakVolts: 0,
  sheetPeakVolts: 2,
  markersMissingHz: [45_750_000],
  markersAdded: true,
  pipHeightRatio: 0,
  traceHeightDiv: 0,
  traceOnScreen: false,
  traceLit: false,
  sweeping: true,
  sweepLag: 0,
  dcCoupled: true,
  verticalLagDegrees: 0.1,
  humRatio: 0,
  dialErrorHz: null,
  steelIn: null,
  bridge: { across: null },
  slugsTouched: 0,
  secondsSinceSlugTurn: null,
  crackedSlugs: [],
  proofsDone: [],
  stopped: false,
  signedOff: false,
};

export const ALL_RIGHT: Facts = {
  ...NOTHING_RIGHT,
  cautionsAcknowledged: true,
  isolated: true,
  powered: true,
  rfAtSheetPoint: true,
  rfConnected: true,
  rfTerminated: true,
  yAtSheetPoint: true,
  yTipAsSheet: true,
  xConnected: true,
  earthed: true,
  biasConnected: true,
  residualPhaseDegrees: 0,
  blanking: true,
  xDirectionAsSheet: true,
  spanCovers: true,
  biases: [{ at: 'AGC', errorVolts: 0, toleranceVolts: 0.2, clamped: true }],
  detectedPeakVolts: 2,
  markersMissingHz: [],
  pipHeightRatio: 0.08,
  traceHeightDiv: 6,
  traceLit: true,
  traceOnScreen: true,
  slugsTouched: 2,
  secondsSinceSlugTurn: 30,
  proofsDone: PROOFS,
};

/** Each proof made, and what was seen said rightly. */
export const ALL_SAID: Findings = Object.fromEntries(PROOFS.map((proof) => [proof, 'right' as const]));
