/**
 * A source with its own current at each frequency: one part of a deck feeds another. Source: linearity of the nodal equations; the describing function as in
 * describingFunction.ts, done by quadrature here.
 */

import { describe, expect, test } from 'vitest';
import { fundamentalGainByQuadrature } from '../../src/physics/describingFunction.ts';
import { deckText, grid, solved } from './decks.ts';

const HZ = grid(440e3, 470e3, 61);
const ramp = HZ.map((_, i) => 1e-6 * (1 + i / 10));
const turn = HZ.map((_, i) => -2e-6 * Math.sin(i / 7));

function strip() {
  return solved(deckText('am-455k'), HZ);
}

describe('drive spectrum on the radio IF', () => {
  test('every node is the answer to one amp times the current at that frequency', () => {
    const solver = strip();
    solver.setDrive('Isig', 1);
    solver.solve();
    const unit = solver.nodeNames.map((node) => [solver.real(node).slice(), solver.imag(node).slice()] as const);
    solver.setDriveSpectrum('Isig', ramp, turn);
    solver.solve();
    for (const [n, node] of solver.nodeNames.entries()) {
      const [ur, ui] = unit[n]!;
      const size = Math.max(...solver.magnitude(node));
      for (let f = 0; f < HZ.length; f++) {
        expect(Math.abs(solver.real(node)[f]! - (ur[f]! * ramp[f]! - ui[f]! * turn[f]!))).toBeLessThan(1e-12 * size);
        expect(Math.abs(solver.imag(node)[f]! - (ur[f]! * turn[f]! + ui[f]! * ramp[f]!))).toBeLessThan(1e-12 * size);
      }
    }
  });

  test('the currents are copied, given anew they count, and setDrive ends them', () => {
    const solver = strip();
    const [re, im] = [ramp.slice(), turn.slice()];
    solver.setDriveSpectrum('Isig', re, im);
    re.fill(9);
    solver.solve();
    const first = solver.magnitude('det');
    expect(first[30]).toBeGreaterThan(0);
    solver.setDriveSpectrum(
      'Isig',
      ramp.map((x) => 2 * x),
      turn.map((x) => 2 * x),
    );
    solver.solve();
    const second = solver.magnitude('det');
    for (let f = 0; f < HZ.length; f++) expect(second[f]! / first[f]!).toBeCloseTo(2, 12);
    solver.setDrive('Isig', 1e-6);
    solver.solve();
    expect([...solver.magnitude('det')]).toEqual([...strip().magnitude('det')]);
  });

  test('saturation follows the current of each frequency', () => {
    const solver = strip();
    solver.setDriveSpectrum('Isig', ramp, turn);
    solver.solve();
    const [grid1, straight] = [solver.magnitude('g1'), solver.magnitude('det')];
    const limit = grid1[30]!;
    solver.setSaturation('G1', limit);
    solver.solve();
    const bent = solver.magnitude('det');
    for (let f = 0; f < HZ.length; f++) {
      expect(bent[f]! / straight[f]!).toBeCloseTo(fundamentalGainByQuadrature(grid1[f]! / limit), 6);
    }
    expect(bent[30]! / straight[30]!).toBeLessThan(0.9);
  });

  test('compression of a stage that is meant to saturate can be left out', () => {
    const solver = strip();
    solver.setDriveSpectrum('Isig', ramp, turn);
    solver.solve();
    const most = Math.max(...solver.magnitude('g1'));
    solver.setSaturation('G1', most / 3);
    solver.solve();
    const expected = -20 * Math.log10(fundamentalGainByQuadrature(3));
    expect(solver.worstCompressionDb()).toBeCloseTo(expected, 5);
    expect(solver.worstCompressionDb(['other'])).toBeCloseTo(expected, 5);
    expect(solver.worstCompressionDb(['G1'])).toBe(0);
    expect(solver.worstCompressionDb(['g1'])).toBe(0);
  });

  test('wrong use throws', () => {
    const solver = strip();
    expect(() => solver.setDriveSpectrum('C1p', ramp, turn)).toThrow('not a current source');
    expect(() => solver.setDriveSpectrum('Isig', ramp, turn.slice(1))).toThrow('imaginary');
    solver.setDriveSpectrum('Isig', ramp.slice(1), turn.slice(1));
    expect(() => solver.solve()).toThrow('one current for each frequency');
  });
});
