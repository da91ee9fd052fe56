/** Problems of files as they are said in English, for tests of what is told. */
import type { Problem, Result } from '../../src/base/result.ts';
import { type SaidProblem, saidProblem } from '../../src/describe/problem.ts';
import { en } from '../../src/words/en/index.ts';

export const inEnglish = (problems: readonly Problem[]): SaidProblem[] => problems.map((one) => saidProblem(en, one));

export const saidOf = (result: Result<unknown>): SaidProblem[] => (result.ok ? [] : inEnglish(result.problems));
