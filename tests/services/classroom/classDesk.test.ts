/** The desk of a class: what is taken, judged, stopped and taken away. */
import { describe, expect, it } from 'vitest';
import type { Judged } from '../../../src/judge/judged.ts';
import { type BroughtFile, picked } from '../../../src/services/classroom/brought.ts';
import { createClassDesk, fileJudge, unreadable } from '../../../src/services/classroom/classDesk.ts';

const file = (name: string, text = name): BroughtFile => ({ name, blob: new File([text], name, { lastModified: 1 }) });
const soon = () => new Promise((resolve) => setTimeout(resolve, 5));

/** A judge whose verdicts come when they are told to. */
function slowJudge() {
  const begun: { readonly name: string; readonly signal: AbortSignal; readonly end: (judged: Judged) => void }[] = [];
  const desk = createClassDesk(
    ({ name }, signal) =>
      new Promise((end, off) => {
        signal.addEventListener('abort', () => off(new Error('called off')));
        begun.push({ name, signal, end });
      }),
  );
  return { desk, begun };
}
const done = unreadable([]);

describe('the desk', () => {
  it('judges two at a time, in the order in which they came, and tells of all in the end', async () => {
    const { desk, begun } = slowJudge();
    let told = 0;
    desk.subscribe(() => told++);
    expect(desk.take(['a', 'b', 'c'].map((name) => file(name)))).toBe(0);
    expect(begun.map(({ name }) => name)).toEqual(['a', 'b']);
    expect([desk.isWorking(), desk.inHand()]).toEqual([true, 'a']);
    begun[0]!.end(done);
    await soon();
    expect(begun.map(({ name }) => name)).toEqual(['a', 'b', 'c']);
    begun[1]!.end(done);
    begun[2]!.end(done);
    await soon();
    expect(desk.files().map(({ no, judged }) => [no, judged])).toEqual([
      [1, done],
      [2, done],
      [3, done],
    ]);
    expect([desk.isWorking(), desk.inHand()]).toEqual([false, null]);
    expect(told).toBeGreaterThan(0);
  });

  it('judges once more what is asked for, and what was in hand meanwhile', async () => {
    const { desk, begun } = slowJudge();
    desk.take(['a', 'b', 'c'].map((name) => file(name)));
    begun[0]!.end(done);
    begun[1]!.end({ ...done, learner: 'Ines' });
    await soon();
    expect(begun.map(({ name }) => name)).toEqual(['a', 'b', 'c']);
    desk.again(({ learner }) => learner === 'Ines');
    expect(begun[2]!.signal.aborted).toBe(true);
    expect(begun.map(({ name }) => name)).toEqual(['a', 'b', 'c', 'b', 'c']);
    begun[3]!.end(done);
    begun[4]!.end(done);
    await soon();
    expect(desk.files().map(({ judged }) => judged)).toEqual([done, done, done]);
  });

  it('takes no file twice, but another of the same name', () => {
    const { desk } = slowJudge();
    desk.take([file('a')]);
    expect(desk.take([file('a'), file('a', 'longer')])).toBe(1);
    expect(desk.files().map(({ no, name }) => `${no} ${name}`)).toEqual(['1 a', '2 a']);
  });

  it('stops at once, keeps what is done, and goes on where it stopped', async () => {
    const { desk, begun } = slowJudge();
    desk.take(['a', 'b', 'c'].map((name) => file(name)));
    begun[0]!.end(done);
    await soon();
    desk.stop();
    expect(begun.map(({ signal }) => signal.aborted)).toEqual([false, true, true]);
    expect([desk.isWorking(), desk.files().filter(({ judged }) => judged !== null).length]).toEqual([false, 1]);
    await soon();
    expect(begun).toHaveLength(3);
    desk.goOn();
    expect(begun.slice(3).map(({ name }) => name)).toEqual(['b', 'c']);
  });

  it('lets a file in hand go when it is taken away, and counts on', async () => {
    const { desk, begun } = slowJudge();
    desk.take(['a', 'b', 'c'].map((name) => file(name)));
    desk.takeAway(1);
    expect(begun[0]!.signal.aborted).toBe(true);
    expect(begun.map(({ name }) => name)).toEqual(['a', 'b', 'c']);
    // Its verdict comes too late.
    begun[0]!.end(done);
    await soon();
    desk.take([file('d')]);
    expect(desk.files().map(({ no }) => no)).toEqual([2, 3, 4]);
    desk.clear();
    expect([desk.files(), desk.isWorking()]).toEqual([[], false]);
  });

  it('says of a file that cannot be read what is wrong, and never hands it to the judge', async () => {
    const problem = { file: 'a', place: '', found: ['said', 'bytes'], wanted: ['said', 'text'] } as const;
    const judge = fileJudge({
      text: async ({ name }) => (name === 'a' ? { ok: false, problems: [problem] } : { ok: true, value: 'text' }),
      judge: async (text, name) => unreadable([{ file: name, place: '', found: ['said', text], wanted: ['none'] }]),
    });
    const { signal } = new AbortController();
    expect((await judge(file('a'), signal)).finding).toEqual({ kind: 'unreadable', problems: [problem] });
    expect((await judge(file('b'), signal)).finding).toMatchObject({
      problems: [{ file: 'b', found: ['said', 'text'] }],
    });
  });
});

describe('what was picked', () => {
  const inFolder = (place: string): File =>
    Object.defineProperty(new File([''], place.split('/').at(-1)!), 'webkitRelativePath', { value: place });
  const single = (name: string): File =>
    Object.defineProperty(new File([''], name), 'webkitRelativePath', { value: '' });

  it('is taken as the command line takes it: files as they are, of folders every .json in order', () => {
    const { files, leftAlone, empty } = picked([
      ...['class/b.JSON', 'class/notes.txt', 'class/a/z.json', 'class/a.json', 'other/x.txt'].map(inFolder),
      single('run.txt'),
    ]);
    expect(files.map(({ name }) => name)).toEqual(['run.txt', 'class/a/z.json', 'class/a.json', 'class/b.JSON']);
    expect([leftAlone, empty]).toEqual([['class/notes.txt', 'other/x.txt'], ['other']]);
  });
});
