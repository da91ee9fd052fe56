/**
 * The decks of the shipped receivers against ngspice: every node at 281 frequencies over the range of every response, as designed and with each slug at either end of
 * its travel. All sources are on, so that parts that are joined only by a mixer or a detector are driven too. Outside source: ngspice, as packaged in eecircuit-engine.
 */

import { describe, expect, test } from 'vitest';
import { shippedLibrary, shippedTexts } from '../files/shipped.ts';
import { solved } from './decks.ts';
import { runSpice, withInductances } from './ngspice.ts';

const TEXTS = shippedTexts();
const RECEIVERS = [...shippedLibrary().receivers.values()].map(({ receiver }) => receiver);

/** The deck with all sources on and 281 points over a range. */
function driven(id: string, fromHz: number, toHz: number): string {
  return TEXTS[`receivers/${id}/network.cir`]!.replace(/^(I\S+\s+\S+\s+\S+).*$/gim, '$1 AC 1u').replace(
    /^\.ac .*$/im,
    `.ac lin 281 ${fromHz} ${toHz}`,
  );
}

interface Comparison {
  readonly worst: number;
  readonly live: number;
  readonly nodes: number;
}

/** Largest difference from ngspice, of each voltage by itself, over all nodes and frequencies; and how many nodes carry a signal. */
async function compared(text: string, set: Readonly<Record<string, number>>): Promise<Comparison> {
  const spice = await runSpice(withInductances(text, set));
  const solver = solved(text, spice.hz);
  for (const [element, henries] of Object.entries(set)) solver.setValue(element, henries);
  solver.solve();
  expect(spice.hz).toHaveLength(281);
  expect(solver.nodeNames.map((name) => name.toLowerCase()).sort()).toEqual([...spice.nodes.keys()].sort());
  let worst = 0;
  let live = 0;
  for (const [name, { re, im }] of spice.nodes) {
    const [ours, oursIm] = [solver.real(name), solver.imag(name)];
    expect(ours).toHaveLength(re.length);
    for (let f = 0; f < re.length; f++) {
      const size = Math.hypot(re[f]!, im[f]!);
      const off = Math.hypot(ours[f]! - re[f]!, oursIm[f]! - im[f]!);
      worst = Math.max(worst, off === 0 ? 0 : off / size);
    }
    if (re.some((v) => v !== 0)) live++;
  }
  return { worst, live, nodes: spice.nodes.size };
}

test('all thirteen are there', () => {
  expect(RECEIVERS.length).toBeGreaterThanOrEqual(13);
});

describe.each(RECEIVERS.map((receiver) => [receiver.id, receiver] as const))(
  '%s agrees with ngspice within 1e-10 of each voltage',
  (id, { responses, adjusters }) => {
    test.each(responses.map((r) => [r.id, r.specification.fromHz, r.specification.toHz] as const))(
      'response %s, %d to %d Hz, as designed',
      async (_, fromHz, toHz) => {
        const { worst, live, nodes } = await compared(driven(id, fromHz, toHz), {});
        expect(worst).toBeLessThan(1e-10);
        expect(live).toBe(nodes);
      },
    );

    test.each(adjusters.map((a) => [a.id, a] as const))('slug %s at both ends of its travel', async (_, adjuster) => {
      const { element, ganged, nominalHenries, minHenries, maxHenries } = adjuster;
      const { fromHz, toHz } = responses[0]!.specification;
      const text = driven(id, fromHz, toHz);
      const coils = solved(text);
      for (const henries of [minHenries, maxHenries]) {
        const set: Record<string, number> = { [element]: henries };
        for (const other of ganged) set[other] = (coils.value(other) * henries) / nominalHenries;
        expect((await compared(text, set)).worst).toBeLessThan(1e-10);
      }
    });
  },
);
