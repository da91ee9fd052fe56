/**
 * The bench's own demodulator probe: what it puts across a test point and how its diode detects. It belongs to no receiver, but some sheets state
 * their curve "as seen with the probe", so the law lives here beside the receivers' own detectors.
 *
 * Input: 10 pF and the diode itself, a peak detector into 300 kilohm, which loads the point by its carrier: 11 kilohm at 0.1 V peak, 40 at 0.5 V, 63 at 1 V, where
 * load and point are short circuits to its pulses (what they do otherwise: probeDiode.ts).
 * The diode is germanium-like: n V_T = 27 mV, saturation current 5 microamps (middle of the small point-contact and gold-bonded types; from
 * memory). At 0.5 V peak it gives 0.86 V a volt, at 2 V peak 0.95; below about 0.1 V it is a square-law detector. 30 pF keeps the time
 * constant at 9 microseconds: a fifth of a degree of the mains, so that the probe itself does not part trace and retrace.
 */
export interface ProbeLaw {
  readonly inputFarads: number;
  readonly saturationAmps: number;
  /** n * V_T of the diode, volts */
  readonly emissionVolts: number;
  readonly loadOhms: number;
  readonly loadFarads: number;
  readonly harmonics: null;
  readonly polarity: 'positive' | 'negative';
}

export const BENCH_PROBE: ProbeLaw = {
  inputFarads: 10e-12,
  saturationAmps: 5e-6,
  emissionVolts: 0.027,
  loadOhms: 300e3,
  loadFarads: 30e-12,
  harmonics: null,
  polarity: 'positive',
};
