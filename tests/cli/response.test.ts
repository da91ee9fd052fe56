/** `response` against circuits whose answer is written down by hand (Kirchhoff), and against everything that can be given wrongly. */
import { afterAll, describe, expect, it } from 'vitest';
import { inside, scratch } from './commandLine.ts';

const files = scratch();
afterAll(files.remove);

const PARALLEL = files.file(
  'parallel.cir',
  'parallel R and C\nI1 0 out AC 1m\nR1 out 0 1k\nC1 out 0 1n\n.ac lin 3 100k 300k\n.end\n',
);
const NO_AC = files.file('quiet.cir', 'no ac line\nI1 0 out AC 1m\nR1 out 0 1k\n.end\n');

function table(out: string): number[][] {
  const [head, ...lines] = out.trimEnd().split('\n');
  expect(head).toBe('hz,re,im');
  return lines.map((line) => line.split(',').map(Number));
}

describe('response', () => {
  it('gives V = I / (1/R + j w C) to twelve digits at the frequencies of the deck', () => {
    const { out, err, code } = inside('response', PARALLEL, '--node', 'out');
    expect([err, code]).toEqual(['', 0]);
    const rows = table(out);
    expect(rows.map(([hz]) => hz)).toEqual([100e3, 200e3, 300e3]);
    for (const [hz = 0, re = 0, im = 0] of rows) {
      const g = 1e-3;
      const b = 2 * Math.PI * hz * 1e-9;
      expect(re).toBeCloseTo((1e-3 * g) / (g * g + b * b), 11);
      expect(im).toBeCloseTo((-1e-3 * b) / (g * g + b * b), 11);
    }
    const digits = out
      .split('\n')[1]!
      .split(',')
      .map(
        (figure) =>
          figure
            .replace(/e.*$/, '')
            .replace(/^[-0.]+/, '')
            .replace('.', '').length,
      );
    expect(digits).toEqual([12, 12, 12]);
  });

  it('takes the frequencies that it is given, with SPICE suffixes or without', () => {
    const { out } = inside('response', PARALLEL, '--node', 'OUT', '--from', '1meg', '--to', '2e6', '--points', '5');
    expect(table(out).map(([hz]) => hz)).toEqual([1e6, 1.25e6, 1.5e6, 1.75e6, 2e6]);
    expect(
      table(inside('response', NO_AC, '--node', 'out', '--from', '455k', '--to', '455k', '--points', '1').out),
    ).toEqual([[455e3, 1, 0]]);
    expect(table(inside('response', PARALLEL, '--node', 'out', '--to', '200k').out).map(([hz]) => hz)).toEqual([
      100e3, 150e3, 200e3,
    ]);
  });

  it('solves a shipped deck', () => {
    const { out, code } = inside('response', 'scenarios/receivers/loose-can-10m7/network.cir', '--node', 'sec');
    expect(code).toBe(0);
    expect(table(out)).toHaveLength(281);
    expect(table(out).flat().every(Number.isFinite)).toBe(true);
  });

  it('names the nodes when it is asked for another', () => {
    const { out, err, code } = inside('response', PARALLEL, '--node', 'nowhere');
    expect([out, code]).toEqual(['', 2]);
    expect(err).toBe(`${PARALLEL}, --node: found node "nowhere", wanted one of out\n`);
  });

  it('lists every problem of a deck with its place', () => {
    const broken = files.file(
      'broken.cir',
      'broken\nI1 0 a AC 1m\nR1 a 0 minus\nQ1 a b c model\nC1 a 0 1n extra\n.tran 1 2\n',
    );
    const { out, err, code } = inside('response', broken, '--node', 'a');
    expect([out, code]).toEqual(['', 1]);
    const lines = err.trimEnd().split('\n');
    for (const line of lines) expect(line).toMatch(/broken\.cir, line \d+, column \d+: found .+, wanted .+/);
    for (const number of [3, 4, 5, 6]) expect(err).toContain(`line ${number},`);
  });

  it.each([
    [['response', '--node', 'out'], /response: found no argument, wanted DECK\.cir/],
    [['response', PARALLEL], /response: an option that it needs is missing, wanted --node <name>/],
    [['response', PARALLEL, '--node', 'out', '--from', 'high'], /--from takes a frequency .*, not "high"/],
    [['response', PARALLEL, '--node', 'out', '--from', '0'], /--from takes a frequency/],
    [['response', PARALLEL, '--node', 'out', '--to', '1e300'], /--to takes a frequency/],
    [
      ['response', PARALLEL, '--node', 'out', '--points', '1.5'],
      /--points takes a whole number from 1 to \d+, not "1\.5"/,
    ],
    [['response', PARALLEL, '--node', 'out', '--points', '1e9'], /--points takes a whole number/],
    [
      ['response', PARALLEL, '--node', 'out', '--from', '2meg'],
      /--from must not lie above --to: 2000000 is above \d+ hertz/,
    ],
    [['response', PARALLEL, '--node', 'out', '--points', '1'], /must be the same/],
    [['response', NO_AC, '--node', 'out'], /no \.ac line/],
    [
      ['response', PARALLEL, '--node', 'out', '--loud'],
      /response: unknown option "--loud", wanted one of --node, --from, --to, --points, --help/,
    ],
    [
      ['response', PARALLEL, PARALLEL, '--node', 'out'],
      /response: found too many arguments \(2\), wanted DECK\.cir alone/,
    ],
  ])('%j is wrong use: exit code 2', (words, wanted) => {
    const { out, err, code } = inside(...words);
    expect([out, code]).toEqual(['', 2]);
    expect(err).toMatch(wanted);
  });

  it('does not solve more points than it says', () => {
    const dense = files.file('dense.cir', 'dense\nI1 0 out AC 1m\nR1 out 0 1k\n.ac dec 100000 1 1meg\n');
    const { err, code } = inside('response', dense, '--node', 'out');
    expect(code).toBe(2);
    expect(err).toMatch(/asks for 600001 points/);
  });
});
