/** `check` on folders: each file by itself, then what must hold between scenarios, and which of them nobody has certified. Common practice, no source. */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { insideByKey as inside, scratch } from './commandLine.ts';

const files = scratch();
afterAll(files.remove);

const GOOD = JSON.parse(readFileSync('scenarios/first-sweep/first-curve.json', 'utf8')) as Record<string, unknown>;

function folder(name: string, scenarios: Readonly<Record<string, object>>): string {
  for (const [file, change] of Object.entries(scenarios)) {
    const place = files.place(path.join(name, file));
    mkdirSync(path.dirname(place), { recursive: true });
    writeFileSync(place, JSON.stringify({ ...GOOD, ...change }));
  }
  return files.place(name);
}

it('tells each sound file, and which has no certificate', () => {
  const home = folder('sound', {
    'tuesday/one.json': { id: 'one', code: 'T-01', track: 'tuesday', order: 1, recommendedAfter: ['first-curve'] },
    'tuesday/two.json': { id: 'two', code: 'T-02', track: 'tuesday', order: 2, recommendedAfter: ['one'] },
  });
  const { out, err, code } = inside('check', home);
  expect([err, code]).toEqual(['', 0]);
  const lines = out.trimEnd().split('\n');
  expect(lines.filter((line) => line.startsWith('ok  '))).toHaveLength(2);
  expect(lines.filter((line) => line.startsWith('note  ') && line.includes('certify --write'))).toHaveLength(2);
});

it('finds the shipped ones sound and certified, and knows the decks and receivers beside them', () => {
  const { out, err, code } = inside('check', 'scenarios/first-sweep', 'scenarios/receivers/loose-can-10m7');
  expect([err, code]).toEqual(['', 0]);
  expect(out).toContain('network.cir  (deck');
  expect(out).not.toContain('note  ');
});

it('tells names that do not agree, doubles, and what comes before nothing or after a later one', () => {
  const home = folder('wrong', {
    'tuesday/one.json': { id: 'one', code: 'T-01', track: 'tuesday', order: 1, recommendedAfter: ['two', 'nowhere'] },
    'tuesday/two.json': { id: 'two', code: 'T-01', track: 'tuesday', order: 2, recommendedAfter: [] },
    'tuesday/three.json': { id: 'four', code: 'T-03', track: 'tuesday', order: 2, recommendedAfter: [] },
    'tuesday/five.json': { id: 'five', difficulty: 9 },
  });
  const { err, code } = inside('check', home);
  expect(code).toBe(1);
  const told = (name: string, place: string): string => `${path.join(home, 'tuesday', name)}${place}: found `;
  for (const place of [
    told('five.json', ', /difficulty'),
    told('one.json', ', /recommendedAfter/0'),
    told('one.json', ', /recommendedAfter/1'),
    told('two.json', ', /code'),
    told('three.json', ''),
  ])
    expect(err).toContain(place);
  expect(err).toMatch(/order 2 in tuesday a second time/);
});

it('tells of a scenario that is to be done after itself once', () => {
  const home = folder('round', {
    'tuesday/one.json': { id: 'one', code: 'T-01', track: 'tuesday', recommendedAfter: ['one'] },
  });
  const { err, code } = inside('check', home);
  expect(code).toBe(1);
  expect(err.match(/\/recommendedAfter/g)).toHaveLength(1);
  expect(err).toContain('/recommendedAfter/0: found "one", wanted scenarios other than itself');
});

it('tells doubles of scenarios that are wrong in other ways, too', () => {
  const home = folder('wronger', {
    'tuesday/one.json': { id: 'one', code: 'T-01', track: 'tuesday', order: 1, recommendedAfter: [], title: 7 },
    'tuesday/two.json': { id: 'two', code: 'T-01', track: 'tuesday', order: 1, recommendedAfter: [], extra: 1 },
  });
  const { err, code } = inside('check', home);
  const told = (place: string, found: string) => `${path.join(home, 'tuesday/two.json')}, ${place}: found ${found}`;
  expect(code).toBe(1);
  expect(err).toContain('/title: found 7');
  expect(err).toContain(told('/extra', 'the key "extra"'));
  expect(err).toContain(told('/code', '"T-01" a second time'));
  expect(err).toContain(told('/order', 'order 1 in tuesday a second time'));
});

/** A shipped receiver under other names, with scenarios on it. */
function withReceiver(name: string, folderName: string, change: (text: string) => string = (text) => text): string {
  const home = folder(name, {
    'tuesday/one.json': {
      id: 'one',
      code: 'T-01',
      track: 'tuesday',
      order: 1,
      receiver: 'club-can',
      recommendedAfter: [],
    },
    'tuesday/two.json': {
      id: 'two',
      code: 'T-02',
      track: 'tuesday',
      order: 2,
      receiver: 'club-can',
      recommendedAfter: [],
    },
  });
  const from = 'scenarios/receivers/loose-can-10m7';
  const to = path.join(home, 'receivers', folderName);
  mkdirSync(to, { recursive: true });
  const text = readFileSync(`${from}/receiver.json`, 'utf8').replace('"id": "loose-can-10m7"', '"id": "club-can"');
  writeFileSync(path.join(to, 'receiver.json'), change(text));
  writeFileSync(path.join(to, 'network.cir'), readFileSync(`${from}/network.cir`));
  return home;
}

it('holds scenarios against the receivers that lie in the same folder', () => {
  const { out, err, code } = inside('check', withReceiver('own', 'club-can'));
  expect([err, code]).toEqual(['', 0]);
  expect(out.match(/\(scenario on club-can\)/g)).toHaveLength(2);
});

it('holds a scenario against a receiver that is named beside it, and takes both from one folder as the page saves them', () => {
  const home = withReceiver('saved', 'club-can');
  const receiver = path.join(home, 'club-can.json');
  const from = path.join(home, 'receivers', 'club-can');
  writeFileSync(receiver, readFileSync(path.join(from, 'receiver.json')));
  writeFileSync(path.join(home, 'network.cir'), readFileSync(path.join(from, 'network.cir')));
  rmSync(path.join(home, 'receivers'), { recursive: true });
  expect(inside('check', home)).toMatchObject({ code: 0, err: '' });
  const scenario = path.join(home, 'tuesday', 'one.json');
  const alone = inside('check', scenario);
  expect([alone.code, alone.err]).toEqual([
    1,
    expect.stringContaining('/receiver: found receiver "club-can", wanted one of those in'),
  ]);
  const both = inside('check', scenario, receiver);
  expect([both.code, both.err]).toEqual([0, '']);
  expect(both.out).toContain('(scenario on club-can)');
});

it('tells a receiver whose folder is called otherwise, and one that is broken once only', () => {
  const elsewhere = inside('check', withReceiver('elsewhere', 'old-can'));
  expect(elsewhere.code).toBe(1);
  expect(elsewhere.err).toMatch(/old-can\/receiver\.json, \/id: found "club-can", wanted the name of its folder\n$/);
  const broken = inside(
    'check',
    withReceiver('broken', 'club-can', (text) => text.replace('"travelTurns": ', '"travelTurns": -')),
  );
  expect(broken.code).toBe(1);
  const lines = broken.err.trimEnd().split('\n');
  expect(lines.every((line) => line.includes('/travelTurns: found '))).toBe(true);
  expect(new Set(lines).size).toBe(lines.length);
});

it('says that a folder has nothing to check', () => {
  mkdirSync(files.place('empty'));
  expect(inside('check', files.place('empty'))).toMatchObject({ out: '', code: 1 });
});
