/**
 * How a node's level changes with each inductance, by the adjoint method.
 *
 * d|V_k|/dL_e (volt per henry), couplings k held, so that mutual inductances follow sqrt(L_i L_j). With Y v = i and
 * Y^T q = e_k: dV_k = -q^T dY v. For a group with P = inv(L), u = A^T v, s = A^T q:
 * dV_k/dL_e = -(j / (2 w L_e)) ( (P s)_e u_e + s_e (P u)_e ). One more solve with the transposed blocks, from the block of k back
 * through those that feed it, serves every coil. Of the linear network: with a saturation set it throws.
 * Source: Director and Rohrer, Automated network design, the frequency-domain case, IEEE Trans. Circuit Theory 1969 (from memory).
 */

import { nodeKey } from './deck.ts';
import { solveDense } from './denseComplex.ts';
import type { Solver } from './solver.ts';

/** Change of a node's complex voltage, volt per henry, at each of the solver's frequencies. */
export interface ComplexSlope {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** d|V|/dL, volt per henry, keyed by the names given, at each of the solver's frequencies; 0 where the node is dead. Brings the solver up to date first. */
export function inductanceSensitivities(
  solver: Solver,
  node: string,
  elements: readonly string[],
): Map<string, Float64Array> {
  const slopes = inductanceSlopes(solver, node, elements);
  const kr = solver.real(node);
  const ki = solver.imag(node);
  const levelSlope = ({ re, im }: ComplexSlope): Float64Array =>
    re.map((r, f) => {
      const level = Math.hypot(kr[f]!, ki[f]!);
      return level === 0 ? 0 : (kr[f]! * r + ki[f]! * im[f]!) / level;
    });
  return new Map([...slopes].map(([name, slope]) => [name, levelSlope(slope)] as const));
}

/** dV/dL, keyed by the names given. Brings the solver up to date first. */
function inductanceSlopes(solver: Solver, node: string, elements: readonly string[]): Map<string, ComplexSlope> {
  const { network, system, hz } = solver;
  if (system.saturationVolts.some(Number.isFinite))
    throw new Error('sensitivities are of the linear network: take the saturation off');
  const target = network.nodeNumber.get(nodeKey(node));
  if (target === undefined) throw new Error(`the network has no node ${node}`);
  const coils = elements.map((name) => findCoil(solver, name));
  solver.solve();
  const vr = network.nodeNames.map((name) => solver.real(name));
  const vi = network.nodeNames.map((name) => solver.imag(name));
  const out = elements.map(() => ({ re: new Float64Array(hz.length), im: new Float64Array(hz.length) }));
  const adjoint = createAdjoint(solver, target);
  const { qr, qi } = adjoint;

  for (let f = 0; f < hz.length; f++) {
    const w = 2 * Math.PI * hz[f]!;
    adjoint.solveAt(w);
    for (const [c, coil] of coils.entries()) {
      const { group, at, inverse } = coil;
      const n = group.length;
      let ur = 0;
      let ui = 0;
      let sr = 0;
      let si = 0;
      let pur = 0;
      let pui = 0;
      let psr = 0;
      let psi = 0;
      for (let j = 0; j < n; j++) {
        const { plus, minus } = network.elements[group[j]!]!;
        const wr = (plus < 0 ? 0 : vr[plus]![f]!) - (minus < 0 ? 0 : vr[minus]![f]!);
        const wi = (plus < 0 ? 0 : vi[plus]![f]!) - (minus < 0 ? 0 : vi[minus]![f]!);
        const tr = (plus < 0 ? 0 : qr[plus]!) - (minus < 0 ? 0 : qr[minus]!);
        const ti = (plus < 0 ? 0 : qi[plus]!) - (minus < 0 ? 0 : qi[minus]!);
        const p = inverse[at * n + j]!;
        pur += p * wr;
        pui += p * wi;
        psr += p * tr;
        psi += p * ti;
        if (j === at) {
          ur = wr;
          ui = wi;
          sr = tr;
          si = ti;
        }
      }
      const br = psr * ur - psi * ui + sr * pur - si * pui;
      const bi = psr * ui + psi * ur + sr * pui + si * pur;
      const scale = 1 / (2 * w * system.values[coil.element]!);
      // dV = -j scale (br + j bi).
      out[c]!.re[f] = scale * bi;
      out[c]!.im[f] = -scale * br;
    }
  }
  return new Map(elements.map((name, c) => [name, out[c]!] as const));
}

interface Coil {
  readonly element: number;
  /** elements of its group, its own place among them, and the group's inverse inductance matrix */
  readonly group: readonly number[];
  readonly at: number;
  readonly inverse: Float64Array;
}

function findCoil(solver: Solver, name: string): Coil {
  const { network, system } = solver;
  const element = network.elementIndex.get(name.toLowerCase());
  const g = network.groups.findIndex((group) => element !== undefined && group.coils.includes(element));
  if (element === undefined || g < 0) throw new Error(`the network has no inductor ${name}`);
  const group = network.groups[g]!.coils;
  return { element, group, at: group.indexOf(element), inverse: system.inverse[g]! };
}

/** Solves Y^T q = e_target; blocks that do not feed the target keep q = 0. */
function createAdjoint(
  solver: Solver,
  target: number,
): { qr: Float64Array; qi: Float64Array; solveAt(w: number): void } {
  const { network, system } = solver;
  const nodes = network.nodeNames.length;
  const qr = new Float64Array(nodes);
  const qi = new Float64Array(nodes);
  const last = network.blockOfNode[target]!;
  const needed = new Set([last]);
  for (let b = last; b >= 0; b--) if (needed.has(b)) for (const from of system.plans[b]!.fedBy) needed.add(from);
  const blocks = [...needed]
    .sort((a, b) => b - a)
    .map((b) => {
      const plan = system.plans[b]!;
      const n = plan.nodes.length;
      const g = new Float64Array(n * n);
      const c = new Float64Array(n * n);
      const l = new Float64Array(n * n);
      system.assemble(b, g, c, l);
      return { plan, n, g, c, l, work: new Float64Array(2 * n * (n + 1)), reach: new Int32Array(n) };
    });
  const rr = new Float64Array(nodes);
  const ri = new Float64Array(nodes);

  return {
    qr,
    qi,
    solveAt(w) {
      rr.fill(0);
      ri.fill(0);
      rr[target] = 1;
      for (const { plan, n, g, c, l, work, reach } of blocks) {
        const width = 2 * (n + 1);
        for (let i = 0; i < n; i++) {
          for (let j = 0; j < n; j++) {
            const at = j * n + i;
            work[i * width + 2 * j] = g[at]!;
            work[i * width + 2 * j + 1] = w * c[at]! - l[at]! / w;
          }
          work[i * width + 2 * n] = rr[plan.nodes[i]!]!;
          work[i * width + 2 * n + 1] = ri[plan.nodes[i]!]!;
        }
        reach.fill(n - 1);
        solveDense(work, n, 1, reach);
        for (let i = 0; i < n; i++) {
          qr[plan.nodes[i]!] = work[i * width + 2 * n]!;
          qi[plan.nodes[i]!] = work[i * width + 2 * n + 1]!;
        }
        // What this block takes from earlier ones, moved to the right-hand side of theirs.
        for (const input of plan.inputs) {
          if (input.kind !== 'G') continue;
          const { plus, minus } = plan.places[input.place]!;
          const gm = system.values[input.element]!;
          const tr = gm * ((minus < 0 ? 0 : qr[plan.nodes[minus]!]!) - (plus < 0 ? 0 : qr[plan.nodes[plus]!]!));
          const ti = gm * ((minus < 0 ? 0 : qi[plan.nodes[minus]!]!) - (plus < 0 ? 0 : qi[plan.nodes[plus]!]!));
          if (input.controlPlus >= 0) {
            rr[input.controlPlus] = rr[input.controlPlus]! + tr;
            ri[input.controlPlus] = ri[input.controlPlus]! + ti;
          }
          if (input.controlMinus >= 0) {
            rr[input.controlMinus] = rr[input.controlMinus]! - tr;
            ri[input.controlMinus] = ri[input.controlMinus]! - ti;
          }
        }
      }
    },
  };
}
