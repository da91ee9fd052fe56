/**
 * What stands where on a vision IF curve, by the channel plan. In the IF the channel is turned round: sound lies below vision by their distance, the colour carrier by
 * its own; the neighbours' carriers lie just outside. System M: channel 6 MHz, sound 4.5, colour 3.579545; system B: 7, 5.5, 4.43361875, and the neighbour's sound
 * 1.5 MHz above vision in both (ITU-R BT.470, from memory).
 */
import type { Landmark } from './drill.ts';

interface Channel {
  readonly widthHz: number;
  readonly soundHz: number;
  readonly colourHz: number;
}

const M: Channel = { widthHz: 6e6, soundHz: 4.5e6, colourHz: 3.579545e6 };
const B: Channel = { widthHz: 7e6, soundHz: 5.5e6, colourHz: 4.43361875e6 };

interface VisionIf {
  readonly visionHz: number;
  readonly channel: Channel;
  /** the set is made for colour, or was kept in use with it */
  readonly colour: boolean;
}

const VISION_IFS: Readonly<Record<string, VisionIf>> = {
  'video-valve-45m': { visionHz: 45.75e6, channel: M, colour: true },
  'video-solid-45m': { visionHz: 45.75e6, channel: M, colour: true },
  'video-b-38m9': { visionHz: 38.9e6, channel: B, colour: true },
  'video-early-25m': { visionHz: 25.75e6, channel: M, colour: false },
};

export const VISION_SETS: readonly string[] = Object.keys(VISION_IFS);

/** In order of frequency. */
export function landmarksOf(receiver: string): ReadonlyMap<Landmark, number> {
  const { visionHz, channel, colour } = VISION_IFS[receiver]!;
  const { widthHz, soundHz, colourHz } = channel;
  return new Map<Landmark, number>([
    ['adjacentVision', visionHz - widthHz],
    ['sound', visionHz - soundHz],
    ...(colour ? ([['colour', visionHz - colourHz]] as const) : []),
    ['middle', visionHz - soundHz / 2.4],
    ['vision', visionHz],
    ['adjacentSound', visionHz + widthHz - soundHz],
  ]);
}
