/** What is measurably true of the bench at a moment: guards, grading and the coach read these, never the screen. */
import type { ProofId } from './benchState.ts';

export interface Facts {
  // make safe
  readonly cautionsAcknowledged: boolean;
  /** true also where the receiver has no mains to isolate */
  readonly isolated: boolean;
  readonly powered: boolean;
  // connect
  readonly rfAtSheetPoint: boolean;
  readonly rfConnected: boolean;
  readonly rfTerminated: boolean;
  readonly yAtSheetPoint: boolean;
  readonly yTipAsSheet: boolean;
  readonly xConnected: boolean;
  readonly earthed: boolean;
  /** true also where the sheet asks for no bias */
  readonly biasConnected: boolean;
  // set up
  /** bench lag plus phasing control, folded to -90..90 (a half turn is the mirror's business), degrees */
  readonly residualPhaseDegrees: number;
  readonly blanking: boolean;
  readonly xDirectionAsSheet: boolean;
  readonly spanCovers: boolean;
  /** null where the sheet asks for none */
  readonly biasErrorVolts: number | null;
  /** gain compression of the worst stage anywhere in the band, decibels (0 = linear, grows) */
  readonly compressionDb: number;
  /** peak detected volts with the bench as it is */
  readonly detectedPeakVolts: number;
  /** the same that the sheet's level would give with nominal slugs */
  readonly sheetPeakVolts: number;
  readonly markersMissingHz: readonly number[];
  readonly markersAdded: boolean;
  /** pip height over the trace's height */
  readonly pipHeightRatio: number;
  /** trace height on the graticule, divisions */
  readonly traceHeightDiv: number;
  readonly traceOnScreen: boolean;
  readonly sweeping: boolean;
  // align
  readonly slugsTouched: number;
  readonly secondsSinceSlugTurn: number | null;
  readonly crackedSlugs: readonly string[];
  // prove
  readonly proofsDone: readonly ProofId[];
  readonly stopped: boolean;
  readonly signedOff: boolean;
}
