/**
 * One block at all frequencies: its responses to one amp at each input place, and its voltages.
 *
 * Over 300 lines: what enters a block, what it makes of that and how small changes follow work on the same buffers.
 */

import { type BlockLoads, createBlockLoads } from './blockLoads.ts';
import { fundamentalGain, sweepStage } from './describingFunction.ts';
import { type StageBend, stageBend } from './stageBend.ts';
import type { BlockInput, InputPlace, System } from './system.ts';
import { unitResponse } from './unitResponse.ts';

/** Voltage of a loaded node for one amp drawn there, without the loads, by frequency. */
export interface DrawnAt {
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** no other node of the block is loaded */
  readonly alone: boolean;
  /** of one of a pair of diodes: what it goes by over its carrier (blockLoads.ts) */
  readonly crest: Float64Array | null;
}

export interface SolverBlock {
  /**
   * Brings the block up to date. `moved` and `alive` tell of each earlier block whether its voltages changed just now and whether
   * they are other than zero; the block enters its own. Places where no current enters are not solved for.
   */
  update(moved: Uint8Array, alive: Uint8Array): void;
  /** of a local number; views until the next update */
  drawnAt(local: number): DrawnAt | null;
  /**
   * How the voltages follow small changes: `dRe`, `dIm` by node hold the changes of earlier blocks, zero from this block on, save that where `begun` this block's
   * hold what its own elements bring about without its loads; those of the nodes that `counts` has as 1 become whole. `changed` tells of each block whether it has any; the block enters its own.
   */
  follow(
    dRe: readonly Float64Array[],
    dIm: readonly Float64Array[],
    counts: Uint8Array,
    begun: boolean,
    changed: Uint8Array,
    alive: Uint8Array,
  ): void;
}

