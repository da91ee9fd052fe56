/** What somebody may send to hold a page up or to get something done by it, and the way in that each takes. Common practice, no source. */
import { deflateRawSync } from 'node:zlib';
import type { Problem, Result } from '../src/base/result.ts';
import { problemSentence } from '../src/describe/problem.ts';
import { readEvening } from '../src/files/evening.ts';
import { scenarioFrom } from '../src/files/library.ts';
import { readRuns } from '../src/files/runsFile.ts';
import { readSealedEvening } from '../src/files/sealedEvening.ts';
import { readToJudge } from '../src/judge/judgeRun.ts';
import { sizeProblem, textOfBytes } from '../src/judge/readBytes.ts';
import { MOST_LINK_CHARS, textOfLink, toBase64Url } from '../src/services/handing/scenarioLink.ts';
import { en } from '../src/words/en/index.ts';

export interface Harm {
  readonly name: string;
  readonly title: string;
  /** `most`: characters or bytes, for a small one of the kind; left out: the largest that is looked at */
  make(most?: number): unknown;
  /** why it is refused; throws where it was taken */
  refuse(made: never): Promise<string> | string;
}

const MOST = 4 * 1024 * 1024;
const FILE = 'harm.json';
const RUN = '{"format":"haystack-run","version":2,';

const filled = (most: number, head: string, piece: string, tail = ''): string =>
  head + piece.repeat(Math.max(1, Math.floor((most - head.length - tail.length) / piece.length))) + tail;

function why(problems: readonly Problem[]): string {
  return `${problems.length}, ${problemSentence(en, problems[0]!)}`.slice(0, 160);
}

function asRun(text: string): string {
  const read = readToJudge(text, FILE);
  if (read.ok) throw new Error('it was taken');
  const { verdict } = read.judgement;
  return verdict.kind === 'unreadable' ? why(verdict.problems) : verdict.kind;
}

const by =
  (read: (text: string, file: string) => Result<unknown>) =>
  (text: string): string => {
    const result = read(text, FILE);
    if (result.ok) throw new Error('it was taken');
    return why(result.problems);
  };

const scenario = by(scenarioFrom);
const run = (name: string, title: string, make: (most: number) => string): Harm => ({
  ...{ name, title: `a run file, ${title}` },
  make: (most = MOST) => make(most),
  refuse: asRun as Harm['refuse'],
});

async function link(data: string): Promise<string> {
  const text = await textOfLink(data, 'link');
  if (!text.ok) return why(text.problems);
  return scenario(text.value);
}

function bytes(made: Uint8Array): string {
  const read = textOfBytes(en, made, FILE, (raw) => new TextDecoder('utf-8', { fatal: true }).decode(raw));
  if (read.ok) throw new Error('it was taken');
  return why(read.problems);
}

