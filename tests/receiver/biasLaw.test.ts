/** The bias law against its published points, and the curve that it gives at each bias against figures reckoned another way. */
import { describe, expect, it } from 'vitest';
import { stageAtBias, unclampedVolts } from '../../src/receiver/biasLaw.ts';
import { highest, voltsAt } from '../../src/receiver/curveReading.ts';
import type { BiasLaw } from '../../src/receiver/receiver.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { createStatedResponse } from '../../src/receiver/statedResponse.ts';
import { shippedReceiver } from '../files/shipped.ts';

const strip = shippedReceiver('video-valve-45m');
const valve = strip.receiver.biasLines[0]!;
const sheet = mainResponse(strip.receiver);
const withBias = (volts: number) => {
  const biases = sheet.setUp.biases.map((b) => ({ ...b, volts }));
  return createStatedResponse(strip.receiver, strip.deck, { ...sheet, setUp: { ...sheet.setUp, biases } }).nominal;
};

/** A transistor of 2 mA at 2 V on its line; 300 ps of diffusion at 60 mS make 18 pF. */
const transistor: BiasLaw = {
  kind: 'proportional',
  referenceVolts: 2,
  scaleVolts: 2,
  capacitanceFarads: 18e-12,
  unclampedRestVolts: 2.5,
  unclampedVoltsPerDetectedVolt: -1,
};

describe('the valve law', () => {
  // Source: design sheet of the strip, semi-log law of a remote cut-off pentode: bias V, gm over reference, change of input pF, input resistance over
  // reference; printed to the digits given.
  it.each([
    [-1, 1.4918, 0.443, 0.67],
    [-2, 1.2214, 0.21, 0.819],
    [-3, 1, 0, 1],
    [-4.5, 0.7408, -0.279, 1.35],
    [-6, 0.5488, -0.518, 1.822],
    [-9, 0.3012, -0.902, 3.32],
    [-12, 0.1653, -1.187, 6.05],
    [-18, 0.0498, -1.554, 20.086],
    [-24, 0.015, -1.755, 66.686],
  ])('at %f V', (volts, gm, picofarads, resistance) => {
    const effect = stageAtBias(valve, volts);
    expect(Math.abs(effect.gmRelative - gm)).toBeLessThanOrEqual(0.00005);
    expect(Math.abs(effect.inputFarads * 1e12 - picofarads)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(1 / effect.inputConductanceRelative - resistance)).toBeLessThanOrEqual(0.0005);
  });

  it('goes on through zero without a step, and then out of its range', () => {
    const zero = stageAtBias(valve, 0);
    const over = stageAtBias(valve, 1e-9);
    expect(over.gmRelative).toBeCloseTo(zero.gmRelative, 6);
    expect(over.inputConductanceRelative).toBeCloseTo(zero.inputConductanceRelative, 6);
    expect(over.inputFarads).toBe(zero.inputFarads);
    let before = zero;
    for (let volts = 0.5; volts <= 15; volts += 0.5) {
      const now = stageAtBias(valve, volts);
      expect(now.gmRelative).toBeLessThan(before.gmRelative);
      expect(now.inputConductanceRelative).toBeGreaterThan(before.inputConductanceRelative);
      before = now;
    }
  });

  it('with the wrong sign takes the strip more than 20 dB down', () => {
    const right = withBias(-3);
    const wrong = withBias(3);
    const { fromHz, toHz } = sheet.specification;
    const drop = highest(right, fromHz, toHz).volts / highest(wrong, fromHz, toHz).volts;
    expect(20 * Math.log10(drop)).toBeGreaterThan(20);
  });
});

describe('the transistor law', () => {
  // Source: design table of a solid-state strip, gm in step with collector current, dC = gm_ref tau (gm_rel - 1) with tau = 300 ps: current over 2 mA,
  // gm, pF, resistance.
  it('follows the current', () => {
    const more = stageAtBias(transistor, 3);
    expect(more.gmRelative).toBeCloseTo(1.5, 12);
    expect(more.inputFarads * 1e12).toBeCloseTo(9, 9);
    expect(1 / more.inputConductanceRelative).toBeCloseTo(0.667, 3);
    expect(stageAtBias(transistor, 2)).toEqual({ gmRelative: 1, inputFarads: 0, inputConductanceRelative: 1 });
  });

  it('is off without current and with the wrong sign, but never backwards', () => {
    for (const volts of [0, -0.5, -5]) {
      const effect = stageAtBias(transistor, volts);
      expect(effect.gmRelative).toBeGreaterThan(0);
      expect(effect.gmRelative).toBeLessThan(0.001);
    }
  });
});

describe('the curve of the strip with its line at a bias', () => {
  // Source: the same equations written a second time with numpy and scipy 1.17 (see specification.test.ts), the strip's deck with gm, input capacitor and input resistor
  // of V1 and V2 set by the law, all at the sheet's level; level relative to the peak of a dense sweep, three decimals; peak gain in dB relative to -3 V, two decimals.
  const MHZ = [45.75, 45, 44.5, 44, 43.5, 43, 42.5, 42.17, 41.25, 46.5];
  it.each([
    [-1, 3.79, [0.569, 0.966, 0.99, 0.929, 0.865, 0.813, 0.754, 0.672, 0.078, 0.166]],
    [-2, 1.84, [0.536, 0.947, 0.999, 0.968, 0.936, 0.913, 0.85, 0.718, 0.061, 0.154]],
    [-3, 0, [0.494, 0.913, 0.992, 0.994, 0.997, 0.995, 0.891, 0.694, 0.043, 0.137]],
    [-4.5, -2.12, [0.397, 0.794, 0.906, 0.955, 0.995, 0.967, 0.754, 0.517, 0.025, 0.103]],
    [-6, -4.94, [0.331, 0.737, 0.885, 0.97, 0.995, 0.851, 0.571, 0.335, 0.016, 0.082]],
    [-9, -12.63, [0.246, 0.733, 0.959, 0.973, 0.725, 0.446, 0.227, 0.103, 0.01, 0.073]],
    [-12, -23.63, [0.299, 0.838, 0.982, 0.682, 0.424, 0.299, 0.158, 0.074, 0.009, 0.102]],
  ])('%f V', (volts, gainDb, wanted) => {
    const { fromHz, toHz } = sheet.specification;
    const reference = highest(withBias(-3), fromHz, toHz).volts;
    const curve = withBias(volts);
    const peak = highest(curve, fromHz, toHz).volts;
    expect(Math.abs(20 * Math.log10(peak / reference) - gainDb)).toBeLessThan(0.02);
    wanted.forEach((level, i) => {
      expect(Math.abs(voltsAt(curve, MHZ[i]! * 1e6) / peak - level), `${MHZ[i]} MHz`).toBeLessThan(0.002);
    });
  });
});

describe('the line left to itself', () => {
  it('moves with the detector, whichever sign the detector has', () => {
    expect(unclampedVolts(valve, 0)).toBe(valve.unclampedRestVolts);
    expect(unclampedVolts(valve, 0.2)).toBe(unclampedVolts(valve, -0.2));
    expect(unclampedVolts(valve, 0.2)).toBeLessThan(unclampedVolts(valve, 0.1));
  });
});
