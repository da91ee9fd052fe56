/**
 * The shipped sheets against the standards' frequency plans. Sources: System M, 47 CFR 73.682(a)(1)-(6) (vision 1.25 MHz above the lower edge of a channel 6 MHz wide,
 * sound 4.5 MHz and colour subcarrier 63/88 of 5 MHz above vision), 73.603(a) (channel 7 from 174 MHz); System B, ITU-R BT.470 (channel 7 MHz wide, sound 5.5 MHz,
 * colour subcarrier 4.43361875 MHz above vision, from memory). Oscillator above the signal, so that the spectrum comes out turned round, and the vision intermediate
 * frequencies themselves: trade practice, texts of the period (from memory).
 */
import { describe, expect, test } from 'vitest';
import { shippedLibrary } from '../files/shipped.ts';

const SYSTEM_M = { widthHz: 6e6, soundHz: 4.5e6, colourHz: (63 / 88) * 5e6 };
const SYSTEM_B = { widthHz: 7e6, soundHz: 5.5e6, colourHz: 4.43361875e6 };
const CHANNEL_7_VISION_HZ = 174e6 + 1.25e6;

const { receivers } = shippedLibrary();
const receiverOf = (id: string) => receivers.get(id)!.receiver;
const trapsOf = (id: string): number[] =>
  receiverOf(id).adjusters.flatMap((a) => (a.trapHz === null ? [] : [a.trapHz]));
const crystalsOf = (id: string): readonly number[] => receiverOf(id).crystalsHz;
/** The nearest crystal of the rack. */
const crystalAt = (id: string, hz: number): number =>
  crystalsOf(id).reduce((best, f) => (Math.abs(f - hz) < Math.abs(best - hz) ? f : best));

describe.each([
  ['video-early-25m', 25.75e6, SYSTEM_M],
  ['video-valve-45m', 45.75e6, SYSTEM_M],
  ['video-solid-45m', 45.75e6, SYSTEM_M],
  ['colour-overall', 45.75e6, SYSTEM_M],
  ['front-to-detector', 45.75e6, SYSTEM_M],
  ['video-b-38m9', 38.9e6, SYSTEM_B],
])('%s, vision at %d Hz', (id, visionHz, { widthHz, soundHz }) => {
  const sound = visionHz - soundHz;
  const soundBelow = sound + widthHz;
  const visionAbove = visionHz - widthHz;

  test('each trap stands on the sound, on the sound of the channel below or on the vision of the one above (within 1 Hz)', () => {
    const traps = trapsOf(id);
    expect(traps.length).toBeGreaterThan(1);
    for (const hz of traps) {
      expect(Math.min(...[sound, soundBelow, visionAbove].map((f) => Math.abs(f - hz))), String(hz)).toBeLessThan(1);
    }
    expect(Math.min(...traps.map((hz) => Math.abs(hz - soundBelow)))).toBeLessThan(1);
  });

  test('the rack has a crystal for vision and for each trap, there or where the tuner takes it from (within 1 Hz)', () => {
    const oscillator = visionHz + CHANNEL_7_VISION_HZ;
    for (const hz of [visionHz, ...trapsOf(id)]) {
      const apart = [hz, oscillator - hz].map((f) => Math.abs(crystalAt(id, f) - f));
      expect(Math.min(...apart), String(hz)).toBeLessThan(1);
    }
  });
});

test.each([
  ['video-valve-45m', 45.75e6 - SYSTEM_M.colourHz],
  ['video-solid-45m', 45.75e6 - SYSTEM_M.colourHz],
  ['front-to-detector', 45.75e6 - SYSTEM_M.colourHz],
  ['front-to-detector', CHANNEL_7_VISION_HZ + SYSTEM_M.colourHz],
  ['video-b-38m9', 38.9e6 - SYSTEM_B.colourHz],
  ['chroma-3m58', SYSTEM_M.colourHz],
  ['colour-overall', SYSTEM_M.colourHz],
])('%s: a crystal for the colour subcarrier at %d Hz, to the ten kilohertz that is engraved on it', (id, hz) => {
  expect(Math.abs(crystalAt(id, hz) - hz)).toBeLessThanOrEqual(5e3);
});

test.each(['tuner-vhf', 'front-to-detector'])(
  '%s: channel 7, its vision, its sound and its oscillator (within 1 Hz)',
  (id) => {
    for (const hz of [CHANNEL_7_VISION_HZ, CHANNEL_7_VISION_HZ + SYSTEM_M.soundHz, CHANNEL_7_VISION_HZ + 45.75e6]) {
      expect(Math.abs(crystalAt(id, hz) - hz), String(hz)).toBeLessThan(1);
    }
    const oscillator = receiverOf(id).responses.find((response) => response.id === 'osc')!;
    expect(Math.abs(oscillator.specification.peaks[0]!.hz - (CHANNEL_7_VISION_HZ + 45.75e6))).toBeLessThan(1);
  },
);

test('sound section: its trap and its S-curve stand on the beat of sound and vision, 4.5 MHz (within 1 Hz)', () => {
  const receiver = receiverOf('sound-4m5');
  const centre = receiver.responses.find((response) => response.id === 's')!.specification.sCurve!.centreHz;
  for (const hz of [...trapsOf('sound-4m5'), centre]) expect(Math.abs(hz - SYSTEM_M.soundHz)).toBeLessThan(1);
});
