/** What an exam allows, and the one file that its runs are handed in as. Source: docs/evening-sheet.md. */
import { describe, expect, it } from 'vitest';
import { toldLogbook } from '../../src/app/toldLogbook.ts';
import { examAttempt, readRuns, runsText } from '../../src/files/runsFile.ts';
import { clockTime } from '../../src/present/clockTime.ts';
import { MOST_SEED } from '../../src/scenario/attempt.ts';
import { type ReadText, unfolded } from '../../src/services/classroom/brought.ts';
import { attemptIn } from '../../src/services/handing/examDeal.ts';
import {
  gateOf,
  goingOn,
  heldBack,
  type Opened,
  runsOf,
  timeLeft,
  timeOnBench,
} from '../../src/services/handing/examDesk.ts';
import type { KeptRun } from '../../src/services/store/keptRuns.ts';
import type { Logbook } from '../../src/services/store/logbook.ts';
import { saidOf } from '../files/said.ts';

const SHEET = 'ab'.repeat(32);
const START = 1_000_000;
const MINUTE = 60_000;
const exam = (changes: Partial<Opened['opened']> = {}): Opened => ({
  ...{ hash: 'cd'.repeat(32), title: 'Exam', author: null, minutes: 90, count: 3, candidates: 'numbers' },
  ...{ text: '', addedAtMs: 0 },
  opened: {
    ...{ candidate: '7', openedAtMs: START, sheet: SHEET, order: 'any', attempts: 'one', ownDeal: true },
    ...{ results: 'atEnd', minutesEach: null, passMark: null },
    ...{ scenarios: ['a', 'b', 'c'], handedIn: false, ...changes },
  },
});
const signed = (scenarioId: string, minutes: number): KeptRun =>
  ({ runId: `${scenarioId}${minutes}`, scenarioId, signedAtMs: START + minutes * MINUTE }) as KeptRun;
const at = (minutes: number): number => START + minutes * MINUTE;

const asText: ReadText = async ({ blob }) => ({ ok: true, value: await blob.text() });

describe('an exam', () => {
  it('lets each scenario be done once, whatever name the run was signed with', () => {
    expect(gateOf(exam(), 'a', [], at(1))).toEqual({ kind: 'open', turn: 0 });
    expect(gateOf(exam(), 'a', [signed('a', 5)], at(6))).toEqual({ kind: 'signed' });
    expect(gateOf(exam(), 'b', [signed('a', 5)], at(6)).kind).toBe('open');
  });

  it('counts no run from before it was opened, and none of other scenarios', () => {
    const kept = [signed('a', -1), signed('other', 3), signed('b', 4)];
    expect(runsOf(exam(), kept).map(({ runId }) => runId)).toEqual(['b4']);
    expect(gateOf(exam(), 'a', kept, at(6)).kind).toBe('open');
  });

  it('lets each be done as often as time allows where that is the rule, dealt anew each time', () => {
    const again = exam({ attempts: 'several' });
    const kept = [signed('a', 5), signed('a', 9)];
    expect(gateOf(again, 'a', kept, at(10))).toEqual({ kind: 'open', turn: 2 });
    expect(attemptIn(again, 'a', kept)).toBe(examAttempt(SHEET, '7', 'a', 2));
  });

  it('opens the next when the one before is signed, where the order is that of the list', () => {
    const listed = exam({ order: 'listed' });
    expect(gateOf(listed, 'c', [], at(1))).toEqual({ kind: 'waits', after: 'a' });
    expect(gateOf(listed, 'b', [signed('a', 2)], at(3)).kind).toBe('open');
    expect(gateOf(listed, 'c', [signed('a', 2)], at(3))).toEqual({ kind: 'waits', after: 'b' });
  });

  it('is over when its time is, and when it is handed in', () => {
    expect(timeLeft(exam(), at(89))).toBe(MINUTE);
    expect(timeLeft(exam(), at(500))).toBe(0);
    expect(timeLeft({ ...exam(), minutes: null }, at(500))).toBeNull();
    expect(gateOf(exam(), 'a', [], at(90)).kind).toBe('timeUp');
    expect(gateOf(exam({ handedIn: true }), 'a', [], at(1)).kind).toBe('handedIn');
    expect(goingOn([exam({ handedIn: true })])).toBeNull();
    expect(goingOn([{ ...exam(), opened: null }, exam()])).toEqual(exam());
  });

  it('deals each candidate, sheet and scenario a number of its own, the same everywhere', () => {
    const numbers = ['7', '8'].flatMap((who) =>
      [SHEET, 'cd'.repeat(32)].flatMap((sheet) => ['a', 'b'].map((id) => examAttempt(sheet, who, id, 0))),
    );
    expect(new Set(numbers).size).toBe(8);
    for (const number of numbers)
      expect(number).toSatisfy((n: number) => Number.isInteger(n) && n >= 0 && n <= MOST_SEED);
    expect(examAttempt(SHEET, '7', 'a', 0)).toBe(examAttempt(SHEET, '7', 'a', 0));
    expect(attemptIn(exam({ ownDeal: false }), 'a', [])).toBeNull();
  });

  it('holds back what its own runs were worth until it is handed in, and nothing else', () => {
    const kept = [signed('a', -1), signed('other', 3), signed('b', 4)];
    expect([...heldBack([exam()], kept)]).toEqual(['b4']);
    expect(heldBack([exam({ results: 'each' })], kept).size).toBe(0);
    expect(heldBack([exam({ handedIn: true })], kept).size).toBe(0);
    expect(heldBack([{ ...exam(), opened: null }], kept).size).toBe(0);
  });

  it('is told of by no list of runs meanwhile, not even before the shelf has been read', async () => {
    const kept = [signed('a', -1), signed('b', 4)];
    let exams = [exam()];
    let read = (): void => {};
    const shelf = {
      ready: new Promise<void>((done) => {
        read = done;
      }),
      exams: () => exams,
      subscribe: () => () => {},
    };
    const inner = {
      ...{ ready: Promise.resolve(), isReady: () => true, keptRuns: () => kept },
      ...{ readText: async (id: string) => `text of ${id}`, subscribe: () => () => {} },
    };
    const told = toldLogbook(inner as unknown as Logbook, shelf);
    expect([told.keptRuns(), told.isReady()]).toEqual([[], false]);
    read();
    await told.ready;
    expect(told.keptRuns().map(({ runId }) => runId)).toEqual(['a-1']);
    expect(told.keptRuns()).toBe(told.keptRuns());
    expect([await told.readText('b4'), await told.readText('a-1')]).toEqual([null, 'text of a-1']);
    exams = [exam({ handedIn: true })];
    expect(told.keptRuns()).toBe(kept);
    expect(await told.readText('b4')).toBe('text of b4');
  });

  it('gives each scenario its own time on the bench where the sheet states one', () => {
    const timed = exam({ minutesEach: [20, null, 5] });
    expect(['a', 'b', 'c'].map((id) => timeOnBench(timed, id))).toEqual([20 * MINUTE, null, 5 * MINUTE]);
    expect(timeOnBench(exam(), 'a')).toBeNull();
  });

  it.each([
    [0, '0:00:00'],
    [1, '0:00:01'],
    [2_932_000, '0:48:52'],
    [5_400_000, '1:30:00'],
    [-5, '0:00:00'],
  ])('shows %i milliseconds as %s', (left, shown) => {
    expect(clockTime(left)).toBe(shown);
  });
});

