/**
 * What a receiver file says: the deck's name, what may be turned, where one may touch, the laws of bias and detector,
 * the service sheet and the plan of the chassis. Plain data in SI units; `src/files/receiverSchema.ts` checks files against it.
 *
 * Over 300 lines: types alone, one for each key of the file, read together with it.
 */

import type { ReceiverText } from './receiverText.ts';

/** Position on the chassis plan, in drawing units (the plan is about 420 x 384). */
export interface PlanPoint {
  readonly x: number;
  readonly y: number;
}

export type ToolHead = 'hex' | 'blade';

/** One slug: a coil (with ganged windings scaled by the same factor) whose core is turned by a tool. */
export interface Adjuster {
  /** short trade name, unique in the receiver: `T1`, `A2` */
  readonly id: string;
  /** `T1 top, mixer plate` */
  readonly label: string;
  /** `trap` slugs make a notch; `slug` is all the rest */
  readonly kind: 'slug' | 'trap';
  /** deck element (an L) and further windings on the same core */
  readonly element: string;
  readonly ganged: readonly string[];
  readonly nominalHenries: number;
  readonly minHenries: number;
  readonly maxHenries: number;
  /** whole travel between the stops, in turns */
  readonly travelTurns: number;
  readonly backlashTurns: number;
  readonly head: ToolHead;
  /** the frequency that a trap is meant to take out; null for other slugs */
  readonly trapHz: number | null;
  /**
   * Left out for most slugs. The core can be screwed right through the winding, so that every inductance is met twice: once with the core outside the middle, where it
   * belongs, and once beyond it, nearer the other winding of the can, where it raises the `coupling` (a K of the deck) by up to the `share`.
   */
  readonly twoPeaks?: { readonly coupling: string; readonly share: number };
  /** one sentence for the learner: what this slug does to the curve */
  readonly does: string;
  /**
   * `x`, `y`: the middle of this slug's own hole (of the trap, where it stands alone: radius 19). Slugs with the same `can` share one drawn can,
   * 54 units square round one hole; round two holes it is 54 wide and the holes' distance plus 54 long, so each hole has its own place to touch.
   * `hole` tells top from bottom core. `letter` is the middle of the letter's disc (radius 10); left out, the view finds a place.
   */
  readonly plan: PlanPoint & {
    readonly can: string;
    readonly shape: 'can' | 'trap';
    readonly hole: 'top' | 'bottom';
    readonly letter?: PlanPoint;
  };
}

/** How the RF lead drives a test point. */
export type Injection =
  /** through the receiver's own input: amps in the deck source per volt (peak, open circuit) of the sweep source */
  | { readonly kind: 'deckSource'; readonly element: string; readonly siemens: number }
  /** straight on the node: the source's 75 ohm (and the lead's termination) lies across it */
  | { readonly kind: 'node' };

export interface TestPoint {
  /** `TP1`, `AGC`, `Earth` */
  readonly id: string;
  readonly label: string;
  /** deck node; null for bias lines, for earth, and for the output of an FM detector, which is no node of the deck */
  readonly node: string | null;
  readonly role: 'signal' | 'detector' | 'agc' | 'earth';
  /** null: the RF lead has no business here and is refused */
  readonly inject: Injection | null;
  /** the detector whose output stands here (role `detector`) */
  readonly detector: string | null;
  /**
   * of an FM detector: its output (left out: this); the sum of its two halves, which is a ratio detector's reservoir; or the plain difference of the halves with the
   * reservoir's link `open`, as it is swept
   */
  readonly tap?: 'output' | 'sum' | 'open';
  /** a loose loop instead of a clip: what stands here is seen (or driven) without being loaded */
  readonly looseLoop?: true;
  /** what the meter reads here with the set at rest, volts (ignoring signal and bias) */
  readonly dcVolts: number;
  readonly note: string;
  readonly plan: PlanPoint;
}

/** A valve or transistor: the G element and how it saturates and follows the bias. */
export interface Stage {
  readonly element: string;
  readonly device: string;
  readonly gmSiemens: number;
  /** `v / saturationVolts` is the argument of tanh in the transfer law, volts peak at the control node */
  readonly saturationVolts: number;
  /** meant to saturate at working level: its compression is no fault of the set-up */
  readonly limiter: boolean;
  /** test point of the bias line that controls it; null: fixed bias */
  readonly agc: string | null;
  /** capacitor and resistor at the control node that move with bias; null where none does */
  readonly inputCapacitor: string | null;
  readonly inputResistor: string | null;
}

