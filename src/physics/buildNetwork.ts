/**
 * From a deck to a network ready for solving: numbered nodes, groups of coupled coils, and blocks.
 *
 * R, L, C and coupled coils tie nodes both ways, a G element only from its control nodes to its output nodes. The strongly
 * connected components of that graph are the blocks; in topological order each is a small system whose inputs are
 * the currents of its own sources and of G elements fed by earlier blocks (block triangular form).
 * Source: Tarjan, Depth-first search and linear graph algorithms, SIAM J. Comput. 1972; block triangular form as in sparse
 * circuit solvers (Davis and Palamadai Natarajan, Algorithm 907: KLU, ACM TOMS 2010), both from memory.
 */

import type { Result } from '../base/result.ts';
import { bad, good } from '../base/result.ts';
import { topologicalBlocks } from './blocks.ts';
import type { Deck } from './deck.ts';
import { nodeKey } from './deck.ts';
import { coilGroups, deckProblems, nodesOf } from './deckProblems.ts';
import { floatingProblems } from './floating.ts';
import type { Network, NetworkElement } from './network.ts';
import { singularProblems } from './singular.ts';

export function buildNetwork(deck: Deck, file: string): Result<Network> {
  const problems = deckProblems(deck, file);
  if (problems.length > 0) return bad(...problems);
  const nodeNames = nodesOf(deck);
  const nodeNumber = new Map(nodeNames.map((name, i) => [nodeKey(name), i] as const));
  const number = (name: string): number => nodeNumber.get(nodeKey(name)) ?? -1;
  const elements = deck.elements.map((element): NetworkElement => {
    const { name, kind, value } = element;
    const base = { name, kind, value, plus: -1, minus: -1, controlPlus: -1, controlMinus: -1, phaseDegrees: 0 };
    if (element.kind === 'K') return base;
    const ends = { plus: number(element.nodes[0]), minus: number(element.nodes[1]) };
    if (element.kind === 'G') {
      return { ...base, ...ends, controlPlus: number(element.control[0]), controlMinus: number(element.control[1]) };
    }
    return { ...base, ...ends, phaseDegrees: element.kind === 'I' ? element.phaseDegrees : 0 };
  });
  const groups = coilGroups(deck);
  const blocks = topologicalBlocks(nodeNames.length, elements, groups);
  const blockOfNode = new Int32Array(nodeNames.length);
  const localOfNode = new Int32Array(nodeNames.length);
  for (const [b, nodes] of blocks.entries()) {
    for (const [local, node] of nodes.entries()) {
      blockOfNode[node] = b;
      localOfNode[node] = local;
    }
  }
  const network: Network = {
    deck,
    nodeNames,
    nodeNumber,
    elements,
    elementIndex: new Map(elements.map((element, i) => [element.name.toLowerCase(), i] as const)),
    groups,
    blocks,
    blockOfNode,
    localOfNode,
  };
  const floating = floatingProblems(network, file);
  if (floating.length > 0) return bad(...floating);
  const singular = singularProblems(network, file);
  return singular.length === 0 ? good(network) : bad(...singular);
}
