/**
 * The values of a network and what hangs on them: matrices of each block, input places, and which of them have gone stale.
 * Programmer's errors (unknown element, impossible value) throw.
 */

import type { Admittance } from './admittance.ts';
import type { Chirp } from './chirp.ts';
import { inverseInductance } from './coilGroups.ts';
import type { Network, NetworkElement } from './network.ts';

/** A place where current enters a block: it leaves node `plus` and enters node `minus` (numbers within the block, -1 outside it). */
export interface InputPlace {
  readonly plus: number;
  readonly minus: number;
}

/** A current at an input place: from a source, or from a G element and those of its control nodes that lie in earlier blocks. */
export interface BlockInput {
  readonly element: number;
  readonly place: number;
  readonly kind: 'I' | 'G';
  /** control nodes outside this block, -1 where inside it or ground */
  readonly controlPlus: number;
  readonly controlMinus: number;
  /** false for the part of a G element that also has a control node in this block: such a one never saturates */
  readonly saturates: boolean;
}

export interface BlockPlan {
  readonly nodes: Int32Array;
  readonly places: readonly InputPlace[];
  readonly inputs: readonly BlockInput[];
  /** earlier blocks that feed this one */
  readonly fedBy: readonly number[];
}

/** Complex amps (peak) at each of the solver's frequencies. */
export interface Spectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

export interface System {
  readonly network: Network;
  readonly plans: readonly BlockPlan[];
  /** element values by index (ohm, henry, farad, siemens, amp, coupling) */
  readonly values: Float64Array;
  readonly saturationVolts: Float64Array;
  /** by block: 1 when the matrix, or only an input current, has changed since the block was solved */
  readonly matrixDirty: Uint8Array;
  readonly inputDirty: Uint8Array;
  /** by coil group: inv(L), row-major */
  readonly inverse: readonly Float64Array[];
  setValue(element: string, value: number): void;
  value(element: string): number;
  setDrive(element: string, amps: number): void;
  setDriveSpectrum(element: string, re: Float64Array, im: Float64Array): void;
  /** by element: amps at each frequency, for those that have been given a spectrum */
  readonly spectra: ReadonlyMap<number, Spectrum>;
  setSaturation(element: string, volts: number | null): void;
  /** by node: what hangs on it besides the elements; null: nothing. A change of which nodes are loaded is the caller's to follow up */
  readonly loads: (readonly Admittance[] | null)[];
  /** the source sweeps at this rate, and voltages are lines of it (chirp.ts); null: each frequency by itself */
  chirp: Chirp | null;
  /** writes the block's G, C and B matrices (row-major, n*n each) */
  assemble(block: number, g: Float64Array, c: Float64Array, b: Float64Array): void;
}

export function createSystem(network: Network): System {
  const { elements, blocks, blockOfNode, localOfNode, groups } = network;
  const values = Float64Array.from(elements, (element) => element.value);
  const saturationVolts = new Float64Array(elements.length).fill(Number.POSITIVE_INFINITY);
  const spectra = new Map<number, Spectrum>();
  const matrixDirty = new Uint8Array(blocks.length).fill(1);
  const inputDirty = new Uint8Array(blocks.length).fill(1);
  const groupOf = new Map<number, number>();
  for (const [g, group] of groups.entries()) {
    for (const coil of group.coils) groupOf.set(coil, g);
    for (const pair of group.pairs) groupOf.set(pair.element, g);
  }
  const inverse = groups.map((group) => {
    const out = new Float64Array(group.coils.length ** 2);
    inverseInductance(group, values, out);
    return out;
  });
  const plans = blocks.map((nodes, b) => planBlock(network, nodes, b));
  const groupBlocks = groups.map((group) => {
    const ends = group.coils.flatMap((coil) => [elements[coil]!.plus, elements[coil]!.minus]);
    return blocksOfNodes(network, ends);
  });
  const blocksOf = elements.map((element, e) => groupBlocks[groupOf.get(e) ?? -1] ?? matrixBlocks(network, element));
  const parts = blocks.map((_, b) => elements.flatMap((_, e) => (blocksOf[e]!.has(b) ? [e] : [])));

  const indexOf = (name: string): number => {
    const e = network.elementIndex.get(name.toLowerCase());
    if (e === undefined) throw new Error(`the network has no element ${name}`);
    return e;
  };

  return {
    network,
    plans,
    values,
    saturationVolts,
    spectra,
    loads: network.nodeNames.map(() => null),
    chirp: null,
    matrixDirty,
    inputDirty,
    inverse,
    value: (name) => values[indexOf(name)]!,
    setValue(name, value) {
      const e = indexOf(name);
      const { kind } = elements[e]!;
      const fits = kind === 'K' ? Math.abs(value) < 1 : kind === 'G' ? value >= 0 : value > 0;
      if (kind === 'I') throw new Error(`${name} is a current source: use setDrive`);
      if (!fits || !Number.isFinite(value)) throw new RangeError(`${name} cannot have the value ${value}`);
      if (values[e] === value) return;
      const before = values[e]!;
      values[e] = value;
      const g = groupOf.get(e);
      if (g !== undefined && !inverseInductance(groups[g]!, values, inverse[g]!)) {
        values[e] = before;
        throw new RangeError(`${name} = ${value} would make the coupled coils store negative energy`);
      }
      for (const b of blocksOf[e]!) matrixDirty[b] = 1;
      if (kind === 'G') markInputs(e);
    },
    setDrive(name, amps) {
      const e = indexOf(name);
      if (elements[e]!.kind !== 'I') throw new Error(`${name} is not a current source`);
      if (!Number.isFinite(amps)) throw new RangeError(`${name} cannot have the drive ${amps}`);
      if (values[e] === amps && !spectra.has(e)) return;
      spectra.delete(e);
      values[e] = amps;
      markInputs(e);
    },
    setDriveSpectrum(name, re, im) {
      const e = indexOf(name);
      if (elements[e]!.kind !== 'I') throw new Error(`${name} is not a current source`);
      if (re.length !== im.length) throw new RangeError('a spectrum needs as many imaginary as real parts');
      const known = spectra.get(e);
      if (known?.re.length === re.length) {
        known.re.set(re);
        known.im.set(im);
      } else spectra.set(e, { re: Float64Array.from(re), im: Float64Array.from(im) });
      values[e] = 1;
      markInputs(e);
    },
    setSaturation(name, volts) {
      const e = indexOf(name);
      if (elements[e]!.kind !== 'G') throw new Error(`${name} is not a G element`);
      if (volts !== null && !(volts > 0)) throw new RangeError(`${name} cannot saturate at ${volts} V`);
      const limit = volts ?? Number.POSITIVE_INFINITY;
      if (saturationVolts[e] === limit) return;
      saturationVolts[e] = limit;
      markInputs(e);
    },
    assemble(block, g, c, b) {
      g.fill(0);
      c.fill(0);
      b.fill(0);
      const n = blocks[block]!.length;
      const local = (node: number): number => (node >= 0 && blockOfNode[node] === block ? localOfNode[node]! : -1);
      for (const e of parts[block]!) {
        const element = elements[e]!;
        const value = values[e]!;
        const p = local(element.plus);
        const m = local(element.minus);
        if (element.kind === 'R') stamp(g, n, p, m, p, m, 1 / value);
        else if (element.kind === 'C') stamp(c, n, p, m, p, m, value);
        else if (element.kind === 'G')
          stamp(g, n, p, m, local(element.controlPlus), local(element.controlMinus), value);
        else if (element.kind === 'L') {
          const group = groups[groupOf.get(e)!]!;
          const gamma = inverse[groupOf.get(e)!]!;
          const row = group.coils.indexOf(e) * group.coils.length;
          for (let j = 0; j < group.coils.length; j++) {
            const other = elements[group.coils[j]!]!;
            stamp(b, n, p, m, local(other.plus), local(other.minus), gamma[row + j]!);
          }
        }
      }
    },
  };

  function markInputs(e: number): void {
    for (const [b, plan] of plans.entries()) if (plan.inputs.some((input) => input.element === e)) inputDirty[b] = 1;
  }
}

