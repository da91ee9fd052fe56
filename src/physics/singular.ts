/**
 * Finds blocks whose equations have no unique solution at any frequency: a G element that just cancels a conductance, for example.
 * Elimination with rows scaled to a largest entry of 1 and partial pivoting; a pivot below 1e-15 at every one of a few frequencies that have
 * nothing to do with each other means a singular block (a lossless resonance can strike one frequency only).
 */

import type { Problem } from '../base/result.ts';
import { elementPlace } from './deck.ts';
import type { Network } from './network.ts';
import { createSystem } from './system.ts';

const TRIAL_HZ = [3.917e6, 1.234e5, 5.771e7] as const;

export function singularProblems(network: Network, file: string): Problem[] {
  const system = createSystem(network);
  const problems: Problem[] = [];
  for (const [block, nodes] of network.blocks.entries()) {
    const n = nodes.length;
    const [g, c, b] = [new Float64Array(n * n), new Float64Array(n * n), new Float64Array(n * n)];
    system.assemble(block, g, c, b);
    const failsAt = (hz: number): number => {
      const w = 2 * Math.PI * hz;
      return failedColumn(
        g.slice(),
        c.map((farads, i) => w * farads - b[i]! / w),
        n,
      );
    };
    if (TRIAL_HZ.some((hz) => failsAt(hz) < 0)) continue;
    const node = nodes[failsAt(TRIAL_HZ[0]!)]!;
    const name = network.nodeNames[node]!;
    const element = network.deck.elements.find((_, e) => touches(network, e, node));
    problems.push({
      file,
      ...(element === undefined ? { place: '' } : elementPlace(element)),
      found: ['notFixed', name],
      wanted: ['oneSolution'],
    });
  }
  return problems;
}

/** Number of the column where elimination finds no pivot, or -1 when the matrix is regular. Overwrites its arguments. */
function failedColumn(re: Float64Array, im: Float64Array, n: number): number {
  for (let i = 0; i < n; i++) {
    let largest = 0;
    for (let j = i * n; j < (i + 1) * n; j++) largest = Math.max(largest, Math.abs(re[j]!), Math.abs(im[j]!));
    if (largest === 0) return i;
    for (let j = 0; j < n; j++) {
      re[i * n + j] = re[i * n + j]! / largest;
      im[i * n + j] = im[i * n + j]! / largest;
    }
  }
  for (let k = 0; k < n; k++) {
    let pivot = k;
    const size = (i: number): number => Math.max(Math.abs(re[i * n + k]!), Math.abs(im[i * n + k]!));
    for (let i = k + 1; i < n; i++) if (size(i) > size(pivot)) pivot = i;
    if (size(pivot) < 1e-15) return k;
    for (const a of [re, im]) {
      for (let j = 0; j < n; j++) {
        const held = a[k * n + j]!;
        a[k * n + j] = a[pivot * n + j]!;
        a[pivot * n + j] = held;
      }
    }
    const dr = re[k * n + k]!;
    const di = im[k * n + k]!;
    const scale = dr * dr + di * di;
    for (let i = k + 1; i < n; i++) {
      const ar = re[i * n + k]!;
      const ai = im[i * n + k]!;
      if (ar === 0 && ai === 0) continue;
      const lr = (ar * dr + ai * di) / scale;
      const li = (ai * dr - ar * di) / scale;
      for (let j = k; j < n; j++) {
        const ur = re[k * n + j]!;
        const ui = im[k * n + j]!;
        re[i * n + j] = re[i * n + j]! - (lr * ur - li * ui);
        im[i * n + j] = im[i * n + j]! - (lr * ui + li * ur);
      }
    }
  }
  return -1;
}

function touches(network: Network, element: number, node: number): boolean {
  const { plus, minus, controlPlus, controlMinus } = network.elements[element]!;
  return [plus, minus, controlPlus, controlMinus].includes(node);
}
