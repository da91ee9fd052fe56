/** The sheet's demands measured on the shipped receivers, against figures reckoned another way; and laws that hold for any curve. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Specification } from '../../src/receiver/receiver.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import {
  evaluateSpecification,
  isInside,
  type SpecItemKind,
  widenSpecification,
} from '../../src/receiver/specification.ts';
import { specificationFrequencies } from '../../src/receiver/specificationGrid.ts';
import { createStatedResponse } from '../../src/receiver/statedResponse.ts';
import { shippedReceiver } from '../files/shipped.ts';

const can = shippedReceiver('loose-can-10m7');
const strip = shippedReceiver('video-valve-45m');

function nominalItems({ receiver, deck }: typeof can, probePulses = true) {
  const { nominal } = createStatedResponse(receiver, deck, mainResponse(receiver), undefined, probePulses);
  return evaluateSpecification(mainResponse(receiver).specification, nominal.hz, nominal.volts, null);
}

/**
 * Source: the same equations written a second time with numpy and scipy 1.17 (dense nodal solve, describing function by quadrature, probe by Bessel functions, the strip's
 * diode by harmonic balance at 44 MHz, each frequency's level by bisection), read from a dense sweep (3.33 kHz for the strip) by cubic splines; five printed digits.
 * Widths of band and centres in hertz, levels linear, the rest dB. The gain is against the nominal figure of the sheet, printed to five digits (0.0002 dB).
 * A notch was read as the lowest point of that sweep, so its figure is good to half a step.
 */
const HALF_STEP_HZ = 1667;
const CAN: Readonly<Record<string, number>> = {
  'point:10700000': 1,
  'point:10650000': 0.98882,
  'point:10750000': 0.98963,
  'point:10600000': 0.90008,
  'point:10800000': 0.90386,
  'point:10500000': 0.48052,
  'point:10900000': 0.48401,
  'point:10400000': 0.23789,
  'point:11000000': 0.23835,
  'window:10650000-10750000': 0.097623,
  'tilt:10600000-10800000': -0.036404,
  'bandwidth:-3': 294_658,
  'centre:-3': 568.75,
  'bandwidth:-6': 389_860,
  'gain:10700000': 0,
};
const STRIP: Readonly<Record<string, number>> = {
  'point:45750000': 0.49426,
  'point:45000000': 0.91323,
  'point:44500000': 0.99221,
  'point:44000000': 0.99433,
  'point:43500000': 0.99672,
  'point:43000000': 0.99523,
  'point:42500000': 0.89065,
  'point:42170000': 0.69418,
  'point:41250000': 0.043059,
  'point:46500000': 0.13748,
  'window:42900000-44700000': 0.18705,
  'tilt:43000000-44500000': 0.02646,
  'trap:47250000': -46.762,
  'notch:47250000': -17_850,
  'trap:39750000': -50.571,
  'notch:39750000': 17_780,
  'skirt:47600000-52000000': 0.0072979,
  'skirt:38000000-40400000': 0.025989,
  'gain:44000000': 0,
};

describe.each([
  ['loose can', can, CAN],
  ['valve strip', strip, STRIP],
] as const)('%s, slugs nominal', (_, loaded, simulated) => {
  // The second writing has the probe as a bench of 0.6.0 has it, in closed form.
  const items = nominalItems(loaded, false);

  it('has the items of the sheet, each once', () => {
    expect(items.map((item) => item.id).sort()).toEqual(Object.keys(simulated).sort());
  });

  it.each(Object.entries(simulated))('%s is %f', (id, value) => {
    const item = items.find((i) => i.id === id)!;
    const allowed = item.kind === 'notch' ? HALF_STEP_HZ : item.kind === 'gain' ? 2e-4 : Math.abs(value) * 3e-4;
    expect(Math.abs(item.measured - value)).toBeLessThanOrEqual(allowed);
  });

  it('is inside everywhere', () => {
    expect(items.filter((item) => !isInside(item))).toEqual([]);
    expect(nominalItems(loaded).filter((item) => !isInside(item))).toEqual([]);
  });
});

/** A sheet with one of each kind, on the strip. */
const everyKind: Specification = {
  ...mainResponse(strip.receiver).specification,
  peaks: [{ hz: 44e6, toleranceHz: 3e6, weight: 1 }],
  bandwidths: [{ levelDb: -6, minHz: 3e6, maxHz: 4e6, centreHz: 44e6, centreToleranceHz: 100e3, weight: 1 }],
};
const KINDS: readonly SpecItemKind[] = [
  'point',
  'window',
  'tilt',
  'trap',
  'notch',
  'skirt',
  'bandwidth',
  'centre',
  'gain',
  'peak',
];

