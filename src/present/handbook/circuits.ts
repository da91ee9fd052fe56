/** Small circuits for the handbook's figures: written as decks, read and solved like any receiver. */
import { problemLine } from '../../base/result.ts';
import { buildNetwork } from '../../physics/buildNetwork.ts';
import { readDeck } from '../../physics/readDeck.ts';
import { createSolver, type Solver } from '../../physics/solver.ts';

/** Tuned frequency, Q and coil of a parallel tuned circuit. */
export interface Tank {
  readonly hz: number;
  readonly q: number;
  readonly henries: number;
}

const omega = (hz: number): number => 2 * Math.PI * hz;

export const tankFarads = ({ hz, henries }: Pick<Tank, 'hz' | 'henries'>): number => 1 / (omega(hz) ** 2 * henries);
const tankOhms = ({ hz, q, henries }: Tank): number => q * omega(hz) * henries;

/** Deck lines `L`, `C` and `R` with the name behind them, from the node to ground. */
export function tank(name: string, node: string, circuit: Tank): string {
  return [
    `L${name} ${node} 0 ${circuit.henries}`,
    `C${name} ${node} 0 ${tankFarads(circuit)}`,
    `R${name} ${node} 0 ${tankOhms(circuit)}`,
  ].join('\n');
}

export function retune(solver: Solver, name: string, circuit: Tank): void {
  solver.setValue(`C${name}`, tankFarads(circuit));
  solver.setValue(`R${name}`, tankOhms(circuit));
}

export function solverOf(title: string, lines: readonly string[]): Solver {
  const deck = readDeck([title, ...lines, '.end'].join('\n'), title);
  if (!deck.ok) throw new Error(deck.problems.map(problemLine).join('\n'));
  const network = buildNetwork(deck.value, title);
  if (!network.ok) throw new Error(network.problems.map(problemLine).join('\n'));
  return createSolver(network.value, Float64Array.of(1e6));
}

/** A value that is made when it is first asked for. */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

export const grid = (fromHz: number, toHz: number, points: number): Float64Array =>
  Float64Array.from({ length: points }, (_, i) => fromHz + ((toHz - fromHz) * i) / (points - 1));

/** Volts at a node over a grid. */
export function levels(solver: Solver, node: string, hz: Float64Array): Float64Array {
  solver.setFrequencies(hz);
  solver.solve();
  return Float64Array.from(solver.magnitude(node));
}

export const levelAtHz = (solver: Solver, node: string, hz: number): number =>
  levels(solver, node, Float64Array.of(hz))[0]!;

export const decibels = (ratio: number): number => 20 * Math.log10(ratio);
