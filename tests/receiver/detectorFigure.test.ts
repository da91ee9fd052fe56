/** What the diode makes of the sheet's levels. */
import { describe, expect, it } from 'vitest';
import { detectEnvelope } from '../../src/physics/diode.ts';
import { BENCH_PROBE } from '../../src/receiver/benchProbe.ts';
import { createDetectorFigure, sheetDiode } from '../../src/receiver/detectorFigure.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { sourceVolts } from '../../src/receiver/sourceLevel.ts';
import { shippedLibrary, shippedReceiver } from '../files/shipped.ts';

const can = shippedReceiver('loose-can-10m7');
const strip = shippedReceiver('video-valve-45m');

describe('diodes', () => {
  // Source: the strip's own circuit takes the diode's input resistance as load / (2 x 0.87).
  it('of the valve strip gives 0.87 of 1 V peak in 4.7 kilohm', () => {
    expect(strip.receiver.detectors[0]!.loadOhms).toBe(4700);
    expect(detectEnvelope(1, strip.receiver.detectors[0]!)).toBeCloseTo(0.87, 2);
  });

  it('of the bench probe gives what its own note says', () => {
    expect(detectEnvelope(0.5, BENCH_PROBE) / 0.5).toBeCloseTo(0.86, 2);
    expect(detectEnvelope(2, BENCH_PROBE) / 2).toBeCloseTo(0.95, 2);
    expect(BENCH_PROBE.loadOhms * BENCH_PROBE.loadFarads).toBeCloseTo(9e-6, 12);
    expect(Math.abs(BENCH_PROBE.loadOhms / (2 * 0.95) / BENCH_PROBE.inputOhms - 1)).toBeLessThan(0.06);
  });

  it('stand where the sheet looks', () => {
    expect(sheetDiode(can.receiver, mainResponse(can.receiver))).toBe(BENCH_PROBE);
    expect(sheetDiode(strip.receiver, mainResponse(strip.receiver))).toBe(strip.receiver.detectors[0]);
  });
});

describe('the figure on the tube', () => {
  it.each(
    [...shippedLibrary().receivers.values()].flatMap(({ receiver, deck }) =>
      receiver.responses
        .filter(({ quantity }) => quantity.kind === 'carrier')
        .map((response) => [receiver.id, response.id, { receiver, deck, response }] as const),
    ),
  )(
    'of %s, %s, runs from nothing to the whole, lower than the carrier in between',
    (_, __, { receiver, deck, response }) => {
      const figure = createDetectorFigure(receiver, deck, response);
      expect(figure.onTube(0)).toBe(0);
      expect(figure.onTube(1)).toBeCloseTo(1, 12);
      let before = 0;
      for (let level = 0.05; level < 1; level += 0.05) {
        const shown = figure.onTube(level);
        expect(shown).toBeGreaterThan(before);
        expect(shown).toBeLessThan(level);
        before = shown;
      }
    },
  );

  // Source: level tables of the two designs: 0.5083 V at the secondary with 22 mA (open circuit 1.65 V), 1.001 V at the detector with 0.14 microamps;
  // the attenuator's whole decibels are -2 (1.589 V) and -46 (0.1403 microamps).
  it('stands at the level of the sheet', () => {
    const canVolts = createDetectorFigure(can.receiver, can.deck, mainResponse(can.receiver));
    expect(canVolts.referenceCarrierVolts).toBeCloseTo((0.5083 / 0.022) * (sourceVolts(-2) / 75), 3);
    const stripVolts = createDetectorFigure(strip.receiver, strip.deck, mainResponse(strip.receiver));
    expect(stripVolts.referenceCarrierVolts).toBeCloseTo((1.001 / 1.4e-7) * 1.4e-5 * sourceVolts(-46), 2);
    expect(stripVolts.referenceDetectedVolts).toBeCloseTo(0.87, 2);
  });
});
