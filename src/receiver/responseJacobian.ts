/**
 * How a stated response changes with the turn of every slug: d(curve)/d(turn) at each of its frequencies, in the response's unit per turn.
 *
 * Chain: dL/dturn of the slug law (ganged windings in proportion) times dV/dL by the adjoint method (physics/sensitivity.ts). A plain carrier takes d|V|; a
 * difference D = (|P| - |M|) / |R| takes dD = (d|P| - d|M|) / |R| - D d|R| / |R|. Behind a converter the level is a product, |V| = |V_from| * |T|, so a coil before it
 * gives d|V| = |V| d|V_from| / |V_from|. Coils that the signal does not pass (the oscillator's tank, which moves the difference frequency) and the signal's coils in
 * a video sweep (which move carrier and both sidebands) are taken by a central difference of STEP_TURNS; coils behind the video feed by the adjoint method.
 * Validity: linear network, as stated responses are. Error of the central difference about 1e-6 of the largest slope.
 */
import type { Deck } from '../physics/deck.ts';
import { nodeKey } from '../physics/deck.ts';
import { inductanceSensitivities } from '../physics/sensitivity.ts';
import type { Solver } from '../physics/solver.ts';
import { deckValue } from './elementValues.ts';
import type { Adjuster, Receiver } from './receiver.ts';
import { henriesPerTurn, nominalTurns } from './slugLaw.ts';
import type { CoreTurns, StatedResponse } from './statedResponse.ts';

const STEP_TURNS = 5e-4;

/** Slopes by slug id, one element for each of `stated.hz`. `stated` is left solved at `turns`. */
export function responseJacobian(
  receiver: Receiver,
  deck: Deck,
  stated: StatedResponse,
  turns: CoreTurns,
  slugs: readonly string[] = receiver.adjusters.map((a) => a.id),
): Map<string, Float64Array> {
  const curve = stated.solve(turns).volts;
  const out = new Map<string, Float64Array>();
  const rest: Adjuster[] = [];
  const mains = new Map<Solver, Adjuster[]>();
  for (const adjuster of receiver.adjusters) {
    if (!slugs.includes(adjuster.id)) continue;
    const solvers = adjuster.ganged.concat(adjuster.element).map((name) => stated.path.solversOf(name).main);
    const [solver] = solvers;
    // A core that moves a coupling too is taken by the central difference as well.
    if (solver == null || adjuster.twoPeaks !== undefined || solvers.some((s) => s !== solver)) rest.push(adjuster);
    else mains.set(solver, [...(mains.get(solver) ?? []), adjuster]);
  }
  const nodes = wantedNodes(stated);
  for (const [solver, adjusters] of mains) {
    const coils = adjusters.flatMap((a) => [a.element, ...a.ganged]);
    const slopes = levelSlopes(receiver, stated, solver, nodes, coils);
    if (slopes === null) {
      rest.push(...adjusters);
      continue;
    }
    for (const adjuster of adjusters) {
      const at = turns[adjuster.id] ?? nominalTurns(adjuster);
      const share = henriesPerTurn(adjuster, at);
      const sum = new Float64Array(stated.hz.length);
      for (const coil of [adjuster.element, ...adjuster.ganged]) {
        const scale = coil === adjuster.element ? share : (share * deckValue(deck, coil)) / adjuster.nominalHenries;
        const slope = slopes(coil);
        for (let f = 0; f < sum.length; f++) sum[f] = sum[f]! + scale * slope[f]!;
      }
      out.set(adjuster.id, sum);
    }
  }
  for (const adjuster of rest) {
    const at = turns[adjuster.id] ?? nominalTurns(adjuster);
    const [low, high] = [Math.max(at - STEP_TURNS, 0), Math.min(at + STEP_TURNS, adjuster.travelTurns)];
    const up = stated.solve({ ...turns, [adjuster.id]: high }).volts;
    const down = stated.solve({ ...turns, [adjuster.id]: low }).volts;
    out.set(
      adjuster.id,
      up.map((v, f) => (v - down[f]!) / (high - low)),
    );
  }
  if (rest.length > 0) stated.solve(turns);
  for (const slope of out.values()) if (slope.length !== curve.length) throw new Error('slopes and curve differ');
  return out;
}

/** The nodes that the quantity is made of. */
function wantedNodes({ response: { quantity } }: StatedResponse): readonly string[] {
  return quantity.kind === 'carrier' ? [quantity.node] : [quantity.plus, quantity.minus, quantity.per];
}

/** Slope of the quantity for each henry of a coil of `solver`'s part; null where the part does not lead to the quantity by products alone. */
function levelSlopes(
  receiver: Receiver,
  stated: StatedResponse,
  solver: Solver,
  nodes: readonly string[],
  coils: readonly string[],
): ((coil: string) => Float64Array) | null {
  const count = stated.hz.length;
  const holds = (node: string): boolean => solver.network.nodeNumber.has(nodeKey(node));
  const from = receiver.converter?.from;
  const levels = nodes.map((node) => stated.path.magnitude(node, new Float64Array(count)));
  const slopes = nodes.map((node, i) => {
    if (holds(node)) return inductanceSensitivities(solver, node, coils);
    if (from === undefined || !holds(from)) return null;
    const before = solver.magnitude(from);
    const scaled = [...inductanceSensitivities(solver, from, coils)].map(
      ([coil, s]) => [coil, s.map((v, f) => (before[f]! > 0 ? (v / before[f]!) * levels[i]![f]! : 0))] as const,
    );
    return new Map(scaled);
  });
  if (slopes.includes(null)) return null;
  const of = (i: number, coil: string): Float64Array => slopes[i]!.get(coil)!;
  if (nodes.length === 1) return (coil) => of(0, coil);
  const [plus, minus, per] = levels as [Float64Array, Float64Array, Float64Array];
  return (coil) => {
    const [dp, dm, dr] = [of(0, coil), of(1, coil), of(2, coil)];
    return per.map((r, f) => (r > 0 ? (dp[f]! - dm[f]! - ((plus[f]! - minus[f]!) / r) * dr[f]!) / r : 0));
  };
}
