/** `check` on good, malformed, truncated, hostile and huge files of every kind. */
import { mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { insideByKey as inside, scratch } from './commandLine.ts';

const files = scratch();
afterAll(files.remove);

const SCENARIO = 'scenarios/first-sweep/first-curve.json';
const RECEIVER = 'scenarios/receivers/loose-can-10m7/receiver.json';
const DECK = 'scenarios/receivers/loose-can-10m7/network.cir';
const scenarioText = readFileSync(SCENARIO, 'utf8');

function changed(name: string, change: (scenario: Record<string, unknown>) => void): string {
  const scenario = JSON.parse(scenarioText) as Record<string, unknown>;
  change(scenario);
  return files.file(name, JSON.stringify(scenario));
}

describe('check', () => {
  it('says what each sound file is', () => {
    const { out, err, code } = inside('check', DECK, RECEIVER, SCENARIO);
    expect([err, code]).toEqual(['', 0]);
    expect(out).toBe(
      `ok  ${DECK}  (deck, 11 elements, 3 nodes)\nok  ${RECEIVER}  (receiver, 2 slugs)\nok  ${SCENARIO}  (scenario on loose-can-10m7)\n`,
    );
  });

  it('goes on after a bad file and still says which are sound', () => {
    const { out, err, code } = inside('check', 'nowhere.cir', SCENARIO);
    expect(code).toBe(2);
    expect(out).toBe(`ok  ${SCENARIO}  (scenario on loose-can-10m7)\n`);
    expect(err).toBe('nowhere.cir: found no such file, wanted a file\n');
  });

  it('lists all problems of a scenario, each with its pointer', () => {
    const file = changed('wrong.json', (scenario) => {
      scenario.order = -1;
      scenario.difficulty = 9;
      scenario.surprise = true;
      (scenario.bench as Record<string, unknown>).mainsHz = 55;
    });
    const { err, code } = inside('check', file);
    expect(code).toBe(1);
    for (const place of ['/order', '/difficulty', '/surprise', '/bench/mainsHz'])
      expect(err).toContain(`${file}, ${place}: found `);
    expect(err.trimEnd().split('\n')).toHaveLength(4);
  });

  it('holds the difficulty of a scenario against the figure of its certificate', () => {
    const sealed = readFileSync('scenarios/sound-fm/tuner-sealed.json', 'utf8');
    expect(JSON.parse(sealed)).toMatchObject({ difficulty: 3 });
    expect(inside('check', files.file('sealed.json', sealed)).code).toBe(0);
    const easy = files.file('easy.json', sealed.replace(/"difficulty": 3/, '"difficulty": 1'));
    const { out, err, code } = inside('check', easy);
    expect([out, code]).toEqual(['', 1]);
    expect(err).toMatch(
      /^\S+easy\.json, \/difficulty: found 1, which goes with 0 to 6 of 10, where the certificate says 6\.\d, wanted one of 2, 3\n$/,
    );
  });

  it('holds a scenario against the receiver that it names', () => {
    const unknown = inside(
      'check',
      changed('far.json', (s) => Object.assign(s, { receiver: 'of-another-club' })),
    );
    expect(unknown.code).toBe(1);
    expect(unknown.err).toMatch(
      /far\.json, \/receiver: found receiver "of-another-club", wanted one of those in scenarios\/receivers: .*loose-can-10m7/,
    );
    const slug = inside(
      'check',
      changed('slug.json', (s) => Object.assign(s.start as object, { slugs: { T9: 1, T1B: 59 } })),
    );
    expect(slug.err).toMatch(/\/start\/slugs\/T9: found "T9", wanted one of "T1B", "T1T"/);
    expect(slug.err).toMatch(/\/start\/slugs\/T1B: found 59 turns, wanted from /);
    expect(slug.code).toBe(1);
  });

  it('reads a receiver with the deck that lies beside it', () => {
    const folder = files.place('set');
    mkdirSync(folder);
    const receiver = files.file('set/receiver.json', readFileSync(RECEIVER));
    const alone = inside('check', receiver);
    expect(alone.err).toBe(`${path.join(folder, 'network.cir')}: found no such file, wanted a file\n`);
    files.file('set/network.cir', readFileSync(DECK, 'utf8').replace('3.951u', '3.9u'));
    const other = inside('check', receiver);
    expect(other.err).toMatch(
      /\/adjusters\/0\/nominalHenries: found 3\.951 \u00b5H, wanted 3\.9 \u00b5H, the value of/,
    );
    expect([alone.code, other.code]).toEqual([1, 1]);
  });

  it.each([
    ['cut.json', scenarioText.slice(0, 700), /cut\.json, line \d+, column \d+: found the end of the text/],
    [
      'comma.json',
      scenarioText.replace('"version": 2,', '"version": 2'),
      /comma\.json, line 4, column 3: found "\\"", wanted a comma/,
    ],
    [
      'twice.json',
      scenarioText.replace('"version": 2,', '"version": 2, "version": 2,'),
      /the key "version" a second time/,
    ],
    ['proto.json', '{"format":"haystack-scenario","__proto__":{"x":1}}', /the key "__proto__"/],
    ['deep.json', `{"format":"haystack-scenario","x":${'['.repeat(5000)}${']'.repeat(5000)}}`, /more than \d+ levels/],
    ['other.json', '{"format":"spreadsheet"}', /\/format: found format "spreadsheet", wanted haystack-receiver/],
    ['none.json', '[1, 2]', /\/format: found no format/],
    [
      'later.json',
      scenarioText.replace('"version": 2', '"version": 3'),
      /\/version: found version 3, wanted version 2 or older/,
    ],
    ['notes.txt', 'these are only words\n', /neither a deck nor JSON/],
    ['empty.cir', '', /empty\.cir: found/],
  ])('refuses %s with its place', (name, text, wanted) => {
    const { out, err, code } = inside('check', files.file(name, text));
    expect([out, code]).toEqual(['', 1]);
    expect(err).toMatch(wanted);
  });

  it('knows a deck or JSON under another name by its contents', () => {
    const { out } = inside(
      'check',
      files.file('deck.txt', readFileSync(DECK)),
      files.file('scenario.txt', scenarioText),
    );
    expect(out).toMatch(/deck\.txt {2}\(deck,.*\n.*scenario\.txt {2}\(scenario on/);
  });

  it('refuses what is no text or no file', () => {
    const picture = inside('check', files.file('picture.json', Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2])));
    const latin = inside('check', files.file('latin.cir', Uint8Array.from([0x63, 0xe9, 0x0a])));
    const folder = inside('curve', files.folder);
    const device = inside('check', '/dev/null');
    expect(
      [picture.err, latin.err].every((err) => err.includes('found bytes that are not text, wanted text in UTF-8')),
    ).toBe(true);
    expect(folder.err).toContain('found a folder, wanted a file');
    expect(device.err).toContain('found something that is not a plain file, wanted a file');
    expect([picture.code, latin.code, folder.code, device.code]).toEqual([1, 1, 1, 1]);
  });

  it('refuses huge files without looking far into them', () => {
    const huge = files.file('huge.json', `{"format":"haystack-scenario","x":"${'x'.repeat(9_000_000)}"}`);
    const long = files.file('long.json', `{"format":"haystack-scenario","x":"${'x'.repeat(2_000_000)}"}`);
    const wide = files.file('wide.json', `{"format":"haystack-scenario","x":[${'0,'.repeat(400_000)}0]}`);
    const deck = files.file('huge.cir', `title\n${'R1 a 0 1\n'.repeat(100_000)}`);
    for (const [file, wanted] of [
      [huge, /found 90000\d\d bytes, wanted at most/],
      [long, /found 20000\d\d characters, wanted at most/],
      [wide, /more than \d+ values/],
      [deck, /found 900006 characters, wanted at most/],
    ] as const) {
      const { err, code } = inside('check', file);
      expect(err).toMatch(wanted);
      expect(code).toBe(1);
    }
  });

  it('shows signs that would move the cursor by their number', () => {
    const file = files.file('sly.cir', 'sly\nR1 a 0 \u001b[2J\u202ex\n');
    const { err } = inside('check', file);
    expect(['\u001b', '\u202e'].filter((sign) => err.includes(sign))).toEqual([]);
    expect(err).toContain('\\u{1b}[2J\\u{202e}x');
  });

  it('wants at least one file', () => {
    expect(inside('check').code).toBe(2);
  });
});