export const HARMS: readonly Harm[] = [
  {
    ...{ name: 'bomb', title: 'a link that unpacks to a gigabyte' },
    // As much as a link may hold unpacks to no more than some megabytes; a longer one is not unpacked at all.
    make: (most = 8 * 1024 * 1024) => `1${toBase64Url(deflateRawSync(Buffer.alloc(Math.min(most * 64, 5_500_000))))}`,
    refuse: link as Harm['refuse'],
  },
  {
    ...{ name: 'long-link', title: 'a link of eight megabytes' },
    make: (most = 8 * 1024 * 1024) => `1${'A'.repeat(Math.max(most, MOST_LINK_CHARS + 1))}`,
    refuse: link as Harm['refuse'],
  },
  {
    ...{ name: 'large', title: 'a file of 200 MB' },
    make: () => 200_000_000,
    refuse: ((size: number) => {
      const problem = sizeProblem(en, size, FILE);
      if (problem === null || problem.ok) throw new Error('it was taken');
      return why(problem.problems);
    }) as Harm['refuse'],
  },
  {
    ...{ name: 'not-utf8', title: 'bytes that are no UTF-8' },
    make: (most = 2 * MOST) => new Uint8Array(Math.min(most, 2 * MOST)).fill(0xff),
    refuse: bytes as Harm['refuse'],
  },
  {
    ...{ name: 'nul', title: 'a binary file' },
    make: (most = 2 * MOST) => new Uint8Array(Math.min(most, 2 * MOST)).fill(0x41).fill(0, most - 1),
    refuse: bytes as Harm['refuse'],
  },
  run('zeros', '519,000 zeros as events', (most) => `${RUN}"events":[${'0,'.repeat(Math.min(519_000, most))}0]}`),
  run('deep', 'lists in lists', (most) => filled(most, `${RUN}"events":`, '[')),
  run('objects', 'objects in objects', (most) => filled(most, `${RUN}"a":`, '{"a":')),
  run('string', 'one string', (most) => filled(most, `${RUN}"learner":"`, 'x', '"}')),
  run('escapes', 'a string of escapes', (most) => filled(most, `${RUN}"learner":"`, '\\u202e', '"}')),
  run('key', 'one key', (most) => filled(most, `${RUN}"`, 'k', '":0}')),
  run('keys', 'the same key again and again', (most) => filled(most, `${RUN}"a":{`, '"b":0,', '"b":0}}')),
  run('prototype', 'keys that mean something to the language', (most) =>
    filled(most, `${RUN}"a":{`, '"__proto__":{"constructor":{"prototype":0}},', '"b":0}}'),
  ),
  run('infinite', 'numbers that no number holds', () => `${RUN}"rules":1e999,"claimed":NaN}`),
  run('digits', 'a number of a million digits', (most) => filled(most, `${RUN}"rules":`, '9', '}')),
  run('version', 'a version that is to come', () => '{"format":"haystack-run","version":999999}'),
  run('format', 'another format', (most) => filled(most, '{"format":"something-else","a":"', 'x', '"}')),
  {
    ...{ name: 'markup', title: 'a scenario, HTML and signs that turn the line round in every text' },
    make: () =>
      JSON.stringify({
        ...{ format: 'haystack-scenario', version: 1, id: '<b>', title: '\u202e<img src=x onerror=alert(1)>\u0007' },
        ...{ brief: '</script><script>alert(1)</script>', hints: ['\u2066<svg onload=alert(1)>\u0000'] },
      }),
    refuse: scenario as Harm['refuse'],
  },
  {
    ...{ name: 'scenario', title: 'a scenario with a list without end' },
    make: (most = 1_000_000) => filled(most, '{"format":"haystack-scenario","version":1,"hints":[', '"x",', '"x"]}'),
    refuse: scenario as Harm['refuse'],
  },
  {
    ...{ name: 'sheet', title: 'a sheet of scenarios without end' },
    make: (most = 1_000_000) =>
      filled(most, '{"format":"haystack-evening","version":1,"scenarios":[', '{"id":"a"},', '0]}'),
    refuse: by(readEvening) as Harm['refuse'],
  },
  {
    ...{ name: 'sealed', title: 'a sealed sheet that asks for rounds without end' },
    make: (most = 900_000) =>
      JSON.stringify({
        ...{ format: 'haystack-sealed-evening', version: 1, title: 'x', minutes: 5, count: 1, candidates: 'numbers' },
        seal: { key: 'PBKDF2-HMAC-SHA-256', rounds: 1e15, salt: 'AAAA', cipher: 'AES-256-GCM', nonce: 'AAAA' },
        content: 'A'.repeat(most),
      }),
    refuse: by(readSealedEvening) as Harm['refuse'],
  },
  {
    ...{ name: 'runs', title: 'the file of an exam with runs without end' },
    make: (most = MOST) => filled(most, '{"format":"haystack-runs","version":1,"runs":[', '{},', '{}]}'),
    refuse: by(readRuns) as Harm['refuse'],
  },
];
