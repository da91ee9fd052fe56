/**
 * Solves a network at many frequencies, block by block.
 *
 * Y(w) = G + j w C - (j / w) B, B = A_L inv(L) A_L^T, Y v = i; w in rad/s, amplitudes are peaks, e^{+jwt}. Within a block the response
 * to one amp into each of its input places is kept; voltages follow by multiplying with the input currents. So a value changed inside
 * one block solves that block anew and only multiplies through those that hang on it; a drive or a saturation only multiplies.
 *
 * Saturation: a G element between blocks gives gm v N(|v| / Vs) (describingFunction.ts), in signal order. One whose control node lies in
 * the block that it drives is inside a feedback loop and keeps its small-signal gm.
 * Diodes at a node load it by their fundamental current (blockLoads.ts); the voltages are those with the loads.
 * Source: physics texts on nodal analysis; describing functions as there.
 */

import type { Admittance } from './admittance.ts';
import type { Chirp } from './chirp.ts';
import { fundamentalGain, fundamentalGainSlope } from './describingFunction.ts';
import type { Network } from './network.ts';
import type { DrawnAt, SolverBlock } from './solverBlock.ts';
import { createBlock } from './solverBlock.ts';
import type { System } from './system.ts';
import { createSystem } from './system.ts';

export interface NodeLoad {
  readonly node: string;
  readonly admittance: Admittance;
}

export interface Solver {
  readonly network: Network;
  readonly nodeNames: readonly string[];
  /** the frequencies, ascending or not, hertz */
  readonly hz: Float64Array;
  /** R ohm, L henry (couplings keep k), C farad, G siemens (may be 0), K coupling */
  setValue(element: string, value: number): void;
  value(element: string): number;
  /** current source, amps peak (0 switches it off); its phase stays as in the deck */
  setDrive(element: string, amps: number): void;
  /** current source with its own complex amps (peak) at each frequency, copied; the deck's phase is not added. `setDrive` ends it */
  setDriveSpectrum(element: string, re: Float64Array, im: Float64Array): void;
  /** G element: volts peak at which tanh has argument 1; null makes it linear */
  setSaturation(element: string, volts: number | null): void;
  /** nonlinear loads from nodes to ground, all of them anew; several may hang on one node */
  setLoads(loads: readonly NodeLoad[]): void;
  /** the source sweeps over the frequencies, which must be evenly spaced, at this rate: drives and voltages are lines (chirp.ts); null: each frequency by itself */
  setChirp(chirp: Chirp | null): void;
  /** copies; a new length makes earlier views of results stale */
  setFrequencies(hz: Float64Array): void;
  /** brings all voltages up to date */
  solve(): void;
  /** real parts of a node's voltage, a view that later calls of solve() overwrite */
  real(node: string): Float64Array;
  imag(node: string): Float64Array;
  /** |V| of a node; written to `out` when given */
  magnitude(node: string, out?: Float64Array): Float64Array;
  /**
   * How far the hardest-driven stage with a saturation set is compressed, at its worst frequency, decibels (0: none). Stages inside a
   * feedback loop count too, as a warning, though they are solved as linear. Stages named in `except` do not count.
   */
  worstCompressionDb(except?: readonly string[]): number;
  /**
   * Gain left of a G element at each frequency, N of describingFunction.ts (1 where it is linear or lies inside a loop), and of a small change of its control voltage's
   * size, d(aN)/da.
   */
  stageGain(element: string, gain: Float64Array, ofChange: Float64Array): void;
  /** volts at a loaded node for one amp drawn there, without its loads: less the impedance that they see; null where nothing hangs. Views until the next solve */
  drawnAt(node: string): DrawnAt | null;
  /**
   * Small changes carried on: `dRe`, `dIm` by node number hold in the nodes of `block` what its own elements bring about there without its loads, elsewhere zero; they
   * become the changes of the voltages of the nodes that `counts` has as 1, among which are all that drive a stage or bear a load. The solver must be up to date.
   */
  follow(block: number, dRe: readonly Float64Array[], dIm: readonly Float64Array[], counts: Uint8Array): void;
  /** the assembled equations, for sensitivities */
  readonly system: System;
}