describe('any curve', () => {
  const response = createStatedResponse(
    strip.receiver,
    strip.deck,
    mainResponse(strip.receiver),
    specificationFrequencies(everyKind),
  );
  const away = fc.array(fc.double({ min: -6, max: 6, noNaN: true }), { minLength: 9, maxLength: 9 });
  const curveOf = (turns: readonly number[]) =>
    response.solve(Object.fromEntries(strip.receiver.adjusters.map((a, i) => [a.id, nominalTurns(a) + turns[i]!])));

  it('gives finite figures of every kind with unique names and tolerances above zero', () => {
    fc.assert(
      fc.property(away, (turns) => {
        const { hz, volts } = curveOf(turns);
        const items = evaluateSpecification(everyKind, hz, volts, response.nominal);
        expect(new Set(items.map((i) => i.id)).size).toBe(items.length);
        expect(new Set(items.map((i) => i.kind))).toEqual(new Set(KINDS));
        for (const item of items) {
          expect(Number.isFinite(item.measured), item.id).toBe(true);
          expect(item.tolerance, item.id).toBeGreaterThan(0);
        }
      }),
      { numRuns: 40, seed: 1 },
    );
  });

  it('measures the same at any level, but for the gain', () => {
    fc.assert(
      fc.property(away, fc.double({ min: -60, max: 60, noNaN: true }), (turns, db) => {
        const { hz, volts } = curveOf(turns);
        const plain = evaluateSpecification(everyKind, hz, volts, response.nominal);
        const louder = volts.map((v) => v * 10 ** (db / 20));
        evaluateSpecification(everyKind, hz, louder, response.nominal).forEach((item, i) => {
          const shift = item.kind === 'gain' ? db : 0;
          const slack = item.unit === 'hz' ? 1 : 1e-9;
          expect(Math.abs(item.measured - plain[i]!.measured - shift), item.id).toBeLessThan(slack);
        });
      }),
      { numRuns: 20, seed: 2 },
    );
  });

  it('that is inside a sheet is inside a wider one', () => {
    fc.assert(
      fc.property(away, fc.double({ min: 1, max: 5, noNaN: true }), (turns, factor) => {
        const small = turns.map((t) => t / 20);
        const { hz, volts } = curveOf(small);
        const wide = evaluateSpecification(widenSpecification(everyKind, factor), hz, volts, response.nominal);
        evaluateSpecification(everyKind, hz, volts, response.nominal).forEach((item, i) => {
          if (isInside(item)) expect(isInside(wide[i]!), item.id).toBe(true);
          expect(wide[i]!.id).toBe(item.id);
          if (item.low !== null && item.high !== null) {
            expect(wide[i]!.high! - wide[i]!.low!).toBeGreaterThanOrEqual((item.high - item.low) * (1 - 1e-12));
          }
        });
      }),
      { numRuns: 40, seed: 3 },
    );
    expect(widenSpecification(everyKind, 1)).toBe(everyKind);
  });

  it('that is dead measures as dead, without a figure that is none', () => {
    const dead = new Float64Array(response.nominal.hz.length);
    const items = evaluateSpecification(everyKind, response.nominal.hz, dead, response.nominal);
    expect(items.every((i) => Number.isFinite(i.measured))).toBe(true);
    expect(items.filter((i) => i.kind === 'point').every((i) => i.measured === 0)).toBe(true);
    expect(items.find((i) => i.kind === 'gain')!.measured).toBe(-200);
  });

  it('may be held against a level at a frequency instead of the peak', () => {
    const { hz, volts } = response.nominal;
    const spec = { ...everyKind, referenceHz: 45.75e6 };
    const item = evaluateSpecification(spec, hz, volts, null).find((i) => i.id === 'point:45750000')!;
    expect(item.measured).toBeCloseTo(1, 12);
  });
});

describe('the frequencies of a sheet', () => {
  it('rise, span the sheet, and hold every frequency that it names', () => {
    for (const spec of [mainResponse(can.receiver).specification, everyKind]) {
      const hz = specificationFrequencies(spec);
      expect(hz[0]).toBe(spec.fromHz);
      expect(hz.at(-1)).toBe(spec.toHz);
      for (let i = 1; i < hz.length; i++) expect(hz[i]!).toBeGreaterThan(hz[i - 1]!);
      const held = new Set(hz);
      for (const p of [...spec.points, ...spec.traps]) expect(held.has(p.hz), String(p.hz)).toBe(true);
      for (const w of [...spec.windows, ...spec.skirts]) expect(held.has(w.fromHz) && held.has(w.toHz)).toBe(true);
    }
  });
});
