/** What a list says of a sealed scenario, and its own text, tell nothing of what lies inside: no par, no count of what is astray, no word of what has failed. */
import { describe, expect, it } from 'vitest';
import { entryOf } from '../../src/present/entryOf.ts';
import { jobSheet } from '../../src/receiver/jobSheet.ts';
import { countedPar, PAR_NOT_KNOWN, toldPar } from '../../src/scenario/par.ts';
import { headerWords } from '../../src/words/en/bench.ts';
import { courseWords } from '../../src/words/en/course.ts';
import { eveningWords } from '../../src/words/en/evening.ts';
import { papersWords } from '../../src/words/en/papers.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';

const { scenarios } = shippedLibrary();
const sealed = scenarios.filter((scenario) => scenario.sealed);
const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven'].concat([
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
]);

describe('par', () => {
  it('is told of a practice job and of no sealed one, whatever it is', () => {
    const { scenario } = setupOf('off-centre');
    expect(toldPar(scenario)).toEqual(countedPar(scenario.par));
    expect(toldPar({ ...scenario, sealed: true })).toBeNull();
    expect(toldPar({ ...scenario, par: PAR_NOT_KNOWN })).toBeNull();
  });

  it('is in the entry of no sealed scenario, and the entry is the same whatever has failed', () => {
    const setup = setupOf('not-a-word');
    const entry = entryOf(setup);
    expect(entry.par).toBeNull();
    expect(entryOf(setupOf('off-centre')).par).not.toBeNull();
    const { faults: _, ...rest } = setup.scenario;
    const sound = { ...rest, faults: [], par: { turns: 3, seconds: 400 }, start: { ...rest.start, slugs: {} } };
    expect(entryOf({ ...setup, scenario: sound })).toEqual(entry);
    expect(JSON.stringify(entry)).not.toContain(String(setup.scenario.par.seconds));
  });

  it('is left out of every line that has it elsewhere', () => {
    const told = (par: string | null) => [
      courseWords.started('X', '2 turns', par),
      courseWords.notStarted('X', par),
      courseWords.bestOf('X', 40, par),
    ];
    for (const line of [...told(null), headerWords.turns(null), papersWords.practised('X', null)])
      expect(line).not.toMatch(/\bpar\b|null/);
    for (const line of [...told('7 turns'), headerWords.turns(7), papersWords.practised('X', 7)])
      expect(line).toMatch(/\bpar 7|of par 7/);
  });

  it('stands on an evening sheet for the open scenarios alone, beside the limits of the sealed ones', () => {
    expect(eveningWords.minutesNote(20, 0)).not.toContain('limit');
    expect(eveningWords.minutesNote(20, 60)).toMatch(/open .* 20 minutes .* sealed .* 60 minutes/);
    expect(eveningWords.minutesNote(0, 60)).not.toContain('Good runs');
  });
});

describe.each(sealed.map((scenario) => [scenario.id, scenario] as const))('the text of %s', (id, scenario) => {
  const { receiver } = setupOf(id);
  const texts = [scenario.id, scenario.title, ...Object.values(scenario.words)].join(' \n ');

  it('has no word of what lies inside', () => {
    expect(texts).not.toMatch(
      /\bbad contact|\bslugs? (is|are) off|\bloose (clip|lead)|\bfaulty\b|\bdrifted|\bopen winding|in \w+ ways/i,
    );
    expect(texts).not.toMatch(/\b(a|one|two|three) (failed|bad|dead|tired) /i);
    for (const part of scenario.faults.flatMap((fault) =>
      Object.values(fault).filter((value) => typeof value === 'string'),
    ))
      expect(texts).not.toContain(part);
  });

  it('counts the slugs of the job where it counts any', () => {
    const { procedure } = jobSheet(receiver, scenario);
    const asked = new Set(procedure.flatMap((step) => (step.phase === 'align' ? step.slugs : [])));
    for (const [, count] of texts.matchAll(/(\w+) slugs\b/gi))
      if (NUMBERS.includes(count!.toLowerCase())) expect(NUMBERS.indexOf(count!.toLowerCase())).toBe(asked.size);
  });
});