export function createBlock(
  system: System,
  block: number,
  hz: Float64Array,
  re: readonly Float64Array[],
  im: readonly Float64Array[],
): SolverBlock {
  const plan = system.plans[block]!;
  const { blockOfNode } = system.network;
  const n = plan.nodes.length;
  /** where current enters, and where loads draw theirs */
  const places: InputPlace[] = [...plan.places];
  const loaded = Int32Array.from([...plan.nodes.keys()].filter((i) => system.loads[plan.nodes[i]!] !== null));
  const loadPlaces = Int32Array.from(loaded, (i) => {
    const known = places.findIndex((p) => p.plus === i && p.minus === -1);
    return known >= 0 ? known : places.push({ plus: i, minus: -1 }) - 1;
  });
  const columns = new Int32Array(loaded.length);
  const loads: BlockLoads | null =
    loaded.length === 0
      ? null
      : createBlockLoads(loaded, () => Array.from(loaded, (i) => system.loads[plan.nodes[i]!] ?? []));
  const all = places.length;
  const count = hz.length;
  const g = new Float64Array(n * n);
  const c = new Float64Array(n * n);
  const b = new Float64Array(n * n);
  const work = new Float64Array(2 * n * (n + all));
  /** response of local node i to the p-th solved place at frequency f: [(p * n + i) * count + f] */
  const unitRe = new Float64Array(all * n * count);
  const unitIm = new Float64Array(all * n * count);
  const currentRe = new Float64Array(count);
  const currentIm = new Float64Array(count);
  const none = new Float64Array(count);
  /** numbers of the places that unitRe and unitIm hold */
  const solved: number[] = [];
  /** places wanted now, and those of them where a current enters */
  const used = new Uint8Array(all);
  const fed = new Uint8Array(all);

  const carries = (input: BlockInput, alive: Uint8Array): boolean => {
    if (system.values[input.element] === 0) return false;
    if (input.kind === 'I') return true;
    const { controlPlus: p, controlMinus: m } = input;
    return (p >= 0 && alive[blockOfNode[p]!] === 1) || (m >= 0 && alive[blockOfNode[m]!] === 1);
  };

  const respond = (): void => {
    solved.length = 0;
    for (let p = 0; p < all; p++) if (used[p] === 1) solved.push(p);
    system.assemble(block, g, c, b);
    const wanted = solved.map((p) => places[p]!);
    unitResponse({ g, c, b }, n, wanted, hz, work, unitRe, unitIm);
    for (let k = 0; k < columns.length; k++) columns[k] = solved.indexOf(loadPlaces[k]!);
  };
  const own = {
    n,
    count,
    hz,
    re: Array.from(plan.nodes, (node) => re[node]!),
    im: Array.from(plan.nodes, (node) => im[node]!),
    unitRe,
    unitIm,
  };

  const gather = (place: number): void => {
    currentRe.fill(0);
    currentIm.fill(0);
    for (const input of plan.inputs) if (input.place === place) addCurrent(input);
  };

  const addCurrent = (input: BlockInput): void => {
    const value = system.values[input.element]!;
    if (input.kind === 'I') {
      const spectrum = system.spectra.get(input.element);
      if (spectrum !== undefined) {
        if (spectrum.re.length !== count) throw new RangeError('a spectrum needs one current for each frequency');
        addScaled(spectrum.re, spectrum.im, 1);
        return;
      }
      const phase = (system.network.elements[input.element]!.phaseDegrees * Math.PI) / 180;
      const ar = value * Math.cos(phase);
      const ai = phase === 0 ? 0 : value * Math.sin(phase);
      for (let f = 0; f < count; f++) {
        currentRe[f] = currentRe[f]! + ar;
        currentIm[f] = currentIm[f]! + ai;
      }
      return;
    }
    const { controlPlus: p, controlMinus: m } = input;
    const limit = input.saturates ? system.saturationVolts[input.element]! : Number.POSITIVE_INFINITY;
    if (limit !== Number.POSITIVE_INFINITY) addSaturated(input, value, limit);
    else {
      if (p >= 0) addScaled(re[p]!, im[p]!, value);
      if (m >= 0) addScaled(re[m]!, im[m]!, -value);
    }
  };

  const addScaled = (vr: Float64Array, vi: Float64Array, value: number): void => {
    for (let f = 0; f < count; f++) {
      currentRe[f] = currentRe[f]! + value * vr[f]!;
      currentIm[f] = currentIm[f]! + value * vi[f]!;
    }
  };

  const addSaturated = ({ controlPlus: p, controlMinus: m }: BlockInput, value: number, limit: number): void => {
    if (system.chirp !== null) {
      const [ar, ai] = sweepStage(
        system.chirp,
        re[p] ?? none,
        im[p] ?? none,
        re[m] ?? none,
        im[m] ?? none,
        value,
        limit,
      );
      addScaled(ar, ai, 1);
      return;
    }
    for (let f = 0; f < count; f++) {
      const vr = (p < 0 ? 0 : re[p]![f]!) - (m < 0 ? 0 : re[m]![f]!);
      const vi = (p < 0 ? 0 : im[p]![f]!) - (m < 0 ? 0 : im[m]![f]!);
      const gm = value * fundamentalGain(Math.sqrt(vr * vr + vi * vi) / limit);
      currentRe[f] = currentRe[f]! + gm * vr;
      currentIm[f] = currentIm[f]! + gm * vi;
    }
  };

  const every = plan.nodes.map((_, i) => i);

  /** Voltages of local nodes from the responses; the first place overwrites what stood there, the others add. */
  const multiply = (
    at: number,
    fresh: boolean,
    outRe: readonly Float64Array[],
    outIm: readonly Float64Array[],
    locals: ArrayLike<number>,
  ): void => {
    for (let k = 0; k < locals.length; k++) {
      const i = locals[k]!;
      const vr = outRe[i]!;
      const vi = outIm[i]!;
      const from = (at * n + i) * count;
      for (let f = 0; f < count; f++) {
        const ur = unitRe[from + f]!;
        const ui = unitIm[from + f]!;
        const sr = currentRe[f]!;
        const si = currentIm[f]!;
        const xr = ur * sr - ui * si;
        const xi = ur * si + ui * sr;
        vr[f] = fresh ? xr : vr[f]! + xr;
        vi[f] = fresh ? xi : vi[f]! + xi;
      }
    }
  };

  /** Kept until the block is brought up to date. */
  const bends = new Map<BlockInput, StageBend>();
  const bendOf = (input: BlockInput, limit: number): StageBend => {
    const volts = (node: number) => ({ re: node < 0 ? none : re[node]!, im: node < 0 ? none : im[node]! });
    const { element, controlPlus, controlMinus } = input;
    const bend = bends.get(input) ?? stageBend(system.values[element]!, limit, volts(controlPlus), volts(controlMinus));
    bends.set(input, bend);
    return bend;
  };

  /** The current that a G element adds for changes at its control nodes. */
  const addChange = (input: BlockInput, dRe: readonly Float64Array[], dIm: readonly Float64Array[]): void => {
    const { controlPlus: p, controlMinus: m } = input;
    const limit = input.saturates ? system.saturationVolts[input.element]! : Number.POSITIVE_INFINITY;
    const pr = p < 0 ? none : dRe[p]!;
    const pi = p < 0 ? none : dIm[p]!;
    const mr = m < 0 ? none : dRe[m]!;
    const mi = m < 0 ? none : dIm[m]!;
    if (limit === Number.POSITIVE_INFINITY) {
      const gm = system.values[input.element]!;
      for (let f = 0; f < count; f++) {
        currentRe[f] = currentRe[f]! + gm * (pr[f]! - mr[f]!);
        currentIm[f] = currentIm[f]! + gm * (pi[f]! - mi[f]!);
      }
      return;
    }
    const at = bendOf(input, limit);
    for (let f = 0; f < count; f++) {
      const dr = pr[f]! - mr[f]!;
      const di = pi[f]! - mi[f]!;
      const vr = at.re[f]!;
      const vi = at.im[f]!;
      const bend = (at.fall[f]! * (vr * dr + vi * di)) / at.over[f]!;
      currentRe[f] = currentRe[f]! + at.gm[f]! * dr + bend * vr;
      currentIm[f] = currentIm[f]! + at.gm[f]! * di + bend * vi;
    }
  };

  return {
    drawnAt(local) {
      const k = loaded.indexOf(local);
      if (k < 0 || solved.length === 0) return null;
      const from = (columns[k]! * n + local) * count;
      const [re, im] = [unitRe.subarray(from, from + count), unitIm.subarray(from, from + count)];
      return { re, im, alone: loaded.length === 1, crest: loads?.crest(k) ?? null };
    },
    follow(dRe, dIm, counts, begun, changed, alive) {
      changed[block] = 0;
      if (alive[block] !== 1) return;
      const comes = plan.inputs.filter(
        ({ kind, controlPlus: p, controlMinus: m, element }) =>
          kind === 'G' &&
          system.values[element] !== 0 &&
          ((p >= 0 && changed[blockOfNode[p]!] === 1) || (m >= 0 && changed[blockOfNode[m]!] === 1)),
      );
      if (!begun && comes.length === 0) return;
      changed[block] = 1;
      const locals = every.filter((i) => counts[plan.nodes[i]!] === 1);
      const change = {
        ...own,
        re: Array.from(plan.nodes, (node) => dRe[node]!),
        im: Array.from(plan.nodes, (node) => dIm[node]!),
      };
      for (const place of new Set(comes.map((input) => input.place))) {
        currentRe.fill(0);
        currentIm.fill(0);
        for (const input of comes) if (input.place === place) addChange(input, dRe, dIm);
        multiply(solved.indexOf(place), false, change.re, change.im, locals);
      }
      loads?.follow(change, columns, own, locals);
    },
    update(moved, alive) {
      moved[block] = 0;
      const matrix = system.matrixDirty[block] === 1;
      if (!matrix && system.inputDirty[block] === 0 && !plan.fedBy.some((from) => moved[from] === 1)) return;
      bends.clear();
      used.fill(0);
      fed.fill(0);
      let live = 0;
      for (const input of plan.inputs) {
        if (!carries(input, alive)) continue;
        used[input.place] = 1;
        fed[input.place] = 1;
        live = 1;
      }
      if (live === 1) for (const p of loadPlaces) used[p] = 1;
      const wasAlive = alive[block];
      alive[block] = live;
      if (live === 1) {
        let missing = matrix;
        for (let p = 0; p < all; p++) if (used[p] === 1 && !solved.includes(p)) missing = true;
        if (missing) {
          respond();
          system.matrixDirty[block] = 0;
        }
        let fresh = true;
        for (let at = 0; at < solved.length; at++) {
          if (fed[solved[at]!] === 0) continue;
          gather(solved[at]!);
          multiply(at, fresh, own.re, own.im, every);
          fresh = false;
        }
        loads?.apply(own, columns, system.chirp);
      } else if (wasAlive === 1) {
        for (const node of plan.nodes) {
          re[node]!.fill(0);
          im[node]!.fill(0);
        }
      }
      moved[block] = live === 1 || wasAlive === 1 ? 1 : 0;
      system.inputDirty[block] = 0;
    },
  };
}
