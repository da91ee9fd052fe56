/**
 * The sheet of an evening: several scenarios in an order, for one sitting, each whole inside, and the receivers that do not come with the bench. Whoever opens it needs nothing else.
 * Schema, bounds and what must hold inside the file are here; whether a receiver bears a scenario out is asked of `checkEvening`.
 */
import * as v from 'valibot';
import { bad, good, type Problem, type Result } from '../base/result.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { byTravel, checkScenario } from './checkScenario.ts';
import { oneOf as oneOfNames } from './complaints.ts';
import { MOST_SCENARIOS, minutesEachSchema, passMarkSchema, termProblems } from './eveningTerms.ts';
import { asFarAsKnown } from './known.ts';
import type { LoadedReceiver } from './library.ts';
import { bringForward, type FormatHistory } from './migrations.ts';
import { withoutNotes } from './notes.ts';
import { readJson, SHEET_LIMITS } from './parseJson.ts';
import { type ReceiverPair, readReceiverPair } from './readReceiverPair.ts';
import { scenarioToFile } from './scenarioFile.ts';
import { readScenario } from './scenarioSchema.ts';
import { integer, list, object, oneOf, text, yesOrNo } from './schemaPieces.ts';
import { asMessage, listed, problemsOf } from './schemaProblems.ts';
import { withTextPlaces } from './textPlaces.ts';

const MOST_RECEIVERS = 8;
const DECK_CHARS = 60_000;

const deckText = () => {
  const wanted = asMessage(['charactersAtMost', DECK_CHARS]);
  return v.pipe(v.string(wanted), v.maxLength(DECK_CHARS, wanted));
};

const examSchema = object({
  candidates: oneOf('numbers', 'names'),
  attempts: oneOf('one', 'several'),
  ownDeal: yesOrNo(),
  results: v.optional(oneOf('atEnd', 'each'), 'atEnd'),
});

/** `scenario`, `receiver`: what the insides are; the published schema says it in full, the reader looks at each by itself. */
export const eveningSchema = <S extends v.GenericSchema, R extends v.GenericSchema>(scenario: S, receiver: R) =>
  object({
    format: v.literal('haystack-evening'),
    version: v.literal(1),
    title: text(60),
    author: v.exactOptional(text(80)),
    order: v.optional(oneOf('listed', 'any'), 'listed'),
    minutes: v.optional(v.nullable(integer(5, 480)), null),
    minutesEach: v.exactOptional(minutesEachSchema),
    passMark: v.exactOptional(passMarkSchema),
    exam: v.exactOptional(examSchema),
    scenarios: list(scenario, 1, MOST_SCENARIOS),
    receivers: v.optional(list(object({ receiver, deck: deckText() }), 0, MOST_RECEIVERS), []),
  });

export type ExamTerms = v.InferOutput<typeof examSchema>;

export interface Evening {
  readonly title: string;
  readonly author?: string | undefined;
  /** listed: the next opens when one is signed; any: all lie open */
  readonly order: 'listed' | 'any';
  /** for all of it; null: no limit is stated */
  readonly minutes: number | null;
  /** for each scenario, in their order, null where none is stated; left out: for none */
  readonly minutesEach?: readonly (number | null)[] | undefined;
  /** how many have to be passed for the whole to be passed; left out: the whole is neither passed nor failed */
  readonly passMark?: number | undefined;
  /** null: an evening of practice */
  readonly exam: ExamTerms | null;
  readonly scenarios: readonly Scenario[];
  /** those that the file brings along */
  readonly receivers: readonly BroughtReceiver[];
}

/** With the texts that it was read from, for whoever keeps it. */
export interface BroughtReceiver extends LoadedReceiver {
  readonly texts: ReceiverPair;
}

const HISTORY: FormatHistory = { format: 'haystack-evening', current: 1, migrations: {} };
const shape = eveningSchema(v.unknown(), v.unknown());

/** Receivers by id, where they are known beside the sheet's own. */
export type ReceiverOf = (id: string) => LoadedReceiver | null;

/** Every problem of the text, or the sheet; `haystack check` and the page both call it. `receiverOf` has no say in whether it is one: it helps to tell what a scenario may have. */
export function readEvening(contents: string, file: string, receiverOf: ReceiverOf = () => null): Result<Evening> {
  const json = readJson(contents, file, SHEET_LIMITS);
  if (json.value === null && json.problems.length > 0) return bad(...json.problems);
  const evening = eveningFrom(json.value, file, receiverOf);
  const problems = [...json.problems, ...(evening.ok ? [] : evening.problems)];
  return problems.length === 0 ? evening : bad(...withTextPlaces(listed(problems, file), file, contents));
}

