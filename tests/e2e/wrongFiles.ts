/** What somebody may bring by mistake, or to do harm: each is to be refused whole, with its reasons. Common practice, no source. */
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';

export interface WrongFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

const scenario = readFileSync('scenarios/first-sweep/off-centre.json', 'utf8');
const json = JSON.parse(scenario) as Record<string, unknown>;

/** A scenario of one's own that is in order. */
export function goodScenario(id = 'boat-shed', title = 'The boat shed'): string {
  return JSON.stringify({ ...json, id, title, code: 'O-77', order: 77, recommendedAfter: [] }, null, 1);
}

const utf16 = (text: string, big: boolean): Buffer => {
  const little = Buffer.from(`\ufeff${text}`, 'utf16le');
  return big ? little.swap16() : little;
};
const run = (changes: object = {}): string => JSON.stringify({ format: 'haystack-run', version: 2, ...changes });
const evening = (changes: object = {}): string =>
  JSON.stringify({ format: 'haystack-evening', version: 1, title: 'x', scenarios: [json], ...changes });
const good = goodScenario();
const changed = (changes: object): string => JSON.stringify({ ...(JSON.parse(good) as object), ...changes });

const WRONG: Readonly<Record<string, string | Buffer>> = {
  'empty.json': '',
  'spaces.json': ' \n\t ',
  'mark-alone.json': Buffer.from([0xef, 0xbb, 0xbf]),
  'null.json': 'null',
  'number.json': '42',
  'word.json': 'haystack',
  'text.json': '"haystack-scenario"',
  'list.json': '[]',
  'object.json': '{}',
  'cut.json': good.slice(0, 400),
  'twice.json': good + good,
  'comma.json': `${good.trimEnd().slice(0, -1)},}`,
  'comment.json': `// mine\n${good}`,
  'quotes.json': good.replaceAll('"', "'"),
  'key-twice.json': good.replace('{', '{"id":"other-id",'),
  'proto.json': good.replace('{', '{"__proto__":{},'),
  'nan.json': good.replace('"order": 77', '"order": NaN'),
  'endless-number.json': good.replace('"order": 77', '"order": 1e999'),
  'utf16-little.json': utf16(good, false),
  'utf16-big.json': utf16(good, true),
  'latin1.json': Buffer.concat([Buffer.from('{"title":"caf'), Buffer.from([0xe9]), Buffer.from('"}')]),
  'nul.json': good.replace('The boat shed', 'The boat\u0000shed'),
  'picture.png': Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d]),
  'archive.zip': Buffer.from([0x50, 0x4b, 3, 4, 20, 0, 0, 0, 8, 0]),
  'page.html': '<!doctype html><script>alert(1)</script>',
  'table.csv': 'file,learner,scenario\n1,2,3\n',
  'deck.cir': '* a deck\nR1 in 0 50\n.end\n',
  'run.json': run(),
  'runs.json': JSON.stringify({ format: 'haystack-runs', version: 1, runs: [] }),
  'certificate.json': JSON.stringify({ format: 'haystack-certificate', version: 1 }),
  'receiver.json': readFileSync('scenarios/receivers/am-455k/receiver.json', 'utf8'),
  'sealed.json': JSON.stringify({ format: 'haystack-sealed-evening', version: 1, title: 'x' }),
  'evening-none.json': evening({ scenarios: [] }),
  'evening-marks.json': evening({ passMark: 9, minutesEach: [1, 2, 3] }),
  'newer.json': changed({ version: 99 }),
  'stranger.json': changed({ format: 'bench-scenario' }),
  'course-id.json': changed({ id: 'first-curve' }),
  'no-such-set.json': changed({ receiver: 'no-such-set' }),
  'key-more.json': changed({ colour: 'red' }),
  'many-wrong.json': changed({ title: '', order: -1, toleranceFactor: 'wide' }),
  // Real archives and papers, whatever they are called.
  'packed.json': gzipSync(good),
  'paper.pdf': '%PDF-1.7\n%\u00e2\u00e3\u00cf\u00d3\n1 0 obj\n<< /Type /Catalog >>\nendobj\n',
  'wide.json': Buffer.from(good, 'utf16le'),
  'lines-of-json.json': `${JSON.stringify(json)}\n${JSON.stringify(json)}\n`,
  'other-lines.json': `${good.replaceAll('\n', '\r\n')}\r\n]`,
  'other-digits.json': good.replace('"order": 77', '"order": 077'),
  'hexadecimal.json': good.replace('"order": 77', '"order": 0x4d'),
  'number-in-quotes.json': changed({ order: '77' }),
  'list-for-text.json': changed({ title: ['The boat shed'] }),
  'half-a-sign.json': good.replace('The boat shed', 'The boat \\ud800 shed'),
  'turned-about.json': changed({ title: 'The \u202eboat shed' }),
  'path-for-id.json': changed({ id: '../../boat-shed' }),
  'long-title.json': changed({ title: 'shed '.repeat(20_000) }),
  'constructor.json': changed({ constructor: { prototype: { title: 'x' } } }),
  'deep.json': `${'['.repeat(100_000)}${']'.repeat(100_000)}`,
  'deep-keys.json': `${good.trimEnd().slice(0, -1)},"words":${'{"a":'.repeat(2000)}1${'}'.repeat(2000)}}`,
  'newer-run.json': run({ version: 3 }),
  'newer-evening.json': evening({ version: 2 }),
  'evening-in-evening.json': evening({ scenarios: [JSON.parse(evening())] }),
  [`${'a-very-long-name-'.repeat(14)}.json`]: '{"format": "haystack-scenario"',
};

export const WRONG_FILES: readonly WrongFile[] = Object.entries(WRONG).map(([name, contents]) => ({
  name,
  mimeType: name.endsWith('.json') ? 'application/json' : 'application/octet-stream',
  buffer: Buffer.from(contents as string),
}));

export const fileOf = (name: string, contents: string | Buffer): WrongFile => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(contents as string),
});
