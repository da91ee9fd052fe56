/** What is measurably true of the bench at a moment: guards, grading and the coach read these, never the screen. */
import type { ProofId } from '../scenario/proofId.ts';

export interface Facts {
  /** the response of the sheet that the bench is set up for, or comes nearest to; everything below is about it */
  readonly response: string;
  // make safe
  readonly cautionsAcknowledged: boolean;
  /** true also where the receiver has no mains to isolate */
  readonly isolated: boolean;
  readonly powered: boolean;
  // connect
  readonly rfAtSheetPoint: boolean;
  /** at a point that a step of the procedure sweeps from, on the way to the whole curve */
  readonly rfAtStepPoint: boolean;
  readonly rfConnected: boolean;
  readonly rfTerminated: boolean;
  readonly rfThroughCapacitor: boolean;
  readonly yAtSheetPoint: boolean;
  readonly yTipAsSheet: boolean;
  readonly xConnected: boolean;
  readonly earthed: boolean;
  /** every line that the sheet names is clamped; true also where it names none */
  readonly biasConnected: boolean;
  // set up
  /** bench lag plus phasing control, folded to -90..90 (a half turn is the mirror's business), degrees */
  readonly residualPhaseDegrees: number;
  readonly blanking: boolean;
  readonly xDirectionAsSheet: boolean;
  readonly spanCovers: boolean;
  /** as the knob stands */
  readonly spanHz: number;
  /** the source's mode as the sheet asks (sweep, or video sweep on a carrier) */
  readonly sourceAsSheet: boolean;
  /** the slow sweep is on where the sheet asks for it; true where it does not */
  readonly slowSweepAsSheet: boolean;
  /** of the carrier that a video sweep modulates; null where the sheet asks for none */
  readonly carrierErrorHz: number | null;
  /** each line that the sheet names: how far off it stands */
  readonly biases: readonly {
    readonly at: string;
    readonly errorVolts: number;
    readonly toleranceVolts: number;
    readonly clamped: boolean;
  }[];
  /** gain compression of the worst stage anywhere in the band, limiters left out, decibels (0 = linear, grows) */
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
  /** bright enough to be seen */
  readonly traceLit: boolean;
  readonly sweeping: boolean;
  /** how far the sweep shifts the curve it shows, as a share of the curve's narrowest width (2 R / (pi B^2) for a single circuit) */
  readonly sweepLag: number;
  readonly dcCoupled: boolean;
  /** what detector load, lead and Y amplifier together make the trace lag behind X, degrees of the sweep */
  readonly verticalLagDegrees: number;
  /** hum from edge to edge over the trace's height */
  readonly humRatio: number;
  /** error of the tunable marker as it is trimmed; null while it is off */
  readonly dialErrorHz: number | null;
  /** slug that a tool of steel stands in */
  readonly steelIn: string | null;
  /** the capacitor that a good one hangs across; left out where there are no spares */
  readonly bridge?: { readonly across: string | null };
  // align
  readonly slugsTouched: number;
  readonly secondsSinceSlugTurn: number | null;
  readonly crackedSlugs: readonly string[];
  // prove
  readonly proofsDone: readonly ProofId[];
  readonly stopped: boolean;
  readonly signedOff: boolean;
}
