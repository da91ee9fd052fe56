/** Random circuits for the laws, as plain parts that can be scaled, and the seed that they all start from. */

import fc from 'fast-check';
import { readDeck } from '../../src/physics/readDeck.ts';

export const SEED = 20_260_301;

export interface Part {
  readonly kind: 'R' | 'L' | 'C' | 'K' | 'G';
  /** nodes by number, 0 ground; for K the numbers of two coils */
  readonly ends: readonly number[];
  readonly value: number;
}

export interface Circuit {
  readonly nodes: number;
  readonly parts: readonly Part[];
}

const decade = (from: number, to: number): fc.Arbitrary<number> =>
  fc.double({ min: Math.log10(from), max: Math.log10(to), noNaN: true }).map((x) => Number((10 ** x).toPrecision(6)));

/**
 * Every node has a resistor and a capacitor to ground and a coil to ground or to another node; further R and C lie anywhere; neighbouring
 * coils are coupled by less than half, which keeps the inductance matrix positive definite. `stages` G elements lie anywhere.
 */
export function circuits(options: { readonly stages: number; readonly maxNodes?: number }): fc.Arbitrary<Circuit> {
  return fc.integer({ min: 1, max: options.maxNodes ?? 7 }).chain((nodes) => {
    const node = fc.integer({ min: 0, max: nodes });
    const own = fc.tuple(
      decade(50, 1e6),
      decade(1e-12, 2e-10),
      decade(1e-7, 1e-5),
      node,
      fc.double({ min: -0.45, max: 0.45, noNaN: true }),
    );
    const extra = fc.oneof(
      fc.record({ kind: fc.constant('R' as const), ends: fc.tuple(node, node), value: decade(50, 1e6) }),
      fc.record({ kind: fc.constant('C' as const), ends: fc.tuple(node, node), value: decade(1e-13, 1e-10) }),
    );
    const stage = fc.record({
      kind: fc.constant('G' as const),
      ends: fc.tuple(node, node, node, node),
      value: decade(1e-4, 1e-2),
    });
    return fc
      .tuple(
        fc.array(own, { minLength: nodes, maxLength: nodes }),
        fc.array(extra, { maxLength: nodes }),
        fc.array(stage, { minLength: options.stages === 0 ? 0 : 1, maxLength: options.stages }),
      )
      .map(([owns, extras, stages]) => {
        const parts: Part[] = [];
        for (const [i, [ohms, farads, henries, far, k]] of owns.entries()) {
          parts.push({ kind: 'R', ends: [i + 1, 0], value: ohms }, { kind: 'C', ends: [i + 1, 0], value: farads });
          parts.push({ kind: 'L', ends: [i + 1, far === i + 1 ? 0 : far], value: henries });
          // A third of the neighbours stay uncoupled, so that blocks do not all merge.
          if (i > 0 && Math.abs(k) > 0.15) parts.push({ kind: 'K', ends: [i - 1, i], value: k });
        }
        return { nodes, parts: [...parts, ...extras, ...stages] };
      });
  });
}

/** Deck text with one amp flowing from node `from` through its source into node `into`, and parts changed by `scale`. */
export function circuitText(
  circuit: Circuit,
  source: { readonly from: number; readonly into: number },
  scale: (part: Part) => number = (part) => part.value,
): string {
  const lines = ['random circuit', `I1 n${source.from} n${source.into} AC 1`];
  const counts = { R: 0, L: 0, C: 0, K: 0, G: 0 };
  for (const part of circuit.parts) {
    const names = part.kind === 'K' ? part.ends.map((coil) => `L${coil}`) : part.ends.map((node) => `n${node}`);
    lines.push(`${part.kind}${counts[part.kind]++} ${names.join(' ')} ${scale(part)}`);
  }
  return [...lines, '.end'].join('\n').replaceAll(/\bn0\b/g, '0');
}

/** Circuits whose equations have a unique solution: a G element may by chance just cancel something. */
export function isSolvable(circuit: Circuit): boolean {
  return readDeck(circuitText(circuit, { from: 0, into: 1 }), 'random').ok;
}

export function coilNames(circuit: Circuit): string[] {
  return circuit.parts.filter((part) => part.kind === 'L').map((_, i) => `L${i}`);
}
