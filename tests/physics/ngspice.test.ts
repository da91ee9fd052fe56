/**
 * Our solver against ngspice on every deck, at every node and frequency of its `.ac` line, with the slugs as designed and with each
 * slug at either end of its travel. Outside source: ngspice, as packaged in eecircuit-engine.
 */

import { describe, expect, test } from 'vitest';
import { DECK_IDS, deckText, SLUGS, solved } from './decks.ts';
import { runSpice, withInductances } from './ngspice.ts';

/** Largest |v - v_ngspice| / |v_ngspice| over all nodes and frequencies. */
async function worstDifference(text: string, set: Readonly<Record<string, number>>): Promise<number> {
  const spice = await runSpice(withInductances(text, set));
  const solver = solved(text, spice.hz);
  for (const [element, henries] of Object.entries(set)) solver.setValue(element, henries);
  solver.solve();
  expect(solver.nodeNames.map((name) => name.toLowerCase()).sort()).toEqual([...spice.nodes.keys()].sort());
  let worst = 0;
  for (const [name, { re, im }] of spice.nodes) {
    const [ours, oursIm] = [solver.real(name), solver.imag(name)];
    expect(ours).toHaveLength(re.length);
    for (let f = 0; f < re.length; f++) {
      const size = Math.hypot(re[f]!, im[f]!);
      worst = Math.max(worst, Math.hypot(ours[f]! - re[f]!, oursIm[f]! - im[f]!) / size);
    }
  }
  return worst;
}

describe.each(DECK_IDS)('%s agrees with ngspice within 1e-10 of each voltage', (id) => {
  const text = deckText(id);

  test('as designed, 281 frequencies', async () => {
    expect((await runSpice(text)).hz).toHaveLength(281);
    expect(await worstDifference(text, {})).toBeLessThan(1e-10);
  });

  test.each(SLUGS[id]!)('slug $element at both ends of its travel', async ({ element, ganged, nominal, min, max }) => {
    for (const henries of [min, max]) {
      const set: Record<string, number> = { [element]: henries };
      const coils = solved(text);
      for (const other of ganged) set[other] = (coils.value(other) * henries) / nominal;
      expect(await worstDifference(text, set)).toBeLessThan(1e-10);
    }
  });
});
