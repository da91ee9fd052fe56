/** Files in more than one language: what is read, what is refused, which language a reader gets, and that files of before are none the worse. */
import { describe, expect, it } from 'vitest';
import { bestLanguage, firstSpoken, isOfPage } from '../../src/base/languages.ts';
import { hashOf } from '../../src/files/hash.ts';
import { parseReceiver } from '../../src/files/receiverSchema.ts';
import { scenarioHash } from '../../src/files/scenarioFile.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import { cautionsOf } from '../../src/present/cautions.ts';
import { langOf } from '../../src/present/langOf.ts';
import { toldReceiver, toldScenario } from '../../src/present/told.ts';
import type { Receiver } from '../../src/receiver/receiver.ts';
import { receiverIn } from '../../src/receiver/receiverIn.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { scenarioIn } from '../../src/scenario/scenarioIn.ts';
import { en } from '../../src/words/en/index.ts';
import type { Words } from '../../src/words/words.ts';
import { saidOf } from './said.ts';
import { shippedJson, shippedReceiver } from './shipped.ts';

const german: Words = { ...en, language: 'de-AT' };
const own = shippedJson('first-sweep/first-curve.json') as unknown as Scenario;
const GERMAN = {
  title: 'Erste Kurve',
  words: { brief: 'Eine Kurve.', story: 'Eine Dose liegt auf dem Tisch.', lesson: 'Sehen.' },
  hints: own.hints.map((_, i) => `Hinweis ${i + 1}`),
};
const scenario = (change: object) => parseScenario({ ...own, ...change }, 'x.json');
const placesOf = (result: ReturnType<typeof scenario> | ReturnType<typeof receiver>): string[] =>
  saidOf(result).map(({ place }) => place);

const { receiver: set } = shippedReceiver('video-valve-45m');
const texts = (receiver: Receiver) => ({
  setName: 'Hafen 10',
  title: 'Bild-ZF',
  description: 'Ein Kasten.',
  adjusters: Object.fromEntries(receiver.adjusters.map(({ id }) => [id, { label: `Kern ${id}`, does: 'Dreht sich.' }])),
  testPoints: Object.fromEntries(receiver.testPoints.map(({ id }) => [id, { label: `Punkt ${id}`, note: 'Hier.' }])),
  responses: Object.fromEntries(receiver.responses.map(({ id }) => [id, `Kurve ${id}`])),
  procedure: receiver.procedure.map((_, i) => `Schritt ${i + 1}`),
  cautions: receiver.cautions.map((_, i) => `Vorsicht ${i + 1}`),
});
const receiver = (change: object) => parseReceiver({ ...structuredClone(set), ...change }, 'r.json');

describe('the best language', () => {
  // RFC 4647, section 3.4: the tag is shortened from its end; a single letter goes with what follows it.
  it.each([
    ['de-AT', ['en', 'de'], 'de'],
    ['de-AT', ['en', 'de', 'de-AT'], 'de-AT'],
    ['zh-Hant-CN-x-private1', ['zh', 'zh-Hant'], 'zh-Hant'],
    ['DE', ['de'], 'de'],
    ['en-GB', ['de', 'en-US'], null],
    ['de', ['de-AT'], null],
  ])('%s of %j', (wanted, offered, best) => {
    expect(bestLanguage(wanted, offered)).toBe(best);
  });

  it.each([
    [['fr-CA', 'de-AT', 'en'], ['en', 'de', 'fr'], 'fr'],
    [['nl', 'de-AT', 'en'], ['en', 'de'], 'de'],
    [['en-GB', 'de'], ['en', 'de'], 'en'],
    [['nl'], ['en', 'de'], 'en'],
    [[], ['en', 'de'], 'en'],
  ])('to whoever wants %j, where %j are spoken', (wanted, spoken, best) => {
    expect(firstSpoken(wanted, spoken)).toBe(best);
  });

  it('a page in British English needs no mark on English, but one on American', () => {
    expect([isOfPage('en', 'en-GB'), isOfPage('en-US', 'en-GB'), isOfPage('de', 'en-GB')]).toEqual([
      true,
      false,
      false,
    ]);
    expect([langOf(en, {}), langOf(en, { language: 'de' }), langOf(german, {})]).toEqual([undefined, 'de', 'en']);
  });
});

