/** The response under the sheet's own conditions. */
import { describe, expect, it } from 'vitest';
import { editDeck } from '../../src/physics/editDeck.ts';
import { voltsAt } from '../../src/receiver/curveReading.ts';
import type { Receiver } from '../../src/receiver/receiver.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { createStatedResponse, sheetSiemens } from '../../src/receiver/statedResponse.ts';
import { shippedReceiver } from '../files/shipped.ts';

const can = shippedReceiver('loose-can-10m7');
const strip = shippedReceiver('video-valve-45m');
const ofCan = mainResponse(can.receiver);
const ofStrip = mainResponse(strip.receiver);

describe('the stated response', () => {
  // Source: the same equations written a second time with numpy and scipy 1.17 (see specification.test.ts), volts a milliampere and volts a microampere at the gain
  // frequency, five digits.
  it.each([
    ['loose can', can, 0.020951, 1e-3],
    ['valve strip', strip, 8.0327, 1e-6],
  ] as const)('of the %s has the level of its design', (_, { receiver, deck }, volts, amps) => {
    // The second writing has the probe as a bench of 0.6.0 has it, in closed form.
    const { nominal } = createStatedResponse(receiver, deck, mainResponse(receiver), undefined, false);
    const { hz, nominal: printed } = mainResponse(receiver).specification.gain!;
    expect(Math.abs((voltsAt(nominal, hz) * amps) / volts - 1)).toBeLessThan(3e-5);
    expect(Math.abs((printed * amps) / volts - 1)).toBeLessThan(1e-12);
  });

  it('forgets where the slugs stood before', () => {
    const response = createStatedResponse(strip.receiver, strip.deck, ofStrip);
    const first = response.solve({ T1: 3, A2: 15 });
    response.solve({ T4: 1, T5S: 19, A2: 2 });
    expect(response.solve({ T1: 3, A2: 15 }).volts).toEqual(first.volts);
    expect(response.solve({}).volts).toEqual(response.nominal.volts);
  });

  it('gives curves that later ones leave alone', () => {
    const response = createStatedResponse(can.receiver, can.deck, ofCan);
    const kept = response.solve({ T1B: 4 });
    const copy = Float64Array.from(kept.volts);
    response.solve({ T1B: 14 });
    expect(kept.volts).toEqual(copy);
  });

  it('takes a slug left out as nominal', () => {
    const response = createStatedResponse(can.receiver, can.deck, ofCan);
    const turns = Object.fromEntries(can.receiver.adjusters.map((a) => [a.id, nominalTurns(a)]));
    expect(response.solve(turns).volts).toEqual(response.nominal.volts);
  });

  it('moves every winding of a slug by the same factor', () => {
    const [bottom, top] = can.receiver.adjusters;
    const ganged: Receiver = { ...can.receiver, adjusters: [{ ...bottom!, ganged: [top!.element] }] };
    const turns = 12;
    // In closed form the probe knows nothing of what the deck's coils have before a slug is turned.
    const together = createStatedResponse(ganged, can.deck, ofCan, undefined, false).solve({ T1B: turns }).volts;
    const scaled = editDeck(can.deck, [{ kind: 'scale', name: top!.element, factor: henriesFactor(bottom!, turns) }]);
    const byHand = createStatedResponse(
      { ...can.receiver, adjusters: [bottom!] },
      scaled,
      ofCan,
      undefined,
      false,
    ).solve({ T1B: turns }).volts;
    together.forEach((v, i) => {
      expect(v / byHand[i]!).toBeCloseTo(1, 9);
    });
    const alone = createStatedResponse(can.receiver, can.deck, ofCan, undefined, false).solve({ T1B: turns }).volts;
    expect(together).not.toEqual(alone);
  });

  it('injects into a node as a Norton source of 75 ohm with the lead’s 75 ohm', () => {
    const response = { ...ofStrip, setUp: { ...ofStrip.setUp, injectAt: 'TP3' } };
    const { nominal } = createStatedResponse(strip.receiver, strip.deck, response);
    const driven = editDeck(strip.deck, [
      { kind: 'move', name: 'Isig', end: 1, node: 'p2' },
      { kind: 'add', element: { kind: 'R', name: 'Rby', nodes: ['p2', '0'], value: 37.5 } },
    ]);
    // As many amps for the volts of the source: the diode is loaded alike.
    const testPoints = strip.receiver.testPoints.map((p) =>
      p.inject?.kind === 'deckSource' ? { ...p, inject: { ...p.inject, siemens: 1 / 75 } } : p,
    );
    const byHand = createStatedResponse({ ...strip.receiver, testPoints }, driven, ofStrip).nominal;
    nominal.volts.forEach((v, i) => {
      expect(v / byHand.volts[i]!).toBeCloseTo(1, 9);
    });
    expect(sheetSiemens(strip.receiver, response)).toBe(1 / 75);
    expect(sheetSiemens(strip.receiver, ofStrip)).toBe(1.4e-5);
  });

  it('will not start where the sheet injects at no test point', () => {
    const response = { ...ofCan, setUp: { ...ofCan.setUp, injectAt: 'Earth' } };
    expect(() => createStatedResponse(can.receiver, can.deck, response)).toThrow('Earth');
  });
});

function henriesFactor(adjuster: Receiver['adjusters'][number], turns: number): number {
  const { minHenries: low, maxHenries: high, nominalHenries, travelTurns } = adjuster;
  // The law written out a second time, on purpose.
  const s = (1 + Math.tanh(1.2 * ((2 * turns) / travelTurns - 1)) / Math.tanh(1.2)) / 2;
  return (low + (high - low) * s) / nominalHenries;
}
