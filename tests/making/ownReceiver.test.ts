/** A receiver made from a deck alone: what is guessed of it, its response and its sheet, and that what is saved is what the command line's check accepts. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { problemSentence } from '../../src/describe/problem.ts';
import { readReceiverPair } from '../../src/files/readReceiverPair.ts';
import { beginWithBoth, beginWithDeck, idOf, withDeckText } from '../../src/making/begin.ts';
import { readDeckFile, repairsOf } from '../../src/making/deckFile.ts';
import { hindranceOf, keyOf, thingsOf } from '../../src/making/moving.ts';
import { type Making, problemsLeft, savedFiles, standingOf } from '../../src/making/standing.ts';
import type { Json } from '../../src/making/wholeReceiver.ts';
import { en } from '../../src/words/en/index.ts';

const SHELF = 'scenarios/receivers';
const deckOf = (id: string): string => readFileSync(`${SHELF}/${id}/network.cir`, 'utf8');
const begun = (id: string): Making => beginWithDeck({ file: `My ${id}.CIR`, text: deckOf(id) }, en.maker);
const left = (making: Making): string[] =>
  problemsLeft(making, standingOf(making, en.maker), en.maker).map((problem) => problemSentence(en, problem));

describe('a deck alone', () => {
  it('with a suffix slipped is refused by the lines of those parts, not by what comes of them', () => {
    // 110 m for 110 p, in one place and in all: no receiver comes of it, and nothing is measured on it.
    for (const slipped of [/^C2s det 0 110p/m, / 110p/g]) {
      const text = deckOf('am-455k').replace(slipped, (found) => found.replace('110p', '110m'));
      const said = left(beginWithDeck({ file: 'mine.cir', text }, en.maker));
      expect(said).toHaveLength(text.split(' 110m').length - 1);
      for (const one of said)
        expect(one).toMatch(/^mine\.cir, line \d+, column \d+: found C\S+ of 110 mF, wanted a cap/);
    }
  });

  it('says which coils are turned, two to a can, where one may touch and how the bench stands', () => {
    const { draft } = begun('am-455k');
    expect(draft.adjusters.map((a) => [a.id, a.element, (a.plan as Json).can])).toEqual([
      ['T1B', 'L1p', 'T1'],
      ['T1T', 'L1s', 'T1'],
      ['T2B', 'L2p', 'T2'],
      ['T2T', 'L2s', 'T2'],
    ]);
    expect(draft.testPoints.map((p) => [p.id, p.node ?? null])).toEqual([
      ['TP2', 'mix'],
      ['TP1', 'det'],
      ['TP3', 'g1'],
      ['TP4', 'pl'],
      ['Earth', null],
    ]);
    expect(draft.responses[0]!.setUp).toMatchObject({
      centreHz: 455e3,
      spanHz: 40e3,
      injectAt: 'TP2',
      observeAt: 'TP1',
    });
    expect(draft.id).toBe('my-am-455k');
    expect(draft.setName).toBe('am-455k');
  });

  it.each(['am-455k', 'loose-can-10m7', 'video-valve-45m', 'video-b-38m9', 'sound-4m5'])(
    '%s is whole at once: a response, a sheet that it meets, a plan with nothing over anything else, and nothing left to do',
    (id) => {
      const making = begun(id);
      const { drawn, made } = standingOf(making, en.maker);
      expect(left(making)).toEqual([]);
      expect(drawn!.items.length).toBeGreaterThan(4);
      expect(made?.ok && made.value.receiver.procedure.flatMap((step) => step.slugs).length).toBeGreaterThan(0);
    },
  );

  it.each(readdirSync(SHELF))('%s is set out with everything inside the edge of its plan', (id) => {
    const { draft } = begun(id);
    const things = thingsOf(draft);
    expect(things.length).toBeGreaterThan(3);
    expect(things.filter((one) => hindranceOf(draft, keyOf(one))?.kind === 'edge').map(({ name }) => name)).toEqual([]);
  });

  it('gives its detector about half a volt at the level of the sheet', () => {
    for (const id of ['am-455k', 'loose-can-10m7']) {
      const { made, drawn } = standingOf(begun(id), en.maker);
      if (made === null || !made.ok || drawn === null) throw new Error('not made');
      const { receiver } = made.value;
      const { setUp } = receiver.responses[0]!;
      const inject = receiver.testPoints.find((p) => p.id === setUp.injectAt)!.inject!;
      const siemens = inject.kind === 'deckSource' ? inject.siemens : 0;
      // 0 dB is 2 V peak, open circuit.
      const volts = drawn.top * siemens * 2 * 10 ** (setUp.levelDb / 20);
      expect(volts).toBeGreaterThan(0.4);
      expect(volts).toBeLessThan(0.6);
    }
  });

  it('makes two files that are read again as they were, and stay so', () => {
    const making = begun('am-455k');
    const { made } = standingOf(making, en.maker);
    if (made === null || !made.ok) throw new Error('not made');
    const files = savedFiles(making, made.value);
    expect(readReceiverPair(files).ok).toBe(true);
    const again = beginWithBoth(files.deck, files.receiver);
    if (!again.ok) throw new Error(JSON.stringify(again.problems));
    const { made: second } = standingOf(again.value, en.maker);
    expect(second!.ok && savedFiles(again.value, second!.value)).toEqual(files);
    expect(left(again.value)).toEqual([]);
  });
});

describe('a deck with a wrong line', () => {
  const wrong = deckOf('am-455k').replace('K2 L2p L2s 0.0167', 'K2 L2p L2x 0.0167');
  const making = beginWithDeck({ file: 'pilot.cir', text: wrong }, en.maker);

  it('is told by line and place, with what is likely meant', () => {
    const { deck } = standingOf(making, en.maker);
    if (deck.ok) throw new Error('read');
    expect(deck.problems.map((problem) => problemSentence(en, problem))).toEqual([
      expect.stringMatching(/^pilot\.cir, line 22, column 8: found "?.*L2x/),
    ]);
    const [put, out] = repairsOf(deck.problems[0]!, wrong);
    expect(put).toMatchObject({ kind: 'put', name: 'L2s' });
    expect(put!.deckText).toBe(deckOf('am-455k'));
    expect(out).toMatchObject({ kind: 'leaveOut', name: 'K2' });
    expect(readDeckFile(out!.deckText, 'pilot.cir').ok).toBe(true);
  });

  it('becomes a whole receiver once it is mended', () => {
    const mended = withDeckText(making, deckOf('am-455k'), en.maker);
    expect(mended.draft.adjusters.length).toBe(4);
    expect(mended.draft.id).toBe('pilot');
    expect(left(mended)).toEqual([]);
  });

  it('or without an end is refused, and given one', () => {
    const text = deckOf('am-455k').replace(/\.end\s*$/, '');
    const read = readDeckFile(text, 'pilot.cir');
    if (read.ok) throw new Error('read');
    expect(problemSentence(en, read.problems[0]!)).toBe(
      'pilot.cir: found a deck that does not say where it ends, and may have been cut off, wanted a last line `.end`',
    );
    expect(readDeckFile(repairsOf(read.problems[0]!, text)[0]!.deckText, 'pilot.cir').ok).toBe(true);
  });
});

it('what is saved by others is opened only where its shape is right, and its deck may be mended', () => {
  const receiver = readFileSync(`${SHELF}/am-455k/receiver.json`, 'utf8');
  const broken = beginWithBoth(
    { file: 'a.cir', text: deckOf('am-455k') },
    { file: 'a.json', text: receiver.replace('"setName"', '"setname"') },
  );
  expect(broken.ok ? [] : broken.problems.map((p) => problemSentence(en, p))).toEqual([
    'a.json, line 1, column 1, /setName: found nothing, wanted a value for "setName"',
    'a.json, line 5, column 3, /setname: found the key "setname", wanted only keys that the format has',
  ]);
  const mendable = beginWithBoth({ file: 'a.cir', text: 'title\nL1 a 0 oops' }, { file: 'a.json', text: receiver });
  expect(mendable.ok && left(mendable.value).length).toBe(2);
});

it('every shipped receiver is opened for editing with nothing left to do', () => {
  for (const id of readdirSync(SHELF)) {
    const receiver = readFileSync(`${SHELF}/${id}/receiver.json`, 'utf8');
    const both = beginWithBoth({ file: 'network.cir', text: deckOf(id) }, { file: 'receiver.json', text: receiver });
    expect([id, both.ok ? left(both.value) : both.problems]).toEqual([id, []]);
  }
});

it.each([
  ['Pilot Steps (2).cir', 'pilot-steps-2'],
  ['C:\\decks\\IF.CIR', 'if'],
  ['\u00e9\u00e9.cir', 'own-set'],
  [`${'long-name-'.repeat(6)}.cir`, 'long-name-long-name-long-name'],
])('%s is called %s', (file, id) => {
  expect(idOf(file)).toBe(id);
});
