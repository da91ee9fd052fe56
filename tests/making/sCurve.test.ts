/** S-curves made from a deck, against sheets that were written by hand for the shipped FM sets, and against the curve itself. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { problemSentence } from '../../src/describe/problem.ts';
import { readReceiverPair } from '../../src/files/readReceiverPair.ts';
import { beginWithDeck } from '../../src/making/begin.ts';
import { asDetector, put } from '../../src/making/edits.ts';
import { makeReceiver } from '../../src/making/makeReceiver.ts';
import { canBeTakenOff, limitOf, withLimit, withoutLine } from '../../src/making/sheetLimits.ts';
import { problemsLeft, savedFiles, standingOf } from '../../src/making/standing.ts';
import type { Json } from '../../src/making/wholeReceiver.ts';
import { readDeck } from '../../src/physics/readDeck.ts';
import type { SpecSCurve } from '../../src/receiver/receiver.ts';
import { readSCurve } from '../../src/receiver/sCurveReading.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import type { SpecItem } from '../../src/receiver/specItem.ts';
import { evaluateSpecification } from '../../src/receiver/specification.ts';
import { createStatedResponse } from '../../src/receiver/statedResponse.ts';
import { givenOf, lineName } from '../../src/rooms/workshop/receiver/lineWords.ts';
import { en } from '../../src/words/en/index.ts';

const SHELF = 'scenarios/receivers';

function remade(id: string) {
  const text = readFileSync(`${SHELF}/${id}/network.cir`, 'utf8');
  const deck = readDeck(text, 'network.cir');
  if (!deck.ok) throw new Error(JSON.stringify(deck.problems));
  const file = JSON.parse(readFileSync(`${SHELF}/${id}/receiver.json`, 'utf8')) as Json;
  const responses = file.responses as readonly (Json & { specification: { sCurve: SpecSCurve | null } })[];
  const at = responses.findIndex(({ specification }) => specification.sCurve !== null);
  const bare = responses.map(({ specification, quantity, ...one }, i) =>
    i === at ? one : { ...one, quantity, specification },
  );
  const made = makeReceiver(
    { ...file, responses: bare },
    deck.value,
    `${id}.json`,
    { id, deck: 'network.cir' },
    en.maker,
  );
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const { receiver } = made.value;
  return { receiver, deck: deck.value, response: receiver.responses[at]!, byHand: responses[at]! };
}

describe.each(['fm-10m7', 'sound-4m5', 'aft-45m75'])('the S-curve of %s, made from its deck', (id) => {
  const { receiver, deck, response, byHand } = remade(id);
  const { sCurve } = response.specification;
  const hand = byHand.specification.sCurve!;

  it('measures the same two diodes, and asks much what the sheet that was written by hand asks', () => {
    expect(response.quantity).toMatchObject({ kind: 'difference', plus: 'a', minus: 'b' });
    expect(sCurve).toMatchObject({ centreHz: hand.centreHz, risesWithFrequency: hand.risesWithFrequency });
    const middle = ({ separation }: SpecSCurve): number => (separation.minHz + separation.maxHz) / 2;
    expect(Math.abs(middle(sCurve!) / middle(hand) - 1)).toBeLessThan(0.1);
    expect(Math.sqrt(sCurve!.symmetry.low * sCurve!.symmetry.high)).toBeGreaterThan(hand.symmetry.low);
    expect(Math.sqrt(sCurve!.symmetry.low * sCurve!.symmetry.high)).toBeLessThan(hand.symmetry.high);
    expect(sCurve!.zero.toleranceHz / hand.zero.toleranceHz).toBeLessThan(2);
    expect(sCurve!.zero.toleranceHz / hand.zero.toleranceHz).toBeGreaterThan(0.4);
  });

  it('is met by the design, and with every slug 1/32 turn out, but not with the secondary half a turn off', () => {
    const stated = createStatedResponse(receiver, deck, response);
    const worst = (turns: Readonly<Record<string, number>>): string[] =>
      evaluateSpecification(response.specification, stated.hz, stated.solve(turns).volts, null)
        .filter(({ measured, low, high }) => (low !== null && measured < low) || (high !== null && measured > high))
        .map(({ kind }) => kind);
    expect(worst({})).toEqual([]);
    for (const away of [-1 / 32, 1 / 32])
      expect(worst(Object.fromEntries(receiver.adjusters.map((a) => [a.id, nominalTurns(a) + away])))).toEqual([]);
    const coil = deck.elements.find((e) => e.kind === 'L' && e.nodes.some((n) => n.toLowerCase() === 'a'))!.name;
    const secondary = receiver.adjusters.find((a) => [a.element, ...a.ganged].includes(coil))!;
    expect(worst({ [secondary.id]: nominalTurns(secondary) + 0.5 })).toContain('zero');
  });

  it('states the height that the curve has', () => {
    const stated = createStatedResponse(receiver, deck, response);
    const { fromHz, toHz, gain } = response.specification;
    expect(readSCurve(stated.nominal, hand.centreHz, fromHz, toHz).height / gain!.nominal).toBeCloseTo(1, 4);
  });
});

describe('the list of an S-curve\u2019s sheet', () => {
  const { receiver, deck, response } = remade('fm-10m7');
  const { specification } = response;
  const { nominal, hz } = createStatedResponse(receiver, deck, response);
  const told = (upside: 1 | -1): Readonly<Record<string, string>> =>
    Object.fromEntries(
      evaluateSpecification(
        specification,
        hz,
        nominal.volts.map((v) => upside * v),
        null,
      ).map((item) => [item.kind, givenOf(en, item, specification)]),
    );

  it('says in words which way it goes, and of what its shares are', () => {
    const rises = specification.sCurve!.risesWithFrequency;
    expect(told(1).polarity).toBe(rises ? 'rises with frequency' : 'falls with frequency');
    expect(told(-1).polarity).toBe(rises ? 'falls with frequency' : 'rises with frequency');
    expect(told(1).symmetry).toMatch(/^(9\d|10\d)% of the lower peak$/);
    expect(told(1).linearity).toMatch(/^\d+(\.\d)?% off a straight line$/);
    expect(told(1).separation).toMatch(/^[\d.]+ kHz$/);
  });
});

it('the list of a sheet has decibels to a tenth, so that none looks outside its limit', () => {
  const of = (kind: 'window' | 'gain' | 'bandwidth', measured: number, unit: 'db' | 'hz') =>
    ({ kind, measured, unit, id: `${kind}:-1.5`, hz: 1e7, toHz: 11e6 }) as SpecItem;
  const spec = { sCurve: null };
  expect(givenOf(en, of('window', 0.74, 'db'), spec)).toBe('0.7 dB');
  expect(givenOf(en, of('gain', -0.04, 'db'), spec)).toBe('0 dB');
  expect(lineName(en, of('bandwidth', 3e5, 'hz'))).toBe('Width \u22121.5 dB');
});

/** A limiter and a ratio detector's transformer at 10.7 MHz, of our own invention: primary, a tertiary over its cold end, a centre-tapped secondary. */
const DECK = `* Breakwater tuner, ratio detector at 10.7 MHz
Isig 0 lim AC 1u
Rlim lim 0 4.7k
Clim lim 0 5p
G1 pri 0 lim 0 4m
Lp pri 0 4.4248u
Cp pri 0 50p
RQp pri 0 22k
Lt 0 ct 0.55u
RQt ct 0 10k
La a ct 0.9u
Lb ct b 0.9u
Cs a b 63.06p
RQs a b 18k
Kpa Lp La 0.03
Kpb Lp Lb 0.03
Kab La Lb 0.95
Kpt Lp Lt 0.9
Kta Lt La 0.027
Ktb Lt Lb 0.027
.ac lin 281 10.2Meg 11.2Meg
.print ac vm(a) vm(b)
.end
`;

