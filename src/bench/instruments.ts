/**
 * The bench's own figures: what its source, leads, probe, meter and tube are made of. All invented for this bench unless a source is named;
 * each is an ordinary service-bench value (common practice, no source). The source's level and its lowest frequency are in receiver/sourceLevel.ts, the probe in
 * receiver/benchProbe.ts, because service sheets are written with them.
 */

/** A slow sweep goes once over its span while the mains goes through eight periods. */
export const SLOW_SWEEP_DIVISOR = 8;
/** How late the sweep may show a curve, of its narrowest width: beyond it the set-up loses by its speed (G60), and a sheet that asks for it is refused. */
export const MOST_SWEEP_LAG = 0.05;
/** What the smoothing switch puts across the Y input. */
export const SMOOTHING_FARADS = 10e-9;

/** The tone is 400 Hz at 30 per cent, the usual test modulation of service generators (common practice, no source). */
export const TONE_HZ = 400;
export const TONE_DEPTH = 0.3;

/** RF lead: 2 m of 75 ohm cable at two thirds of the speed of light; the source is matched no better than 1.5 to 1. */
const LEAD_SECONDS = 10e-9;
const SOURCE_REFLECTION = 0.2;
/** Without the earth strap the braid's current goes home by a longer way and comes back late. */
const STRAY_SECONDS = 30e-9;
const STRAY_REFLECTION = 0.12;

/**
 * Level at the end of the RF lead over what a terminated, earthed lead gives.
 *
 * With reflection r at the source and an open end, every echo comes back whole: factor = 2 / |1 - r exp(-2 j w T)|, so the level rises by about
 * 6 dB and ripples with a period of 1 / (2T), 50 MHz here: a tilt over any one receiver's band. Terminated, nothing comes back: factor 1.
 * Source: lossless line between mismatched ends, any lines text (from memory).
 */
export function leadFactor(hz: number, terminated: boolean, earthed: boolean): number {
  const line = terminated ? 1 : 2 * echo(SOURCE_REFLECTION, LEAD_SECONDS, hz);
  return earthed ? line : line * echo(STRAY_REFLECTION, STRAY_SECONDS, hz);
}

function echo(reflection: number, seconds: number, hz: number): number {
  const angle = 4 * Math.PI * hz * seconds;
  return 1 / Math.hypot(1 - reflection * Math.cos(angle), reflection * Math.sin(angle));
}

/** Y lead: a metre of screened cable with the tube's input at its end; the isolating resistor sits in its tip. */
export const Y_LEAD_FARADS = 100e-12;
export const ISOLATING_OHMS = 10e3;
/** Capacitance of a detector diode, through which the lead's own reaches the last coil when no resistor keeps it off. */
export const DIODE_FARADS = 1e-12;

/** The Y amplifier is good to 50 kHz, which is plenty at mains rate. */
export const TUBE_SECONDS = 1 / (2 * Math.PI * 50e3);
export const AC_COUPLING_HZ = 2;
/** The spot cannot leave the tube by more than this. */
export const DEFLECTION_LIMIT_DIV = 12;

/** Pick-up with the earth strap off: the second harmonic, from the rectifiers, over what comes at the mains frequency, and the angle of that. */
export const HUM_SECOND_SHARE = 0.25;
export const HUM_RADIANS = 0.7;
/** Noise of the Y amplifier, rms. */
export const NOISE_VOLTS = 0.1e-3;

export const METER_OHMS_PER_VOLT = 20e3;
/** What stands between an AGC line left to itself and the detector that feeds it. */
export const AGC_LINE_OHMS = 470e3;

/** A steel blade in a coil: 3 per cent more inductance, and a Q of 15 from the losses in it. */
export const STEEL_INDUCTANCE = 1.03;
export const STEEL_Q = 15;

/** Sent through the set, a marker of one division is a carrier of a tenth of the sweep's own level. */
export const THROUGH_PER_DIV = 0.1;

/** Graticule: ten divisions wide, eight high. */
export const HALF_WIDTH_DIV = 5;
export const HALF_HEIGHT_DIV = 4;
