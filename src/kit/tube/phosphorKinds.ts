/**
 * The three phosphors as layers of light. Each layer has its own time constant and runs through its colours as it gets brighter.
 * Persistence: P1 medium (some 25 ms to a tenth), P31 short, P7 a short blue-white flash over a long yellow tail
 * (classes of persistence as in the JEDEC register of phosphors, JEP16; the time constants are ours, from memory,
 * and P31 is lengthened to two frames of a screen so that its decay can be seen at all).
 */
import type { Phosphor as PhosphorKind } from '../../bench/benchState.ts';
import { LUT_SCALE, LUT_SIZE } from './phosphor.ts';

type Rgb = readonly [number, number, number];

export interface Layer {
  readonly tauSeconds: number;
  /** share of the beam's energy that this layer turns into light */
  readonly share: number;
  /** colour at brightness 0, a third, two thirds and full */
  readonly ramp: readonly [Rgb, Rgb, Rgb, Rgb];
}

const GREEN: Layer['ramp'] = [
  [62, 190, 136],
  [95, 224, 162],
  [182, 247, 210],
  [246, 255, 250],
];

export const LAYERS: Readonly<Record<PhosphorKind, readonly Layer[]>> = {
  P1: [{ tauSeconds: 0.045, share: 1, ramp: GREEN }],
  P31: [
    {
      tauSeconds: 0.022,
      share: 1,
      ramp: [
        [70, 190, 150],
        [104, 226, 180],
        [190, 248, 222],
        [246, 255, 252],
      ],
    },
  ],
  P7: [
    {
      tauSeconds: 0.75,
      share: 0.5,
      ramp: [
        [214, 130, 62],
        [255, 173, 98],
        [255, 201, 128],
        [255, 226, 170],
      ],
    },
    {
      tauSeconds: 0.022,
      share: 0.8,
      ramp: [
        [98, 150, 206],
        [140, 194, 236],
        [204, 232, 250],
        [248, 253, 255],
      ],
    },
  ],
};

/** Brightness to colour and cover: dim light is thin and coloured, bright light covers the glass and goes white. */
export function lightTable({ ramp }: Layer): Uint32Array {
  const lut = new Uint32Array(LUT_SIZE);
  for (let i = 0; i < LUT_SIZE; i++) {
    const light = 1 - Math.exp(-((i / LUT_SCALE) ** 0.7));
    const place = Math.min(2.9999, light ** 1.6 * 3);
    const step = Math.floor(place);
    const t = place - step;
    const mix = (c: 0 | 1 | 2): number => Math.round(ramp[step]![c] + (ramp[step + 1]![c] - ramp[step]![c]) * t);
    lut[i] = ((Math.round(255 * light) << 24) | (mix(2) << 16) | (mix(1) << 8) | mix(0)) >>> 0;
  }
  return lut;
}
