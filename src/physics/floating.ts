/**
 * Finds nodes whose equations have no solution: parts of a block that no resistor, coil or capacitor joins to ground.
 * Their block matrix has the vector "all of them up by one volt" in its null space unless a G element inside the block
 * both feels and holds that voltage.
 */

import type { Problem } from '../base/result.ts';
import { elementPlace } from './deck.ts';
import type { Network } from './network.ts';

export function floatingProblems(network: Network, file: string): Problem[] {
  const { elements, nodeNames, blockOfNode } = network;
  const ground = nodeNames.length;
  const root = Int32Array.from({ length: ground + 1 }, (_, i) => i);
  const find = (i: number): number => {
    let at = i;
    while (root[at] !== at) at = root[at]!;
    return at;
  };
  const at = (node: number): number => (node < 0 ? ground : node);
  for (const element of elements) {
    if (element.kind === 'R' || element.kind === 'L' || element.kind === 'C')
      root[find(at(element.plus))] = find(at(element.minus));
  }
  const islands = new Map<number, number[]>();
  for (let node = 0; node < ground; node++) {
    const key = find(node);
    if (key !== find(ground)) islands.set(key, [...(islands.get(key) ?? []), node]);
  }
  const problems: Problem[] = [];
  for (const island of islands.values()) {
    const inside = (node: number): boolean => node >= 0 && island.includes(node);
    const block = blockOfNode[island[0]!]!;
    const inBlock = (node: number): boolean => node >= 0 && blockOfNode[node] === block;
    const transistors = elements.filter((e) => e.kind === 'G');
    const felt = transistors.some(
      (g) => inside(g.controlPlus) !== inside(g.controlMinus) && (inBlock(g.plus) || inBlock(g.minus)),
    );
    const held = transistors.some(
      (g) => inside(g.plus) !== inside(g.minus) && (inBlock(g.controlPlus) || inBlock(g.controlMinus)),
    );
    if (felt && held) continue;
    const names = island.slice(0, 8).map((node) => nodeNames[node]!);
    const first = elements.findIndex(
      (e) => e.kind !== 'K' && [e.plus, e.minus, e.controlPlus, e.controlMinus].includes(island[0]!),
    );
    const element = network.deck.elements[first];
    problems.push({
      file,
      ...(element === undefined ? { place: '' } : elementPlace(element)),
      found: ['floating', names, island.length > names.length],
      wanted: ['pathToGround'],
    });
  }
  return problems;
}
