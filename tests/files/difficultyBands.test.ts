/** The difficulty of a file beside the figure of its certificate. Source: the shipped course, whose spread the bands hold; the rule is the house's own. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { problemSentence } from '../../src/describe/problem.ts';
import { type CertifiedDifficulty, difficultyProblem, levelsBeside } from '../../src/files/difficultyBands.ts';
import { scenarioHash } from '../../src/files/scenarioFile.ts';
import { PAR_NOT_KNOWN } from '../../src/scenario/par.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { terminal } from '../../src/words/en/terminal.ts';
import { pseudoWords } from '../../src/words/pseudo.ts';
import { shippedLibrary } from './shipped.ts';

const { scenarios } = shippedLibrary();
const lesson = scenarios.find(({ id }) => id === 'first-curve')!;
const certificateOf = (id: string): CertifiedDifficulty =>
  JSON.parse(readFileSync(`certificates/${id}.json`, 'utf8')) as CertifiedDifficulty;
const saying = (scenario: Scenario, difficulty: number): CertifiedDifficulty => ({
  scenarioHash: scenarioHash({ ...scenario, par: PAR_NOT_KNOWN }),
  difficulty,
});

describe('the difficulty of a file', () => {
  it('goes with the certificate on the whole shipped course', () => {
    const told = scenarios.map((one) => difficultyProblem(one, saying(one, certificateOf(one.id).difficulty), one.id));
    expect(told.filter((problem) => problem !== null)).toEqual([]);
    expect(told.length).toBeGreaterThan(80);
  });

  it.each<[1 | 2 | 3, number, readonly number[] | null]>([
    [1, 6, null],
    [1, 6.1, [2, 3]],
    [1, 8.1, [3]],
    [2, 8, null],
    [2, 8.1, [3]],
    [2, 0, null],
    [3, 1, null],
    [3, 0.9, [1, 2]],
    [3, 10, null],
  ])('%d beside %d of 10 wants %j', (difficulty, certified, wanted) => {
    const scenario = { ...lesson, difficulty };
    const problem = difficultyProblem(scenario, saying(scenario, certified), 'a.json');
    expect(problem?.wanted ?? null).toEqual(wanted === null ? null : ['oneOf', wanted, '']);
    expect(levelsBeside(scenario, saying(scenario, certified))).toEqual(wanted);
  });

  it('is held against the certificate also when it has been changed since, and against that of no other scenario', () => {
    const certificate = saying({ ...lesson, difficulty: 3 }, 7);
    expect(difficultyProblem({ ...lesson, difficulty: 1 }, certificate, 'a.json')).toMatchObject({
      place: '/difficulty',
      found: ['difficultyBeside', 1, 0, 6, 7],
    });
    expect(difficultyProblem({ ...lesson, difficulty: 1, seed: lesson.seed + 1 }, certificate, 'a.json')).toBeNull();
  });

  it('may be any above little work where leaving alone is the answer', () => {
    const alone = { ...lesson, difficulty: 3, slugsRight: true } as const;
    expect(difficultyProblem(alone, saying(alone, 0.5), 'a.json')).toBeNull();
  });

  it('is told with both figures, in every language of the house', () => {
    const scenario = { ...lesson, difficulty: 1 } as const;
    const problem = difficultyProblem(scenario, saying(scenario, 7.2), 'a.json')!;
    expect(problemSentence(terminal, problem)).toBe(
      'a.json, /difficulty: found 1, which goes with 0 to 6 of 10, where the certificate says 7.2, wanted one of 2, 3',
    );
    const strange = problemSentence(pseudoWords(terminal), problem);
    expect(strange).toContain('7.2');
    expect(strange).not.toContain('certificate');
  });
});
