/**
 * Reads a run file: shape, bounds and the scenario inside. Every problem is told with its JSON pointer, and a file with
 * a problem gives nothing at all. Whether the events are possible and the score is true is the business of verify.ts.
 */
import * as v from 'valibot';
import { bad, good, type Problem, type Result } from '../base/result.ts';
import { timedEventSchema } from './eventSchema.ts';
import { bringForward, type FormatHistory } from './migrations.ts';
import { parseJson } from './parseJson.ts';
import type { RunFile } from './runFile.ts';
import { parseScenario } from './scenarioSchema.ts';
import { list, number, text, yesOrNo } from './schemaPieces.ts';
import { problemsOf } from './schemaProblems.ts';
import { SEAL_PATTERN } from './seal.ts';

/** Longest text that is looked at. */
export const RUN_FILE_LIMIT_CHARS = 4 * 1024 * 1024;
const MOST_EVENTS = 120_000;
/** More problems than this are counted, not listed. */
const PROBLEMS_LISTED = 200;

/** Version 1 is the first, so there is nothing to bring forward yet. */
const RUN_HISTORY: FormatHistory = { format: 'haystack-run', current: 1, migrations: {} };

const hex64 = (wanted = '64 hexadecimal digits') => v.pipe(v.string(wanted), v.regex(/^[0-9a-f]{64}$/, wanted));
const points = number(-1000, 1000);
const seal = 'a count, a hash and a hash, joined by colons';

const runFileSchema = v.strictObject({
  format: v.literal('haystack-run'),
  version: v.literal(1),
  engine: text(20),
  scenario: v.unknown(),
  scenarioHash: hex64(),
  receiverHash: hex64(),
  learner: v.nullable(text(80)),
  events: list(timedEventSchema, 0, MOST_EVENTS),
  eventsHash: v.pipe(v.string(seal), v.regex(SEAL_PATTERN, seal)),
  claimed: v.nullable(
    v.strictObject({
      total: points,
      passed: yesOrNo(),
      lines: list(v.strictObject({ id: text(80), points }), 0, 400),
    }),
  ),
});

/** From text to a run file, with the bound on its length. */
export function readRunFile(contents: string, file: string): Result<RunFile> {
  const json = parseJson(contents, file, RUN_FILE_LIMIT_CHARS);
  return json.ok ? parseRunFile(json.value, file) : json;
}

export function parseRunFile(json: unknown, file: string): Result<RunFile> {
  const current = bringForward(json, RUN_HISTORY, file);
  if (!current.ok) return current;
  const shape = v.safeParse(runFileSchema, current.value);
  const problems = shape.success ? [] : problemsOf(shape.issues, file);
  const scenario = parseScenario((current.value as { scenario?: unknown }).scenario, file);
  if (!scenario.ok) problems.push(...scenario.problems.map((p) => ({ ...p, place: `/scenario${p.place}` })));
  if (!shape.success || !scenario.ok) return bad(...listed(problems, file));
  return good({ ...shape.output, scenario: scenario.value });
}

function listed(problems: readonly Problem[], file: string): readonly Problem[] {
  if (problems.length <= PROBLEMS_LISTED) return problems;
  const rest = problems.length - PROBLEMS_LISTED;
  return [...problems.slice(0, PROBLEMS_LISTED), { file, place: '', found: `${rest} more problems`, wanted: 'none' }];
}
