/** `check` on receivers that cannot be: each wrong file is a shipped receiver with one thing changed, and each is told by file, place, what was found and what was wanted. */
import { mkdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { format } from '../../src/words/en/numbers.ts';
import { insideByKey as inside, scratch } from './commandLine.ts';

const files = scratch();
afterAll(files.remove);

// biome-ignore lint/suspicious/noExplicitAny: tests break files on purpose, anywhere
type Break = (receiver: any) => void;

let count = 0;
function checked(id: string, change: Break, deck: (text: string) => string = (text) => text) {
  const folder = `set${count++}`;
  mkdirSync(files.place(folder));
  const from = `scenarios/receivers/${id}`;
  const receiver = JSON.parse(readFileSync(`${from}/receiver.json`, 'utf8'));
  change(receiver);
  const file = files.file(`${folder}/receiver.json`, JSON.stringify(receiver));
  files.file(`${folder}/network.cir`, deck(readFileSync(`${from}/network.cir`, 'utf8')));
  return { file, ...inside('check', file) };
}

const NOTHING: Break = () => {};

describe('a receiver that cannot be', () => {
  it('is refused none of all where it is as shipped', () => {
    const { err, code } = checked('am-455k', NOTHING);
    expect([err, code]).toEqual(['', 0]);
  });

  it('has a capacitor a thousand million times out', () => {
    const { file, err, code } = checked('am-455k', NOTHING, (deck) => deck.replace('C1p mix 0 110p', 'C1p mix 0 110m'));
    expect(code).toBe(1);
    // 1 / (2 pi sqrt(1.122 mH x 110 mF)) = 14.3 Hz, by Thomson's formula.
    expect(err).toContain(
      `${file}, /adjusters/0/element: found L1p (1.122 mH) with C1p (110 mF), tuned to 14.3 Hz, wanted`,
    );
  });

  it('has one a thousand times out, too large or too small', () => {
    const large = checked('am-455k', NOTHING, (deck) => deck.replace('C1p mix 0 110p', 'C1p mix 0 110n'));
    const small = checked('am-455k', NOTHING, (deck) => deck.replace('C1p mix 0 110p', 'C1p mix 0 0.11p'));
    // Thomson's formula again: 14.33 kHz and 14.33 MHz.
    expect(large.err).toContain('tuned to 14.3 kHz, wanted a tuned circuit from 27.2 kHz to 7.6 MHz');
    expect(small.err).toContain('tuned to 14.3 MHz, wanted a tuned circuit from 27.2 kHz to 7.6 MHz');
  });

  it('has a sheet that its own design misses', () => {
    const { file, err, code } = checked('am-455k', (r) => {
      Object.assign(r.responses[0].specification.points[0], { target: 0.5, low: 0.45, high: 0.55 });
    });
    expect(code).toBe(1);
    expect(err).toContain(`${file}, /responses/0/specification: found a design whose point at 455 kHz is `);
    expect(err).toContain('wanted a design that meets its own sheet: 0.45 to 0.55');
  });

  it('has a gain line that cannot fail, by its limit or by its nominal', () => {
    const low = checked('am-455k', (r) => (r.responses[0].specification.gain.minDb = -40));
    const nominal = checked('am-455k', (r) => (r.responses[0].specification.gain.nominal /= 100));
    for (const { err, code } of [low, nominal]) {
      expect(code).toBe(1);
      expect(err).toMatch(
        /\/responses\/0\/specification\/gain: found .* dB above its limit, wanted a line that can fail/,
      );
    }
  });

  it('has a trap that is not there, or that the sheet does not show', () => {
    const absent = checked('video-valve-45m', (r) => (r.adjusters[2].trapHz = 44e6));
    const unseen = checked('video-valve-45m', (r) => (r.adjusters[2].trapHz = 90e6));
    expect(absent.err).toMatch(
      /\/adjusters\/2\/trapHz: found 44 MHz, where \w+ takes nothing out, wanted the frequency of a notch/,
    );
    expect(unseen.err).toMatch(/\/adjusters\/2\/trapHz: found 90 MHz, which no response of the sheet shows/);
    expect([absent.code, unseen.code]).toEqual([1, 1]);
  });

  it('has cans, letters or points drawn over one another', () => {
    const cans = checked('am-455k', (r) => {
      for (const i of [2, 3]) Object.assign(r.adjusters[i].plan, { x: 130, y: r.adjusters[i - 2].plan.y });
    });
    const point = checked('am-455k', (r) => Object.assign(r.testPoints[0].plan, { x: 125, y: 290 }));
    expect(cans.err).toMatch(/\/adjusters\/2\/plan: found the can T2 drawn over the can T1, wanted a place/);
    expect(point.err).toMatch(/\/testPoints\/0\/plan: found the test point TP2 drawn over the can T1/);
    expect([cans.code, point.code]).toEqual([1, 1]);
  });

  it('calls two things by one name', () => {
    const label = checked('am-455k', (r) => (r.adjusters[1].label = r.adjusters[0].label));
    const capitals = checked('am-455k', (r) => (r.testPoints[4].id = 'tp2'));
    expect(label.err).toMatch(/\/adjusters\/1\/label: found "T1 bottom, mixer plate" a second time, wanted each once/);
    expect(capitals.err).toMatch(/\/testPoints\/4\/id: found "tp2" beside "TP2", wanted names that differ in more/);
    expect([label.code, capitals.code]).toEqual([1, 1]);
  });

  it('has a sheet whose sweep goes too fast for its curve, and is told how far it may go', () => {
    // One circuit at 200 kHz, 5 k and 10 nF: B = 1 / (2 pi R C) = 3.18 kHz. At 6.25 Hz the sweep goes at R = pi x 6.25 Hz x span, and the curve is late by 2 R / (pi B^2) of its width
    // (Carson and Fry, BSTJ 1937, from memory): 0.0741 at 60 kHz, and 0.05 at 40.5 kHz, which the diode, whose load widens the curve by 2 %, makes 42.
    const circuit = (kHz: number): string =>
      `* One circuit\nIsig 0 in AC 1u\nC1 in 0 10n\nL1 in 0 63.3257u\nR1 in 0 5k\n.ac lin 281 ${200 - kHz / 2}k ${200 + kHz / 2}k\n.print ac vdb(in)\n.end\n`;
    const wide = inside('sheet', files.file('wide.cir', circuit(60)));
    expect(wide.code).toBe(1);
    expect(wide.err).toMatch(
      /\/responses\/0\/setUp\/spanHz: found 60 kHz, over which the sweep .* late by 7% of its width, wanted at most 4[12] kHz\n$/,
    );
    expect(inside('sheet', files.file('calm.cir', circuit(40)))).toMatchObject({ code: 0, err: '' });
    const fast = checked('am-455k', (r) => delete r.responses[0].setUp.slowSweep);
    expect(fast.code).toBe(1);
    expect(fast.err).toMatch(/late by 29% of its width, wanted at most 6.9 kHz, or the slow sweep\n$/);
  });
});

it('writes figures as people do', () => {
  const { quantity } = format;
  expect([quantity(45.75e6, 'Hz'), quantity(110e-12, 'F'), quantity(0.11, 'F'), quantity(1.122e-3, 'H')]).toEqual([
    '45.75 MHz',
    '110 pF',
    '110 mF',
    '1.122 mH',
  ]);
  expect([quantity(453, 'Hz'), quantity(1e6, '\u03a9'), quantity(-2e3, 'Hz'), quantity(0, 'Hz')]).toEqual([
    '453 Hz',
    '1 M\u03a9',
    '\u22122 kHz',
    '0 Hz',
  ]);
});
