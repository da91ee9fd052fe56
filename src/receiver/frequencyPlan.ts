/**
 * Where the carriers of a System M channel stand, on the air and behind a mixer whose oscillator runs above the signal.
 *
 * Channel edges: 54 + 6(n-2) for 2-4, 76 + 6(n-5) for 5-6, 174 + 6(n-7) for 7-13, 470 + 6(n-14) for 14-83 (MHz). Vision 1.25 MHz above the lower edge,
 * sound 4.5 MHz above vision, colour subcarrier 315/88 MHz above vision. Oscillator = vision + vision IF; the spectrum comes out turned round.
 * Source: 47 CFR 73.682(a) (carriers, subcarrier), 73.603(a) (channels 2-69); channels 70-83, withdrawn since, from memory.
 */

/** Colour subcarrier, hertz above vision: 63/88 of 5 MHz. */
export const COLOUR_SUBCARRIER_HZ = 315e6 / 88;
/** Sound above vision, hertz. */
export const INTERCARRIER_HZ = 4.5e6;
/** Lines and fields a second. */
export const LINE_HZ = (2 * COLOUR_SUBCARRIER_HZ) / 455;
export const FIELD_HZ = (2 * LINE_HZ) / 525;

const WIDTH_HZ = 6e6;
const VISION_ABOVE_EDGE_HZ = 1.25e6;

const BANDS = [
  { first: 2, last: 4, lowHz: 54e6 },
  { first: 5, last: 6, lowHz: 76e6 },
  { first: 7, last: 13, lowHz: 174e6 },
  { first: 14, last: 83, lowHz: 470e6 },
] as const;

/** A channel on the air, hertz. */
export interface Channel {
  readonly number: number;
  readonly lowHz: number;
  readonly highHz: number;
  readonly visionHz: number;
  readonly colourHz: number;
  readonly soundHz: number;
}

/** Throws a RangeError for a number that is no channel. */
export function channelPlan(number: number): Channel {
  const band = BANDS.find(({ first, last }) => Number.isInteger(number) && number >= first && number <= last);
  if (band === undefined) throw new RangeError(`there is no channel ${number}`);
  const lowHz = band.lowHz + WIDTH_HZ * (number - band.first);
  const visionHz = lowHz + VISION_ABOVE_EDGE_HZ;
  return {
    number,
    lowHz,
    highHz: lowHz + WIDTH_HZ,
    visionHz,
    colourHz: visionHz + COLOUR_SUBCARRIER_HZ,
    soundHz: visionHz + INTERCARRIER_HZ,
  };
}

/** The channels that lie edge to edge with this one: below and above, null where there is a gap or no channel. */
export function adjoiningChannels(number: number): { readonly below: Channel | null; readonly above: Channel | null } {
  const { lowHz, highHz } = channelPlan(number);
  const neighbour = (at: number, fits: (channel: Channel) => boolean): Channel | null => {
    if (!BANDS.some(({ first, last }) => at >= first && at <= last)) return null;
    const channel = channelPlan(at);
    return fits(channel) ? channel : null;
  };
  return {
    below: neighbour(number - 1, (channel) => channel.highHz === lowHz),
    above: neighbour(number + 1, (channel) => channel.lowHz === highHz),
  };
}

/** What stands where in the intermediate frequency, hertz. */
export interface IntermediatePlan {
  readonly visionHz: number;
  readonly colourHz: number;
  readonly soundHz: number;
  /** sound of the channel below */
  readonly adjacentSoundHz: number;
  /** vision of the channel above */
  readonly adjacentVisionHz: number;
}

export function intermediatePlan(visionIfHz: number): IntermediatePlan {
  return {
    visionHz: visionIfHz,
    colourHz: visionIfHz - COLOUR_SUBCARRIER_HZ,
    soundHz: visionIfHz - INTERCARRIER_HZ,
    adjacentSoundHz: visionIfHz + WIDTH_HZ - INTERCARRIER_HZ,
    adjacentVisionHz: visionIfHz - WIDTH_HZ,
  };
}

/** Oscillator for a channel, above the signal. */
export function channelOscillatorHz(number: number, visionIfHz: number): number {
  return channelPlan(number).visionHz + visionIfHz;
}

/** The other frequency that the same oscillator turns into the same IF: signal + 2 IF, the oscillator being above. */
export function imageHz(signalHz: number, ifHz: number): number {
  return signalHz + 2 * ifHz;
}
