/** Figures that several kinds of fault share. Round figures of our own, no source. */
import { numberFrom } from '../faultField.ts';

export const OPEN_RESISTOR = 1e4;
export const OPEN_C = 1e-2;
/** Links and leads of some ohms are no parts that fail unseen. */
export const LEAST_OHMS = 100;
/** A load from the wrong drawer, as a share of the right one. */
export const WRONG_VALUE = 0.3;

export const ohms = numberFrom(1e-3, 1e9);
export const farads = numberFrom(1e-16, 1e-9);
