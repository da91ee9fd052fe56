/** Figures at the bench, by name. */
import { format } from './figures.ts';

export const { written, said, aloud, frequency, width, eighths, clock } = format;
export const { offset, decibels, degrees, divisions, times, share, voltage, voltsPerDiv, biasVolts } = format.knob;
export const {
  frequency: typedFrequency,
  decibels: typedDecibels,
  degrees: typedDegrees,
  divisions: typedDivisions,
  times: typedTimes,
  share: typedShare,
  volts: typedVolts,
} = format.typed;
