/**
 * How lively a bench is: noise, and what else a real bench does that a drawing does not. Each is a pure function of the scenario's seed and of bench time; none
 * of it comes into the score by chance.
 */
export interface Life {
  /** noise of the set's own stages and circuits, as a share of the volts that the circuit gives by itself */
  readonly noise: number;
  /** the set has stood unused: its valves must heat and its circuits settle before it is what its sheet says */
  readonly cold: boolean;
  /** how far a valve's input capacitance moves, about, from cold to warm, farads */
  readonly driftFarads: number;
  /** hum on what the bias supply gives, at mains rate, volts peak */
  readonly biasHumVolts: number;
  /** what twice the mains makes of the gain by way of the set's own supply, as a share either way */
  readonly supplyHum: number;
  /** how far the sweep source's output strays over its dial, decibels either way */
  readonly unevenDb: number;
  /** what gets out of the source beside its attenuator, decibels under its full output; null: nothing */
  readonly leakageDb: number | null;
  /** its second harmonic, decibels under the fundamental; null: none */
  readonly harmonicDb: number | null;
  /** what a hand brings to a coil through the tool that stands in its slug, farads */
  readonly handFarads: number;
  /** how far the bias supply's knobs are out, as a share of what they say */
  readonly biasKnobError: number;
  /** the bias supply's own resistance, ohms */
  readonly biasOhms: number;
  /** the pip of a crystal's second harmonic over that of the crystal itself */
  readonly crystalHarmonics: number;
  /** what the tube picks up at mains rate while the earth strap is off, volts peak */
  readonly strapHumVolts: number;
  /** how far the tube's Y gain is out, as a share of what its knob says: at 0.2 a volt stands a fifth taller */
  readonly yGainError: number;
}

/** Where the scenario says nothing: there to be seen, never in the way. */
export const MILD_LIFE: Life = {
  noise: 0.4,
  cold: false,
  driftFarads: 0.2e-12,
  biasHumVolts: 0.01,
  supplyHum: 0.004,
  unevenDb: 0.1,
  leakageDb: -78,
  harmonicDb: -30,
  handFarads: 0.02e-12,
  biasKnobError: 0.02,
  biasOhms: 1000,
  crystalHarmonics: 0.4,
  strapHumVolts: 0.08,
  yGainError: 0,
};

/** A bench as clean as a drawing, while its strap is on. */
export const NO_LIFE: Life = {
  noise: 0,
  cold: false,
  driftFarads: 0,
  biasHumVolts: 0,
  supplyHum: 0,
  unevenDb: 0,
  leakageDb: null,
  harmonicDb: null,
  handFarads: 0,
  biasKnobError: 0,
  biasOhms: 0,
  crystalHarmonics: 0,
  strapHumVolts: 0.08,
  yGainError: 0,
};

/** `life` of a scenario, what it leaves out being mild. */
export function lifeOf({ life }: { readonly life?: Partial<Life> }): Life {
  return { ...MILD_LIFE, ...life };
}
