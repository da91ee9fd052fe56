/**
 * System M frequency plan. Sources: 47 CFR 73.682(a)(1)-(6), 2006 edition (channel, carriers, subcarrier, line and field rates); 47 CFR 73.603(a) (channel table);
 * channels 70-83, and 45.75 and 25.75 MHz as usual vision intermediate frequencies: trade practice, texts of the period (from memory).
 */

import { describe, expect, test } from 'vitest';
import {
  adjoiningChannels,
  COLOUR_SUBCARRIER_HZ,
  channelOscillatorHz,
  channelPlan,
  FIELD_HZ,
  INTERCARRIER_HZ,
  imageHz,
  intermediatePlan,
  LINE_HZ,
} from '../../src/receiver/frequencyPlan.ts';

const near = (hz: number, mhz: number) => expect(Math.abs(hz / (mhz * 1e6) - 1)).toBeLessThan(1e-12);

test.each([
  [2, 54, 55.25, 59.75],
  [3, 60, 61.25, 65.75],
  [4, 66, 67.25, 71.75],
  [5, 76, 77.25, 81.75],
  [6, 82, 83.25, 87.75],
  [7, 174, 175.25, 179.75],
  [13, 210, 211.25, 215.75],
  [14, 470, 471.25, 475.75],
  [37, 608, 609.25, 613.75],
  [69, 800, 801.25, 805.75],
  [83, 884, 885.25, 889.75],
])('channel %d: from %d MHz, vision %d, sound %d', (number, low, vision, sound) => {
  const channel = channelPlan(number);
  near(channel.lowHz, low);
  near(channel.highHz, low + 6);
  near(channel.visionHz, vision);
  near(channel.soundHz, sound);
});

test('channel 4: colour subcarrier at 70.829545 MHz (within 1 Hz)', () => {
  expect(Math.abs(channelPlan(4).colourHz - 70.829545e6)).toBeLessThan(1);
});

test.each([0, 1, 84, 4.5, Number.NaN])('there is no channel %d', (number) => {
  expect(() => channelPlan(number)).toThrow(RangeError);
});

test('channels 4 and 5, 6 and 7, 13 and 14 do not adjoin; the others do', () => {
  for (let n = 2; n < 83; n++) {
    const apart = n === 4 || n === 6 || n === 13;
    expect(adjoiningChannels(n).above?.number ?? null).toBe(apart ? null : n + 1);
    expect(adjoiningChannels(n + 1).below?.number ?? null).toBe(apart ? null : n);
  }
  expect(adjoiningChannels(2).below).toBeNull();
  expect(adjoiningChannels(83).above).toBeNull();
});

test('subcarrier 3 579 545.4545 Hz (63/88 of 5 MHz, within 10 Hz of 3.579545); lines and fields follow from it', () => {
  expect(Math.abs(COLOUR_SUBCARRIER_HZ - (63 / 88) * 5e6)).toBeLessThan(1e-6);
  expect(Math.abs(COLOUR_SUBCARRIER_HZ - 3.579545e6)).toBeLessThan(10);
  // The rule prints 15,734.264 +- 0.044 Hz.
  expect(Math.abs(LINE_HZ - 15_734.264)).toBeLessThan(0.044);
  expect(Math.abs(FIELD_HZ - 59.9400599)).toBeLessThan(1e-6);
  expect(Math.abs((286 * LINE_HZ) / INTERCARRIER_HZ - 1)).toBeLessThan(1e-6);
  expect(COLOUR_SUBCARRIER_HZ / LINE_HZ).toBeCloseTo(227.5, 9);
});

describe('vision IF 45.75 MHz', () => {
  test('sound 41.25, colour 42.170455, sound of the channel below 47.25, vision of the one above 39.75', () => {
    const plan = intermediatePlan(45.75e6);
    near(plan.visionHz, 45.75);
    near(plan.soundHz, 41.25);
    near(plan.adjacentSoundHz, 47.25);
    near(plan.adjacentVisionHz, 39.75);
    expect(Math.abs(plan.colourHz - 42.170455e6)).toBeLessThan(1);
  });

  test('channel 4: oscillator 113.00 MHz brings its sound to 41.25 and its neighbour below to 47.25', () => {
    const oscillator = channelOscillatorHz(4, 45.75e6);
    near(oscillator, 113);
    near(oscillator - channelPlan(4).soundHz, 41.25);
    near(oscillator - adjoiningChannels(4).below!.soundHz, 47.25);
  });

  test.each([
    [2, 146.75],
    [4, 158.75],
    [6, 174.75],
    [13, 302.75],
  ])('channel %d: image of vision at %d MHz', (number, image) => {
    near(imageHz(channelPlan(number).visionHz, 45.75e6), image);
  });

  test('the image of channel 6 falls into channel 7', () => {
    const image = imageHz(channelPlan(6).visionHz, 45.75e6);
    expect(image).toBeGreaterThan(channelPlan(7).lowHz);
    expect(image).toBeLessThan(channelPlan(7).highHz);
  });
});

test('vision IF 25.75 MHz: sound 21.25, neighbours 27.25 and 19.75; channel 2 oscillator 81.00', () => {
  const plan = intermediatePlan(25.75e6);
  near(plan.soundHz, 21.25);
  near(plan.adjacentSoundHz, 27.25);
  near(plan.adjacentVisionHz, 19.75);
  near(channelOscillatorHz(2, 25.75e6), 81);
});

test('sound and colour beat at 0.920455 MHz (within 1 Hz)', () => {
  expect(Math.abs(INTERCARRIER_HZ - COLOUR_SUBCARRIER_HZ - 0.9204545e6)).toBeLessThan(1);
});

test('images of broadcast radio: 1000 kHz with 455 kHz at 1910 kHz; 88.1 MHz with 10.7 MHz above the band at 109.5', () => {
  near(imageHz(1000e3, 455e3), 1.91);
  near(imageHz(88.1e6, 10.7e6), 109.5);
});
