/** The sheet of an evening: what a good one says, and every way in which one can be wrong. Source: docs/evening-sheet.md. */
import { readFileSync } from 'node:fs';
import Ajv from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { checkEvening, eveningText, readEvening } from '../../src/files/evening.ts';
import { scenarioHash } from '../../src/files/scenarioFile.ts';
import { saidOf } from './said.ts';
import { shippedLibrary } from './shipped.ts';

const { scenarios, receivers } = shippedLibrary();
const some = ['first-curve', 'both-ways', 'flat-top'].map((id) => scenarios.find((one) => one.id === id)!);
const sheet = {
  title: 'Second Thursday',
  author: 'Ines',
  order: 'listed' as const,
  minutes: 90,
  exam: null,
  scenarios: some,
};
const TERMS = { candidates: 'numbers', attempts: 'one', ownDeal: true };
const json = JSON.parse(eveningText(sheet)) as Record<string, unknown>;
const told = (changes: Record<string, unknown>) =>
  saidOf(readEvening(JSON.stringify({ ...json, ...changes }, null, 1), 'evening.json'));
const placesOf = (changes: Record<string, unknown>): string[] =>
  told(changes).map(({ place }) => place.replace(/^line \d+, column \d+, /, ''));

describe('the sheet of an evening', () => {
  it('is read as it was written', () => {
    const read = readEvening(eveningText(sheet), 'evening.json');
    expect(read).toMatchObject({
      ok: true,
      value: { title: 'Second Thursday', author: 'Ines', order: 'listed', minutes: 90, exam: null, receivers: [] },
    });
    expect(read.ok && read.value.scenarios.map(scenarioHash)).toEqual(some.map((scenario) => scenarioHash(scenario)));
    expect(read.ok && checkEvening(read.value, (id) => receivers.get(id) ?? null, [], 'evening.json')).toEqual([]);
  });

  it('may give a time for each scenario and a mark for the whole, and an exam says when results are told', () => {
    const asked = { ...sheet, minutesEach: [40, null, 50], passMark: 3 };
    const read = readEvening(eveningText(asked), 'evening.json');
    expect(read).toMatchObject({ ok: true, value: { minutesEach: [40, null, 50], passMark: 3 } });
    expect(told({ minutesEach: [null, null, null], minutes: null, passMark: 1 })).toEqual([]);
    const plainOnes = readEvening(JSON.stringify({ ...json, exam: TERMS }), 'e');
    expect(plainOnes).toMatchObject({ ok: true, value: { exam: { results: 'atEnd' } } });
    expect(plainOnes.ok && 'passMark' in plainOnes.value).toBe(false);
    const each = readEvening(JSON.stringify({ ...json, exam: { ...TERMS, results: 'each' } }), 'e');
    expect(each).toMatchObject({ ok: true, value: { exam: { results: 'each' } } });
  });

  it('holds in order what it lists, and what it leaves out stands at its rest', () => {
    const { minutes: _, order: __, author: ___, ...least } = json;
    const read = readEvening(JSON.stringify(least), 'evening.json');
    expect(read).toMatchObject({ ok: true, value: { order: 'listed', minutes: null, exam: null } });
    expect(read.ok && read.value.scenarios.map(({ id }) => id)).toEqual(some.map(({ id }) => id));
  });

  it('is what its published schema says, as a validator of others reads it', () => {
    const schema = JSON.parse(readFileSync('scenarios/schema/evening.schema.json', 'utf8')) as { $id: string };
    expect(schema.$id).toBe('urn:haystack:evening:1');
    const valid = new Ajv({ strict: false, allErrors: false, validateFormats: false }).compile(schema);
    expect(valid(json)).toBe(true);
    expect(valid({ ...json, scenarios: [] })).toBe(false);
    expect(valid({ ...json, colour: 'red' })).toBe(false);
  });

  it.each<[string, Record<string, unknown>, string[]]>([
    ['no scenarios', { scenarios: [] }, ['/scenarios']],
    ['an order that there is not', { order: 'dealt' }, ['/order']],
    ['too little time', { minutes: 1 }, ['/minutes']],
    ['a pass mark above the number of scenarios', { passMark: 4 }, ['/passMark']],
    ['a pass mark of none', { passMark: 0 }, ['/passMark']],
    ['a pass mark of one and a half', { passMark: 1.5 }, ['/passMark']],
    ['times for two of three', { minutesEach: [20, 20] }, ['/minutesEach']],
    ['a time of no minutes', { minutesEach: [20, 0, null] }, ['/minutesEach/1']],
    ['times that together are more than there is in all', { minutesEach: [40, 40, 11] }, ['/minutesEach']],
    [
      'a time above the scenario’s own limit',
      {
        minutesEach: [null, 31, null],
        scenarios: [some[0]!, { ...some[1]!, timeLimitSeconds: 1800 }, some[2]!].map(plain),
      },
      ['/minutesEach/1'],
    ],
    ['results told at some other time', { exam: { ...TERMS, results: 'never' } }, ['/exam/results']],
    ['a key of its own', { colour: 'red' }, ['/colour']],
    ['the same scenario twice', { scenarios: [some[0], some[0]].map((one) => plain(one!)) }, ['/scenarios/1/id']],
    [
      'two broken scenarios',
      { scenarios: [{ ...plain(some[0]!), order: 0 }, plain(some[1]!), { ...plain(some[2]!), title: '' }] },
      ['/scenarios/0/order', '/scenarios/2/title'],
    ],
    ['a deck that is none', { receivers: [{ receiver: {}, deck: 5 }] }, ['/receivers/0/deck']],
  ])('with %s is refused at its place', (_, changes, places) => {
    expect(placesOf(changes)).toEqual(places);
    expect(told(changes)[0]!.place).toMatch(/^line \d+, column \d+/);
  });

  it('brings a receiver only where it passes every check', () => {
    const deck = '* nothing\nR1 a 0 1k\n.end\n';
    expect(
      placesOf({ receivers: [{ receiver: { format: 'haystack-receiver', version: 1 }, deck }] }).length,
    ).toBeGreaterThan(5);
    const file = readFileSync('scenarios/receivers/loose-can-10m7/receiver.json', 'utf8');
    const good = {
      receiver: JSON.parse(file),
      deck: readFileSync('scenarios/receivers/loose-can-10m7/network.cir', 'utf8'),
    };
    expect(told({ receivers: [good] })).toEqual([]);
  });

  it('is told of a scenario that its receiver does not bear out', () => {
    const wrong = { ...some[0]!, start: { ...some[0]!.start, slugs: { Q9: 1 } } };
    const read = readEvening(eveningText({ ...sheet, scenarios: [wrong] }), 'e');
    const problems = read.ok ? checkEvening(read.value, (id) => receivers.get(id) ?? null, [], 'e') : [];
    expect(problems.map(({ place }) => place)).toEqual(['/scenarios/0/start/slugs/Q9']);
    const lost = read.ok ? checkEvening(read.value, () => null, ['am-455k'], 'e') : [];
    expect(lost.map(({ place }) => place)).toEqual(['/scenarios/0/receiver']);
  });

  it('is read no further than a list may be long', () => {
    const scenarios = Array.from({ length: 30_000 }, () => ({ id: 'a' }));
    const text = JSON.stringify({ format: 'haystack-evening', version: 1, scenarios });
    const [problem, ...more] = saidOf(readEvening(text, 'e'));
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ found: 'a list of more than 500', wanted: 'a shorter list' });
    // At the 501st: each of the 500 before takes eleven signs.
    expect(problem!.place).toBe(`line 1, column ${text.indexOf('[') + 2 + 500 * 11}`);
  });

  it.each(['', '{', '[]', 'null', '{"format":"haystack-evening"}', `${'['.repeat(60_000)}`])(
    'of rubbish is refused: %s',
    (text) => {
      expect(saidOf(readEvening(text, 'e')).length).toBeGreaterThan(0);
    },
  );
});

function plain(scenario: (typeof some)[number]): Record<string, unknown> {
  const { scenarios: all } = JSON.parse(eveningText({ ...sheet, scenarios: [scenario] })) as {
    scenarios: Record<string, unknown>[];
  };
  return all[0]!;
}
