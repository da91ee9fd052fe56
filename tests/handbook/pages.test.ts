/** The handbook as a book: every page is long enough and has its figure, every figure in its text is a known value, every way leads somewhere, every word is marked where it first comes up. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { figureOf } from '../../src/present/handbook/figures.ts';
import { markAll, markTerms } from '../../src/present/handbook/marking.ts';
import { HANDBOOK_NUMBERS, plainProse } from '../../src/present/handbook/numbers.ts';
import { readProse } from '../../src/present/handbook/prose.ts';
import { pageOfRule } from '../../src/present/handbook/rulePages.ts';
import { TERMS, type TermId } from '../../src/present/handbook/terms.ts';
import type { Receiver } from '../../src/receiver/receiver.ts';
import { handbook } from '../../src/words/en/handbook/index.ts';
import { en } from '../../src/words/en/index.ts';
import type { HandbookBlock, HandbookPage } from '../../src/words/handbook.ts';
import { pseudoHandbook } from '../../src/words/pseudo.ts';

const { pages } = handbook;
const IDS = pages.map(({ id }) => id);

const ofBlock = (block: HandbookBlock): readonly string[] => {
  if ('h' in block) return [];
  if ('p' in block) return [block.p];
  if ('caution' in block) return [block.caution];
  return 'list' in block ? block.list : block.steps;
};
/** Every text of a page that may hold signs, in the order in which it is read. */
const textsOf = ({ lead, figures, blocks }: HandbookPage): string[] => [
  lead,
  ...figures.map(({ caption }) => caption),
  ...blocks.flatMap(ofBlock),
];
const labelsOf = ({ figures }: HandbookPage): string[] => figures.flatMap(({ readings }) => Object.values(readings));
const plain = (text: string): string => plainProse(en.format, text);

describe('the handbook', () => {
  it('has sixteen pages or more, each of its own address', () => {
    expect(pages.length).toBeGreaterThanOrEqual(16);
    expect(new Set(IDS).size).toBe(IDS.length);
    for (const id of IDS) expect(id).toMatch(/^[a-z][a-z-]*$/);
  });

  it.each(IDS)('page %s has 250 to 600 words, a figure, and a lead that the contents can show', (id) => {
    const page = pages.find((one) => one.id === id)!;
    const words = [page.lead, ...page.blocks.flatMap((block) => ('h' in block ? [block.h] : ofBlock(block)))]
      .map(plain)
      .join(' ')
      .split(/\s+/);
    expect(words.length).toBeGreaterThanOrEqual(250);
    expect(words.length).toBeLessThanOrEqual(600);
    expect(page.figures.length).toBeGreaterThanOrEqual(1);
    expect(page.lead.length).toBeLessThan(260);
    expect(pages.filter(({ group }) => group === page.group).length).toBeGreaterThan(1);
  });

  it('keeps the pages of a group together', () => {
    const groups = pages.map(({ group }) => group).filter((group, i, all) => group !== all[i - 1]);
    expect(new Set(groups).size).toBe(groups.length);
  });

  it('states no figure but those that are held as values, and uses each of those', () => {
    const used = new Set<string>();
    for (const page of pages) {
      for (const text of [
        ...textsOf(page),
        ...labelsOf(page),
        ...page.blocks.flatMap((b) => ('h' in b ? [b.h] : [])),
      ]) {
        for (const piece of readProse(text)) {
          if (piece.kind === 'number') used.add(piece.name);
          else expect(piece.text, `${page.id}: ${text}`).not.toMatch(/\d/);
        }
      }
    }
    expect([...used].sort()).toEqual(Object.keys(HANDBOOK_NUMBERS).sort());
  });

  it('leads only to pages that there are', () => {
    const to = pages.flatMap((page) =>
      textsOf(page).flatMap((text) =>
        readProse(text).flatMap((piece) => (piece.kind === 'page' ? [[page.id, piece.page] as const] : [])),
      ),
    );
    expect(to.length).toBeGreaterThan(5);
    for (const [from, page] of to) {
      expect(IDS, `${from} leads to ${page}`).toContain(page);
      expect(page, `${from} leads to itself`).not.toBe(from);
    }
  });

  it.each(IDS)('page %s marks every trade word where it first comes up, and nowhere else', (id) => {
    const page = pages.find((one) => one.id === id)!;
    const marked: string[] = [];
    const found: string[] = [];
    for (const text of textsOf(page)) {
      for (const piece of readProse(text)) {
        if (piece.kind === 'term') marked.push(`${piece.term}: ${piece.text}`);
        if (piece.kind !== 'term' && piece.kind !== 'text') continue;
        const told = new Set(found.map((one) => one.split(':')[0]!));
        for (const one of markTerms(en.glossary, piece.text, told)) {
          if (one.kind === 'term') found.push(`${one.term}: ${one.text}`);
        }
      }
    }
    expect(marked).toEqual(found);
    expect(marked.length).toBeGreaterThan(0);
  });
});

