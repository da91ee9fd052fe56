/** What a little capacitance more or less does to a circuit's peak, solved, against the differential of the resonance formula, df/f = -dC / 2C (Terman, Radio Engineers' Handbook, 1943, from memory). */
import { expect, test } from 'vitest';
import { solved } from '../physics/decks.ts';

/** Where a circuit of 12 pF and so many more, tuned without them to `hz`, has its peak. */
function peakHz(hz: number, moreFarads: number): number {
  const henries = 1 / ((2 * Math.PI * hz) ** 2 * 12e-12);
  const text = ['one circuit', 'I1 0 a AC 1m', 'C1 a 0 12p', `L1 a 0 ${henries}`, 'R1 a 0 100k', '.end'];
  const solver = solved(
    text.join('\n'),
    Float64Array.from({ length: 8001 }, (_, i) => hz + (i - 4000) * 100),
  );
  solver.setValue('C1', 12e-12 + moreFarads);
  solver.solve();
  const volts = solver.magnitude('a');
  return hz + (volts.indexOf(Math.max(...volts)) - 4000) * 100;
}

test('a valve that still lacks 0.1 pF puts 45.75 MHz up by 0.19 MHz (within 2 kHz)', () => {
  const cold = peakHz(45.75e6, -0.1e-12) - peakHz(45.75e6, 0);
  expect(Math.abs(cold - (45.75e6 * 0.1) / 24)).toBeLessThan(2e3);
  expect(cold / 1e6).toBeCloseTo(0.19, 2);
});

test('a hand of 0.02 pF near it puts 45 MHz down by 38 kHz (within 0.5 kHz)', () => {
  const touched = peakHz(45e6, 0) - peakHz(45e6, 0.02e-12);
  expect(Math.abs(touched - (45e6 * 0.02) / 24)).toBeLessThan(500);
});
