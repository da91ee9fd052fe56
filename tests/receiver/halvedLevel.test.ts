/**
 * What a healthy set's picture does when the level is halved and the Y gain doubled: the diode's law bends towards a square at its foot, so the curve's shape is not quite
 * kept. How much that is at each sheet's own level is what the handbook's page on overload says: up to a tenth of the height, and little of it near the top.
 */
import { describe, expect, it } from 'vitest';
import { detectEnvelope } from '../../src/physics/diode.ts';
import { createDetectedLevels } from '../../src/receiver/detectedLevels.ts';
import type { EnvelopeDetector } from '../../src/receiver/receiver.ts';
import { overload } from '../../src/words/en/handbook/overload.ts';
import { shippedLibrary } from '../files/shipped.ts';

/** Carrier that makes so many volts: the law rises. */
function carrierFor(volts: number, detector: EnvelopeDetector): number {
  let [low, high] = [0, 100];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (detectEnvelope(middle, detector) < volts) low = middle;
    else high = middle;
  }
  return low;
}

/** Largest change of height over the height, between two shares of the carrier's peak. */
function change(detector: EnvelopeDetector, peak: number, from: number, to: number): number {
  let worst = 0;
  for (let i = 0; i <= 100; i++) {
    const share = from + ((to - from) * i) / 100;
    const at = (volts: number) => detectEnvelope(share * volts, detector) / detectEnvelope(volts, detector);
    worst = Math.max(worst, Math.abs(at(peak) - at(peak / 2)));
  }
  return worst;
}

const SETS = [...shippedLibrary().receivers.values()].flatMap(({ receiver, deck }) =>
  receiver.responses.flatMap((response) => {
    const point = receiver.testPoints.find((p) => p.id === response.setUp.observeAt);
    const detector = receiver.detectors.find((d) => d.id === point?.detector);
    if (detector?.kind !== 'envelope' || response.setUp.source !== 'sweep') return [];
    const peak = carrierFor(createDetectedLevels(receiver, deck, response).referenceDetectedVolts, detector);
    return [[`${receiver.id}, ${response.id}`, detector, peak] as const];
  }),
);

describe('the level halved at the level of the sheet', () => {
  it.each(SETS)(
    '%s: the foot moves by a tenth of the height at most, the top quarter by a twentieth',
    (_, detector, peak) => {
      expect(change(detector, peak, 0, 1)).toBeLessThan(0.1);
      expect(change(detector, peak, 3 / 4, 1)).toBeLessThan(0.05);
    },
  );

  it('there are such sets, and in some of them it is to be seen', () => {
    expect(SETS.length).toBeGreaterThan(3);
    expect(Math.max(...SETS.map(([, detector, peak]) => change(detector, peak, 0, 1)))).toBeGreaterThan(0.05);
  });

  it('the handbook says a tenth', () => {
    expect(JSON.stringify(overload.blocks)).toContain('by up to a tenth of the height');
  });
});