/**
 * `exponential` (valve of remote cut-off): gm(V)/gm_ref = exp(-(|V| - |ref|)/scale); input capacitance moves by
 * capacitanceFarads * (sqrt(gm_rel) - 1). `proportional` (transistor whose current follows the line): gm(V)/gm_ref = 1 + (|V| - |ref|)/scale;
 * capacitance moves by capacitanceFarads * (gm_rel - 1). Either: input conductance scales with gm_rel.
 * V has the sign of `referenceVolts`; the other sign drives the stage out of its range.
 */
export interface BiasLaw {
  readonly kind: 'exponential' | 'proportional';
  readonly referenceVolts: number;
  readonly scaleVolts: number;
  readonly capacitanceFarads: number;
  /** the unclamped line: V = rest + volts per detected volt (average over the sweep, taken without its sign) */
  readonly unclampedRestVolts: number;
  readonly unclampedVoltsPerDetectedVolt: number;
}

/** One controlled line: the stages that name its test point follow this law. */
export interface BiasLine extends BiasLaw {
  /** test point of role `agc` */
  readonly at: string;
  /** detector whose mean output the line follows when nothing clamps it; null: it stays at rest */
  readonly follows: string | null;
}

/** Envelope detector: exponential diode into a resistive load. The deck holds the circuit without it: what it draws there follows from this. */
export interface EnvelopeDetector {
  readonly id: string;
  readonly kind: 'envelope';
  readonly node: string;
  readonly polarity: 'positive' | 'negative';
  readonly saturationAmps: number;
  /** n * V_T of the diode, volts */
  readonly emissionVolts: number;
  readonly loadOhms: number;
  readonly loadFarads: number;
  /** the middle of its band, at whose harmonics the diode's pulses meet the circuit */
  readonly carrierHz: number;
}

/**
 * Two diodes on the two ends of a phase-shifting transformer, each into its own half load. `discriminator`: the output is the difference of the halves.
 * `ratio`: a reservoir holds the sum of the halves, the output is half that sum times (E1 - E2) / (E1 + E2).
 */
export interface FmDetector {
  readonly id: string;
  readonly kind: 'discriminator' | 'ratio';
  /** the node whose diode counts positive, and the other */
  readonly plus: string;
  readonly minus: string;
  readonly saturationAmps: number;
  readonly emissionVolts: number;
  /** load of each half */
  readonly loadOhms: number;
  readonly loadFarads: number;
  /** of the half that counts negative, while the diode of the other leaks, whose leak is in `loadOhms`; left out: the same */
  readonly minusLoadOhms?: number;
  /** see EnvelopeDetector */
  readonly carrierHz: number;
  /** ratio detector: the capacitor across both halves; null in a discriminator */
  readonly reservoirFarads: number | null;
}

export type Detector = EnvelopeDetector | FmDetector;

/**
 * A mixer: what stands at `from` comes out at |oscillator - f| as a current in the deck source `into`. The deck holds the two sides as parts that are not
 * connected. The oscillator runs where the tank at `oscillator.node`, driven by its own deck source, has its peak.
 */
export interface Converter {
  readonly from: string;
  readonly into: string;
  /** amps of the difference frequency per volt at `from` */
  readonly siemens: number;
  readonly oscillator: {
    readonly node: string;
    readonly drive: string;
    readonly fromHz: number;
    readonly toHz: number;
  };
}

/**
 * A local oscillator that runs whenever the set does. Its frequency is that of its tank (`oscillator.ts`), to whose capacitor the fine tuning adds up to
 * `fineTuningFarads` or takes as much away, and a valve that is not warm yet lacks some.
 */
export interface LocalOscillator {
  readonly device: string;
  readonly node: string;
  /** deck source on the tank, by which its peak is found */
  readonly drive: string;
  readonly fromHz: number;
  readonly toHz: number;
  readonly capacitor: string;
  readonly fineTuningFarads: number;
  /** of its carrier, peak, what a loose loop at the tank's test point picks up */
  readonly loopVolts: number;
  /** volts of the generator's own carrier in that loop for each ampere that it sends there */
  readonly loopOhms: number;
}

/** The envelope detector's output as the source of a video part of the deck: its modulation, at the video frequency, becomes a current in `into`. */
export interface VideoFeed {
  readonly detector: string;
  readonly into: string;
  /** amps per volt of modulation of the carrier's envelope at the detector's node */
  readonly siemens: number;
}

