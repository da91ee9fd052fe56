/** The bench page's places: nothing overlaps, all is inside the page, and each size gets the form that it should. */
import { describe, expect, it } from 'vitest';
import type { Rect } from '../../src/kit/px.ts';
import { type BenchLayout, benchLayout, hoodSize, PLAN } from '../../src/rooms/bench/layout.ts';

const SIZES: readonly (readonly [number, number, BenchLayout['form']])[] = [
  [1440, 900, 'full'],
  [1920, 1080, 'full'],
  [1424, 880, 'full'],
  [2560, 1440, 'full'],
  [1366, 768, 'shelf'],
  [1280, 720, 'shelf'],
  [1280, 1024, 'shelf'],
  [1024, 640, 'shelf'],
  [820, 1180, 'upright'],
  [768, 1024, 'upright'],
  [700, 1100, 'upright'],
  [683, 1100, 'upright'],
  [1024, 1366, 'upright'],
];

/** Everything that stands beside something else; the open sheet of the folding forms lies over the rest and is left out. */
function standing(layout: BenchLayout): [string, Rect][] {
  const places: [string, Rect | null][] = [
    ['header', layout.header],
    ['sheet', layout.sheetFolds ? null : layout.sheet],
    ['sheetTab', layout.sheetTab],
    ['strip', layout.strip],
    ['tube', layout.tube],
    ...(Object.entries(layout.panels) as [string, Rect | null][]).map(([id, r]): [string, Rect | null] => [
      `${id} panel`,
      r,
    ]),
    ['shelf', layout.shelf],
    ['tabs', layout.tabs],
    ['menu', layout.menu],
    ['chassisHead', layout.chassisHead],
    ['chassis', layout.chassis],
    ['slugInset', layout.slugInset],
    ['tools', layout.tools],
    ['leadTray', layout.leadTray],
  ];
  return places.filter((p): p is [string, Rect] => p[1] !== null);
}

function overlap(a: Rect, b: Rect): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

describe.each(SIZES)('bench layout at %i x %i', (width, height, form) => {
  const layout = benchLayout(width, height)!;

  it('has the form of its size and fits the window', () => {
    expect(layout.form).toBe(form);
    expect(layout.page).toEqual({ width, height });
  });

  it('keeps every place and jack inside the page', () => {
    for (const [name, r] of [...standing(layout), ['open sheet', layout.sheet] as [string, Rect]]) {
      expect(r.width, `${name} width`).toBeGreaterThan(0);
      expect(r.height, `${name} height`).toBeGreaterThan(0);
      expect(r.x, `${name} left`).toBeGreaterThanOrEqual(0);
      expect(r.y, `${name} top`).toBeGreaterThanOrEqual(0);
      expect(r.x + r.width, `${name} right`).toBeLessThanOrEqual(width);
      expect(r.y + r.height, `${name} bottom`).toBeLessThanOrEqual(height);
    }
    for (const [id, jack] of Object.entries(layout.jacks)) {
      expect(jack.x > 0 && jack.x < width && jack.y > 0 && jack.y < height, `jack ${id}`).toBe(true);
    }
  });

  it('lets nothing overlap', () => {
    const places = standing(layout);
    for (let i = 0; i < places.length; i++) {
      for (let j = i + 1; j < places.length; j++) {
        const [a, ra] = places[i]!;
        const [b, rb] = places[j]!;
        expect(overlap(ra, rb), `${a} over ${b}`).toBe(false);
      }
    }
  });

  it('gives each part the room that its drawing needs', () => {
    expect(layout.tube).toMatchObject(hoodSize(layout.cell));
    expect(layout.cell).toBeGreaterThanOrEqual(28);
    expect(layout.chassis.scale).toBeGreaterThanOrEqual(0.72);
    expect(layout.chassis.scale).toBeLessThanOrEqual(1.25);
    expect(Math.abs(layout.chassis.width / layout.chassis.height - PLAN.width / PLAN.height)).toBeLessThan(0.01);
    expect(layout.slugInset.width).toBeGreaterThanOrEqual(155);
    expect(layout.slugInset.height).toBeGreaterThanOrEqual(180);
    const homes = Object.values(layout.panels).filter((p) => p !== null).length;
    expect(layout.shelf ? homes < 4 : homes === 4).toBe(true);
    if (layout.shelf) expect(layout.shelf.height).toBeGreaterThanOrEqual(140);
  });

  it('parts jacks that are drawn by enough for a finger', () => {
    const drawn = Object.values(layout.jacks).filter((j) => !j.hidden);
    for (let i = 0; i < drawn.length; i++) {
      for (let j = i + 1; j < drawn.length; j++) {
        expect(Math.hypot(drawn[i]!.x - drawn[j]!.x, drawn[i]!.y - drawn[j]!.y)).toBeGreaterThanOrEqual(38);
      }
    }
  });
});

describe.each(SIZES)('bench layout at %i x %i with two rows in its strip', (width, height) => {
  const layout = benchLayout(width, height, false, true)!;

  it('has room for both, and still lets nothing overlap or leave the page', () => {
    if (layout.strip !== null) expect(layout.strip.height).toBeGreaterThanOrEqual(68);
    const places = standing(layout);
    for (const [a, ra] of places) {
      expect(ra.y + ra.height, a).toBeLessThanOrEqual(layout.page.height);
      for (const [b, rb] of places) if (a !== b) expect(overlap(ra, rb), `${a} over ${b}`).toBe(false);
    }
    expect(layout.chassis.scale).toBeGreaterThanOrEqual(0.65);
    expect(layout.slugInset.height).toBeGreaterThanOrEqual(150);
  });
});

describe('bench layout at the edges', () => {
  it('has no bench under 680 wide', () => {
    expect(benchLayout(679, 1200)).toBeNull();
    expect(benchLayout(680, 1200)).not.toBeNull();
  });

  it('scrolls rather than cramps when the window is too low', () => {
    const upright = benchLayout(900, 600)!;
    expect(upright.page.height).toBeGreaterThan(600);
    expect(upright.cell).toBeGreaterThanOrEqual(28);
    const shelf = benchLayout(1100, 480)!;
    expect(shelf.page.height).toBeGreaterThan(480);
  });

  it('never turns a wider window into a smaller tube within the full form', () => {
    let before = 0;
    for (let width = 1424; width <= 2600; width += 16) {
      const { cell } = benchLayout(width, 1000)!;
      expect(cell).toBeGreaterThanOrEqual(before - 0.5);
      before = cell;
    }
  });
});
