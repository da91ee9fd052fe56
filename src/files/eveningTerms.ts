/** What a sheet asks of the whole: minutes for each scenario, and how many have to be passed. In the sheet itself, and in the file that its runs are handed in by. */
import * as v from 'valibot';
import type { Problem } from '../base/result.ts';
import { fileId, integer, list, object } from './schemaPieces.ts';

export const MOST_SCENARIOS = 20;

/** For each scenario, in their order; null: none is stated for it. */
export const minutesEachSchema = list(v.nullable(integer(1, 240)), 1, MOST_SCENARIOS);
/** How many of the scenarios have to be passed. */
export const passMarkSchema = integer(1, MOST_SCENARIOS);

/** As the candidate's page had it. */
export const sheetTermsSchema = object({
  scenarios: list(fileId(), 1, MOST_SCENARIOS),
  minutesEach: v.exactOptional(minutesEachSchema),
  passMark: v.exactOptional(passMarkSchema),
});

export type SheetTerms = v.InferOutput<typeof sheetTermsSchema>;

interface AskedTerms {
  readonly minutes: number | null;
  readonly minutesEach?: readonly (number | null)[] | undefined;
  readonly passMark?: number | undefined;
  readonly scenarios: readonly unknown[];
}

/** What the sheet asks must be possible: no more passes than there are scenarios, a time for each of them, and together no more than there is in all. */
export function termProblems(
  { minutes, minutesEach, passMark, scenarios }: AskedTerms,
  file: string,
): readonly Problem[] {
  const problems: Problem[] = [];
  const count = scenarios.length;
  if (passMark !== undefined && passMark > count)
    problems.push({ file, place: '/passMark', found: ['amount', passMark, ''], wanted: ['wholeFrom', 1, count, ''] });
  if (minutesEach === undefined) return problems;
  if (minutesEach.length !== count)
    problems.push({
      file,
      place: '/minutesEach',
      found: ['listOf', minutesEach.length],
      wanted: ['oneForEach', count],
    });
  const together = minutesEach.reduce<number>((sum, one) => sum + (one ?? 0), 0);
  if (minutes !== null && together > minutes)
    problems.push({
      file,
      place: '/minutesEach',
      found: ['minutesTogether', together],
      wanted: ['minutesAtMost', minutes],
    });
  for (const [i, own] of scenarios.slice(0, minutesEach.length).entries()) {
    const { timeLimitSeconds: limit } = (typeof own === 'object' && own !== null ? own : {}) as Record<string, unknown>;
    const given = minutesEach[i] ?? 0;
    if (typeof limit === 'number' && given * 60 > limit)
      problems.push({
        ...{ file, place: `/minutesEach/${i}` },
        found: ['minutesTogether', given],
        wanted: ['minutesAtMost', Math.floor(limit / 60)],
      });
  }
  return problems;
}
