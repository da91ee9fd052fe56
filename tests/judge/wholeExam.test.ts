/** What an exam comes to as a whole: three jobs done by the technician, handed in as one file, taken apart by the class and held against the sheet. Source: docs/evening-sheet.md. */
import { describe, expect, it } from 'vitest';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { runsText } from '../../src/files/runsFile.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import { type ClassRow, classRows } from '../../src/judge/classList.ts';
import { type LaidSheet, sittingRows } from '../../src/judge/sittings.ts';
import { type Whole, wholeOf } from '../../src/judge/whole.ts';
import { replay } from '../../src/run/replay.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { type ReadText, unfolded } from '../../src/services/classroom/brought.ts';
import { doJob } from '../../src/services/jobs/doJob.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { en } from '../../src/words/en/index.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';

const IDS = ['first-curve', 'both-ways', 'flat-top'];
const SHEET = 'ab'.repeat(32);
const library = shippedLibrary();

function runText(id: string, learner: string, { left = false } = {}): string {
  const setup = setupOf(id);
  const worked = demonstrate(setup);
  // Done, or signed off before any slug was turned.
  const untouched = worked.events.slice(
    0,
    worked.events.findIndex(({ type }) => type === 'slugTurned'),
  );
  const signed: TimedEvent = { type: 'signedOff', atMs: untouched.at(-1)!.atMs + 1000 };
  const events: readonly TimedEvent[] = left ? [...untouched, signed] : worked.events;
  const report = grade(setup, events);
  const run = left ? { ...worked, events, state: replay(setup, events).state } : worked;
  return serialiseRunFile(
    toRunFile({ ...run, learner }, claimOf(report), { day: '2026-05-31', runId: `${learner}${id}` }),
  );
}

const asText: ReadText = async ({ blob }) => ({ ok: true, value: await blob.text() });

async function rowsOf(files: readonly File[]) {
  const brought = await unfolded(
    { files: files.map((blob) => ({ name: blob.name, blob })), leftAlone: [], empty: [] },
    asText,
  );
  const world = { library: async () => library, knownSet: async () => null, par: async () => null };
  const judged = [];
  for (const [i, { name, blob }] of brought.files.entries())
    judged.push({
      no: i + 1,
      file: name,
      judged: await doJob('judge', { text: await blob.text(), file: name }, world),
    });
  return { rows: classRows(en, judged), sittings: brought.sittings! };
}

const seven = IDS.map((id) => runText(id, '7'));
const eight = [runText('first-curve', '8'), runText('both-ways', '8', { left: true })];
const terms = { scenarios: IDS, passMark: 2 };
const file = (
  candidate: string,
  runs: readonly string[],
  asked: object | undefined = terms,
  name = `${candidate}.json`,
) =>
  new File(
    [runsText({ title: 'Exam', sheet: SHEET, candidate, ...(asked === undefined ? {} : { terms: terms }) }, runs)],
    name,
  );

const { rows, sittings } = await rowsOf([file('7', seven), file('8', eight)]);

describe('an exam of three jobs', () => {
  const secondsOf = (row: ClassRow): number => row.marks!.seconds;

  it('is passed by whoever does enough of them, with its points and its time', () => {
    expect(rows.map(({ verdict }) => verdict)).toEqual(Array.from({ length: 5 }, () => 'verified'));
    const [all, some] = sittingRows(sittings, rows, []);
    const mine = rows.filter(({ learner }) => learner === '7');
    expect(all).toMatchObject({ candidate: '7', by: 'file', runs: [1, 2, 3] });
    expect(all!.whole).toMatchObject({ passed: 3, mark: 2 });
    expect(all!.whole!.seconds).toBeCloseTo(mine.reduce((sum, row) => sum + secondsOf(row), 0));
    expect(all!.whole!.points).toBeCloseTo(mine.reduce((sum, { points }) => sum + points!, 0) / 3);
    // Of two that were handed in one is passed; the third is not there, and counts as nothing.
    expect(some!.whole).toMatchObject({ passed: 1, standing: 'missed' });
    expect(some!.whole!.items.map(({ tries, passed }) => [tries, passed])).toEqual([
      [1, true],
      [1, false],
      [0, false],
    ]);
    expect(some!.whole!.points).toBeLessThan(rows[3]!.points!);
  });

  it('is not settled where the pass hangs on acts that another candidate handed in as well', () => {
    // The technician did first-curve alike for both; without it seven still has two.
    const [all] = sittingRows(sittings, rows, []);
    expect(all!.whole!.standing).toBe('passed');
    const strict: LaidSheet = { title: 'Exam', terms: { scenarios: IDS, passMark: 3 } };
    expect(sittingRows(sittings, rows, [strict])[0]).toMatchObject({ by: 'sheet', whole: { standing: 'unsure' } });
  });

  it('goes by the sheet that the instructor has, whatever the file says it asks', () => {
    const laid: LaidSheet = { title: 'Exam', terms: { scenarios: [...IDS, 'traps-astray'], passMark: 4 } };
    expect(sittingRows(sittings, rows, [laid])[0]).toMatchObject({
      by: 'sheet',
      whole: { passed: 3, standing: 'missed' },
    });
    // Under another title the only sheet that holds its scenarios.
    const renamed = sittings.map((one) => ({ ...one, title: 'Mine' }));
    expect(sittingRows(renamed, rows, [laid])[0]!.by).toBe('sheet');
    expect(sittingRows(renamed, rows, [{ title: 'Other', terms: { scenarios: ['traps-astray'] } }])[0]!.by).toBe(
      'file',
    );
    // A file from before sheets asked anything, and no sheet.
    const silent = sittings.map(({ terms: _, ...one }) => one);
    expect(sittingRows(silent, rows, []).map(({ whole }) => whole)).toEqual([null, null]);
  });

  it('counts a run that took longer than its time as not passed, and one inside it as passed', () => {
    const mine = rows.filter(({ learner }) => learner === '7').map((row) => ({ ...row, shared: false }));
    const needed = mine.map((row) => Math.ceil(secondsOf(row) / 60));
    const inTime: Whole = wholeOf({ ...terms, minutesEach: needed }, mine);
    expect(inTime.items.map(({ passed, late }) => [passed, late])).toEqual(IDS.map(() => [true, false]));
    const short = wholeOf({ ...terms, minutesEach: [Math.floor(secondsOf(mine[0]!) / 60), null, needed[2]!] }, mine);
    expect(short.items.map(({ passed, late }) => [passed, late])).toEqual([
      [false, true],
      [true, false],
      [true, false],
    ]);
    expect(short).toMatchObject({ passed: 2, standing: 'passed' });
  });

  it('takes of several runs the best, and none that is not verified', () => {
    const mine = rows.filter(({ learner }) => learner === '7').map((row) => ({ ...row, shared: false }));
    const worse = { ...mine[0]!, points: 12, passed: false };
    const altered = { ...mine[1]!, verdict: 'altered' as const };
    const made = wholeOf(terms, [worse, mine[0]!, altered]);
    expect(made.items.map(({ run, tries, doubted, passed }) => [run?.points ?? null, tries, doubted, passed])).toEqual([
      [mine[0]!.points, 2, 0, true],
      [null, 1, 1, false],
      [null, 0, 0, false],
    ]);
    expect(wholeOf({ scenarios: IDS }, []).standing).toBe('noMark');
  });
});
