/** Files that somebody made to hold the class room up: how long each takes to be refused. Common practice, no source: the largest of each kind that is looked at at all. */
import { readToJudge } from '../../src/judge/judgeRun.ts';
import type { PerfCase } from '../case.ts';
import { timed } from '../case.ts';

const MOST = 4 * 1024 * 1024;
const HEAD = '{"format":"haystack-run","version":2,';
const filled = (head: string, piece: string, tail = ''): string =>
  head + piece.repeat(Math.floor((MOST - head.length - tail.length) / piece.length)) + tail;

const TEXTS: Readonly<Record<string, string>> = {
  brackets: filled('', '['),
  keys: filled(`${HEAD}"a":{`, '"b":0,'),
  string: filled(`${HEAD}"learner":"`, 'x', '"}'),
  escapes: filled(`${HEAD}"learner":"`, '\\u0041', '"}'),
  events: filled(`${HEAD}"events":[`, '{"atMs":0,"type":"nothing"},', '0]}'),
  numbers: filled(`${HEAD}"events":[`, '0,', '0]}'),
  lines: filled('', '\n', '!'),
};

const refused = (text: string) => {
  let problems = 0;
  const run = (): void => {
    const read = readToJudge(text, 'hostile.json');
    if (read.ok) throw new Error('it was taken');
    const { verdict } = read.judgement;
    problems = verdict.kind === 'unreadable' ? verdict.problems.length : 1;
  };
  return timed({ warmUp: 3, runs: 15, run, checksum: () => problems });
};

export const cases: readonly PerfCase[] = Object.entries(TEXTS).map(([name, text]) => ({
  id: `hostile-${name}`,
  title: `a file of 4 Mi characters, all ${name}: refused`,
  measure: () => refused(text),
}));