/** A point of the service sheet: level relative to the reference, linear. */
export interface SpecPoint {
  readonly hz: number;
  readonly target: number;
  readonly low: number;
  readonly high: number;
  readonly weight: number;
}
export interface SpecWindow {
  readonly fromHz: number;
  readonly toHz: number;
  readonly maxRippleDb: number;
  readonly weight: number;
}
export interface SpecTilt {
  readonly lowHz: number;
  readonly highHz: number;
  readonly maxDb: number;
  readonly weight: number;
}
export interface SpecTrap {
  readonly hz: number;
  /** largest level relative to the reference, decibels (negative) */
  readonly maxDb: number;
  /** the notch itself must lie this near */
  readonly notchWithinHz: number | null;
  readonly weight: number;
}
export interface SpecSkirt {
  readonly fromHz: number;
  readonly toHz: number;
  /** largest relative level, linear */
  readonly max: number;
  readonly weight: number;
}
export interface SpecBandwidth {
  readonly levelDb: number;
  readonly minHz: number;
  readonly maxHz: number;
  readonly centreHz: number | null;
  readonly centreToleranceHz: number | null;
  readonly weight: number;
}
export interface SpecGain {
  readonly hz: number;
  /** decibels against the nominal design */
  readonly minDb: number;
  /** in the unit of the response: volts per ampere, or volts per volt of an S-curve (there: half the distance between the peaks) */
  readonly nominal: number;
  readonly weight: number;
}
/** The peak itself must lie within `toleranceHz` of `hz`; of an oscillator's tank that is where it runs. */
export interface SpecPeak {
  readonly hz: number;
  readonly toleranceHz: number;
  readonly oscillator?: true;
  readonly weight: number;
}
/** What an FM detector's curve must be. Peaks are the outermost extremes of either sign on either side of the zero. */
export interface SpecSCurve {
  readonly centreHz: number;
  /** true: positive above the centre */
  readonly risesWithFrequency: boolean;
  readonly zero: { readonly toleranceHz: number; readonly weight: number };
  readonly separation: { readonly minHz: number; readonly maxHz: number; readonly weight: number };
  /** height of the upper peak over that of the lower one */
  readonly symmetry: { readonly low: number; readonly high: number; readonly weight: number };
  /** greatest distance from the straight line through the zero within `withinHz` of the centre, as a share of the line's value at its end */
  readonly linearity: { readonly withinHz: number; readonly max: number; readonly weight: number } | null;
}

/**
 * What the sheet asks of one response, level relative to the peak inside `fromHz..toHz`. With `sCurve` the response has a sign, levels are relative to half
 * the distance between its peaks, and of the other lists only `points` and `gain` mean anything.
 */
export interface Specification {
  /** levels are taken relative to the level here instead of to the peak */
  readonly referenceHz?: number;
  readonly fromHz: number;
  readonly toHz: number;
  readonly points: readonly SpecPoint[];
  readonly windows: readonly SpecWindow[];
  readonly tilts: readonly SpecTilt[];
  readonly traps: readonly SpecTrap[];
  readonly skirts: readonly SpecSkirt[];
  readonly bandwidths: readonly SpecBandwidth[];
  readonly peaks: readonly SpecPeak[];
  readonly sCurve: SpecSCurve | null;
  readonly gain: SpecGain | null;
}

/**
 * What is measured. `carrier`: |V(node)| per ampere of the sheet's injection, through a converter or a video feed where they lie between.
 * `difference`: (|V(plus)| - |V(minus)|) / |V(per)|, volts per volt: what a limiter that holds `per` constant makes of the detector.
 */
export type Quantity =
  | { readonly kind: 'carrier'; readonly node: string }
  | { readonly kind: 'difference'; readonly plus: string; readonly minus: string; readonly per: string };

/** What the sheet tells the learner to set up. */
export interface SheetSetUp {
  readonly centreHz: number;
  readonly spanHz: number;
  readonly mainsHz: 50 | 60;
  /** the test point for the RF lead in the overall measurement, and the one for the Y lead */
  readonly injectAt: string;
  readonly observeAt: string;
  readonly observeWith: 'detectorLead' | 'probe';
  /** attenuator setting that gives the sheet's detector volts with the nominal slugs */
  readonly levelDb: number;
  /** lines that must be clamped, one lead each, two at most */
  readonly biases: readonly { readonly at: string; readonly volts: number; readonly toleranceVolts: number }[];
  /** `video`: a carrier that stands at `carrierHz` is modulated by the sweep */
  readonly source: 'sweep' | 'video';
  /** the sheet asks for the slow sweep: its circuits are too narrow for the mains */
  readonly slowSweep?: true;
  readonly carrierHz: number | null;
  /** low frequency left on the tube unless the sheet says so */
  readonly lowFrequencyAtLeft: boolean;
  /** crystals that must be in for the overall curve */
  readonly markersHz: readonly number[];
}

