/** The sweep source's attenuator: 0 dB is 2 V peak, open circuit, behind 75 ohm. */

export const FULL_SOURCE_VOLTS = 2;
export const SOURCE_OHMS = 75;

/** Open-circuit volts (peak) at an attenuator setting in decibels. */
export function sourceVolts(levelDb: number): number {
  return FULL_SOURCE_VOLTS * 10 ** (levelDb / 20);
}

/** How deep a video sweep modulates its carrier: shallow enough for a linear envelope. */
export const VIDEO_DEPTH = 0.3;
