/** One block at all frequencies: its responses to one amp at each input place, and its voltages. */

import { solveDense } from './denseComplex.ts';
import { fundamentalGain } from './describingFunction.ts';
import type { System } from './system.ts';

export interface SolverBlock {
  /** Brings the block up to date; `moved` tells which earlier blocks changed. True when its voltages changed. */
  update(moved: Uint8Array): boolean;
}

export function createBlock(
  system: System,
  block: number,
  hz: Float64Array,
  re: readonly Float64Array[],
  im: readonly Float64Array[],
): SolverBlock {
  const plan = system.plans[block]!;
  const n = plan.nodes.length;
  const m = plan.places.length;
  const count = hz.length;
  const width = 2 * (n + m);
  const g = new Float64Array(n * n);
  const c = new Float64Array(n * n);
  const b = new Float64Array(n * n);
  const work = new Float64Array(n * width);
  /** response of local node i to place p at frequency f: [(p * n + i) * count + f] */
  const unitRe = new Float64Array(m * n * count);
  const unitIm = new Float64Array(m * n * count);
  const currentRe = Array.from({ length: m }, () => new Float64Array(count));
  const currentIm = Array.from({ length: m }, () => new Float64Array(count));

  const respond = (): void => {
    system.assemble(block, g, c, b);
    for (let f = 0; f < count; f++) {
      const w = 2 * Math.PI * hz[f]!;
      const perW = 1 / w;
      for (let i = 0; i < n; i++) {
        const row = i * width;
        for (let j = 0; j < n; j++) {
          const at = i * n + j;
          work[row + 2 * j] = g[at]!;
          work[row + 2 * j + 1] = w * c[at]! - perW * b[at]!;
        }
        for (let p = 0; p < m; p++) {
          const place = plan.places[p]!;
          work[row + 2 * (n + p)] = i === place.minus ? 1 : i === place.plus ? -1 : 0;
          work[row + 2 * (n + p) + 1] = 0;
        }
      }
      solveDense(work, n, m);
      for (let i = 0; i < n; i++) {
        for (let p = 0; p < m; p++) {
          const at = i * width + 2 * (n + p);
          unitRe[(p * n + i) * count + f] = work[at]!;
          unitIm[(p * n + i) * count + f] = work[at + 1]!;
        }
      }
    }
  };

  const drive = (): void => {
    for (let p = 0; p < m; p++) {
      currentRe[p]!.fill(0);
      currentIm[p]!.fill(0);
    }
    for (const input of plan.inputs) {
      const sr = currentRe[input.place]!;
      const si = currentIm[input.place]!;
      const value = system.values[input.element]!;
      if (input.kind === 'I') {
        const phase = (system.network.elements[input.element]!.phaseDegrees * Math.PI) / 180;
        const ar = value * Math.cos(phase);
        const ai = phase === 0 ? 0 : value * Math.sin(phase);
        for (let f = 0; f < count; f++) {
          sr[f] = sr[f]! + ar;
          si[f] = si[f]! + ai;
        }
        continue;
      }
      const limit = input.saturates ? system.saturationVolts[input.element]! : Number.POSITIVE_INFINITY;
      for (let f = 0; f < count; f++) {
        let vr = 0;
        let vi = 0;
        if (input.controlPlus >= 0) {
          vr += re[input.controlPlus]![f]!;
          vi += im[input.controlPlus]![f]!;
        }
        if (input.controlMinus >= 0) {
          vr -= re[input.controlMinus]![f]!;
          vi -= im[input.controlMinus]![f]!;
        }
        const gm =
          limit === Number.POSITIVE_INFINITY ? value : value * fundamentalGain(Math.sqrt(vr * vr + vi * vi) / limit);
        sr[f] = sr[f]! + gm * vr;
        si[f] = si[f]! + gm * vi;
      }
    }
    for (let i = 0; i < n; i++) {
      const vr = re[plan.nodes[i]!]!;
      const vi = im[plan.nodes[i]!]!;
      vr.fill(0);
      vi.fill(0);
      for (let p = 0; p < m; p++) {
        const sr = currentRe[p]!;
        const si = currentIm[p]!;
        const from = (p * n + i) * count;
        for (let f = 0; f < count; f++) {
          const ur = unitRe[from + f]!;
          const ui = unitIm[from + f]!;
          vr[f] = vr[f]! + ur * sr[f]! - ui * si[f]!;
          vi[f] = vi[f]! + ur * si[f]! + ui * sr[f]!;
        }
      }
    }
  };

  return {
    update(moved) {
      const matrix = system.matrixDirty[block] === 1;
      if (!matrix && system.inputDirty[block] === 0 && !plan.fedBy.some((from) => moved[from] === 1)) return false;
      if (matrix) respond();
      drive();
      system.matrixDirty[block] = 0;
      system.inputDirty[block] = 0;
      return true;
    },
  };
}
