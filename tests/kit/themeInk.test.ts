/** Ink never shimmers, words never become markup, and the palette keeps the contrast that the pages promise. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { C, callout, contentId, hatch, line, rect, rr, shadow, superell, T } from '../../src/kit/theme/ink.ts';
import { phases } from '../../src/kit/theme/PhaseRail.tsx';
import { mark, panel, sheetPaper } from '../../src/kit/theme/pieces.ts';

const PLACE = new URL('../../src/', import.meta.url);
const TOKENS = readFileSync(new URL('kit/theme/tokens.css', PLACE), 'utf8');
const FILES = readdirSync(PLACE, { recursive: true, encoding: 'utf8' }).map((name) => name.replaceAll('\\', '/'));
const sheets = FILES.filter((name) => name.endsWith('.css'));
const drawings = FILES.filter((name) => /^(kit|rooms)\/.*\.tsx?$/.test(name));

describe('ink', () => {
  it('draws the same thing the same way each time', () => {
    const drawings = [
      () => line(3, 4, 400, 90, { over: 3 }),
      () => rect(0, 0, 300, 120, { fill: C.wash }),
      () => shadow(10, 10, 200, 80),
      () => hatch(rr(0, 0, 40, 20, 3), [0, 0, 40, 20], { skip: 0.3 }),
      () => sheetPaper(0, 0, 284, 700),
      () => panel(0, 0, 200, 100, { no: 3, title: 'Sweep source', sub: 'sine' }),
      () => mark(0, 0),
    ];
    for (const draw of drawings) expect(draw()).toBe(draw());
  });

  it('bows its lines by no more than it is told and ends them where it is told', () => {
    const d = /d="([^"]+)"/.exec(line(0, 50, 300, 50, { amp: 0.6 }))![1]!;
    const numbers = d.match(/-?\d+(\.\d+)?/g)!.map(Number);
    expect([numbers[0], numbers[1]]).toEqual([0, 50]);
    expect(numbers.slice(-2)).toEqual([300, 50]);
    const heights = numbers.filter((_, i) => i % 2 === 1);
    for (const y of heights) expect(Math.abs(y - 50)).toBeLessThanOrEqual(0.6 + 1e-9);
  });

  it('gives equal shapes one id and different shapes others', () => {
    expect(contentId('h', 'M0 0H4')).toBe(contentId('h', 'M0 0H4'));
    const ids = new Set(Array.from({ length: 4000 }, (_, i) => contentId('h', `M${i} 0H${i + 7}V3Z`)));
    expect(ids.size).toBe(4000);
  });

  it('closes the superellipse and keeps it inside its half axes', () => {
    const points = superell(100, 80, 90, 70, 9)
      .slice(1, -1)
      .split('L')
      .map((p) => p.split(' ').map(Number) as [number, number]);
    expect(points[0]).toEqual(points[points.length - 1]);
    for (const [x, y] of points) {
      expect(Math.abs(x - 100)).toBeLessThanOrEqual(90.05);
      expect(Math.abs(y - 80)).toBeLessThanOrEqual(70.05);
    }
  });

  it('escapes every word that it writes', () => {
    const nasty = `<img src=x onerror="x">&'`;
    for (const svg of [
      T(0, 0, nasty),
      callout(0, 0, nasty),
      panel(0, 0, 99, 99, { no: nasty, title: nasty, sub: nasty }),
      phases(0, 0, 100, [
        { name: nasty, done: false, now: true },
        { name: 'b', done: false, now: false },
      ]),
    ]) {
      expect(svg).not.toContain('<img');
      expect(svg).toContain('&lt;img');
    }
  });

  it('shows what is done, what is now and what is to come without colour alone', () => {
    const svg = phases(0, 0, 200, [
      { name: 'one', done: true, now: false },
      { name: 'two', done: false, now: true },
      { name: 'three', done: false, now: false },
    ]);
    expect(svg).not.toContain('>1<');
    expect(svg).toContain('>2<');
    expect(svg).toContain('>3<');
    expect(svg).toContain('r="16.5"');
    expect(svg).toContain('stroke-dasharray="2 4"');
  });
});

/** Relative luminance and contrast ratio as in WCAG 2.2 (W3C Recommendation, definitions "relative luminance" and "contrast ratio"). */
function contrast(a: string, b: string): number {
  const luminance = (hex: string): number => {
    const [r, g, bl] = [1, 3, 5].map((i) => {
      const v = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
      return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * r + 0.7152 * g + 0.0722 * bl;
  };
  const [high, low] = [luminance(a), luminance(b)].sort((p, q) => q - p) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

describe('the palette', () => {
  const token = (name: string): string => new RegExp(`--${name}: (#[0-9a-f]{6})`).exec(TOKENS)?.[1] ?? '';

  it('is the same in the drawings and in the pages', () => {
    const names: readonly (readonly [keyof typeof C, string])[] = [
      ['paper', 'paper'],
      ['sheet', 'sheet'],
      ['wash', 'wash'],
      ['wash2', 'fold'],
      ['ink', 'ink'],
      ['ink2', 'ink-2'],
      ['rust', 'rust'],
      ['rustInk', 'rust-text'],
      ['brass', 'brass'],
      ['brassInk', 'brass-text'],
      ['petrol', 'petrol'],
      ['petrolInk', 'petrol-text'],
      ['tolerance', 'tolerance'],
    ];
    for (const [drawn, written] of names) expect(token(written), written).toBe(C[drawn]);
  });

  it('keeps 4.5 : 1 for words and 3 : 1 for shapes on paper, sheet and wash (WCAG 2.2, 1.4.3 and 1.4.11)', () => {
    for (const ground of [C.paper, C.sheet, C.wash]) {
      for (const words of [C.ink, C.ink2, C.rustInk, C.brassInk, C.petrolInk])
        expect(contrast(words, ground)).toBeGreaterThanOrEqual(4.5);
      for (const shape of [C.rust, C.petrol]) expect(contrast(shape, ground)).toBeGreaterThanOrEqual(3);
    }
    for (const [words, ground] of [
      ['#ffffff', C.rust],
      ['#ffffff', C.petrol],
      ['#ffffff', C.rustInk],
      [C.paper, C.ink],
      [C.ink, '#f3dcae'],
    ] as const)
      expect(contrast(words, ground)).toBeGreaterThanOrEqual(4.5);
  });

  it('would see a pair that is too near', () => {
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
  });
});

describe('lettering', () => {
  it('never goes below 12 px', () => {
    let seen = 0;
    for (const sheet of sheets) {
      const css = readFileSync(new URL(sheet, PLACE), 'utf8');
      for (const [, px] of css.matchAll(/font(?:-size)?:[^;]*?(\d+(?:\.\d+)?)px/g)) {
        seen++;
        expect(Number(px), sheet).toBeGreaterThanOrEqual(12);
      }
    }
    expect(seen).toBeGreaterThan(40);
    expect(sheets.length).toBeGreaterThan(10);
    for (const file of drawings) {
      const text = readFileSync(new URL(file, PLACE), 'utf8');
      for (const [, px] of text.matchAll(/font-size[:=]["'{]?(\d+(?:\.\d+)?)/g))
        expect(Number(px), file).toBeGreaterThanOrEqual(12);
    }
  });

  it('asks for no face that is not there', () => {
    const css = readFileSync(new URL('kit/theme/fonts.css', PLACE), 'utf8');
    const files = [...css.matchAll(/url\("([^"]+)"\)/g)].map(([, url]) => url!);
    expect(files).toHaveLength(8);
    for (const file of files)
      expect(
        readFileSync(new URL(`../../node_modules/${file}`, import.meta.url))
          .subarray(0, 4)
          .toString(),
      ).toBe('wOF2');
  });
});
