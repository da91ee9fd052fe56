/** A draft as a file, and back; and everything that is wrong with it, as the command line would say it. */
import { bad, type Problem, type Result } from '../base/result.ts';
import { checkScenario } from '../files/checkScenario.ts';
import { asFarAsKnown } from '../files/known.ts';
import { type LoadedReceiver, loadScenario, readText, scenarioFrom } from '../files/library.ts';
import { scenarioHash, scenarioToFile } from '../files/scenarioFile.ts';
import { readScenario } from '../files/scenarioSchema.ts';
import { withTextPlaces } from '../files/textPlaces.ts';
import type { SetParts } from '../receiver/individualSet.ts';
import { PAR_NOT_KNOWN } from '../scenario/par.ts';
import type { Draft } from './draft.ts';

/** Par is made by whoever certifies, and stands in no file that is handed out. */
export function draftText(draft: Draft): string {
  return `${JSON.stringify(scenarioToFile({ ...draft, par: PAR_NOT_KNOWN }), null, 2)}\n`;
}

export const draftFileName = ({ id }: Draft): string => `${id}.json`;

export const draftHash = (draft: Draft): string => scenarioHash({ ...draft, par: PAR_NOT_KNOWN });

/** A draft from a file that is whole in itself; whether its receiver bears it out is seen when it is open. */
export function draftFromText(text: string, file: string): Result<Draft> {
  const read = scenarioFrom(text, file);
  return read.ok ? { ok: true, value: { ...read.value, par: PAR_NOT_KNOWN } } : read;
}

/** The receiver that a text names, where so much of it can be read. */
export function receiverNamedIn(text: string, file: string): string | null {
  const { value } = readText(text, file, readScenario);
  let named: string | null = null;
  asFarAsKnown(() => {
    named = value?.receiver ?? null;
  });
  return named;
}

/** The problems of a text that is no draft, held against the receiver that it names. */
export function problemsBeside(text: string, file: string, design: LoadedReceiver): readonly Problem[] {
  const read = loadScenario({ file, text }, new Map([[design.receiver.id, design]]));
  return read.ok ? [] : read.problems;
}

/** Names and cards that are taken. */
export interface Taken {
  readonly ids: ReadonlySet<string>;
  readonly codes: ReadonlySet<string>;
}

/**
 * The file of the draft through the reader of files, with line and column, held against its receiver; where a set has been dealt, against where its slugs are right too.
 * Then what must not be there twice.
 */
export function draftProblems(
  draft: Draft,
  design: LoadedReceiver,
  taken: Taken,
  set: SetParts = design,
): readonly Problem[] {
  const file = draftFileName(draft);
  const text = draftText(draft);
  const read = loadScenario({ file, text }, new Map([[draft.receiver, design]]));
  const problems: Problem[] = read.ok ? [] : [...read.problems];
  if (read.ok && set.receiver !== design.receiver)
    problems.push(...withTextPlaces(checkScenario(draft, set, file), file, text));
  const twice = (place: string, name: string): Result<never> =>
    bad({ file, place, found: ['twice', { phrase: ['named', name] }], wanted: ['eachOnce'] });
  for (const one of [
    taken.ids.has(draft.id) ? twice('/id', draft.id) : null,
    taken.codes.has(draft.code) ? twice('/code', draft.code) : null,
  ])
    if (one !== null && !one.ok) problems.push(...one.problems);
  return problems;
}