describe('the runs of an exam in one file', () => {
  const head = { title: 'Exam', sheet: SHEET, candidate: '7' };
  const run = (changes: object = {}, id = 'a', attempt: number | null = examAttempt(SHEET, '7', id, 0)) =>
    JSON.stringify({
      ...{ format: 'haystack-run', learner: '7' },
      scenario: { id, ...(attempt === null ? {} : { attempt }) },
      ...changes,
    });

  it('come out one by one as they went in', () => {
    const runs = [run(), run({}, 'b', null)];
    const read = readRuns(runsText(head, runs), 'x.json');
    expect(read.ok && read.value).toEqual({ head, runs: runs.map((value) => ({ ok: true, value })) });
    expect(readRuns(runsText(head, []), 'x.json')).toEqual({ ok: true, value: { head, runs: [] } });
  });

  it('are refused one by one where they are not this candidate’s', () => {
    const foreign = run({}, 'a', examAttempt(SHEET, '8', 'a', 0));
    const read = readRuns(runsText(head, [run({ learner: '8' }), foreign, run()]), 'x.json');
    const said = read.ok ? read.value.runs.map((one) => saidOf(one).map(({ place }) => place)) : [];
    expect(said).toEqual([['/runs/0/learner'], ['/runs/1/scenario/attempt'], []]);
  });

  it('are read no further than there may be of them', () => {
    const text = runsText(
      head,
      Array.from({ length: 5000 }, () => '{}'),
    );
    const [problem, ...more] = saidOf(readRuns(text, 'x.json'));
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ found: 'a list of more than 60', place: 'line 62, column 1' });
  });

  it.each([
    '',
    '{"format":"haystack-runs"',
    '{"format":"haystack-runs","version":1}',
    '{"format":"haystack-runs","version":9}',
  ])('are refused as a whole where the file is none: %s', (text) => {
    expect(saidOf(readRuns(text, 'x.json')).length).toBeGreaterThan(0);
  });

  it('lie on the desk of a class one by one, with what speaks against them', async () => {
    const text = runsText(head, [run(), run({ learner: '8' })]);
    const files = [
      { name: 'seven.json', blob: new File([text], 'seven.json') },
      { name: 'plain.json', blob: new File(['{}'], 'plain.json') },
      { name: 'broken.json', blob: new File(['{"format":"haystack-runs",'], 'broken.json') },
    ];
    const out = await unfolded({ files, leftAlone: [], empty: [] }, asText);
    expect(out.files.map(({ name, problems }) => [name, problems?.length ?? 0])).toEqual([
      ['seven/1.json', 0],
      ['seven/2.json', 1],
      ['plain.json', 0],
      ['broken.json', 1],
    ]);
    expect(await out.files[0]!.blob.text()).toBe(run());
  });
});
