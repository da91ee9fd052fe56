/** ngspice (the eecircuit-engine package, WebAssembly, offline) as a second opinion on a deck: every node at every frequency. */

import type { ComplexDataType } from 'eecircuit-engine';
import { Simulation } from 'eecircuit-engine';

export interface SpiceRun {
  readonly hz: Float64Array;
  /** by lower-case node name */
  readonly nodes: ReadonlyMap<string, { readonly re: Float64Array; readonly im: Float64Array }>;
}

let engine: Promise<Simulation> | null = null;

/** Runs a deck with an `.ac` line. One engine serves the whole process. Outputs asked for do not matter: all nodes come. */
export async function runSpice(deckText: string): Promise<SpiceRun> {
  engine ??= start();
  const simulation = await engine;
  simulation.setNetList(deckText);
  const result = await quietly(() => simulation.runSim());
  if (result.dataType !== 'complex') throw new Error(`ngspice made no AC run: ${simulation.getError().join(' ')}`);
  const vector = (data: ComplexDataType, part: 'real' | 'img'): Float64Array =>
    Float64Array.from(data.values, (v) => v[part]);
  const nodes = new Map<string, { re: Float64Array; im: Float64Array }>();
  for (const data of result.data) {
    const name = /^v\((.+)\)$/.exec(data.name)?.[1];
    if (name !== undefined) nodes.set(name, { re: vector(data, 'real'), im: vector(data, 'img') });
  }
  return { hz: vector(result.data[0]!, 'real'), nodes };
}

export interface SpiceTransient {
  /** the engine's own instants, not evenly spaced */
  readonly seconds: Float64Array;
  /** volts by lower-case node name */
  readonly nodes: ReadonlyMap<string, Float64Array>;
}

/** For decks with diodes: 300 K for both the diode's law and its data, and tolerances far below what is compared. */
export const DIODE_SETTINGS = '.options temp=26.85 tnom=26.85 reltol=1e-6 vntol=1e-10 abstol=1e-15 chgtol=1e-20';
/** kT/q at that temperature, volts. */
export const K_T_PER_Q = (1.380649e-23 * 300) / 1.602176634e-19;

/** Mean of a node's volts over a part of the time run, from and to as shares of its end, by the trapezoidal rule. */
export function meanVolts(
  { seconds, nodes }: SpiceTransient,
  node: string,
  [fromShare, toShare]: readonly [fromShare: number, toShare: number],
): number {
  const volts = nodes.get(node)!;
  const end = seconds[seconds.length - 1]!;
  let [area, time] = [0, 0];
  for (let i = 1; i < volts.length; i++) {
    if (seconds[i - 1]! < fromShare * end || seconds[i]! > toShare * end) continue;
    const step = seconds[i]! - seconds[i - 1]!;
    area += ((volts[i]! + volts[i - 1]!) / 2) * step;
    time += step;
  }
  return area / time;
}

/** Runs a deck with a `.tran` line. It keeps the nodes of `keep` alone: the engine makes lists of every number twice, which for all nodes costs more than the run. */
export async function runTransient(deckText: string, keep: readonly string[]): Promise<SpiceTransient> {
  engine ??= start();
  const simulation = await engine;
  const saved = `.save ${keep.map((node) => `v(${node})`).join(' ')}`;
  // Before the deck's last line, which is its end.
  simulation.setNetList(deckText.replace(/\.end\s*$/, `${saved}\n.end\n`));
  const result = await quietly(() => simulation.runSim());
  if (result.dataType !== 'real') throw new Error(`ngspice made no time run: ${simulation.getError().join(' ')}`);
  const nodes = new Map<string, Float64Array>();
  for (const data of result.data) {
    const name = /^v\((.+)\)$/.exec(data.name)?.[1];
    if (name !== undefined) nodes.set(name, Float64Array.from(data.values));
  }
  return { seconds: Float64Array.from(result.data[0]!.values), nodes };
}

/** Volts at rest by lower-case node name: a deck with a `.op` line. */
export async function runRest(deckText: string): Promise<ReadonlyMap<string, number>> {
  engine ??= start();
  const simulation = await engine;
  simulation.setNetList(deckText);
  const result = await quietly(() => simulation.runSim());
  if (result.dataType !== 'real') throw new Error(`ngspice found no rest: ${simulation.getError().join(' ')}`);
  return new Map(
    result.data.flatMap(({ name, values }) => {
      const node = /^v\((.+)\)$/.exec(name)?.[1] ?? name;
      return [[node, values[0] as number] as const];
    }),
  );
}

/** Noise at a node, volts a root hertz, by frequency: a deck with a `.noise` line, every resistor at 27 degrees. */
export async function runNoise(
  deckText: string,
): Promise<{ readonly hz: Float64Array; readonly density: Float64Array }> {
  engine ??= start();
  const simulation = await engine;
  simulation.setNetList(deckText);
  const result = await quietly(() => simulation.runSim());
  const found = result.dataType === 'real' ? result.data.find(({ name }) => name === 'onoise_spectrum') : undefined;
  if (found === undefined || result.dataType !== 'real') {
    throw new Error(`ngspice made no noise run: ${simulation.getError().join(' ')}`);
  }
  return {
    hz: Float64Array.from(result.data[0]!.values as number[]),
    density: Float64Array.from(found.values as number[]),
  };
}

async function start(): Promise<Simulation> {
  const simulation = new Simulation();
  await quietly(() => simulation.start());
  return simulation;
}

/** The engine writes its notes to the console. */
async function quietly<T>(act: () => Promise<T>): Promise<T> {
  const { log, warn, error } = console;
  const silent = (): void => {};
  Object.assign(console, { log: silent, warn: silent, error: silent });
  try {
    return await act();
  } finally {
    Object.assign(console, { log, warn, error });
  }
}

/** The text of a deck with other inductances, written with all their digits; element names as in the deck. */
export function withInductances(deckText: string, henries: Readonly<Record<string, number>>): string {
  return Object.entries(henries).reduce((text, [name, value]) => {
    const line = new RegExp(`^(${name}\\s+\\S+\\s+\\S+\\s+)(\\S+)`, 'im');
    if (!line.test(text)) throw new Error(`the deck has no line of ${name}`);
    return text.replace(line, (_, before: string) => `${before}${value}`);
  }, deckText);
}
