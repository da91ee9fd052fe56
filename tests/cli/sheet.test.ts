/** `sheet`: a receiver file from a deck and a few lines; the worked example of the document is followed to the letter, and its figures held against the handbook formula of a single tuned circuit. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { terminal } from '../../src/words/en/terminal.ts';
import { pseudoWords } from '../../src/words/pseudo.ts';
import type { TerminalWords } from '../../src/words/words.ts';
import { LOCK_STRIP } from '../making/lockStrip.ts';
import { outsideBrackets } from '../words/strange.ts';
import { insideByKey as inside, insideSaying, scratch } from './commandLine.ts';

const files = scratch();
afterAll(files.remove);

const document = readFileSync('docs/scenario-format.md', 'utf8')
  .split('### A sheet from a deck')[1]!
  .split('\n## ')[0]!;
const block = (language: string): string => new RegExp(`\`\`\`${language}\n([\\s\\S]*?)\`\`\``).exec(document)![1]!;
const DECK = block('spice');
const DRAFT = block('json');

// biome-ignore lint/suspicious/noExplicitAny: files are looked into and broken anywhere
type Json = any;

let count = 0;
/** A receiver's folder with a deck and a file, or without. */
function folder(deck: string, draft: string | null, name = `set-${++count}`): string {
  const home = files.place(name);
  mkdirSync(home, { recursive: true });
  writeFileSync(path.join(home, 'network.cir'), deck);
  if (draft !== null) writeFileSync(path.join(home, 'receiver.json'), draft);
  return path.join(home, 'network.cir');
}

function made(deck: string, draft: string): { readonly whole: Json; readonly deckName: string } {
  const deckName = folder(deck, draft);
  const { out, err, code } = inside('sheet', deckName);
  expect([err, code]).toEqual(['', 0]);
  return { whole: JSON.parse(out), deckName };
}

describe('the example of the document', () => {
  const deckName = folder(DECK, DRAFT, 'harbour-can');
  const { out, err, code } = inside('sheet', deckName);
  const whole = JSON.parse(out) as Json;

  it('gives a file that check accepts in the place of the short one', () => {
    expect([err, code]).toEqual(['', 0]);
    const kept = folder(DECK, out, 'kept/harbour-can').replace('network.cir', 'receiver.json');
    expect(inside('check', kept)).toMatchObject({
      err: '',
      code: 0,
      out: expect.stringContaining('(receiver, 1 slug)'),
    });
    expect(inside('check', files.place('kept'))).toMatchObject({ err: '', code: 0 });
  });

  it('asks for its level as detected volts, not as a setting of the source', () => {
    const texts = whole.procedure.map((one: Json) => one.text).join(' ');
    // -20 dB of 2 V peak through 75 ohm and 22 k into 220 k: 0.1818 V, of which the probe's diode (5 uA, 27 mV, 300 k) makes 0.1295 V by the law of mean currents (Knight, Diode detectors for RF
    // measurement; solved by halving, apart from this project).
    expect(texts).toContain('Level for 130 mV at the top.');
    expect(texts).not.toMatch(/[0-9] dB/);
  });

  it('has the levels and the width of a single tuned circuit', () => {
    // Universal resonance curve: 1 / sqrt(1 + Q^2 (f/f0 - f0/f)^2), width at 3 dB f0 / Q (any handbook of radio, from memory).
    const ohms = 1 / (1 / 220e3 + 1 / 22_075);
    const f0 = 1 / (2 * Math.PI * Math.sqrt(2.2125e-6 * 100e-12));
    const q = ohms / (2 * Math.PI * f0 * 2.2125e-6);
    const { points, bandwidths, gain } = whole.responses[0].specification;
    expect(points.map((p: Json) => p.hz)).toEqual(expect.arrayContaining([10.6e6, 10.7e6, 10.8e6]));
    for (const { hz, target, low, high } of points) {
      expect(Math.abs(target - 1 / Math.hypot(1, q * (hz / f0 - f0 / hz)))).toBeLessThan(0.003);
      expect(low).toBeLessThan(target);
      expect(high).toBeGreaterThan(target);
    }
    const [three] = bandwidths;
    expect(three.levelDb).toBe(-3);
    expect((three.minHz + three.maxHz) / 2 / (f0 / q)).toBeCloseTo(1, 2);
    // 1 A into 75 ohm in parallel with the rest, divided by feed and tank.
    expect(gain.nominal / ((75 * 220e3) / (75 + 22e3 + 220e3))).toBeCloseTo(1, 3);
  });

  it('has steps that set up what the file says and turn every slug', () => {
    const said = whole.procedure.map((step: Json) => step.text).join(' ');
    for (const word of ['TP0', 'TP1', '10.70 MHz', '1.5 MHz']) expect(said).toContain(word);
    expect(whole.procedure.flatMap((step: Json) => step.slugs)).toEqual(['T1']);
    expect(whole.procedure.map((step: Json) => step.phase)).toEqual(
      expect.arrayContaining(['safe', 'connect', 'setUp', 'align', 'prove']),
    );
  });

  it('stays as it is where it is made whole again', () => {
    const again = made(DECK, out).whole;
    expect(again).toEqual(whole);
  });
});