export function createSolver(network: Network, hz: Float64Array): Solver {
  const system = createSystem(network);
  let frequencies = Float64Array.from(hz);
  checkFrequencies(frequencies);
  const nodes = network.nodeNames.length;
  let re: Float64Array[] = [];
  let im: Float64Array[] = [];
  let zero = new Float64Array(frequencies.length);
  let blocks: SolverBlock[] = [];
  const moved = new Uint8Array(network.blocks.length);
  const alive = new Uint8Array(network.blocks.length);
  const changed = new Uint8Array(network.blocks.length);

  const allocate = (): void => {
    const n = frequencies.length;
    re = Array.from({ length: nodes }, () => new Float64Array(n));
    im = Array.from({ length: nodes }, () => new Float64Array(n));
    zero = new Float64Array(n);
    blocks = network.blocks.map((_, b) => createBlock(system, b, frequencies, re, im));
  };
  allocate();

  const nodeOf = (name: string): number => {
    const node = network.nodeNumber.get(name.toLowerCase());
    if (node !== undefined) return node;
    if (name === '0' || name.toLowerCase() === 'gnd') return -1;
    throw new Error(`the network has no node ${name}`);
  };

  /** |V| between a G element's control nodes, by frequency. */
  const controlVolts = (element: number): ((f: number) => number) => {
    const { controlPlus: p, controlMinus: m } = network.elements[element]!;
    const pr = p < 0 ? zero : re[p]!;
    const pi = p < 0 ? zero : im[p]!;
    const mr = m < 0 ? zero : re[m]!;
    const mi = m < 0 ? zero : im[m]!;
    return (f) => {
      const r = pr[f]! - mr[f]!;
      const i = pi[f]! - mi[f]!;
      return Math.sqrt(r * r + i * i);
    };
  };

  return {
    network,
    nodeNames: network.nodeNames,
    system,
    get hz() {
      return frequencies;
    },
    setValue: (element, value) => system.setValue(element, value),
    value: (element) => system.value(element),
    setDrive: (element, amps) => system.setDrive(element, amps),
    setDriveSpectrum: (element, re, im) => system.setDriveSpectrum(element, re, im),
    setSaturation: (element, volts) => system.setSaturation(element, volts),
    setLoads(list) {
      const next = network.nodeNames.map((): Admittance[] => []);
      for (const { node, admittance } of list) {
        const at = nodeOf(node);
        if (at >= 0) next[at]!.push(admittance);
      }
      let others = false;
      for (const [node, loads] of next.entries()) {
        const before = system.loads[node];
        if (sameLoads(before ?? [], loads)) continue;
        if ((before === null) !== (loads.length === 0)) others = true;
        system.loads[node] = loads.length === 0 ? null : loads;
        system.inputDirty[network.blockOfNode[node]!] = 1;
      }
      if (!others) return;
      allocate();
      system.matrixDirty.fill(1);
    },
    setChirp(chirp) {
      if (system.chirp === chirp) return;
      system.chirp = chirp;
      system.inputDirty.fill(1);
    },
    setFrequencies(next) {
      checkFrequencies(next);
      if (next.length === frequencies.length) frequencies.set(next);
      else {
        frequencies = Float64Array.from(next);
        allocate();
      }
      system.matrixDirty.fill(1);
    },
    solve() {
      for (const block of blocks) block.update(moved, alive);
    },
    stageGain(name, gain, ofChange) {
      gain.fill(1);
      ofChange.fill(1);
      const e = network.elementIndex.get(name.toLowerCase());
      if (e === undefined) throw new Error(`the network has no element ${name}`);
      const limit = system.saturationVolts[e]!;
      const saturates = system.plans.some((plan) => plan.inputs.some((i) => i.element === e && i.saturates));
      if (limit === Number.POSITIVE_INFINITY || !saturates) return;
      const volts = controlVolts(e);
      for (let f = 0; f < gain.length; f++) {
        const a = volts(f) / limit;
        gain[f] = fundamentalGain(a);
        ofChange[f] = gain[f]! + a * fundamentalGainSlope(a);
      }
    },
    drawnAt(node) {
      const at = nodeOf(node);
      return at < 0 ? null : blocks[network.blockOfNode[at]!]!.drawnAt(network.localOfNode[at]!);
    },
    follow(first, dRe, dIm, counts) {
      changed.fill(0);
      for (let b = first; b < blocks.length; b++) blocks[b]!.follow(dRe, dIm, counts, b === first, changed, alive);
    },
    real(node) {
      const at = nodeOf(node);
      return at < 0 ? zero : re[at]!;
    },
    imag(node) {
      const at = nodeOf(node);
      return at < 0 ? zero : im[at]!;
    },
    magnitude(node, out = new Float64Array(frequencies.length)) {
      const at = nodeOf(node);
      if (out.length !== frequencies.length) throw new RangeError('out must have one element a frequency');
      if (at < 0) return out.fill(0);
      const r = re[at]!;
      const i = im[at]!;
      for (let f = 0; f < out.length; f++) out[f] = Math.sqrt(r[f]! * r[f]! + i[f]! * i[f]!);
      return out;
    },
    worstCompressionDb(except = []) {
      let worst = 0;
      for (const [e, element] of network.elements.entries()) {
        const limit = system.saturationVolts[e]!;
        if (element.kind !== 'G' || limit === Number.POSITIVE_INFINITY) continue;
        if (except.some((name) => name.toLowerCase() === element.name.toLowerCase())) continue;
        const volts = controlVolts(e);
        for (let f = 0; f < frequencies.length; f++) worst = Math.max(worst, volts(f) / limit);
      }
      return worst === 0 ? 0 : Math.max(0, -20 * Math.log10(fundamentalGain(worst)));
    },
  };
}

function sameLoads(a: readonly Admittance[], b: readonly Admittance[]): boolean {
  return a.length === b.length && a.every((one, i) => one === b[i]);
}

function checkFrequencies(hz: Float64Array): void {
  for (const f of hz)
    if (!(f > 0 && Number.isFinite(f))) throw new RangeError(`a frequency must be finite and above zero, not ${f}`);
}
