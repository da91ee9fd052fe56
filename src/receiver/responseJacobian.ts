/**
 * How a stated response changes with the turn of every slug: d(curve)/d(turn) at each of its frequencies, in the response's unit per turn.
 *
 * Chain: dL/dturn of the slug law (ganged windings in proportion) times dV/dL with stages and loads as they stand (physics/sensitivity.ts). A plain carrier takes
 * d|V| over the unit; a difference D = (|P| - |M|) / (N |R|) takes dD = (d|P| - d|M|) / (N |R|) - D d(N |R|) / (N |R|). Coils before a converter (the level that loads and
 * stages behind it meet changes with them), its oscillator's coil (which moves the difference frequency) and the signal's coils in a video sweep (which move carrier and both
 * sidebands) are taken by a central difference of STEP_TURNS; its error is about 1e-6 of the largest slope.
 */
import type { Deck } from '../physics/deck.ts';
import { nodeKey } from '../physics/deck.ts';
import { inductanceSlopes, levelSlopes as slopesOfLevel } from '../physics/sensitivity.ts';
import type { Solver } from '../physics/solver.ts';
import { deckValue } from './elementValues.ts';
import type { Adjuster, Receiver } from './receiver.ts';
import { henriesPerTurn, nominalTurns } from './slugLaw.ts';
import { type CoreTurns, drivenStage, type StatedResponse } from './statedResponse.ts';

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
    const slopes = levelSlopes(receiver, deck, stated, solver, nodes, coils);
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
    const low = Math.max(at - STEP_TURNS, 0);
    const high = Math.min(at + STEP_TURNS, adjuster.travelTurns);
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

/** Slope of the quantity for each henry of a coil of `solver`'s part; null where the quantity lies in another part. */
function levelSlopes(
  receiver: Receiver,
  deck: Deck,
  { path, response: { quantity }, perUnit }: StatedResponse,
  solver: Solver,
  nodes: readonly string[],
  coils: readonly string[],
): ((coil: string) => Float64Array) | null {
  if (!nodes.every((node) => solver.network.nodeNumber.has(nodeKey(node)))) return null;
  const slopes = inductanceSlopes(solver, nodes, coils);
  const levels = nodes.map((node) => slopesOfLevel(solver.real(node), solver.imag(node)));
  const ofLevel = (i: number, coil: string): Float64Array => levels[i]!(slopes.get(coil)![i]!);
  if (quantity.kind === 'carrier') {
    return (coil) => {
      const slope = ofLevel(0, coil);
      for (let f = 0; f < slope.length; f++) slope[f] = slope[f]! / perUnit;
      return slope;
    };
  }
  const count = solver.hz.length;
  const [plus, minus, per] = nodes.map((node) => path.magnitude(node, new Float64Array(count)));
  const gain = new Float64Array(count).fill(1);
  const ofChange = new Float64Array(count).fill(1);
  const stage = drivenStage(receiver, deck, quantity.per);
  if (stage !== null) path.stageGain(stage, gain, ofChange);
  return (coil) => {
    const dp = ofLevel(0, coil);
    const dm = ofLevel(1, coil);
    const dr = ofLevel(2, coil);
    return per!.map((r, f) => {
      const driving = gain[f]! * r;
      if (!(driving > 0)) return 0;
      return (dp[f]! - dm[f]! - ((plus![f]! - minus![f]!) / driving) * ofChange[f]! * dr[f]!) / driving;
    });
  };
}
