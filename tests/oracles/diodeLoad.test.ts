/**
 * What a loaded diode presents to its circuit. Sources: fundamental current of an exponential diode under a sine, Clarke and Hess, Communication Circuits, 1971
 * (from memory; derived again, figures computed with scipy.special.ive); limits Is / nVt and 2 / R, Terman (from memory).
 */

import { describe, expect, test } from 'vitest';
import { admittanceAt } from '../../src/physics/admittance.ts';
import { besselI1Scaled } from '../../src/physics/bessel.ts';
import { detectEnvelope, diodeConductance } from '../../src/physics/diode.ts';
import { createDiodeBalance, smallDiode } from '../../src/physics/diodeHarmonics.ts';
import { diodeLaw } from '../../src/physics/diodeLaw.ts';
import { detectorDiode } from '../../src/receiver/diodes.ts';
import { shippedReceiver } from '../files/shipped.ts';
import { tankHarmonics } from '../physics/decks.ts';

const VIDEO = { saturationAmps: 26e-6, emissionVolts: 0.027, loadOhms: 4700 };
const PROBE = { saturationAmps: 5e-6, emissionVolts: 0.027, loadOhms: 300e3 };

describe('conductance of the closed form', () => {
  test.each([
    ['vision diode', VIDEO, 0.1, 1608.71],
    ['vision diode', VIDEO, 1, 2401.17],
    ['probe', PROBE, 0.1, 11315.3],
    ['probe', PROBE, 0.5, 39971.3],
    ['probe', PROBE, 1, 63002.3],
  ])('%s, %o, at %d V presents %d ohm (within 1e-5)', (_, diode, volts, ohms) => {
    expect(Math.abs(1 / diodeConductance(volts, diode) / ohms - 1)).toBeLessThan(1e-5);
  });

  test('two diodes with loads of 23.5 kilohm each present about 12 kilohm each to a carrier of some volts', () => {
    const ohms = 1 / diodeConductance(3, { saturationAmps: 5e-6, emissionVolts: 0.027, loadOhms: 23.5e3 });
    expect(ohms).toBeGreaterThan(11.75e3);
    expect(ohms).toBeLessThan(12.2e3);
  });

  test('limits: Is / nVt for a carrier of nothing, 2 / R for a large one', () => {
    expect(diodeConductance(0, VIDEO)).toBe(VIDEO.saturationAmps / VIDEO.emissionVolts);
    expect(diodeConductance(1e-6, VIDEO) / diodeConductance(0, VIDEO)).toBeCloseTo(1, 7);
    expect((diodeConductance(500, PROBE) * PROBE.loadOhms) / 2).toBeCloseTo(1, 2);
  });

  test('the fundamental of the current by direct integration is the same (within 1e-9)', () => {
    for (const volts of [0.002, 0.05, 0.4, 3]) {
      const dc = detectEnvelope(volts, VIDEO);
      const n = 4000;
      let sum = 0;
      for (let i = 0; i < n; i++) {
        const c = Math.cos((2 * Math.PI * (i + 0.5)) / n);
        sum += (2 * c * VIDEO.saturationAmps * Math.expm1((volts * c - dc) / VIDEO.emissionVolts)) / n;
      }
      expect(Math.abs(sum / volts / diodeConductance(volts, VIDEO) - 1)).toBeLessThan(1e-9);
    }
  });

  test.each([
    // Abramowitz and Stegun, table 9.8 (from memory), figures checked with scipy.special.i1e.
    [0.2, 0.0822831235],
    [2, 0.2152692892],
    [10, 0.1212626814],
    [30, 0.0719163306],
  ])('exp(-x) I1(x) at %d is %d (nine figures)', (x, expected) => {
    expect(Math.abs(besselI1Scaled(x) - expected)).toBeLessThan(2e-10);
  });
});

