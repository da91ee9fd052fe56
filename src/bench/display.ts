/** What the learner can see: the beam, the marker tags, the needle and the dials. Nothing here knows the answer. */

export interface BeamPoints {
  /** x, y, energy for each point: x in divisions from the centre (right positive), y in divisions (up positive); energy sums to the brightness knob's figure over a mains period. One buffer, written anew by the next display: copy it to keep it */
  readonly data: Float32Array;
  readonly count: number;
}

export interface MarkerTag {
  readonly hz: number;
  /** 1, 2, 3... in order of frequency for crystals; null for the tunable marker and comb lines */
  readonly number: number | null;
  /** `unnamed`: a pip that may not say whose it is; its number counts from the left, and it has no frequency */
  readonly kind: 'crystal' | 'tunable' | 'comb' | 'unnamed';
  /** where its pip stands on the forward trace, divisions from the centre; null when off the sweep */
  readonly xDiv: number | null;
}

export interface BenchDisplay {
  readonly beam: BeamPoints;
  readonly tags: readonly MarkerTag[];
  /** what the needle shows, volts, and whether it lies on its stop */
  readonly meterVolts: number;
  readonly meterPinned: boolean;
  /** 400 Hz tone at the detector, volts rms (0 unless the source sends one) */
  readonly toneVolts: number;
  /** note of a standing source against the nearest marker, hertz; null where none is heard */
  readonly beatHz: number | null;
  /** strength of mains hum on the trace, divisions */
  readonly humDiv: number;
  /** how far the set's noise strays on the trace where it strays most, rms, divisions */
  readonly grassDiv: number;
  /** why the face is dark or flat, if it is: for the screen reader and the tube's own note */
  readonly note: 'none' | 'noX' | 'noY' | 'noSignal' | 'powerOff' | 'heating' | 'offScreen';
}
