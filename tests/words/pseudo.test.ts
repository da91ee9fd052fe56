/** The made-up language of the page's tests: it has every member of English, and every text of it can be told from English. */
import { describe, expect, it } from 'vitest';
import { terminal as en } from '../../src/words/en/terminal.ts';
import { pseudoWords, strangeText } from '../../src/words/pseudo.ts';
import type { TerminalWords } from '../../src/words/words.ts';
import { outsideBrackets } from './strange.ts';

const pseudo: TerminalWords = pseudoWords<TerminalWords>(en);

/** Every member with its kind. */
function shape(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return [`${path}: ${typeof value}`];
  return Object.entries(value).flatMap(([key, inner]) => shape(inner, `${path}.${key}`));
}

function texts(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(texts);
}

/** Figures and the tag are no texts. */
const textsOf = (words: TerminalWords): object => ({ ...words, format: null, language: null });

describe('the pseudo language', () => {
  it('has every member of English, and no other', () => {
    expect(shape(pseudo)).toEqual(shape(en));
    expect(shape(en).length).toBeGreaterThan(500);
  });

  it('has each plain text in brackets and about two fifths longer', () => {
    expect(pseudo.language).toBe('en-XA');
    const pairs = texts(textsOf(pseudo)).map((text, i) => [texts(textsOf(en))[i]!, text] as const);
    expect(pairs.filter(([, text]) => outsideBrackets(text) !== '')).toEqual([]);
    const long = pairs.filter(([english]) => english.length > 40);
    expect(long.length).toBeGreaterThan(100);
    const growth = long.map(([, text]) => text).join('').length / long.map(([english]) => english).join('').length;
    expect(growth).toBeGreaterThan(1.3);
    expect(growth).toBeLessThan(1.5);
  });

  it('makes texts of functions strange, too, but not what is put into them', () => {
    const said = pseudo.header.scenario('S-01', 'Harbour 10');
    expect(said).toContain('S-01, Harbour 10');
    expect(outsideBrackets(said)).toBe('');
    expect(pseudo.dialogs.briefing.par('4 3/8', '12 min')).toMatch(/4 3\/8 .* 12 min/);
    expect(pseudo.sheet.trap(41.25e6, -40)).toMatch(/41\.25 MHz: \u221240 dB/);
    // A letter is put in only where it stands alone.
    expect(pseudo.names.slugs.slug('A', 'T1')).toMatch(/^\u27e6[^A]+A \(T1\)/);
  });

  it('leaves figures as they are, but not the words that go with them', () => {
    const { frequency, knob, turnsLong, aloud, list, typed } = pseudo.format;
    expect([frequency(43.5e6), knob.voltsPerDiv(0.2), knob.divisions(-0.5), knob.degrees(12)]).toEqual([
      ...['43.50 MHz', '0.2 V/div', '\u22120.5 div', '+12\u00b0'],
    ]);
    expect(outsideBrackets(turnsLong(1.375))).toBe('');
    expect(turnsLong(1.375)).toContain('1 3/8');
    expect([outsideBrackets(aloud('\u221246 dB')), outsideBrackets(list(['43.50 MHz', '44.00 MHz']))]).toEqual([
      '',
      '',
    ]);
    expect(typed.frequency(1e6)('43.5')).toBe(43.5e6);
  });

  it('leaves what has no word in it alone, and does not touch a text twice', () => {
    expect(strangeText('43.50 MHz')).toBe('43.50 MHz');
    expect(strangeText('\u00d72')).toBe('\u00d72');
    const once = strangeText('slug');
    expect(strangeText(`${once} is out`, [once])).toContain(once);
    expect(outsideBrackets(strangeText(`${once} is out`, [once]))).toBe('');
    expect(outsideBrackets(`${once} is out`)).toBe('isout');
  });

  it('runs from right to left when asked', () => {
    expect(pseudoWords<TerminalWords>(en, true)).toMatchObject({ language: 'en-XB', rightToLeft: true });
  });
});

describe('another language', () => {
  it('is one value of the type: here one that says everything in capitals', () => {
    const loud = (value: unknown): unknown => {
      if (typeof value === 'string') return value.toUpperCase();
      if (typeof value === 'function')
        return (...args: unknown[]) => loud((value as (...a: unknown[]) => unknown)(...args));
      if (Array.isArray(value)) return value.map(loud);
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, loud(inner)]));
    };
    const capitals: TerminalWords = { ...(loud(en) as TerminalWords), language: 'en', format: en.format };
    expect(shape(capitals)).toEqual(shape(en));
    expect(capitals.header.turns(12)).toBe('TURNS (PAR 12)');
  });
});