describe('a scenario', () => {
  it('without the new keys has the fingerprint that it always had', () => {
    const read = scenario({});
    if (!read.ok) throw new Error('the shipped scenario is sound');
    expect(scenarioHash(read.value)).toBe(hashOf(own));
    expect(Object.hasOwn(read.value, 'language')).toBe(false);
  });

  it('is told in the language of the page, otherwise in its own, with the same job', () => {
    const read = scenario({ translations: { de: GERMAN } });
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(scenarioIn('en-GB', read.value)).toBe(read.value);
    expect(scenarioIn('fr', read.value)).toBe(read.value);
    const told = toldScenario(german, read.value, set);
    expect(told).toMatchObject({ ...GERMAN, language: 'de', start: own.start, seed: own.seed });
    expect(langOf(german, told)).toBeUndefined();
    expect(langOf({ ...en, language: 'fr' }, toldScenario({ ...en, language: 'fr' }, read.value, set))).toBe('en');
  });

  it('of the endless track is told in words of the page', () => {
    const told = toldScenario(
      { ...en, endless: { ...en.endless, title: () => 'Ohne Ende' } },
      { ...own, id: 'endless-2-gale' },
      set,
    );
    expect(told.title).toBe('Ohne Ende');
    expect(told.words).toEqual(en.endless.words(set, 2));
  });

  it.each([
    ['its own language again', { translations: { en: GERMAN } }, '/translations/en'],
    ['hints that do not match', { translations: { de: { ...GERMAN, hints: [] } } }, '/translations/de/hints'],
    [
      'a text left out',
      { translations: { de: { title: 'Erste Kurve', hints: GERMAN.hints } } },
      '/translations/de/words',
    ],
    ['no tag', { language: 'German!' }, '/language'],
  ])('is refused with %s', (_, change, place) => {
    expect(placesOf(scenario(change))).toContain(place);
  });
});

describe('a receiver', () => {
  it('is told in the language of the page: texts change, circuit and ids do not', () => {
    const read = receiver({ translations: { de: texts(set) } });
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(receiverIn('en', read.value)).toBe(read.value);
    const told = toldReceiver(german, read.value);
    expect(told.language).toBe('de');
    expect(told.setName).toBe('Hafen 10');
    expect(told.adjusters.map(({ id }) => id)).toEqual(set.adjusters.map(({ id }) => id));
    expect(told.adjusters[0]).toMatchObject({
      label: `Kern ${set.adjusters[0]!.id}`,
      element: set.adjusters[0]!.element,
    });
    expect(told.procedure.map(({ text }) => text)).toEqual(texts(set).procedure);
  });

  it('has its standing cautions said in the words of the page, whatever its language', () => {
    const read = receiver({
      translations: { de: texts(set) },
      cautions: [...set.cautions.slice(0, 4), 'Mind the cat.'],
    });
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const lines = cautionsOf(german, toldReceiver(german, read.value));
    expect(lines.filter(({ text }) => text.includes('isolating transformer')).length).toBe(1);
    expect(lines.at(-1)).toEqual({ text: 'Vorsicht 5', lang: undefined });
    expect(cautionsOf(german, read.value).at(-1)).toEqual({ text: 'Mind the cat.', lang: 'en' });
  });

  it.each([
    ['a slug without its text', { ...texts(set), adjusters: {} }, '/translations/de/adjusters'],
    [
      'a point that it has not',
      { ...texts(set), testPoints: { ...texts(set).testPoints, TP99: { label: 'a', note: 'b' } } },
      '/translations/de/testPoints/TP99',
    ],
    ['a step too few', { ...texts(set), procedure: ['Schritt'] }, '/translations/de/procedure'],
  ])('is refused with %s', (_, de, place) => {
    expect(placesOf(receiver({ translations: { de } }))).toContain(place);
  });
});
