/** Strongly connected components of the signal graph, in topological order (Tarjan 1972, see buildNetwork.ts). */

import type { CoilGroup } from './coilGroups.ts';
import type { NetworkElement } from './network.ts';

export function topologicalBlocks(
  nodes: number,
  elements: readonly NetworkElement[],
  groups: readonly CoilGroup[],
): Int32Array[] {
  const next: Set<number>[] = Array.from({ length: nodes }, () => new Set<number>());
  const edge = (from: number, to: number): void => {
    if (from >= 0 && to >= 0 && from !== to) next[from]!.add(to);
  };
  for (const element of elements) {
    if (element.kind === 'R' || element.kind === 'L' || element.kind === 'C') {
      edge(element.plus, element.minus);
      edge(element.minus, element.plus);
    } else if (element.kind === 'G') {
      for (const from of [element.controlPlus, element.controlMinus]) {
        edge(from, element.plus);
        edge(from, element.minus);
      }
    }
  }
  for (const group of groups) {
    const ends = group.coils.flatMap((i) => [elements[i]!.plus, elements[i]!.minus]).filter((node) => node >= 0);
    for (const other of ends) {
      edge(ends[0]!, other);
      edge(other, ends[0]!);
    }
  }

  const index = new Int32Array(nodes).fill(-1);
  const low = new Int32Array(nodes);
  const onStack = new Uint8Array(nodes);
  const stack: number[] = [];
  const found: Int32Array[] = [];
  let counter = 0;
  const visit = (node: number): void => {
    index[node] = low[node] = counter++;
    stack.push(node);
    onStack[node] = 1;
    for (const to of next[node]!) {
      if (index[to]! < 0) {
        visit(to);
        low[node] = Math.min(low[node]!, low[to]!);
      } else if (onStack[to] === 1) low[node] = Math.min(low[node]!, index[to]!);
    }
    if (low[node] !== index[node]) return;
    const members: number[] = [];
    for (;;) {
      const member = stack.pop()!;
      onStack[member] = 0;
      members.push(member);
      if (member === node) break;
    }
    found.push(Int32Array.from(members.sort((a, b) => a - b)));
  };
  for (let node = 0; node < nodes; node++) if (index[node]! < 0) visit(node);
  // Tarjan closes a component only after everything that it feeds.
  return found.reverse();
}