function eveningFrom(json: unknown, file: string, receiverOf: ReceiverOf): Result<Evening> {
  const forward = bringForward(json, HISTORY, file);
  if (!forward.ok) return forward;
  const { scenarios: inside, receivers: brought, ...head } = forward.value as Record<string, unknown>;
  const own = withoutNotes(head, new Set(), 'atHead') as Record<string, unknown>;
  const read = v.safeParse(shape, {
    ...own,
    ...(inside === undefined ? {} : { scenarios: inside }),
    ...(brought === undefined ? {} : { receivers: brought }),
  });
  const problems: Problem[] = read.success ? [] : [...problemsOf(read.issues, file)];
  const receivers: BroughtReceiver[] = [];
  const broken: Problem[] = [];
  for (const [i, one] of listOf(brought, MOST_RECEIVERS).entries()) {
    const { receiver, deck } = (typeof one === 'object' && one !== null ? one : {}) as Record<string, unknown>;
    if (typeof deck !== 'string' || receiver === undefined) continue;
    const texts: ReceiverPair = {
      receiver: { file, text: JSON.stringify(receiver) },
      deck: { file: `${file}, deck ${i + 1}`, text: deck },
    };
    const loaded = readReceiverPair(texts);
    // Lines of the receiver alone are none of this file.
    if (loaded.ok) receivers.push({ ...loaded.value, texts });
    else broken.push(...loaded.problems.map((p) => (p.file === file ? inPlace(p, `/receivers/${i}/receiver`) : p)));
  }
  const scenarios: Scenario[] = [];
  const ids = new Set<string>();
  for (const [i, one] of listOf(inside, MOST_SCENARIOS).entries()) {
    const { value, problems: own } = readScenario(one, file);
    if (value === null || own.length > 0) {
      let told = own;
      asFarAsKnown(() => {
        const named = value?.receiver ?? '';
        const loaded = receivers.find(({ receiver }) => receiver.id === named) ?? receiverOf(named);
        if (loaded !== null) told = byTravel(own, loaded);
      });
      problems.push(...within(`/scenarios/${i}`, told));
      continue;
    }
    const { id } = value;
    if (ids.has(id))
      problems.push({
        ...{ file, place: `/scenarios/${i}/id` },
        found: ['twice', { phrase: ['named', id] }],
        wanted: ['eachOnce'],
      });
    ids.add(id);
    scenarios.push(value);
  }
  problems.push(...broken);
  if (read.success) problems.push(...termProblems(read.output, file));
  if (!read.success || problems.length > 0) return bad(...problems);
  const { title, author, order, minutes, minutesEach, passMark, exam } = read.output;
  return good({
    ...{ title, order, minutes, exam: exam ?? null, scenarios, receivers },
    ...(author === undefined ? {} : { author }),
    ...(minutesEach === undefined ? {} : { minutesEach }),
    ...(passMark === undefined ? {} : { passMark }),
  });
}

/** Each scenario against its receiver. `receiverOf`: those that are known beside the sheet's own. */
export function checkEvening(
  { scenarios, receivers }: Evening,
  receiverOf: ReceiverOf,
  receiverIds: readonly string[],
  file: string,
): readonly Problem[] {
  return scenarios.flatMap((scenario, i): Problem[] => {
    const own = receivers.find(({ receiver }) => receiver.id === scenario.receiver);
    const loaded = own ?? receiverOf(scenario.receiver);
    if (loaded !== null) return within(`/scenarios/${i}`, checkScenario(scenario, loaded, file));
    const known = [...receivers.map(({ receiver }) => receiver.id), ...receiverIds];
    return [
      {
        ...{ file, place: `/scenarios/${i}/receiver` },
        found: ['named', scenario.receiver],
        wanted: oneOfNames(known),
      },
    ];
  });
}

/** The file of a sheet; `receivers`: the texts of those that do not come with the bench. */
export function eveningText(
  { title, author, order, minutes, minutesEach, passMark, exam, scenarios }: Omit<Evening, 'receivers'>,
  receivers: readonly ReceiverPair[] = [],
): string {
  const file = {
    ...{ format: 'haystack-evening', version: 1, title },
    ...(author === undefined || author === '' ? {} : { author }),
    ...{ order, minutes },
    ...(minutesEach === undefined ? {} : { minutesEach }),
    ...(passMark === undefined ? {} : { passMark }),
    ...(exam === null ? {} : { exam }),
    scenarios: scenarios.map(scenarioToFile),
    ...(receivers.length === 0 ? {} : { receivers: receivers.map(inSheet) }),
  };
  return `${JSON.stringify(file, null, 1)}\n`;
}

const inSheet = ({ receiver, deck }: ReceiverPair) => ({
  receiver: JSON.parse(receiver.text) as unknown,
  deck: deck.text,
});

const listOf = (value: unknown, most: number): readonly unknown[] => (Array.isArray(value) ? value.slice(0, most) : []);

const within = (place: string, problems: readonly Problem[]): Problem[] => problems.map((p) => inPlace(p, place));

function inPlace({ at: _, ...problem }: Problem, place: string): Problem {
  return { ...problem, place: `${place}${problem.place}` };
}