describe('the glossary', () => {
  const ids = Object.keys(TERMS) as TermId[];

  it('leads to a page for every word, and the page uses the word', () => {
    const strangers = ids.filter((id) => {
      const page = pages.find((one) => one.id === TERMS[id].page);
      if (page === undefined) return true;
      const heads = [page.title, ...page.blocks.flatMap((b) => ('h' in b ? [b.h] : []))];
      const text = [...heads, ...textsOf(page)].map(plain).join(' ').toLowerCase();
      return !en.glossary.terms[id].forms.some((form) => text.includes(form.toLowerCase()));
    });
    expect(strangers).toEqual([]);
  });

  it('says each in one sentence, under a name of its own', () => {
    for (const id of ids) {
      const { means } = en.glossary.terms[id];
      expect(means, id).toMatch(/^[A-Z][^.!?]*\.$/);
      expect(means, id).not.toMatch(/'| {2}/);
    }
    expect(new Set(ids.map((id) => en.glossary.terms[id].term)).size).toBe(ids.length);
    const forms = ids.flatMap((id) => en.glossary.terms[id].forms);
    expect(new Set(forms).size).toBe(forms.length);
  });

  it('has live figures whose control is one of theirs', () => {
    const figures = ids.flatMap((id) => TERMS[id].figure ?? []);
    expect(figures.length).toBeGreaterThan(10);
    for (const { kind, control } of figures) expect(Object.keys(figureOf(kind).controls)).toContain(control);
  });
});

describe('marking a text that marks nothing itself', () => {
  const marks = (text: string, told: readonly string[] = []): string[] =>
    markTerms(en.glossary, text, new Set(told)).flatMap((piece) => (piece.kind === 'term' ? [piece.term] : []));

  it('finds first uses only, whole words only, and the longest form', () => {
    expect(marks('Traps A, B, C: least at pips 4, 1. Then the traps again.')).toEqual(['trap', 'pip']);
    expect(marks('Traps first', ['trap'])).toEqual([]);
    expect(marks('If you can, entrap nobody.')).toEqual([]);
    expect(marks('The IF strip')).toEqual(['if']);
    expect(marks('an isolating resistor')).toEqual(['isolatingResistor']);
  });

  it('loses nothing of the text', () => {
    const text = 'Sweep the IF with the bias clamped; look at the detector.';
    expect(
      markTerms(en.glossary, text)
        .map((piece) => piece.text)
        .join(''),
    ).toBe(text);
  });
});

describe('what leads to the handbook from elsewhere', () => {
  it('leads to pages that there are, and every page is led to', () => {
    const ledTo = new Set<string | null>([
      ...Object.keys(en.rules).map(pageOfRule),
      ...Object.values(TERMS).map(({ page }) => page),
    ]);
    ledTo.delete(null);
    expect([...ledTo].filter((page) => !IDS.includes(page!))).toEqual([]);
    const byPages = pages.flatMap((page) =>
      textsOf(page).flatMap((text) => readProse(text).flatMap((piece) => (piece.kind === 'page' ? [piece.page] : []))),
    );
    expect(IDS.filter((id) => !ledTo.has(id) && !byPages.includes(id))).toEqual([]);
  });

  it('knows the page of a rule, of rules that there are', () => {
    const rules = Object.keys(en.rules);
    const explained = rules.filter((rule) => pageOfRule(rule) !== null);
    expect(explained.length).toBeGreaterThan(40);
    for (const known of ['G13', 'G26']) expect(explained).toContain(known);
    expect(pageOfRule('G13')).toBe('phasing');
    expect(pageOfRule('G999')).toBeNull();
  });

  it('marks the steps of every sheet and loses nothing of them', () => {
    const folder = 'scenarios/receivers';
    for (const name of readdirSync(folder)) {
      const { procedure } = JSON.parse(readFileSync(`${folder}/${name}/receiver.json`, 'utf8')) as Receiver;
      const texts = procedure.map(({ text }) => text);
      const marked = markAll(en.glossary, texts);
      expect(marked.map((pieces) => pieces.map(({ text }) => text).join(''))).toEqual(texts);
      const terms = marked.flat().flatMap((piece) => (piece.kind === 'term' ? [piece.term] : []));
      expect(terms.length, name).toBeGreaterThan(2);
      expect(new Set(terms).size, name).toBe(terms.length);
    }
  });
});

describe('in made-up words', () => {
  it('keeps the ways, the figures and the marks of every page', () => {
    const strange = pseudoHandbook(handbook);
    for (const [i, page] of pages.entries()) {
      const signs = (one: HandbookPage): string[] =>
        textsOf(one).flatMap((text) =>
          readProse(text).flatMap((piece) => {
            if (piece.kind === 'number') return [piece.name];
            if (piece.kind === 'term') return [piece.term];
            return piece.kind === 'page' ? [piece.page] : [];
          }),
        );
      expect(strange.pages[i]!.id).toBe(page.id);
      expect(signs(strange.pages[i]!)).toEqual(signs(page));
      expect(strange.pages[i]!.figures.map(({ kind }) => kind)).toEqual(page.figures.map(({ kind }) => kind));
      expect(strange.pages[i]!.title).not.toBe(page.title);
    }
  });
});