/** Adds value * (row plus - row minus)(column plus - column minus) to a matrix; -1 is outside. */
function stamp(a: Float64Array, n: number, rp: number, rm: number, cp: number, cm: number, value: number): void {
  if (rp >= 0 && cp >= 0) a[rp * n + cp] = a[rp * n + cp]! + value;
  if (rm >= 0 && cm >= 0) a[rm * n + cm] = a[rm * n + cm]! + value;
  if (rp >= 0 && cm >= 0) a[rp * n + cm] = a[rp * n + cm]! - value;
  if (rm >= 0 && cp >= 0) a[rm * n + cp] = a[rm * n + cp]! - value;
}

/** Blocks whose matrix holds an element that is no coil and no coupling. */
function matrixBlocks(network: Network, element: NetworkElement): Set<number> {
  const ends = [element.plus, element.minus];
  if (element.kind === 'I') return new Set();
  if (element.kind !== 'G') return blocksOfNodes(network, ends);
  const controls = blocksOfNodes(network, [element.controlPlus, element.controlMinus]);
  return new Set([...blocksOfNodes(network, ends)].filter((block) => controls.has(block)));
}

function blocksOfNodes(network: Network, nodes: readonly number[]): Set<number> {
  return new Set(nodes.filter((node) => node >= 0).map((node) => network.blockOfNode[node]!));
}

function planBlock(network: Network, nodes: Int32Array, block: number): BlockPlan {
  const { blockOfNode, localOfNode } = network;
  const inside = (node: number): boolean => node >= 0 && blockOfNode[node] === block;
  const local = (node: number): number => (inside(node) ? localOfNode[node]! : -1);
  const places: InputPlace[] = [];
  const inputs: BlockInput[] = [];
  const fedBy = new Set<number>();
  for (const [e, element] of network.elements.entries()) {
    if (element.kind !== 'I' && element.kind !== 'G') continue;
    const plus = local(element.plus);
    const minus = local(element.minus);
    if (plus === minus) continue;
    const outer = (node: number): number => (node >= 0 && !inside(node) ? node : -1);
    const controlPlus = outer(element.controlPlus);
    const controlMinus = outer(element.controlMinus);
    if (element.kind === 'G' && controlPlus === controlMinus) continue;
    let place = places.findIndex((p) => p.plus === plus && p.minus === minus);
    if (place < 0) place = places.push({ plus, minus }) - 1;
    const saturates = element.kind === 'G' && !inside(element.controlPlus) && !inside(element.controlMinus);
    inputs.push({ element: e, place, kind: element.kind, controlPlus, controlMinus, saturates });
    for (const node of [controlPlus, controlMinus]) if (node >= 0) fedBy.add(blockOfNode[node]!);
  }
  return { nodes, places, inputs, fedBy: [...fedBy] };
}