/** One measurement of the service sheet: how to set up for it and what must be seen. */
export interface SheetResponse {
  /** unique in the receiver: `if`, `s`, `overall` */
  readonly id: string;
  /** `IF curve at the limiter grid` */
  readonly title: string;
  readonly setUp: SheetSetUp;
  readonly quantity: Quantity;
  readonly specification: Specification;
}

export type PlanPart =
  | { readonly kind: 'valve'; readonly x: number; readonly y: number; readonly label: string }
  | { readonly kind: 'can'; readonly x: number; readonly y: number; readonly label: string }
  | { readonly kind: 'electrolytic'; readonly x: number; readonly y: number; readonly label: string }
  | {
      readonly kind: 'box';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly label: string;
      readonly sub: string;
    }
  | { readonly kind: 'transformer'; readonly x: number; readonly y: number; readonly label: string }
  | { readonly kind: 'resistor'; readonly x: number; readonly y: number; readonly upright: boolean };

export interface ChassisPlan {
  readonly width: number;
  readonly height: number;
  /** the fenced-off high voltage corner; null where there is none */
  readonly hot: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
    readonly volts: number;
  } | null;
  readonly parts: readonly PlanPart[];
  /** the dotted signal path: one or more polylines */
  readonly path: readonly (readonly PlanPoint[])[];
}

/** The parts of the set-up, each right or wrong by itself. */
export type SetUpPart = 'sweep' | 'phasing' | 'blanking' | 'bias' | 'level' | 'markers' | 'trace';

/** A step of the sheet's procedure, and the phase that it belongs to. */
export interface ProcedureStep {
  readonly phase: 'safe' | 'connect' | 'setUp' | 'align' | 'prove';
  readonly text: string;
  /** set-up steps: what the step is about; it is ticked while these parts are right. Left out: while the whole phase is */
  readonly parts?: readonly SetUpPart[];
  /** the response that the step is about; left out: the first, or whichever is on the tube */
  readonly response?: string;
  /** alignment steps: the point that the sweep goes into, where it is not that of the response's set-up */
  readonly at?: string;
  /** slugs that this step is about; the step counts as done when they meet their lines of the sheet */
  readonly slugs: readonly string[];
}

/** Greatest departure of a value from the design's, as a share of it, either way. */
export interface Spreads {
  readonly capacitors: number;
  /** resistors, and with them the Q of coils, whose loss is one */
  readonly resistors: number;
  readonly couplings: number;
  readonly transconductances: number;
}

export interface Receiver {
  readonly format: 'haystack-receiver';
  readonly version: 1;
  readonly id: string;
  readonly setName: string;
  readonly title: string;
  readonly description: string;
  /** file name of the deck beside the receiver file */
  readonly deck: string;
  /** a mains set whose chassis may be live, with its high tension; null: nothing here can bite */
  readonly mains: {
    readonly hotChassis: boolean;
    readonly highTensionVolts: number;
    readonly pictureTube: boolean;
  } | null;
  /** how far the parts of one set may depart from the design, as shares; what is left out: see `individualSet.ts` */
  readonly spreads?: Partial<Spreads>;
  readonly adjusters: readonly Adjuster[];
  readonly testPoints: readonly TestPoint[];
  /** resistors and capacitors of the deck that are no parts in anybody's hand: loss of coils, loading by valves, capacitance of wiring. Left out: none */
  readonly notParts?: readonly string[];
  /** deck elements that stand for the bench's own demodulator probe resting on a test point: taken out while the probe is elsewhere */
  readonly probeInDeck: { readonly testPoint: string; readonly elements: readonly string[] } | null;
  readonly stages: readonly Stage[];
  readonly biasLines: readonly BiasLine[];
  readonly detectors: readonly Detector[];
  readonly converter: Converter | null;
  readonly videoFeed: VideoFeed | null;
  /** left out: the set has none, or none that runs at the bench */
  readonly oscillator?: LocalOscillator;
  /** the box of crystals that belongs to this receiver, hertz */
  readonly crystalsHz: readonly number[];
  /** what the sheet measures; the first is the one that the receiver is known by */
  readonly responses: readonly SheetResponse[];
  readonly procedure: readonly ProcedureStep[];
  readonly cautions: readonly string[];
  readonly plan: ChassisPlan;
  /** of the texts in this file, a tag of BCP 47; left out: English */
  readonly language?: string;
  /** the same texts in other languages, by tag */
  readonly translations?: Readonly<Record<string, ReceiverText>>;
}
