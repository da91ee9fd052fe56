/** Changes to a receiver in the making: names that follow, lines of the sheet, things moved on the plan. Whatever is changed, what is saved stays what the checks accept, or the change says why not. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { problemSentence } from '../../src/describe/problem.ts';
import { beginWithBoth, beginWithDeck } from '../../src/making/begin.ts';
import {
  followDeck,
  moveDetector,
  put,
  putSetUp,
  removePoint,
  removeSlug,
  renamePoint,
  renameSlug,
} from '../../src/making/edits.ts';
import { EXAMPLE_DECK, EXAMPLE_NAME } from '../../src/making/exampleDeck.ts';
import { addPoint, addSlug } from '../../src/making/more.ts';
import { hindranceOf, keyOf, moved, thingsOf } from '../../src/making/moving.ts';
import { limitOf, withLimit, withoutLine } from '../../src/making/sheetLimits.ts';
import { addLine, LINE_KINDS } from '../../src/making/sheetLines.ts';
import { slackOf } from '../../src/making/slack.ts';
import { type Making, problemsLeft, standingOf } from '../../src/making/standing.ts';
import type { Draft, Json } from '../../src/making/wholeReceiver.ts';
import type { Deck } from '../../src/physics/deck.ts';
import type { Specification } from '../../src/receiver/receiver.ts';
import { en } from '../../src/words/en/index.ts';

const EXAMPLE = beginWithDeck({ file: EXAMPLE_NAME, text: EXAMPLE_DECK }, en.maker);
const AM = (() => {
  const from = 'scenarios/receivers/am-455k';
  const read = (name: string) => ({ file: name, text: readFileSync(`${from}/${name}`, 'utf8') });
  const both = beginWithBoth(read('network.cir'), read('receiver.json'));
  if (!both.ok) throw new Error('am-455k');
  return both.value;
})();

const left = (making: Making): string[] =>
  problemsLeft(making, standingOf(making, en.maker), en.maker).map((problem) => problemSentence(en, problem));
const leftOf = (draft: Draft, making: Making = EXAMPLE): string[] => left({ ...making, draft });
function deckOf(making: Making): Deck {
  const { deck } = standingOf(making, en.maker);
  if (!deck.ok) throw new Error('deck');
  return deck.value;
}
function madeOf(making: Making) {
  const { made, drawn } = standingOf(making, en.maker);
  if (made === null || !made.ok || drawn === null) throw new Error('not made');
  const [response] = made.value.receiver.responses;
  return { receiver: made.value.receiver, response: response!, items: drawn.items };
}

it('the example is whole from the start', () => {
  expect(left(EXAMPLE)).toEqual([]);
});

describe('names', () => {
  it('follow wherever a slug or a point is spoken of', () => {
    const slug = renameSlug(AM.draft, 0, 'PRI');
    expect(leftOf(slug, AM)).toEqual([]);
    expect((slug.procedure as readonly Json[]).flatMap((s) => s.slugs)).toContain('PRI');
    const points = AM.draft.testPoints.map((_, i) => i);
    for (const i of points) expect([i, leftOf(renamePoint(AM.draft, i, `P${i}`), AM)]).toEqual([i, []]);
  });

  it('that are no names, or two of one, are told', () => {
    expect(leftOf(renameSlug(EXAMPLE.draft, 0, 'two words')).join()).toContain('/adjusters/0/id: found "two words"');
    expect(leftOf(renameSlug(EXAMPLE.draft, 0, 'T2B')).join()).toContain('a second time');
  });
});

describe('slugs and points', () => {
  it('are taken away and put back, each time with a sheet that speaks of what is there', () => {
    const fewer = removeSlug(EXAMPLE.draft, 0);
    expect(leftOf(fewer)).toEqual([]);
    const again = addSlug(fewer, deckOf(EXAMPLE), 'L1');
    expect(leftOf(again)).toEqual([]);
    expect(madeOf({ ...EXAMPLE, draft: again }).receiver.procedure.flatMap((s) => s.slugs)).toContain(
      again.adjusters.at(-1)!.id,
    );
    const more = addPoint(again, deckOf(EXAMPLE), 'pl');
    expect(leftOf(more)).toEqual([]);
    expect(leftOf(removePoint(more, more.testPoints.length - 1))).toEqual([]);
  });

  it('may have another travel; the detector another node; the bench another place', () => {
    const travel = put(EXAMPLE.draft, ['adjusters', 0, 'travelTurns'], 12);
    expect(madeOf({ ...EXAMPLE, draft: travel }).receiver.adjusters[0]!.travelTurns).toBe(12);
    expect(leftOf(travel)).toEqual([]);
    expect(leftOf(put(EXAMPLE.draft, ['adjusters', 0, 'travelTurns'], 1)).join()).toContain(
      '/adjusters/0/travelTurns: found 1 turn',
    );
    const moved = moveDetector(EXAMPLE.draft, 'pl');
    expect(madeOf({ ...EXAMPLE, draft: moved }).response.quantity).toEqual({ kind: 'carrier', node: 'pl' });
    expect(leftOf(moved)).toEqual([]);
    const narrow = putSetUp(EXAMPLE.draft, 'spanHz', 15e3);
    expect(leftOf(narrow)).toEqual([]);
    expect(
      madeOf({ ...EXAMPLE, draft: narrow }).response.setUp.markersHz.every((hz) => Math.abs(hz - 460e3) < 7.5e3),
    ).toBe(true);
    expect(leftOf(putSetUp(EXAMPLE.draft, 'markersHz', [455e3, 460e3]))).toEqual([]);
  });
});

it('a coil that has changed in the deck is followed by its slug, a stage by its gm', () => {
  const text = AM.deckText
    .replace('L1p mix 0 1.122m', 'L1p mix 0 1.121m')
    .replace('G1 pl 0 g1 0 2m', 'G1 pl 0 g1 0 2.02m');
  const after = deckOf({ ...AM, deckText: text });
  const draft = followDeck(AM.draft, deckOf(AM), after);
  const { receiver } = madeOf({ deckText: text, draft });
  expect(receiver.adjusters[0]!.nominalHenries).toBe(1.121e-3);
  expect(receiver.adjusters[1]!.nominalHenries).toBe(1.106e-3);
  expect(receiver.stages[0]!.gmSiemens).toBe(2.02e-3);
  expect(receiver.stages[0]!.agc).toBe('AGC');
});

describe('lines of the sheet', () => {
  const { receiver, response, items } = madeOf(EXAMPLE);
  const deck = deckOf(EXAMPLE);
  const withSheet = (spec: Specification): string[] =>
    leftOf(put(EXAMPLE.draft, ['responses', 0, 'specification'], spec));
  const LINES = {
    point: [457e3, 0],
    window: [459e3, 461e3],
    trap: [444e3, 0],
    bandwidth: [-20, 0],
    tilt: [456e3, 464e3],
    skirt: [443e3, 446e3],
    peak: [0, 0],
  } as const;

  it.each(LINE_KINDS)('%s is put on, met by the design, and fails where the limit is made impossible', (kind) => {
    const [at, to] = LINES[kind];
    const spec = addLine(receiver, deck, response, { kind, at, to });
    if (typeof spec === 'string') throw new Error(spec);
    expect(withSheet(spec)).toEqual([]);
    const { items: more } = madeOf({ ...EXAMPLE, draft: put(EXAMPLE.draft, ['responses', 0, 'specification'], spec) });
    const added = more.filter(({ id }) => !items.some((one) => one.id === id));
    expect(added.map((item) => item.kind)).toEqual([kind]);
    expect(withoutLine(spec, added[0]!.id)).toEqual(response.specification);
    expect(addLine(receiver, deck, { ...response, specification: spec }, { kind, at, to })).toBe('twice');
    const limit = limitOf(added[0]!)!;
    const wider = withLimit(spec, added[0]!, limit.value);
    expect(withSheet(wider)).toEqual([]);
    // A bound on one side is set where the design cannot be; a pair about the design cannot be missed by it.
    if (limit.sign === 'most')
      expect(withSheet(withLimit(spec, added[0]!, kind === 'trap' ? -80 : 0.01)).join()).toContain(
        'wanted a design that meets its own sheet',
      );
  });

  it('are refused where they ask for nothing that is there', () => {
    const add = (line: Parameters<typeof addLine>[3]) => addLine(receiver, deck, response, line);
    expect(add({ kind: 'point', at: 1e6, to: 0 })).toBe('outside');
    expect(add({ kind: 'window', at: 461e3, to: 459e3 })).toBe('backwards');
    expect(add({ kind: 'bandwidth', at: -58, to: 0 })).toBe('noWidth');
    expect(add({ kind: 'trap', at: 460e3, to: 0 })).toBe('noTrap');
  });

  it('leave room for slugs that are 1/32 turn out, as the maker says of its own sheet; narrow ones do not', () => {
    expect(slackOf(receiver, deck, response)!.share).toBeLessThan(0.7);
    const point = items.find((item) => item.kind === 'point' && item.measured > 0.4 && item.measured < 0.7)!;
    const tight = withLimit(response.specification, point, 0.01);
    const slack = slackOf(receiver, deck, { ...response, specification: tight })!;
    expect(slack.item.id).toBe(point.id);
    expect(slack.share).toBeGreaterThan(1);
  });
});

describe('on the plan', () => {
  const thing = (name: string, draft = EXAMPLE.draft) =>
    thingsOf(draft).find((one) => one.name === name || keyOf(one) === name)!;

  it('a can moves with its cores, and the signal path with it', () => {
    const t2 = thing('T2');
    const next = moved(EXAMPLE.draft, t2, 12, -6);
    expect(leftOf(next)).toEqual([]);
    const ys = (draft: Draft) =>
      draft.adjusters.filter((a) => (a.plan as Json).can === 'T2').map((a) => Number((a.plan as Json).y));
    expect(ys(next)).toEqual(ys(EXAMPLE.draft).map((y) => y - 6));
    const pathOf = (draft: Draft) => JSON.stringify((draft.plan as Json).path);
    expect(pathOf(next)).not.toBe(pathOf(EXAMPLE.draft));
    expect(hindranceOf(next, keyOf(t2))).toBe(null);
  });

  it('nothing moves onto anything else, or over the edge', () => {
    const [t1, valve, point] = [thing('T1'), thing('plan/parts/0'), thing('TP1')];
    const onValve = moved(EXAMPLE.draft, t1, valve.x - t1.x, valve.y - t1.y);
    expect(hindranceOf(onValve, keyOf(t1))).toMatchObject({ kind: 'on', what: 'valve', name: 'V1' });
    const onCan = moved(EXAMPLE.draft, point, t1.x - point.x, t1.y - point.y);
    expect(hindranceOf(onCan, keyOf(point))).toMatchObject({ kind: 'on', what: 'slugCan', name: 'T1' });
    // What both cover lies inside of each: a test point of 14 units stands whole on the can.
    expect(hindranceOf(onCan, keyOf(point))).toMatchObject({
      both: { x: t1.x - 7, y: t1.y - 7, width: 14, height: 14 },
    });
    expect(hindranceOf(moved(EXAMPLE.draft, t1, -t1.x, 0), keyOf(t1))).toEqual({ kind: 'edge' });
    // What is refused here the checks refuse as well.
    expect(leftOf(onValve).join()).toContain('drawn over');
    expect(leftOf(onCan).join()).toContain('drawn over');
  });

  it('letters of a shipped set go with their cans, and may be moved alone', () => {
    const t1 = thing('T1', AM.draft);
    const next = moved(AM.draft, t1, 4, 0);
    const letterX = (draft: Draft) => ((draft.adjusters[0]!.plan as Json).letter as { x: number }).x;
    expect(letterX(next)).toBe(letterX(AM.draft) + 4);
    const letter = thing('adjusters/0/plan/letter', AM.draft);
    const alone = moved(AM.draft, letter, -2, 0);
    expect(letterX(alone)).toBe(letterX(AM.draft) - 2);
    expect((alone.adjusters[0]!.plan as Json).x).toBe((AM.draft.adjusters[0]!.plan as Json).x);
    expect(leftOf(alone, AM)).toEqual([]);
  });
});
