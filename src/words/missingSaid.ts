/** What there is to be said of a thing that is missing: the places and figures of the sheet. */

export interface MissingSaid {
  /** points on the chassis */
  readonly rf: string;
  readonly y: string;
  readonly earth: string;
  readonly probe: boolean;
  /** nothing but the level keeps the curve from the tube */
  readonly faint: boolean;
  /** all is joined and on, and the sweep leaves out a part of the band */
  readonly besideBand: boolean;
  /** twice the sweep meets the band, which then answers to the second harmonic of the source */
  readonly halfBand: boolean;
  /** the heaters are still coming up, so that a curve is missing or low by itself */
  readonly heating: boolean;
  /** outputs with the line each belongs on */
  readonly biases: readonly {
    readonly output: 'A' | 'B';
    readonly at: string;
    readonly volts: number;
    /** its knob says these volts already */
    readonly knobSays: boolean;
  }[];
  /** what is looked for is the beat of an oscillator, not a curve */
  readonly oscillator: boolean;
  readonly centreHz: number;
  readonly spanHz: number;
  readonly levelDb: number;
  readonly carrierHz: number | null;
  readonly video: boolean;
  readonly crystalsHz: readonly number[];
}
