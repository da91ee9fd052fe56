/** Figures of a report, by name. */
import { format } from './figures.ts';

export const { written, frequency, width, clock, turns, turnsLong } = format;
export const { decibels, percent, offset, volts, degrees, figure } = format.score;
