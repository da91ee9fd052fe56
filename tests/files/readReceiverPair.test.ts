/** The way in for receivers of people's own: what ships passes it, and a receiver that cannot be is told by text, place, what was found and what was wanted. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Problem } from '../../src/base/result.ts';
import { problemSentence } from '../../src/describe/problem.ts';
import { deckNameIn } from '../../src/files/library.ts';
import { readNewReceiver, readReceiverPair } from '../../src/files/readReceiverPair.ts';
import { en } from '../../src/words/en/index.ts';

const SHELF = 'scenarios/receivers';

// biome-ignore lint/suspicious/noExplicitAny: tests break files on purpose, anywhere
type Change = (receiver: any) => void;

function texts(id: string) {
  const receiver = readFileSync(`${SHELF}/${id}/receiver.json`, 'utf8');
  return { receiver, deck: readFileSync(`${SHELF}/${id}/${deckNameIn(receiver)}`, 'utf8') };
}

function read(
  id: string,
  change: Change = () => {},
  deckChange: (text: string) => string = (text) => text,
  reader = readReceiverPair,
) {
  const { receiver, deck } = texts(id);
  const json = JSON.parse(receiver);
  change(json);
  return reader({
    receiver: { file: 'own.json', text: JSON.stringify(json, null, 1) },
    deck: { file: 'own.cir', text: deckChange(deck) },
  });
}

function told(...asked: Parameters<typeof read>): string {
  const outcome = read(...asked);
  const problems: readonly Problem[] = outcome.ok ? [] : outcome.problems;
  return problems.map((problem) => problemSentence(en, problem)).join('\n');
}

describe('a receiver and its deck', () => {
  it.each(readdirSync(SHELF))('%s, which ships, is read', (id) => {
    const outcome = read(id);
    expect(told(id)).toBe('');
    expect(outcome.ok && outcome.value.receiver.id).toBe(id);
  });

  it('are refused with a part that is a thousand million times out, by its line of the deck and by the circuit that it tunes', () => {
    const said = told('am-455k', undefined, (deck) => deck.replace('C2s det 0 110p', 'C2s det 0 110m'));
    expect(said).toMatch(/own\.cir, line \d+, column 11: found C2s of 110 mF, wanted a capacitor from .* to 3\.\d mF/);
    // 1 / (2 pi sqrt(1.108 mH x 110 mF)) = 14.4 Hz, by Thomson's formula.
    expect(said).toMatch(/own\.json, line \d+, column \d+, \/adjusters\/3\/element: found L2s .* tuned to 14\.4 Hz/);
  });

  it('are refused with such a part where nothing is tuned by it', () => {
    const resistor = told('am-455k', undefined, (deck) => deck.replace('Rg1 g1 0 2.2Meg', 'Rg1 g1 0 2.2e-6'));
    expect(resistor).toMatch(/own\.cir, line \d+, column 10: found Rg1 of 2\.2 .*wanted a resistor from 1 m/);
    const feed = told('loose-can-10m7', undefined, (deck) =>
      deck.replace('Rsrc gen 0 75', 'Rsrc gen 0 75\nCfar gen 0 110m'),
    );
    expect(feed).toMatch(/own\.cir, line \d+, column 12: found Cfar of 110 mF, wanted a capacitor/);
  });

  it('are refused with a node that nothing goes to but one end of a part, by that word of the deck', () => {
    const said = told('am-455k', undefined, (deck) => deck.replace('C2s det 0 110p', 'C2s dte 0 110p'));
    expect(said).toMatch(
      /own\.cir, line \d+, column 5: found node `dte`, which only C2s joins, wanted at least two parts/,
    );
  });

  it('are refused with a level and a width that every curve has', () => {
    const said = told('am-455k', (r) => {
      Object.assign(r.responses[0].specification.points[0], { low: 0, high: 1 });
      const { bandwidths, fromHz, toHz } = r.responses[0].specification;
      bandwidths.push({
        ...bandwidths[0],
        levelDb: -9,
        minHz: 0,
        maxHz: toHz - fromHz,
        centreHz: null,
        centreToleranceHz: null,
      });
    });
    expect(said).toMatch(
      /specification\/points\/0: found a line that every curve meets: .*455 kHz, wanted a line that can fail/,
    );
    expect(said).toMatch(/specification\/bandwidths\/\d: found a line that every curve meets/);
  });

  it('are refused with a sheet that the design misses, by the line of the sheet', () => {
    const said = told('am-455k', (r) =>
      Object.assign(r.responses[0].specification.points[0], { target: 0.5, low: 0.45, high: 0.55 }),
    );
    expect(said).toMatch(
      /own\.json, line \d+, column \d+, \/responses\/0\/specification: found a design whose point at 455 kHz is .*, wanted a design that meets its own sheet: 0\.45 to 0\.55/,
    );
  });

  it('are refused with cores, cans or points drawn over one another', () => {
    const cans = told('am-455k', (r) => {
      for (const i of [2, 3]) Object.assign(r.adjusters[i].plan, { x: 130, y: r.adjusters[i - 2].plan.y });
    });
    expect(cans).toMatch(/\/adjusters\/2\/plan: found the can T2 drawn over the can T1, wanted a place/);
    const cores = told('am-455k', (r) =>
      Object.assign(r.adjusters[1].plan, { x: r.adjusters[0].plan.x, y: r.adjusters[0].plan.y }),
    );
    expect(cores).toMatch(/\/adjusters\/1\/plan: found holes 0 apart, wanted .*40/);
  });

  it('are refused with a gain line that cannot fail', () => {
    const said = told('am-455k', (r) => {
      r.responses[0].specification.gain.minDb = -40;
    });
    expect(said).toMatch(
      /\/responses\/0\/specification\/gain: found .* dB above its limit, wanted a line that can fail/,
    );
  });

  it('are refused while they are made, not once they are kept, with a sweep that goes too fast for the curve', () => {
    const fast: Change = (receiver) => delete receiver.responses[0].setUp.slowSweep;
    const made = read('am-455k', fast, undefined, readNewReceiver);
    expect(made.ok ? [] : made.problems.map(({ place }) => place)).toEqual(['/responses/0/setUp/spanHz']);
    expect(told('am-455k', fast)).toBe('');
    expect(read('am-455k', undefined, undefined, readNewReceiver).ok).toBe(true);
  });

  it('are told of together, whatever is wrong with both', () => {
    const said = told(
      'am-455k',
      (r) => (r.setName = ''),
      (deck) => deck.replace('.end', 'Q1 a b c'),
    );
    expect(said).toMatch(/own\.cir, line \d+, column 1: found `Q1`/);
    expect(said).toMatch(/own\.json, line \d+, column \d+, \/setName: found ""/);
  });

  it('are refused at once where a text is no file of ours', () => {
    const { receiver, deck } = texts('am-455k');
    const of = (one: string, other: string) =>
      readReceiverPair({ receiver: { file: 'own.json', text: one }, deck: { file: 'own.cir', text: other } });
    const long = of(receiver, `${deck}${'* and on\n'.repeat(1_200_000)}`);
    expect(long.ok).toBe(false);
    expect(!long.ok && long.problems.map((p) => problemSentence(en, p))).toEqual([
      expect.stringMatching(/^own\.cir: found \d+ characters, wanted at most 65536 characters$/),
    ]);
    const deep = of('['.repeat(5_000_000), deck);
    expect(!deep.ok && deep.problems.length).toBe(1);
  });
});