describe('shipped sets whose sheet is taken away', () => {
  it.each(['loose-can-10m7', 'video-valve-45m'])('%s gets one again, near its own', (id) => {
    const from = `scenarios/receivers/${id}`;
    const own = JSON.parse(readFileSync(`${from}/receiver.json`, 'utf8')) as Json;
    const { procedure: _, ...draft } = structuredClone(own);
    for (const response of draft.responses) delete response.specification;
    const { whole, deckName } = made(readFileSync(`${from}/network.cir`, 'utf8'), JSON.stringify(draft));
    writeFileSync(deckName.replace('network.cir', 'receiver.json'), JSON.stringify(whole));
    expect(inside('check', deckName.replace('network.cir', 'receiver.json'))).toMatchObject({ err: '', code: 0 });
    const targets = new Map<number, number>(own.responses[0].specification.points.map((p: Json) => [p.hz, p.target]));
    const shared = whole.responses[0].specification.points.filter((p: Json) => targets.has(p.hz));
    expect(shared.length).toBeGreaterThanOrEqual(3);
    for (const { hz, target } of shared) expect(Math.abs(target - targets.get(hz)!)).toBeLessThan(0.02);
    const traps = (from: Json): number[] => from.responses[0].specification.traps.map((t: Json) => t.hz).sort();
    expect(traps(whole)).toEqual(expect.arrayContaining(traps(own)));
  });
});

describe('what lacks', () => {
  const told = (change: (draft: Json) => void, deck = DECK): string => {
    const draft = JSON.parse(DRAFT) as Json;
    change(draft);
    const { out, err, code } = inside('sheet', folder(deck, JSON.stringify(draft)));
    expect([out, code]).toEqual(['', 1]);
    return err;
  };

  it.each<[string, (draft: Json) => void, string]>([
    ['slugs', (d) => delete d.adjusters, '/adjusters: found nothing, wanted a value for "adjusters"'],
    ['a set-up', (d) => delete d.responses[0].setUp, '/responses/0/setUp: found nothing, wanted a value for "setUp"'],
    [
      'the coil',
      (d) => (d.adjusters[0].element = 'L9'),
      '/adjusters/0/element: found "L9", wanted an inductor of the deck',
    ],
    [
      'the node',
      (d) => (d.testPoints[1].node = 'plate'),
      '/testPoints/1/node: found "plate", wanted a node of the deck network.cir',
    ],
    ['a way in', (d) => delete d.testPoints[0].inject, '/responses/0/setUp/injectAt: found "TP0", wanted nothing here'],
    ['a centre', (d) => delete d.responses[0].setUp.centreHz, '/responses/0/setUp/centreHz: found 0 Hz, wanted'],
    [
      'a top',
      (d) => Object.assign(d.responses[0].setUp, { spanHz: 2000, markersHz: [10.7e6] }),
      '/responses/0: found a curve without a top',
    ],
  ])('%s is told with its place', (_, change, expected) => {
    expect(told(change)).toContain(expected);
  });

  it('a deck that is none, or whose file is nowhere, is told as everywhere', () => {
    expect(told(() => {}, 'title\nL1 tank 0 oops')).toContain('network.cir, line 2, column 11: found `oops`');
    expect(inside('sheet', folder(DECK, null), '--receiver', 'nowhere.json').err).toContain(
      'nowhere.json: found no such file',
    );
  });

  it('is told in any language', () => {
    const strange = pseudoWords<TerminalWords>(terminal);
    const deckName = folder(DECK.replace(/^L/gm, 'Q'), null);
    const { err } = insideSaying(strange, 'sheet', deckName);
    expect(err).toContain('\u27e6');
    expect(outsideBrackets(err, [deckName])).toBe('');
  });
});

