/**
 * Reads a run file: shape, bounds and the scenario inside. Every problem is told with its JSON pointer, and a file with
 * a problem gives nothing at all. Whether the events are possible and the score is true is the business of verify.ts.
 * Anybody may hand in a file: its bounds are looked at before anything is made of it, and its events one by one as they are read.
 */
import * as v from 'valibot';
import { bad, good, type Result } from '../base/result.ts';
import { createEventReader, type EventReader } from './eventReader.ts';
import { type Sizes, tooBig } from './guardSize.ts';
import { bringForward, type FormatHistory } from './migrations.ts';
import { type JsonLimits, readJson } from './parseJson.ts';
import { LEARNER_CHARS, type RunFile } from './runFile.ts';
import { parseScenario } from './scenarioSchema.ts';
import { integer, list, number, object, text, yesOrNo } from './schemaPieces.ts';
import { asMessage, listed, problemsOf } from './schemaProblems.ts';
import { readSeal, SEAL_PATTERN } from './seal.ts';
import { withTextPlaces } from './textPlaces.ts';

/** Longest text that is looked at. */
export const RUN_FILE_LIMIT_CHARS = 4 * 1024 * 1024;
export const MOST_EVENTS = 120_000;
const MOST_LINES = 400;
/** Of what is not an event: a scenario and a claim, with room. The scenario has bounds of its own, which are narrower. */
const LIMITS: JsonLimits = {
  ...{ textCharacters: RUN_FILE_LIMIT_CHARS, values: 6 * MOST_EVENTS, levels: 16 },
  ...{ items: MOST_LINES, keys: 64, characters: 4000 },
};

/** Of a run whose events are kept in the text with the rest. */
export const OPEN_RUN_LIMITS: JsonLimits = { ...LIMITS, items: MOST_EVENTS };
/** Of what is neither event nor scenario. */
const HEAD: Sizes = { values: 4 * MOST_LINES, items: MOST_LINES, keys: 64, characters: 4000, levels: 4 };

const RUN_HISTORY: FormatHistory = {
  format: 'haystack-run',
  current: 2,
  migrations: {
    // The first version knew no day and no name of the run, was graded by the first rules, and sealed the events alone.
    1: ({ eventsHash, ...old }) => ({ ...old, rules: 1, day: null, runId: null, seal: eventsHash }),
  },
};

const hex64 = (wanted = asMessage(['hash'])) => v.pipe(v.string(wanted), v.regex(/^[0-9a-f]{64}$/, wanted));
const points = number(-1000, 1000);
const seal = asMessage(['seal']);
const isoDay = asMessage(['isoDay']);

export const runFileSchema = object({
  format: v.literal('haystack-run'),
  version: v.literal(2),
  engine: text(20),
  rules: integer(1, 1000),
  scenarioHash: hex64(),
  receiverHash: hex64(),
  learner: v.nullable(text(LEARNER_CHARS)),
  day: v.nullable(v.pipe(v.string(isoDay), v.maxLength(10, isoDay), v.isoDate(isoDay))),
  runId: v.nullable(text(100)),
  scenario: v.unknown(),
  // each is looked at by itself
  events: list(v.unknown(), 0, MOST_EVENTS),
  claimed: v.nullable(
    object({
      total: points,
      passed: yesOrNo(),
      lines: list(object({ id: text(80), points }), 0, MOST_LINES),
    }),
  ),
  seal: v.pipe(v.string(seal), v.regex(SEAL_PATTERN, seal)),
});

/** From text to a run file. */
export function readRunFile(contents: string, file: string): Result<RunFile> {
  const events = createEventReader(file);
  let foreign: Result<unknown> | null = null;
  const json = readJson(contents, file, LIMITS, {
    key: 'events',
    most: MOST_EVENTS,
    take(item, index, before) {
      // A file of another kind or of a newer bench is told as such, not by what its events lack.
      if (index === 0 && Object.hasOwn(before, 'format') && Object.hasOwn(before, 'version')) {
        const current = bringForward(before, RUN_HISTORY, file);
        if (!current.ok) foreign = current;
      }
      return foreign === null && events.take(item, index);
    },
  });
  if (foreign !== null) return foreign;
  const broken = json.value === null && json.problems.length > 0;
  const run = broken ? bad(...events.problems) : runFrom(json.value, events, file);
  const problems = [...(run.ok ? [] : run.problems), ...json.problems];
  return problems.length === 0 ? run : bad(...withTextPlaces(listed(problems, file), file, contents));
}

/** `json` without its events, which have been read. */
function runFrom(json: unknown, { events, problems: wrongEvents }: EventReader, file: string): Result<RunFile> {
  const current = bringForward(json, RUN_HISTORY, file);
  if (!current.ok) return current;
  const { scenario: inside, ...rest } = current.value as { readonly scenario?: unknown };
  const big = tooBig(rest, file, HEAD);
  if (big !== null) return bad(big);
  const shape = v.safeParse(runFileSchema, current.value);
  const scenario = parseScenario(inside, file);
  const problems = [...(shape.success ? [] : problemsOf(shape.issues, file)), ...wrongEvents];
  // Taking the head out of the seal does not make a file one of the first version.
  const first = (json as { readonly version?: unknown }).version === 1;
  if (shape.success && !first && readSeal(shape.output.seal)?.head === null)
    problems.push({ file, place: '/seal', found: ['twoHashes'], wanted: ['seal'] });
  // That there is none has been said already.
  if (!scenario.ok && inside !== undefined)
    problems.push(...scenario.problems.map((p) => ({ ...p, place: `/scenario${p.place}` })));
  if (!shape.success || !scenario.ok || problems.length > 0) return bad(...listed(problems, file));
  const old = (inside as { readonly version?: unknown }).version !== scenario.value.version;
  return good({ ...shape.output, scenario: scenario.value, ...(old ? { handed: inside } : {}), events });
}
