/**
 * How the voltages change with each inductance, stages saturating and nodes loaded as they are.
 *
 * With P = inv(L) of a group of coils and u = A^T v its branch voltages, couplings k held (so that mutual inductances follow sqrt(L_i L_j)), a change of L_e sends
 * the extra current  (j / (2 w L_e)) ( (P u)_e into branch e + P_je u_e into every branch j )  per henry through the coils. The responses of the block to a current in its
 * branches make of it changes of its own voltages; from there they go on through loads and stages, each as it gives way to a small change (solverBlock.ts).
 * Source: direct differentiation of the nodal equations, e.g. Chua and Lin, Computer-Aided Analysis of Electronic Circuits, 1975 (from memory).
 */

import { nodeKey } from './deck.ts';
import type { Solver } from './solver.ts';
import type { InputPlace } from './system.ts';
import { unitResponse } from './unitResponse.ts';

/** Change of a node's complex voltage, volt per henry, at each of the solver's frequencies. */
export interface ComplexSlope {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** d|V| of a voltage whose complex changes are known; 0 where the voltage is none. */
export function levelSlopes(re: Float64Array, im: Float64Array): (slope: ComplexSlope) => Float64Array {
  const level = re.map((r, f) => Math.hypot(r, im[f]!));
  return (slope) => {
    const out = new Float64Array(level.length);
    for (let f = 0; f < out.length; f++)
      out[f] = level[f] === 0 ? 0 : (re[f]! * slope.re[f]! + im[f]! * slope.im[f]!) / level[f]!;
    return out;
  };
}

/** dV/dL of each of `nodes`, in their order, keyed by the names of the coils. Brings the solver up to date first. */
export function inductanceSlopes(
  solver: Solver,
  nodes: readonly string[],
  elements: readonly string[],
): Map<string, readonly ComplexSlope[]> {
  const { network, hz } = solver;
  const targets = nodes.map((node) => {
    const at = network.nodeNumber.get(nodeKey(node));
    if (at === undefined) throw new Error(`the network has no node ${node}`);
    return at;
  });
  const coils = elements.map((name) => findCoil(solver, name));
  solver.solve();
  const counts = nodesThatCount(solver, targets);
  // Of the others nothing is asked: they have one array of zeros in common.
  const none = new Float64Array(hz.length);
  const dRe = Array.from(counts, (one) => (one === 1 ? new Float64Array(hz.length) : none));
  const dIm = Array.from(counts, (one) => (one === 1 ? new Float64Array(hz.length) : none));
  const responses = branchResponses(solver, coils);
  const out = new Map<string, readonly ComplexSlope[]>();
  for (const [c, coil] of coils.entries()) {
    for (const [node, one] of counts.entries()) {
      if (one === 0) continue;
      dRe[node]!.fill(0);
      dIm[node]!.fill(0);
    }
    ownChanges(solver, coil, responses.get(coil.group)!, counts, dRe, dIm);
    solver.follow(coil.block, dRe, dIm, counts);
    out.set(
      elements[c]!,
      targets.map((at) => ({ re: dRe[at]!.slice(), im: dIm[at]!.slice() })),
    );
  }
  return out;
}

/** By node number 1 where a change has to be known: where it is asked for, where it drives a stage, where a load hangs. */
function nodesThatCount({ network, system }: Solver, targets: readonly number[]): Uint8Array {
  const counts = new Uint8Array(network.nodeNames.length);
  for (const at of targets) counts[at] = 1;
  for (const { controlPlus, controlMinus } of network.elements) {
    if (controlPlus >= 0) counts[controlPlus] = 1;
    if (controlMinus >= 0) counts[controlMinus] = 1;
  }
  for (const [node, loads] of system.loads.entries()) if (loads !== null) counts[node] = 1;
  return counts;
}

interface Coil {
  readonly element: number;
  readonly block: number;
  /** number of its group, the group's elements, its own place among them */
  readonly group: number;
  readonly members: readonly number[];
  readonly at: number;
}

function findCoil({ network }: Solver, name: string): Coil {
  const element = network.elementIndex.get(name.toLowerCase());
  const group = network.groups.findIndex(({ coils }) => element !== undefined && coils.includes(element));
  if (element === undefined || group < 0) throw new Error(`the network has no inductor ${name}`);
  const members = network.groups[group]!.coils;
  const { plus, minus } = network.elements[element]!;
  return {
    element,
    block: network.blockOfNode[plus >= 0 ? plus : minus]!,
    group,
    members,
    at: members.indexOf(element),
  };
}

/** Responses of local node i to one amp through the j-th coil of a group at frequency f: [((first + j) * n + i) * count + f]. */
interface BranchResponses {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly first: number;
}

/** By the number of their group; each block is solved once for all of its groups. */
function branchResponses(
  { network, system, hz }: Solver,
  coils: readonly Coil[],
): ReadonlyMap<number, BranchResponses> {
  const out = new Map<number, BranchResponses>();
  const local = (node: number): number => (node < 0 ? -1 : network.localOfNode[node]!);
  for (const block of new Set(coils.map((coil) => coil.block))) {
    const n = network.blocks[block]!.length;
    const places: InputPlace[] = [];
    const firsts = new Map<number, number>();
    for (const { group, members } of coils.filter((coil) => coil.block === block)) {
      if (firsts.has(group)) continue;
      firsts.set(group, places.length);
      for (const e of members) {
        const { plus, minus } = network.elements[e]!;
        places.push({ plus: local(plus), minus: local(minus) });
      }
    }
    const [g, c, b] = [new Float64Array(n * n), new Float64Array(n * n), new Float64Array(n * n)];
    system.assemble(block, g, c, b);
    const re = new Float64Array(places.length * n * hz.length);
    const im = new Float64Array(places.length * n * hz.length);
    unitResponse({ g, c, b }, n, places, hz, new Float64Array(2 * n * (n + places.length)), re, im);
    for (const [group, first] of firsts) out.set(group, { re, im, first });
  }
  return out;
}

/** What a henry more would change in the coil's own block, were there no loads. */
function ownChanges(
  solver: Solver,
  { element, block, group, members, at }: Coil,
  branches: BranchResponses,
  counts: Uint8Array,
  dRe: readonly Float64Array[],
  dIm: readonly Float64Array[],
): void {
  const { network, system, hz } = solver;
  const nodes = network.blocks[block]!;
  const count = hz.length;
  const inverse = system.inverse[group]!;
  const m = members.length;
  const ends = members.map((e) => network.elements[e]!);
  const none = new Float64Array(count);
  const volts = (node: number, of: (name: string) => Float64Array): Float64Array =>
    node < 0 ? none : of(network.nodeNames[node]!);
  const across = ends.map(({ plus, minus }) => ({
    pr: volts(plus, solver.real),
    pi: volts(plus, solver.imag),
    mr: volts(minus, solver.real),
    mi: volts(minus, solver.imag),
  }));
  // Frequency by frequency in the innermost loops: what a coil draws is worked out first, then carried to each node.
  const { pr, pi, mr, mi } = across[at]!;
  const scale = new Float64Array(count);
  const ur = new Float64Array(count);
  const ui = new Float64Array(count);
  const pur = new Float64Array(count);
  const pui = new Float64Array(count);
  for (let f = 0; f < count; f++) {
    scale[f] = 1 / (4 * Math.PI * hz[f]! * system.values[element]!);
    ur[f] = pr[f]! - mr[f]!;
    ui[f] = pi[f]! - mi[f]!;
  }
  for (let j = 0; j < m; j++) {
    const own = inverse[at * m + j]!;
    const { pr, pi, mr, mi } = across[j]!;
    for (let f = 0; f < count; f++) {
      pur[f] = pur[f]! + own * (pr[f]! - mr[f]!);
      pui[f] = pui[f]! + own * (pi[f]! - mi[f]!);
    }
  }
  const ir = new Float64Array(count);
  const ii = new Float64Array(count);
  for (let j = 0; j < m; j++) {
    const share = inverse[j * m + at]!;
    for (let f = 0; f < count; f++) {
      // Times j.
      ir[f] = -scale[f]! * (share * ui[f]! + (j === at ? pui[f]! : 0));
      ii[f] = scale[f]! * (share * ur[f]! + (j === at ? pur[f]! : 0));
    }
    for (let i = 0; i < nodes.length; i++) {
      if (counts[nodes[i]!] === 0) continue;
      const from = ((branches.first + j) * nodes.length + i) * count;
      addProduct(branches, from, ir, ii, dRe[nodes[i]!]!, dIm[nodes[i]!]!);
    }
  }
}

/** Adds impedance (from place `from` on) times current. */
function addProduct(
  { re, im }: BranchResponses,
  from: number,
  ir: Float64Array,
  ii: Float64Array,
  outRe: Float64Array,
  outIm: Float64Array,
): void {
  for (let f = 0; f < ir.length; f++) {
    const zr = re[from + f]!;
    const zi = im[from + f]!;
    const r = ir[f]!;
    const i = ii[f]!;
    outRe[f] = outRe[f]! + zr * r - zi * i;
    outIm[f] = outIm[f]! + zr * i + zi * r;
  }
}
