/**
 * The records of the store as the schema library reads them. Nothing that comes back from storage is believed: it may have been written by another version,
 * by a page that was torn off in the middle, or by hand.
 */
import * as v from 'valibot';
import { timedEventSchema } from '../../files/eventSchema.ts';
import { faultToFile } from '../../files/faultFile.ts';
import type { TimedEvent } from '../../files/runFile.ts';
import { parseScenario } from '../../files/scenarioSchema.ts';
import { fileId, integer, list, number, oneOf, text, yesOrNo } from '../../files/schemaPieces.ts';
import { MOST_SEED } from '../../scenario/attempt.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Aside, AsideReason, KeptRun, OpenHead, OpenRun } from './keptRuns.ts';

const LONGEST_RUN_MS = 1e9;
const LATEST_MS = 1e14;

const id = () => text(100);
const day = () => number(0, LATEST_MS);

const headSchema = v.object({
  runId: id(),
  scenarioId: id(),
  elapsedMs: number(0, LONGEST_RUN_MS),
  turns: number(0, 1e7),
  savedAtMs: day(),
});

const openSchema = v.object({
  runId: id(),
  scenarioId: id(),
  learner: v.nullable(text(80)),
  scenario: v.unknown(),
  // Left out by runs that lie open from before there was one.
  scenarioHash: v.optional(v.nullable(text(64)), null),
  attempt: v.optional(v.nullable(integer(0, MOST_SEED)), null),
  events: v.array(v.unknown()),
  elapsedMs: number(0, LONGEST_RUN_MS),
  session: v.unknown(),
  turns: number(0, 1e7),
});

const keptSchema = v.object({
  runId: id(),
  scenarioId: id(),
  track: id(),
  receiver: id(),
  sealed: yesOrNo(),
  learner: v.nullable(text(80)),
  total: number(-1000, 1000),
  passed: yesOrNo(),
  lines: list(
    v.object({
      id: text(80),
      points: number(-1000, 1000),
      max: v.nullable(number(-1000, 1000)),
      cause: v.nullable(
        v.variant('kind', [
          v.object({ kind: v.literal('slug'), slug: text(40), turns: number(-1000, 1000) }),
          v.object({ kind: v.literal('part'), part: text(80) }),
        ]),
      ),
    }),
    0,
    400,
  ),
  signedAtMs: v.nullable(day()),
  setUp: v.exactOptional(text(80)),
  serial: integer(0, 1e9),
});

const asideSchema = v.object({
  id: id(),
  reason: oneOf('unreadable', 'stopsShort', 'doesNotStart', 'putAside'),
  scenarioId: v.nullable(id()),
  text: v.string(),
});

export function readHead(record: unknown): OpenHead | null {
  return outputOf(headSchema, record);
}

export function readKept(record: unknown): KeptRun | null {
  return outputOf(keptSchema, record);
}

export function readAside(record: unknown): Aside | null {
  return outputOf(asideSchema, record);
}

export interface ReadOpen {
  /** with the acts up to the first that is none */
  readonly run: OpenRun;
  /** how many acts the record holds, readable or not */
  readonly recorded: number;
  /** the record as it is, where not all of its acts can be read */
  readonly text: string | null;
}

/** The store keeps a scenario as the bench has it, with its faults by their own names. */
function fileOfKept(scenario: unknown): unknown {
  if (!isObject(scenario) || scenario.version === 1 || !Array.isArray(scenario.faults)) return scenario;
  return { ...scenario, faults: scenario.faults.map((fault) => (isObject(fault) ? faultToFile(fault) : fault)) };
}

/** An open run, or null where not even its head and scenario can be read. */
export function readOpenRun(record: unknown): ReadOpen | null {
  const shape = outputOf(openSchema, record);
  if (shape === null) return null;
  const scenario = scenarioOf(shape);
  if (scenario === 'none') return null;
  const events: TimedEvent[] = [];
  for (const each of shape.events) {
    const event = outputOf(timedEventSchema, each);
    if (event === null) break;
    events.push(event);
  }
  const recorded = shape.events.length;
  const text = events.length < recorded ? anyText(record) : null;
  return { run: { ...shape, scenario, events }, recorded, text };
}

/** Of a sealed run null: its hash stands for it. */
function scenarioOf({
  scenario,
  scenarioHash,
  scenarioId,
}: v.InferOutput<typeof openSchema>): Scenario | null | 'none' {
  if (scenario === null) return scenarioHash === null ? 'none' : null;
  const read = parseScenario(fileOfKept(scenario), 'open run');
  // The scenario goes into a file name and an address; the record must be filed under it.
  return read.ok && read.value.id === scenarioId ? read.value : 'none';
}

function outputOf<T extends v.GenericSchema>(schema: T, record: unknown): v.InferOutput<T> | null {
  try {
    const read = v.safeParse(schema, record);
    return read.success ? read.output : null;
  } catch {
    // A value with traps of its own (a getter that throws) is no record of ours either.
    return null;
  }
}

/** What cannot be used as it is, made ready to be saved: the run file in it where there is one, else all of it. */
export function asideOf(id: string, reason: AsideReason, record: unknown): Aside {
  const scenarioId = outputOf(fileId(), isObject(record) ? record.scenarioId : null);
  return { id, reason, scenarioId, text: stringIn(record, 'text') ?? anyText(record) };
}

export function isObject(record: unknown): record is Readonly<Record<string, unknown>> {
  return typeof record === 'object' && record !== null;
}

export function stringIn(record: unknown, key: string): string | null {
  const value = isObject(record) ? record[key] : null;
  return typeof value === 'string' && value !== '' ? value : null;
}

/** A value as text that can be saved, whatever it is: storage may hold what JSON cannot (dates, maps, circles). */
export function anyText(value: unknown): string {
  const above: unknown[] = [];
  try {
    const text = JSON.stringify(
      value,
      function (this: unknown, _key, item: unknown) {
        if (typeof item === 'bigint') return `${item}n`;
        if (typeof item !== 'object' || item === null) return item;
        while (above.length > 0 && above.at(-1) !== this) above.pop();
        if (above.includes(item)) return '[a circle]';
        above.push(item);
        if (item instanceof Map) return { map: [...item] };
        if (item instanceof Set) return { set: [...item] };
        return item;
      },
      1,
    );
    return text ?? String(value);
  } catch {
    return String(value);
  }
}
