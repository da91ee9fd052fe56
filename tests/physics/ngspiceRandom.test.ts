/**
 * Our reader and solver against ngspice on circuits that nobody designed: feedback through G elements, floating parts, several sources
 * with phases, couplings of either sign. Outside source: ngspice, as packaged in eecircuit-engine.
 */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Circuit } from '../laws/randomNetworks.ts';
import { circuits, circuitText, isSolvable, SEED } from '../laws/randomNetworks.ts';
import { solved } from './decks.ts';
import { runSpice } from './ngspice.ts';

/** Coils all end on ground: a loop of coils has no direct-current solution, which ngspice looks for first. */
const grounded = (circuit: Circuit): Circuit => ({
  ...circuit,
  parts: circuit.parts.map((part) => (part.kind === 'L' ? { ...part, ends: [part.ends[0]!, 0] } : part)),
});

const sample = circuits({ stages: 4, maxNodes: 8 }).map(grounded).filter(isSolvable);
const second = fc.record({
  node: fc.nat(7),
  amps: fc.double({ min: 0.1, max: 5, noNaN: true }),
  degrees: fc.integer({ min: -180, max: 180 }),
});

test('60 random circuits: every node at 21 frequencies within 1e-9 of the largest voltage', async () => {
  let loops = 0;
  await fc.assert(
    fc.asyncProperty(sample, second, async (circuit, { node, amps, degrees }) => {
      const source = `I2 n${1 + (node % circuit.nodes)} 0 DC 1m AC ${amps} ${degrees}`;
      const text = circuitText(circuit, { from: 0, into: 1 }).replace(
        '.end',
        `${source}\n.ac lin 21 0.5meg 90meg\n.end`,
      );
      const spice = await runSpice(text);
      const solver = solved(text, spice.hz);
      if (solver.network.blocks.some((nodes) => nodes.length > 2)) loops++;
      for (let f = 0; f < spice.hz.length; f++) {
        let worst = 0;
        let largest = 0;
        for (const [name, { re, im }] of spice.nodes) {
          worst = Math.max(worst, Math.hypot(solver.real(name)[f]! - re[f]!, solver.imag(name)[f]! - im[f]!));
          largest = Math.max(largest, Math.hypot(re[f]!, im[f]!));
        }
        expect(worst / largest).toBeLessThan(1e-9);
      }
    }),
    { seed: SEED, numRuns: 60 },
  );
  expect(loops).toBeGreaterThan(20);
});
