/** What the diode makes of the sheet's levels. */
import { describe, expect, it } from 'vitest';
import { detectEnvelope, diodeConductance } from '../../src/physics/diode.ts';
import { BENCH_PROBE } from '../../src/receiver/benchProbe.ts';
import { createDetectedLevels, sheetDiode } from '../../src/receiver/detectedLevels.ts';
import { mainResponse, responseById } from '../../src/receiver/responses.ts';
import { shippedLibrary, shippedReceiver } from '../files/shipped.ts';

const can = shippedReceiver('loose-can-10m7');
const strip = shippedReceiver('video-valve-45m');

describe('diodes', () => {
  // Source: the law of mean currents (oracles/detection.test.ts), solved with scipy 1.17: what a stiff circuit of 1 V peak would give.
  it('of the valve strip gives 0.87 of 1 V peak in 4.7 kilohm from a stiff circuit', () => {
    expect(strip.receiver.detectors[0]!.loadOhms).toBe(4700);
    expect(detectEnvelope(1, strip.receiver.detectors[0]!)).toBeCloseTo(0.87, 2);
  });

  it('of the bench probe gives what its own note says', () => {
    expect(detectEnvelope(0.5, BENCH_PROBE) / 0.5).toBeCloseTo(0.86, 2);
    expect(detectEnvelope(2, BENCH_PROBE) / 2).toBeCloseTo(0.95, 2);
    expect(BENCH_PROBE.loadOhms * BENCH_PROBE.loadFarads).toBeCloseTo(9e-6, 12);
    const kilohm = (volts: number): number => 1e-3 / diodeConductance(volts, BENCH_PROBE);
    expect([0.1, 0.5, 1].map((volts) => Math.round(kilohm(volts)))).toEqual([11, 40, 63]);
  });

  it('stand where the sheet looks', () => {
    const probe = sheetDiode(can.receiver, can.deck, mainResponse(can.receiver));
    expect(probe).toMatchObject({ ...BENCH_PROBE, harmonics: { hz: 10.7e6 } });
    const { saturationAmps, emissionVolts, loadOhms, loadFarads } = strip.receiver.detectors[0]!;
    const seen = sheetDiode(strip.receiver, strip.deck, mainResponse(strip.receiver));
    expect(seen).toMatchObject({ saturationAmps, emissionVolts, loadOhms, loadFarads });
    expect(seen.harmonics!.hz).toBe(44e6);
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
      const figure = createDetectedLevels(receiver, deck, response);
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

  // Source: the same equations written a second time with numpy and scipy 1.17 (see specification.test.ts).
  it('stands at the level of the sheet', () => {
    // As benches of engines before 0.7.0 have the probe.
    const canVolts = createDetectedLevels(can.receiver, can.deck, mainResponse(can.receiver), false);
    expect(canVolts.referenceCarrierVolts).toBeCloseTo(0.44379, 4);
    expect(canVolts.referenceDetectedVolts).toBeCloseTo(0.37536, 4);
    const stripVolts = createDetectedLevels(strip.receiver, strip.deck, mainResponse(strip.receiver));
    expect(stripVolts.referenceCarrierVolts).toBeCloseTo(1.13368, 3);
    expect(stripVolts.referenceDetectedVolts).toBeCloseTo(0.783, 3);
  });

  // Source: a time run of ngspice at 10.695 MHz, 200 steps a cycle, means and fundamental of the last 40 of 400 cycles.
  it('of the can has the pulses of the probe’s current in it', () => {
    const { referenceCarrierVolts, referenceDetectedVolts } = createDetectedLevels(
      can.receiver,
      can.deck,
      mainResponse(can.receiver),
    );
    expect(referenceCarrierVolts).toBeCloseTo(0.44402, 3);
    expect(referenceDetectedVolts).toBeCloseTo(0.37478, 4);
  });

  // The 30 pF let less of it through at the lower end; ngspice has the same curve in tests/oracles/probeInTime.test.ts.
  it('of a video amplifier under the probe goes by the frequency, too', () => {
    const { receiver, deck } = shippedReceiver('sound-4m5');
    const { onTube } = createDetectedLevels(receiver, deck, responseById(receiver, 'vid'));
    expect(onTube(1)).toBe(onTube(1, 2.5e6));
    expect(onTube(1, 0.55e6)).toBeLessThan(0.9 * onTube(1));
    expect(onTube(1, 4.8e6)).toBeGreaterThan(onTube(1));
  });
});
