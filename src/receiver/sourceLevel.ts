/** The sweep source's attenuator: 0 dB is 2 V peak, open circuit, behind 75 ohm. */

const FULL_SOURCE_VOLTS = 2;
export const SOURCE_OHMS = 75;
/** What a terminated lead ends in: the same. */
export const LEAD_OHMS = SOURCE_OHMS;

/** Open-circuit volts (peak) at an attenuator setting in decibels. */
export function sourceVolts(levelDb: number): number {
  return FULL_SOURCE_VOLTS * 10 ** (levelDb / 20);
}

/** How deep a video sweep modulates its carrier: shallow enough for a linear envelope. */
export const VIDEO_DEPTH = 0.3;

/** Nothing is driven or solved below this: neither the source nor the tunable marker, wherever their knobs stand, nor either side of a mixer. */
export const LOWEST_HZ = 10e3;