describe('a deck alone', () => {
  const alone = (deck: string) => inside('sheet', folder(deck, null));

  it('gives a whole receiver that check accepts, the levels those of its tanks', () => {
    const deckName = folder(LOCK_STRIP, null, 'lock-strip');
    const { out, err, code } = inside('sheet', deckName);
    expect([err, code]).toEqual(['', 0]);
    const kept = deckName.replace('network.cir', 'receiver.json');
    writeFileSync(kept, out.replace('"id": "network"', '"id": "lock-strip"'));
    expect(inside('check', kept)).toMatchObject({
      err: '',
      code: 0,
      out: expect.stringContaining('(receiver, 3 slugs)'),
    });
    const { adjusters, responses } = JSON.parse(out) as Json;
    expect(adjusters.map(({ element }: Json) => element)).toEqual(['L1', 'L2', 'L3']);
    // Each tank by itself, |Z| = R / sqrt(1 + Q^2 (f/f0 - f0/f)^2) (any handbook of radio, from memory); the diode loads the last a little more than the deck says.
    const level = (hz: number): number =>
      [
        [2.65e-6, 6.8e3],
        [2.05e-6, 6.8e3],
        [2.35e-6, 3.3e3],
      ].reduce((product, [henries, ohms]) => {
        const f0 = 1 / (2 * Math.PI * Math.sqrt(henries! * 12e-12));
        const q = ohms! / (2 * Math.PI * f0 * henries!);
        return product / Math.hypot(1, q * (hz / f0 - f0 / hz));
      }, 1);
    const { points, fromHz, toHz } = responses[0].specification;
    const steps = Array.from({ length: 1000 }, (_, i) => level(fromHz + ((toHz - fromHz) * i) / 999));
    const top = Math.max(...steps);
    expect(points.length).toBeGreaterThan(5);
    for (const { hz, target } of points) expect(Math.abs(target - level(hz) / top)).toBeLessThan(0.03);
  });

  it.each<[string, (deck: string) => string, string]>([
    ['a way in', (deck) => deck.replace(/^Isig.*\n/m, ''), 'network.cir: found no current source, wanted'],
    [
      'a coil',
      (deck) => deck.replace(/^L(\d \S+ 0) \S+/gm, 'R9$1 1k'),
      'network.cir: found no coil with a capacitor across it',
    ],
    ['its end', (deck) => deck.replace('.end\n', ''), 'wanted a last line `.end`'],
    [
      'its tuning',
      (deck) => deck.replace('24meg 36meg', '60meg 70meg'),
      'found a curve that is highest at an end of the span',
    ],
    ['the other end of a part', (deck) => deck.replace('C3 n3', 'C3 m3'), 'line 11, column 4: found node `m3`'],
  ])('is told what it lacks: %s', (_, change, expected) => {
    const { out, err, code } = alone(change(LOCK_STRIP));
    expect([out, code]).toEqual(['', 1]);
    expect(err).toContain(expected);
  });
});
