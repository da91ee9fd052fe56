/**
 * A scenario as a file says it: the keys in their order, without those that say what holds anyway. What is written into run files and hashed is this, so that a key that a
 * later bench knows changes the hash of no scenario that does not use it.
 */
import type * as v from 'valibot';
import { parIsKnown } from '../scenario/par.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { faultToFile } from './faultFile.ts';
import { canonicalJson, hashOf } from './hash.ts';
import { scenarioSchema } from './scenarioSchema.ts';

type Plain = Record<string, unknown>;
/** As much of a schema as is asked here. */
interface Shape {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Shape>>;
  readonly wrapped?: Shape;
  readonly default?: unknown;
}

export function scenarioToFile(scenario: Scenario): Plain {
  const { par, ...rest } = scenario;
  const plain = { ...rest, ...(parIsKnown(scenario) ? { par } : {}), faults: scenario.faults.map(faultToFile) };
  return sparse(scenarioSchema as v.GenericSchema as unknown as Shape, plain) as Plain;
}

/** One hash for all that a scenario says, however its file was written: layout, order of keys, notes and what holds anyway do not count. */
export function scenarioHash(scenario: Scenario): string {
  return hashOf(scenarioToFile(scenario));
}

function sparse(shape: Shape, value: unknown): unknown {
  if (shape.entries === undefined || typeof value !== 'object' || value === null) return value;
  const kept: Plain = {};
  for (const [key, entry] of Object.entries(shape.entries)) {
    const inside = (value as Plain)[key];
    if (inside === undefined) continue;
    const optional = entry.wrapped !== undefined && entry.default !== undefined;
    const short = sparse(entry.wrapped ?? entry, inside);
    if (!optional || canonicalJson(short) !== canonicalJson(sparse(entry.wrapped!, entry.default))) kept[key] = short;
  }
  return kept;
}
