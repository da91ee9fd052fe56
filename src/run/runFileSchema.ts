/**
 * Reads a run file: shape, bounds and the scenario inside. Every problem is told with its JSON pointer, and a file with
 * a problem gives nothing at all. Whether the events are possible and the score is true is the business of verify.ts.
 */
import * as v from 'valibot';
import { bad, type Problem, type Result } from '../base/result.ts';
import { parseScenario } from '../scenario/scenarioSchema.ts';
import { timedEventSchema } from './eventSchema.ts';
import type { RunFile } from './runFile.ts';
import { SEAL_PATTERN } from './seal.ts';

/** Longest text that is looked at; parseJson takes it as its bound. */
export const RUN_FILE_LIMIT_CHARS = 4 * 1024 * 1024;
/** More problems than this are counted, not listed. */
const PROBLEMS_LISTED = 200;

const hex64 = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, '64 hexadecimal digits'));
const points = v.pipe(v.number(), v.finite(), v.minValue(-1000), v.maxValue(1000));

const runFileSchema = v.strictObject({
  format: v.literal('haystack-run'),
  version: v.literal(1),
  engine: v.pipe(v.string(), v.minLength(1), v.maxLength(20)),
  scenario: v.unknown(),
  scenarioHash: hex64,
  receiverHash: hex64,
  learner: v.nullable(v.pipe(v.string(), v.minLength(1), v.maxLength(80))),
  events: v.pipe(v.array(timedEventSchema), v.maxLength(120_000)),
  eventsHash: v.pipe(v.string(), v.regex(SEAL_PATTERN, 'count:set:chain')),
  claimed: v.nullable(
    v.strictObject({
      total: points,
      passed: v.boolean(),
      lines: v.pipe(
        v.array(v.strictObject({ id: v.pipe(v.string(), v.minLength(1), v.maxLength(80)), points })),
        v.maxLength(400),
      ),
    }),
  ),
});

export function parseRunFile(json: unknown, file: string): Result<RunFile> {
  const shape = v.safeParse(runFileSchema, json);
  const problems = shape.success ? [] : shape.issues.map((issue) => problemOf(issue, file));
  const scenario = parseScenario(memberOf(json, 'scenario'), file);
  if (!scenario.ok) problems.push(...scenario.problems.map((p) => ({ ...p, place: `/scenario${p.place}` })));
  if (!shape.success || !scenario.ok) return bad(...listed(problems, file));
  return { ok: true, value: { ...shape.output, scenario: scenario.value } as RunFile };
}

function memberOf(json: unknown, key: string): unknown {
  if (typeof json !== 'object' || json === null || !Object.hasOwn(json, key)) return undefined;
  return (json as Record<string, unknown>)[key];
}

function problemOf(issue: v.BaseIssue<unknown>, file: string): Problem {
  const place = (issue.path ?? []).map((step) => `/${escaped(String(step.key))}`).join('');
  const unknownKey = issue.expected === 'never';
  return {
    file,
    place,
    found: issue.received,
    wanted: unknownKey ? 'no such key' : (issue.expected ?? issue.message),
  };
}

/** JSON pointer escapes (RFC 6901, section 3). */
function escaped(key: string): string {
  return key.replaceAll('~', '~0').replaceAll('/', '~1');
}

function listed(problems: readonly Problem[], file: string): readonly Problem[] {
  if (problems.length <= PROBLEMS_LISTED) return problems;
  const rest = problems.length - PROBLEMS_LISTED;
  return [...problems.slice(0, PROBLEMS_LISTED), { file, place: '', found: `${rest} more problems`, wanted: 'none' }];
}
