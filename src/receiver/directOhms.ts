/**
 * Resistance between two nodes of a set without power, as an ohmmeter finds it: resistors, and the wire of the coils; capacitors and dead stages let nothing through.
 * Left out are what stands in a deck for losses at its own frequencies alone (`notParts` of the receiver), and what a failed bypass or decoupling lifts off earth only for
 * the signal.
 *
 * Wire of a coil: a single layer on a former of 6.35 mm, 12.7 mm long, of 0.2 mm copper. By Wheeler, Simple inductance formulas for radio coils, Proc. IRE October 1928,
 * L = r^2 N^2 / (9 r + 10 l) in microhenry and inches, so 19.8 sqrt(L) turns; copper of 17.24 nanoohm metre (IEC 60028): 0.217 ohm for 1 uH. Real coils differ: for
 * a needle it matters that they have next to none.
 */
import { type Deck, nodeKey } from '../physics/deck.ts';
import { cathodeNode, supplyNode } from './faults/faultPlaces.ts';
import type { Receiver } from './receiver.ts';

/** Of every node to the rest of the world, so that one that hangs free has volts at all; a circuit simulator does the same. */
const LEAST_SIEMENS = 1e-12;

const RADIUS_INCH = 0.125;
const LENGTH_INCH = 0.5;
const TURN_METRES = 2 * Math.PI * RADIUS_INCH * 0.0254;
const OHM_METRES = 17.24e-9;
const WIRE_SQUARE_METRES = Math.PI * 0.1e-3 ** 2;

function windingOhms(henries: number): number {
  const turns = Math.sqrt(henries * 1e6 * (9 * RADIUS_INCH + 10 * LENGTH_INCH)) / RADIUS_INCH;
  return (turns * TURN_METRES * OHM_METRES) / WIRE_SQUARE_METRES;
}

/** Far more than any meter shows where nothing joins them. */
export function directOhms({ stages, notParts = [] }: Receiver, deck: Deck, from: string, to: string): number {
  const losses = new Set(notParts.map((name) => name.toLowerCase()));
  const lifted = new Set([
    ...stages.map(({ element }) => nodeKey(cathodeNode(element))),
    ...deck.elements.flatMap(({ kind, name }) => (kind === 'L' ? [nodeKey(supplyNode(name))] : [])),
  ]);
  const keyOf = (node: string): string => (lifted.has(nodeKey(node)) ? '0' : nodeKey(node));
  const [a, b] = [keyOf(from), keyOf(to)];
  if (a === b) return 0;
  const wires = deck.elements.flatMap((e) => {
    if ((e.kind !== 'R' && e.kind !== 'L') || losses.has(e.name.toLowerCase())) return [];
    const [one, other] = e.nodes.map(keyOf) as [string, string];
    const siemens = 1 / (e.kind === 'R' ? e.value : windingOhms(e.value));
    return one === other ? [] : [{ one, other, siemens }];
  });
  // The second end is the zero of all volts: an ampere goes in at the first.
  const keys = [...new Set([a, ...wires.flatMap(({ one, other }) => [one, other])])].filter((key) => key !== b);
  const row = new Map(keys.map((key, i) => [key, i] as const));
  const matrix = keys.map((key) => [...keys.map(() => 0), key === a ? 1 : 0]);
  keys.forEach((_, i) => {
    matrix[i]![i]! += LEAST_SIEMENS;
  });
  for (const { one, other, siemens } of wires) {
    const [i, j] = [row.get(one), row.get(other)];
    if (i !== undefined) matrix[i]![i]! += siemens;
    if (j !== undefined) matrix[j]![j]! += siemens;
    if (i !== undefined && j !== undefined) {
      matrix[i]![j]! -= siemens;
      matrix[j]![i]! -= siemens;
    }
  }
  return solved(matrix)[row.get(a)!]!;
}

/** Symmetric, more on the diagonal than beside it: elimination needs no pivoting. */
function solved(matrix: number[][]): number[] {
  const size = matrix.length;
  for (let k = 0; k < size; k++) {
    for (let i = k + 1; i < size; i++) {
      const factor = matrix[i]![k]! / matrix[k]![k]!;
      if (factor === 0) continue;
      for (let j = k; j <= size; j++) matrix[i]![j]! -= factor * matrix[k]![j]!;
    }
  }
  const out = new Array<number>(size).fill(0);
  for (let i = size - 1; i >= 0; i--) {
    let sum = matrix[i]![size]!;
    for (let j = i + 1; j < size; j++) sum -= matrix[i]![j]! * out[j]!;
    out[i] = sum / matrix[i]![i]!;
  }
  return out;
}
