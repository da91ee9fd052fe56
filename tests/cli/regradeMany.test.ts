/**
 * `regrade` on many files: the table (RFC 4180), one line of JSON each, several processes, and lines from a pipe. The technician's run of a small
 * scenario stands in for learners; common practice, no source but the standard named.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { RULES_VERSION, type RulesVersion } from '../../src/base/engine.ts';
import type { RunFile } from '../../src/files/runFile.ts';
import { readRunFile } from '../../src/files/runFileSchema.ts';
import { scenarioHash } from '../../src/files/scenarioFile.ts';
import { sealEvents, sealRun } from '../../src/files/seal.ts';
import { claimOf, gradeUnder } from '../../src/grading/grade.ts';
import { csvOf } from '../../src/judge/csv.ts';
import type { Row } from '../../src/judge/row.ts';
import { serialiseRunFile } from '../../src/run/serialise.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { inside, scratch, spawned } from './commandLine.ts';

const files = scratch();
afterAll(files.remove);

const FIRST = files.place('first.json');
inside('demonstrate', 'scenarios/first-sweep/first-curve.json', '--out', FIRST);
const made = readRunFile(readFileSync(FIRST, 'utf8'), FIRST);
if (!made.ok) throw new Error(JSON.stringify(made.problems));
const run = made.value;

const sealed = (change: Partial<RunFile>): RunFile => {
  const changed = { ...run, ...change };
  return { ...changed, seal: sealRun(changed, changed.events) };
};
const faster = (by: number): RunFile['events'] => run.events.map((e) => ({ ...e, atMs: Math.round(e.atMs / by) }));
/** A second later each, which may cost a point against the clock. */
const LATER = run.events.map((e) => ({ ...e, atMs: e.atMs + 1000 }));
const SLOWER = run.events.map((e, i) => ({ ...e, atMs: e.atMs + 37 * i }));
const CLASS: Readonly<Record<string, string>> = {
  'anna.json': serialiseRunFile(sealed({ learner: 'Anna, "the ear"' })),
  // The same acts, a second later, under another name.
  'berit.json': serialiseRunFile(
    sealed({ learner: '=HYPERLINK("x")', events: LATER, claimed: earned(RULES_VERSION, LATER) }),
  ),
  'carl.json': serialiseRunFile({ ...run, learner: 'Carl' }),
  // The claim is under no seal.
  'cleo.json': serialiseRunFile(sealed({ claimed: null })),
  'dora.json': serialiseRunFile(sealed({ events: faster(60) })),
  'emil.json': serialiseRunFile(sealed({ engine: '9.9.9' })),
  'erik.json': serialiseRunFile(sealed({ rules: 1, claimed: earned(1, run.events) })),
  'frida.json': serialiseRunFile(sealed({ events: run.events.slice(0, 20), claimed: null })),
  'gustav.json': 'no run at all',
  'gina.json': serialiseRunFile(nowhere()),
  // The same acts by a clock of somebody's own.
  'greta.json': serialiseRunFile(sealed({ learner: 'Greta', events: SLOWER, claimed: earned(RULES_VERSION, SLOWER) })),
  'older/hans.json': firstVersion({ ...run, learner: 'Hans', events: run.events.slice(0, -1), claimed: null }),
};
/** On a receiver that nobody has. */
function nowhere(): RunFile {
  const scenario = { ...run.scenario, receiver: 'no-such-set' };
  return sealed({ scenario, scenarioHash: scenarioHash(scenario) });
}

/** What acts of this scenario earn under rules. */
function earned(rules: RulesVersion, events: RunFile['events']): NonNullable<RunFile['claimed']> {
  return claimOf(gradeUnder(rules)(setupOf('first-curve'), events));
}

const FOLDER = files.place('class');
for (const [name, text] of Object.entries(CLASS)) {
  mkdirSync(path.dirname(path.join(FOLDER, name)), { recursive: true });
  writeFileSync(path.join(FOLDER, name), text);
}
const place = (name: string): string => path.join(FOLDER, name);

function firstVersion({ rules: _, day: __, runId: ___, seal: ____, ...rest }: RunFile): string {
  return JSON.stringify({ ...rest, version: 1, eventsHash: sealEvents(rest.events) });
}

const rowsIn = (out: string): Row[] =>
  out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Row);
const brief = ({ file, verdict }: Row): string => `${path.basename(file)} ${verdict}`;