describe('a deck that prints the two ends of a detector', () => {
  const begun = () => beginWithDeck({ file: 'breakwater.cir', text: DECK }, en.maker);

  it('begins with the detector that its title names, swept with the link open', () => {
    const { draft } = begun();
    expect((draft.detectors as readonly Json[])[0]).toMatchObject({ kind: 'ratio', plus: 'a', minus: 'b' });
    expect(draft.testPoints.find(({ id }) => id === 'TP1')).toMatchObject({ node: null, tap: 'open' });
    const plain = beginWithDeck({ file: 'b.cir', text: DECK.replace('ratio detector', 'strip') }, en.maker);
    expect((plain.draft.detectors as readonly Json[])[0]).toMatchObject({ kind: 'discriminator' });
  });

  it('becomes another kind and goes to other nodes, and its point and sheet with it', () => {
    const { draft } = begun();
    const diode = asDetector(draft, 'envelope', ['lim', 'b']);
    expect(diode.testPoints.find(({ id }) => id === 'TP1')).toEqual({
      ...draft.testPoints.find(({ id }) => id === 'TP1'),
      ...{ node: 'lim', detector: 'diode', tap: undefined },
    });
    const back = asDetector(diode, 'discriminator', ['a', 'b']);
    expect((back.detectors as readonly Json[])[0]).toMatchObject({ kind: 'discriminator', reservoirFarads: null });
    expect(back.testPoints.find(({ id }) => id === 'TP1')).not.toHaveProperty('tap');
  });

  it('is told what is wrong where the span holds no S-curve', () => {
    const making = beginWithDeck({ file: 'b.cir', text: DECK.replace('10.2Meg 11.2Meg', '11.3Meg 12.3Meg') }, en.maker);
    const { made } = standingOf(making, en.maker);
    expect(made?.ok).toBe(false);
    if (made !== null && !made.ok) expect(made.problems[0]!.found).toEqual(['said', en.maker.noSCurve]);
  });

  it('has one slug for a primary and one for both halves of its secondary, and can be kept at once', () => {
    const whole = begun();
    expect(whole.draft.adjusters.map(({ element, ganged }) => [element, ganged ?? []])).toEqual([
      ['Lp', []],
      ['La', ['Lb']],
    ]);
    const standing = standingOf(whole, en.maker);
    if (!standing.made?.ok) throw new Error(JSON.stringify(standing.made));
    expect(standing.drawn!.items.map(({ kind }) => kind)).toContain('zero');
    expect(problemsLeft(whole, standing, en.maker)).toEqual([]);
    expect(readReceiverPair(savedFiles(whole, standing.made.value)).ok).toBe(true);
  });

  const begin = begun();
  const { made, drawn } = standingOf(begin, en.maker);
  if (!made?.ok) throw new Error(JSON.stringify(made));
  const spec = made.value.receiver.responses[0]!.specification;
  const itemsOf = (changed: typeof spec) => {
    const making = { ...begin, draft: put(begin.draft, ['responses', 0, 'specification'], changed) };
    const standing = standingOf(making, en.maker);
    return {
      left: problemsLeft(making, standing, en.maker).map((one) => problemSentence(en, one)),
      items: standing.drawn?.items ?? [],
    };
  };

  it.each(['zero', 'separation', 'symmetry', 'linearity'] as const)('has another limit put on its %s', (kind) => {
    const item = drawn!.items.find((one) => one.kind === kind)!;
    const limit = limitOf(item)!;
    const wider = itemsOf(withLimit(spec, item, 2 * limit.value));
    expect(wider.left).toEqual([]);
    const after = wider.items.find((one) => one.kind === kind)!;
    // Hertz are whole, shares stand to a thousandth.
    const step = limit.unit === 'Hz' ? 1 : 0.1;
    expect(Math.abs(limitOf(after)!.value - 2 * limit.value)).toBeLessThanOrEqual(step);
    expect(wider.items.filter((one) => one.kind !== kind)).toEqual(drawn!.items.filter((one) => one.kind !== kind));
    // What the design gives stands in the middle of a pair: of distances by hertz, of the two peaks by their ratio.
    if (kind === 'separation') expect((after.low! + after.high!) / 2).toBeCloseTo(item.measured, -1);
    if (kind === 'symmetry') expect(Math.sqrt(after.low! * after.high!)).toBeCloseTo(item.measured, 2);
  });

  it('has its straightness taken off, and nothing that makes it an S-curve', () => {
    const off = (kind: SpecItem['kind']) => withoutLine(spec, drawn!.items.find((one) => one.kind === kind)!.id);
    const without = itemsOf(off('linearity'));
    expect(without.left).toEqual([]);
    expect(without.items.map((one) => one.kind)).toEqual(
      drawn!.items.map((one) => one.kind).filter((one) => one !== 'linearity'),
    );
    const stay = drawn!.items.filter((one) => !canBeTakenOff(one)).map((one) => one.kind);
    expect(stay).toEqual(['zero', 'polarity', 'separation', 'symmetry']);
    for (const kind of stay) expect(off(kind)).toEqual(spec);
  });

  it('is refused a straightness that the design itself does not have', () => {
    const bend = drawn!.items.find((one) => one.kind === 'linearity')!;
    expect(itemsOf(withLimit(spec, bend, 50 * bend.measured)).left.join()).toContain(
      'wanted a design that meets its own sheet',
    );
  });
});