describe('the balance of harmonics', () => {
  const stiff = { ...VIDEO, loadFarads: 1e-6, harmonics: tankHarmonics(1e-6, 44e6) };
  const real = { ...VIDEO, loadFarads: 8e-12, harmonics: tankHarmonics(12e-12, 44e6) };

  test('with capacitors that short the harmonics it is the closed form (within 1e-6)', () => {
    const at = createDiodeBalance(stiff);
    for (const volts of [0.003, 0.1, 0.5, 1, 3]) {
      const { g, b, volts: dc } = at(volts);
      expect(Math.abs(g / diodeConductance(volts, VIDEO) - 1)).toBeLessThan(1e-6);
      expect(Math.abs(b / g)).toBeLessThan(1e-4);
      expect(Math.abs(dc / detectEnvelope(volts, VIDEO) - 1)).toBeLessThan(1e-6);
    }
  });

  test('a carrier of nothing meets the diode as a resistor in series with its load', () => {
    const at = createDiodeBalance(real)(2e-5);
    const small = smallDiode(real);
    const own = VIDEO.emissionVolts / VIDEO.saturationAmps;
    const w = 2 * Math.PI * 44e6;
    // 1 / (r + R / (1 + j w R C)), written out.
    const x = w * 4700 * 8e-12;
    const [re, im] = [own + 4700 / (1 + x * x), (-4700 * x) / (1 + x * x)];
    const size = re * re + im * im;
    expect(small.g / (re / size)).toBeCloseTo(1, 12);
    expect(small.b / (-im / size)).toBeCloseTo(1, 12);
    expect(at.g / small.g).toBeCloseTo(1, 6);
    expect(at.b / small.b).toBeCloseTo(1, 6);
    expect(at.volts / 2e-5 ** 2 / small.volts).toBeCloseTo(1, 4);
  });

  test('the strip\u2019s diode on its 12 pF and the AM set\u2019s on 110 pF: the figures of docs/model.md', () => {
    const at = (id: string, share: number, volts: number) => {
      const { receiver, deck } = shippedReceiver(id);
      const [detector] = receiver.detectors;
      const hz = share * detector!.carrierHz;
      const diode = detectorDiode(deck, { ...detector!, carrierHz: hz });
      if (diode.harmonics === null) throw new Error('the balance of harmonics is wanted');
      const { g, b, volts: dc } = createDiodeBalance({ ...diode, harmonics: diode.harmonics })(volts);
      return { g, farads: b / (2 * Math.PI * hz), dc, closed: diodeConductance(volts, diode) };
    };
    const strip = at('video-valve-45m', 1, 1);
    expect(1 / strip.g).toBeCloseTo(3668, -1);
    expect(strip.farads * 1e12).toBeCloseTo(0.62, 2);
    expect(strip.dc).toBeCloseTo(0.684, 3);
    expect(1 / strip.closed).toBeCloseTo(2401, -1);
    // A tenth beside the middle of the band.
    const [under, over] = [at('video-valve-45m', 0.9, 1), at('video-valve-45m', 1.1, 1)];
    for (const [one, sign] of [
      [under, -1],
      [over, 1],
    ] as const) {
      expect(sign * (one.g / strip.g - 1)).toBeGreaterThan(0.035);
      expect(sign * (one.g / strip.g - 1)).toBeLessThan(0.05);
      expect(sign * (one.dc / strip.dc - 1)).toBeGreaterThan(0.02);
      expect(sign * (one.dc / strip.dc - 1)).toBeLessThan(0.03);
    }
    const am = at('am-455k', 1, 1);
    expect(am.closed / am.g - 1).toBeCloseTo(0.018, 3);
    expect(detectEnvelope(1, VIDEO) / am.dc - 1).toBeCloseTo(0.0095, 3);
  });

  test('power: what the carrier delivers goes into diode and load, and into no harmonic', () => {
    // Half of A^2 g is the fundamental's power at the node; the load takes at least V^2 / R of it.
    const at = createDiodeBalance(real);
    for (const volts of [0.05, 0.3, 1]) {
      const { g, volts: dc } = at(volts);
      expect((volts * volts * g) / 2).toBeGreaterThan((dc * dc) / VIDEO.loadOhms);
    }
  });

  test('its table is the balance itself (within 5e-5), its slope that of its values', () => {
    const { admittance, detect } = diodeLaw(real);
    const at = createDiodeBalance(real);
    const y = new Float64Array(4);
    const next = new Float64Array(4);
    for (let volts = 3e-4; volts < 12; volts *= 1.037) {
      const { g, b, volts: dc } = at(volts);
      admittanceAt(admittance, volts, y);
      expect(Math.abs(y[0]! / g - 1)).toBeLessThan(5e-5);
      expect(Math.abs(y[1]! / b - 1)).toBeLessThan(5e-5);
      expect(Math.abs(detect(volts) / dc - 1)).toBeLessThan(5e-5);
      admittanceAt(admittance, volts * (1 + 1e-6), next);
      expect(Math.abs((next[0]! - y[0]!) / (1e-6 * volts) - y[2]!)).toBeLessThan(1e-4 * (g / volts));
      expect(Math.abs((next[1]! - y[1]!) / (1e-6 * volts) - y[3]!)).toBeLessThan(1e-4 * (g / volts));
    }
  });

  test('beyond the table: the load stands still, the volts go on in a straight line', () => {
    const { admittance, detect } = diodeLaw(real);
    const y = new Float64Array(4);
    admittanceAt(admittance, 30, y);
    expect(y[0]).toBeGreaterThan(2e-4);
    expect(y[2]).toBe(0);
    expect((detect(33) - detect(23)) / (detect(15) - detect(12.5))).toBeCloseTo(4, 9);
    expect(detect(12.001) - detect(11.999)).toBeGreaterThan(0);
    expect(detect(12.001) - detect(11.999)).toBeLessThan(0.0025);
  });
});