describe('a folder', () => {
  const { out, err, code } = inside('regrade', FOLDER, '--jsonl', '--jobs', '1');
  const rows = rowsIn(out);

  it('is judged file by file, folders below too, each by one of the seven words', () => {
    expect([err, code]).toEqual(['', 1]);
    expect(rows.map(brief)).toEqual([
      'anna.json verified',
      'berit.json verified',
      'carl.json altered',
      'cleo.json altered',
      'dora.json impossible',
      'emil.json otherRules',
      'erik.json otherRules',
      'frida.json unfinished',
      'gina.json otherScenario',
      'greta.json verified',
      'gustav.json unreadable',
      'hans.json unfinished',
    ]);
    expect(rows[0]).toMatchObject({ learner: 'Anna, "the ear"', scenario: 'first-curve', points: run.claimed!.total });
    const of = (name: string): Row => rows.find(({ file }) => path.basename(file) === name)!;
    expect(of('cleo.json')).toMatchObject({ points: run.claimed!.total });
    expect(of('cleo.json').reason).toContain('its score was taken out');
    expect(of('gina.json').reason).toContain('no receiver called');
    expect(of('dora.json').reason).toMatch(/ \d+ different knobs.*no hand does more than 12\./);
    const erik = of('erik.json');
    expect(erik.reason).toMatch(
      /version 1 of the rules, by which it earns [\d.]+; by those of today it earns [\d.]+: passed/,
    );
    // All of the work, and never signed off: not passed.
    expect(of('anna.json').passed).toBe(true);
    expect(of('hans.json')).toMatchObject({ points: of('anna.json').points, passed: false });
    expect([erik.points, erik.passed]).toEqual([earned(1, run.events).total, earned(1, run.events).passed]);
    expect(of('gustav.json')).toMatchObject({
      scenario: null,
      points: null,
      reason: expect.stringContaining('gustav.json'),
    });
  });

  it('names a file with the same acts, whoever it is by and whatever the clock says', () => {
    expect(rows.map(({ sameAs }) => sameAs && path.basename(sameAs))).toEqual([
      ...['berit.json', 'anna.json', 'anna.json', 'anna.json', 'anna.json', 'anna.json', 'anna.json'],
      ...[null, 'anna.json', 'anna.json', null, null],
    ]);
  });

  it('is a table for a spreadsheet: quoted where it must be, and no cell a formula', () => {
    const { out: csv, code: same } = inside('regrade', FOLDER, '--csv', '--jobs', '1');
    expect(same).toBe(1);
    const lines = csv.split('\r\n');
    expect(lines[0]).toBe('file,learner,scenario,verdict,passed,points,reason,sameAs');
    expect(lines).toHaveLength(Object.keys(CLASS).length + 2);
    const { total, passed } = run.claimed!;
    expect(lines[1]).toBe(
      `${place('anna.json')},"Anna, ""the ear""",first-curve,verified,${passed},${total},,${place('berit.json')}`,
    );
    expect(lines[2]).toContain(`,"'=HYPERLINK(""x"")",first-curve,verified,`);
  });

  it('is the same on several processes', async () => {
    const spread = await spawned(['regrade', FOLDER, '--jsonl', '--jobs', '2']);
    expect([spread.out, spread.err, spread.code]).toEqual([out, '', 1]);
  });

  it('is good when all are verified', () => {
    expect(inside('regrade', place('anna.json'), place('berit.json'), '--csv').code).toBe(0);
  });

  it('passes over a pipe that lies in it, and tells of a name that leads nowhere', async () => {
    const odd = files.place('odd');
    mkdirSync(odd);
    writeFileSync(path.join(odd, 'anna.json'), CLASS['anna.json']!);
    symlinkSync(path.join(odd, 'gone'), path.join(odd, 'berit.json'));
    expect(spawnSync('mkfifo', [path.join(odd, 'pipe.json')]).status).toBe(0);
    const { out: told } = await spawned(['regrade', odd, '--jsonl', '--jobs', '1']);
    expect(rowsIn(told).map(brief)).toEqual(['anna.json verified', 'berit.json unreadable']);
  });

  it('without a run file is said to be so', () => {
    mkdirSync(files.place('empty'));
    const none = inside('regrade', files.place('empty'), '--csv');
    expect([none.out, none.code]).toEqual(['', 1]);
    expect(none.err).toContain('no .json file');
  });
});

it.each(['=1+1', '+1', '-1', '@x', ' =1', '\uff1d1', '|x'])('the name %j is no formula', (learner) => {
  const row = { learner, points: -3 } as Row;
  const [, cells] = csvOf([row]).split('\r\n');
  expect(cells!.split(',')[1]).toBe(`'${learner}`);
  // Our own figures stay figures.
  expect(cells!.split(',')[5]).toBe('-3');
});

describe('a run a line', () => {
  const compact = (name: string): string => JSON.stringify(JSON.parse(CLASS[name]!));
  const lines = [
    compact('anna.json'),
    '',
    compact('carl.json'),
    place('emil.json'),
    JSON.stringify(place('older/hans.json')),
    '{"half',
  ];
  const verdicts = ['verified', 'altered', 'otherRules', 'unfinished', 'unreadable'];

  it('is answered by a line each, from the run itself or from the file that is named', async () => {
    const { out, err, code } = await spawned(['regrade', '-'], { input: lines.join('\n') });
    const rows = rowsIn(out);
    expect([err, code]).toEqual(['', 1]);
    expect(rows.map(({ verdict }) => verdict)).toEqual(verdicts);
    expect(rows[0]).toMatchObject({ file: 'line 1', learner: 'Anna, "the ear"', sameAs: null });
    expect(rows[0]!.acts).toBe(rows[1]!.acts);
  });

  it('gives the same whichever way the lines are spread', async () => {
    const parts = await Promise.all(
      [lines.slice(0, 3), lines.slice(3)].map((part) => spawned(['regrade', '-'], { input: `${part.join('\n')}\n` })),
    );
    expect(parts.flatMap(({ out }) => rowsIn(out)).map(({ verdict }) => verdict)).toEqual(verdicts);
  });

  it('is the whole of the command', () => {
    for (const more of [['more.json'], ['--csv'], ['--json']]) expect(inside('regrade', '-', ...more).code).toBe(2);
    for (const wrong of [
      ['--csv', '--jsonl'],
      ['--jobs', '0'],
    ])
      expect(inside('regrade', FIRST, ...wrong).code).toBe(2);
  });
});
