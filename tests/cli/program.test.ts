/** The command line as the program that people start: exit codes, pipes, folders, help. */
import { symlinkSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { inside, PROJECT, scratch, spawned } from './commandLine.ts';

const files = scratch();
afterAll(files.remove);

const DECK = path.join(PROJECT, 'scenarios/receivers/loose-can-10m7/network.cir');

describe('the program', () => {
  it('puts results on one stream, problems on the other, and ends with the code that it promises', async () => {
    const good = await spawned(['check', DECK], { byTsx: true });
    expect([good.err, good.code]).toEqual(['', 0]);
    const bad = await spawned(['check', DECK, 'nowhere.cir'], { byTsx: true });
    expect([bad.out.split('\n').length, bad.err, bad.code]).toEqual([
      2,
      'nowhere.cir: found no such file, wanted a file\n',
      2,
    ]);
    const wrong = await spawned(['sing'], { byTsx: true });
    expect([wrong.out, wrong.code]).toEqual(['', 2]);
  });

  it('works from any folder, and finds the receivers of the project from there', async () => {
    symlinkSync(path.join(PROJECT, 'scenarios/first-sweep/first-curve.json'), files.place('lesson.json'));
    const { out, err, code } = await spawned(['check', 'lesson.json'], { cwd: files.folder });
    expect([out, err, code]).toEqual(['ok  lesson.json  (scenario on loose-can-10m7)\n', '', 0]);
  });

  it('takes file names from where the person stands, also when npm has moved to the project', async () => {
    files.file('near.cir', 'near\nI1 0 a AC 1\nR1 a 0 1\n');
    const env = { npm_lifecycle_event: 'haystack', INIT_CWD: files.folder };
    expect((await spawned(['check', 'near.cir'], { env })).code).toBe(0);
    expect((await spawned(['check', 'near.cir'])).code).toBe(2);
  });

  it('ends quietly when the reader closes the pipe', async () => {
    const { out, err, code } = await spawned(['response', DECK, '--node', 'sec', '--points', '100000'], {
      readLittle: true,
    });
    expect(out.startsWith('hz,re,im\n')).toBe(true);
    expect([err, code]).toEqual(['', 0]);
  });

  it('sends all of a long table through a pipe', async () => {
    const { out } = await spawned(['response', DECK, '--node', 'sec', '--points', '30000']);
    expect(out.trimEnd().split('\n')).toHaveLength(30_001);
  });
});

describe('help', () => {
  it('is printed on request with code 0, and names every command and the exit codes', () => {
    const { out, err, code } = inside('--help');
    expect([err, code]).toEqual(['', 0]);
    for (const word of ['response', 'check', 'regrade', 'curve', 'Exit codes: 0 ']) expect(out).toContain(word);
    for (const command of ['response', 'check', 'regrade', 'curve']) {
      const more = inside(command, '--help');
      expect([more.err, more.code]).toEqual(['', 0]);
      expect(more.out).toMatch(new RegExp(`^Usage: haystack ${command} `));
    }
  });

  it('is told as an error when no command or an unknown one is given', () => {
    expect([inside().code, inside('sing').code, inside('check', '--loud').code]).toEqual([2, 2, 2]);
    expect(inside('sing').err).toMatch(/^error: unknown command "sing", wanted one of response, check, .*, help\n$/);
  });
});

describe('wrong use', () => {
  const LESSON = 'scenarios/first-sweep/first-curve.json';

  it.each([
    ['response', 'nowhere.cir', '--node', 'sec'],
    ['check', DECK, 'nowhere.cir'],
    ['sheet', 'nowhere.cir'],
    ['sheet', DECK, '--receiver', 'nowhere.cir'],
    ['upgrade', 'nowhere.cir'],
    ['curve', 'nowhere.cir'],
    ['deck', 'nowhere.cir', '--hz', '10.7meg'],
    ['certify', 'nowhere.cir'],
    ['demonstrate', 'nowhere.cir'],
  ])('is a file that is not there: %s %s %s %s', (...words) => {
    const { err, code } = inside(...words);
    expect([err, code]).toEqual(['nowhere.cir: found no such file, wanted a file\n', 2]);
  });

  it.each<[readonly string[], string]>([
    [['regrade', LESSON, '--jobs', 'many'], '--jobs takes a whole number from 1 to 99, not "many".'],
    [['regrade', LESSON, '--jobs'], 'regrade: found an option without its value, wanted --jobs <N>'],
    [
      ['regrade', LESSON, '--scenario', 'lost'],
      '--scenario takes a file, or the id of a scenario in scenarios/: there is neither called "lost".',
    ],
    [
      ['certify', LESSON, '--loud'],
      'certify: unknown option "--loud", wanted one of --receiver, --json, --write, --help',
    ],
    [
      ['certify', LESSON, '--jsn'],
      'certify: unknown option "--jsn", wanted one of --receiver, --json, --write, --help',
    ],
    [['check'], 'check: found no argument, wanted FILE'],
    [['deck', LESSON], 'deck: an option that it needs is missing, wanted --hz <F>'],
  ])('is told by its option, what was found and what is wanted: %j', (words, wanted) => {
    expect(inside(...words)).toEqual({ out: '', err: `error: ${wanted}\n`, code: 2 });
  });

  it('is also a choice that the file has not, while what is wrong in the file is the file’s', () => {
    const { err, code } = inside('curve', LESSON, '--response', 'lost');
    expect([err, code]).toEqual([`${LESSON}, --response: found "lost", wanted one of can\n`, 2]);
    expect(inside('check', files.file('empty.json', '{}'), DECK).code).toBe(1);
  });
});
