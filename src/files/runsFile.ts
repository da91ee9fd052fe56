/**
 * All the runs of one candidate in one file, as they are handed in after an exam. Each run is a run file like any other and is judged as one; what is looked at here is whether the
 * runs are this candidate's: by the name under their seal, and by the number that they were dealt from.
 */
import * as v from 'valibot';
import { bad, good, type Problem, type Result } from '../base/result.ts';
import { MOST_SEED } from '../scenario/attempt.ts';
import { sheetTermsSchema } from './eveningTerms.ts';
import { hashOf } from './hash.ts';
import { bringForward, type FormatHistory } from './migrations.ts';
import { type JsonLimits, readJson } from './parseJson.ts';
import { LEARNER_CHARS } from './runFile.ts';
import { saysFormat } from './saysFormat.ts';
import { list, object, text } from './schemaPieces.ts';
import { asMessage, problemsOf } from './schemaProblems.ts';

const MOST_RUNS = 60;
/** Deals of one scenario that one candidate may have had. */
const MOST_TURNS = 20;

const hash = () => v.pipe(v.string(asMessage(['hash'])), v.regex(/^[0-9a-f]{64}$/, asMessage(['hash'])));

export const runsFileSchema = object({
  format: v.literal('haystack-runs'),
  version: v.literal(1),
  title: text(60),
  sheet: hash(),
  candidate: text(LEARNER_CHARS),
  terms: v.exactOptional(sheetTermsSchema),
  runs: list(v.unknown(), 0, MOST_RUNS),
});

const HISTORY: FormatHistory = { format: 'haystack-runs', current: 1, migrations: {} };
const LIMITS: JsonLimits = {
  ...{ textCharacters: 8 * 1024 * 1024, values: 2_000_000, levels: 20 },
  ...{ items: 120_000, keys: 64, characters: 4000 },
};

export type RunsHead = Omit<v.InferOutput<typeof runsFileSchema>, 'runs' | 'format' | 'version'>;

/** One run of the file: its text, or what speaks against it. */
export type HandedRun =
  | { readonly ok: true; readonly value: string }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const isRunsText = (contents: string): boolean => saysFormat(contents, 'runs', 400);

export function runsText(head: RunsHead, runs: readonly string[]): string {
  const frame = JSON.stringify({ format: 'haystack-runs', version: 1, ...head, runs: [] });
  // The list is the last key; the runs stand in it as they were saved.
  return `${frame.slice(0, -2)}\n${runs.map((run) => run.trim()).join(',\n')}\n]}\n`;
}

export interface HandedRuns {
  readonly head: RunsHead;
  readonly runs: readonly HandedRun[];
}

export function readRuns(contents: string, file: string): Result<HandedRuns> {
  const runs: unknown[] = [];
  const take = (run: unknown): boolean => runs.push(run) > 0;
  // More are not even read.
  const json = readJson(contents, file, LIMITS, { key: 'runs', most: MOST_RUNS, take });
  if (json.problems.length > 0) return bad(...json.problems);
  const whole = json.value;
  const listed = isObject(whole) && Array.isArray(whole.runs) ? { ...whole, runs } : whole;
  const forward = bringForward(listed, HISTORY, file);
  if (!forward.ok) return forward;
  const read = v.safeParse(runsFileSchema, forward.value);
  if (!read.success) return bad(...problemsOf(read.issues, file));
  const { runs: _, format: __, version: ___, ...head } = read.output;
  return good({
    head,
    runs: runs.map((run, i): HandedRun => {
      const problems = strangers(run, head, i, file);
      return problems.length > 0 ? { ok: false, problems } : { ok: true, value: JSON.stringify(run) };
    }),
  });
}

/** The number that a candidate's set of a scenario is dealt from; `turn` counts his tries at it, from 0. */
export function examAttempt(sheet: string, candidate: string, scenarioId: string, turn: number): number {
  return Number.parseInt(hashOf([sheet, candidate, scenarioId, turn]).slice(0, 8), 16) & MOST_SEED;
}

const isObject = (value: unknown): value is { runs?: unknown } => typeof value === 'object' && value !== null;

function strangers(run: unknown, { sheet, candidate }: RunsHead, i: number, file: string): readonly Problem[] {
  const { learner, scenario } = (typeof run === 'object' && run !== null ? run : {}) as Record<string, unknown>;
  const { id, attempt } = (typeof scenario === 'object' && scenario !== null ? scenario : {}) as Record<
    string,
    unknown
  >;
  const problems: Problem[] = [];
  if (learner !== candidate) {
    const found =
      typeof learner === 'string' ? (['named', learner.slice(0, LEARNER_CHARS)] as const) : (['nothing'] as const);
    problems.push({ file, place: `/runs/${i}/learner`, found, wanted: ['named', candidate] });
  }
  if (typeof attempt !== 'number' || typeof id !== 'string') return problems;
  const turns = Array.from({ length: MOST_TURNS }, (_, turn) => examAttempt(sheet, candidate, id, turn));
  if (!turns.includes(attempt))
    problems.push({
      ...{ file, place: `/runs/${i}/scenario/attempt` },
      found: ['amount', attempt, ''],
      wanted: ['dealOfCandidate', candidate],
    });
  return problems;
}
