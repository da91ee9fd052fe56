/** Pip tags on the lip: apart, in order, inside; and the tunable marker never tells its figure. Warm lines of settled curves. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MarkerTag } from '../../src/bench/display.ts';
import { ghostPath, ghostsAfterChange, ghostsAtRest, NO_GHOSTS } from '../../src/kit/tube/ghosts.ts';
import { tubeGeometry, tubeSize, waxMarks } from '../../src/kit/tube/hood.ts';
import { drawTags, moveApart, TAG_APART, tagsToShow } from '../../src/kit/tube/tags.ts';

const WORDS = { tunable: 'tunable', frequency: (hz: number): string => (hz / 1e6).toFixed(2) };
const crystal = (hz: number, number: number, xDiv: number | null): MarkerTag => ({ hz, number, kind: 'crystal', xDiv });

describe('moveApart', () => {
  const wanted = fc
    .array(fc.double({ min: 0, max: 480, noNaN: true }), { minLength: 1, maxLength: 9 })
    .map((a) => a.sort((p, q) => p - q));

  it('keeps the order and the distance, and stays inside where there is room', () => {
    fc.assert(
      fc.property(wanted, (places) => {
        const moved = moveApart(places, TAG_APART, 0, 480);
        expect(moved).toHaveLength(places.length);
        moved.forEach((x, i) => {
          if (i > 0) expect(x - moved[i - 1]!).toBeGreaterThanOrEqual(TAG_APART - 1e-9);
          expect(x).toBeGreaterThanOrEqual(-1e-9);
          expect(x).toBeLessThanOrEqual(480 + 1e-9);
        });
      }),
    );
  });

  it('leaves alone what is far enough apart', () => {
    expect(moveApart([10, 60, 200, 300], 48, 0, 480)).toEqual([10, 60, 200, 300]);
  });

  it('shares the move evenly between two that are too near', () => {
    expect(moveApart([100, 110], 48, 0, 480)).toEqual([81, 129]);
  });
});

describe('tags', () => {
  const g = tubeGeometry({ cell: 45, hood: 15, lip: 24 });

  it('leaves out pips off the sweep and thins combs, never crystals', () => {
    const comb = Array.from(
      { length: 40 },
      (_, i): MarkerTag => ({ hz: i * 1e6, number: null, kind: 'comb', xDiv: i / 4 - 5 }),
    );
    const shown = tagsToShow([crystal(41.25e6, 1, -2), crystal(60e6, 2, null), ...comb], 9);
    expect(shown.filter((t) => t.kind === 'crystal').map((t) => t.hz)).toEqual([41.25e6]);
    expect(shown.length).toBeLessThanOrEqual(9);
    expect(shown.filter((t) => t.kind === 'comb').length).toBeGreaterThan(3);
    const full = tagsToShow([...Array.from({ length: 9 }, (_, i) => crystal(i, i + 1, i - 4)), ...comb], 9);
    expect(full.filter((t) => t.kind === 'comb')).toEqual([]);
  });

  it('never prints the figure of the tunable marker', () => {
    const svg = drawTags(
      g,
      [crystal(41.25e6, 1, -2), { hz: 43.62e6, number: null, kind: 'tunable', xDiv: 0.1 }],
      WORDS,
    );
    expect(svg).toContain('>41.25<');
    expect(svg).toContain('>tunable<');
    expect(svg).not.toContain('43.62');
  });

  it('escapes what it is given', () => {
    const svg = drawTags(g, [crystal(1, 1, 0)], { ...WORDS, frequency: () => '<b>&' });
    expect(svg).toContain('&lt;b&gt;&amp;');
    expect(svg).not.toContain('<b>');
  });
});

describe('the tube’s body', () => {
  it('holds ten by eight divisions, glass beyond them, hood and lip', () => {
    for (const cell of [20, 30, 45, 56]) {
      const g = tubeGeometry({ cell, hood: 15, lip: 24 });
      expect(tubeSize({ cell, hood: 15, lip: 24 })).toEqual({ width: g.width, height: g.height });
      expect(g.glassX).toBeGreaterThan(5 * cell + 10);
      expect(g.glassY).toBeGreaterThan(4 * cell + 10);
      expect(g.width).toBeCloseTo(2 * g.glassX + 30, 9);
      expect(g.height).toBeCloseTo(2 * g.glassY + 54, 9);
      expect(g.tagsY + 10).toBeLessThan(g.height);
    }
  });

  it('draws wax marks only on the graticule', () => {
    const g = tubeGeometry({ cell: 45, hood: 15, lip: 24 });
    expect(waxMarks(g, [{ xDiv: 6, lowDiv: 0, highDiv: 1 }])).toBe('');
    expect(waxMarks(g, [{ xDiv: 2, lowDiv: -1, highDiv: 1 }])).toContain('M347 165V255');
    // Above, below, and across either edge of the eight divisions.
    expect(waxMarks(g, [{ xDiv: 2, lowDiv: 4.1, highDiv: 6 }])).toBe('');
    expect(waxMarks(g, [{ xDiv: 2, lowDiv: -9, highDiv: -4.1 }])).toBe('');
    const across = waxMarks(g, [{ xDiv: 2, lowDiv: -1, highDiv: 20 }]);
    expect(across).toContain('M347 30V255');
    expect(across.match(/h14/g)).toHaveLength(1);
    expect(waxMarks(g, [{ xDiv: 2, lowDiv: -20, highDiv: 20 }])).toContain('M347 30V390');
  });
});

describe('warm lines', () => {
  const beam = (level: number) => {
    const data = new Float32Array(3 * 240);
    for (let i = 0; i < 240; i++) data.set([i / 24 - 5, level, 0.01], 3 * i);
    return { data, count: 240 };
  };

  it('keep the last two settled curves while a slug turns, and fade when it rests', () => {
    let g = NO_GHOSTS;
    for (const [turns, level] of [
      [0, 1],
      [0.5, 2],
      [1, 3],
      [1.5, 4],
    ] as const) {
      g = ghostsAfterChange(g, turns);
      if (turns > 0) expect(g.shown).toBe(true);
      g = ghostsAtRest(g, ghostPath(beam(level)));
      expect(g.shown).toBe(false);
    }
    g = ghostsAfterChange(g, 2);
    expect(g.paths).toEqual([ghostPath(beam(3)), ghostPath(beam(4))]);
  });

  it('count one curve for one spell of turning, however many steps it takes', () => {
    let g = ghostsAtRest(ghostsAfterChange(NO_GHOSTS, 0), ghostPath(beam(1)));
    for (const turns of [0.1, 0.2, 0.3]) g = ghostsAfterChange(g, turns);
    expect(g.paths).toEqual([ghostPath(beam(1))]);
  });

  it('go when a knob makes them untrue', () => {
    let g = ghostsAtRest(ghostsAfterChange(NO_GHOSTS, 0), ghostPath(beam(1)));
    g = ghostsAfterChange(g, 0.5);
    expect(ghostsAfterChange(g, 0.5).paths).toEqual([]);
  });

  it('follow the forward trace only and not a blanked beam', () => {
    const { data, count } = beam(1);
    for (let i = 120; i < 240; i++) data[3 * i + 1] = -3;
    const d = ghostPath({ data, count });
    expect(d.startsWith('M')).toBe(true);
    expect(d).not.toContain('300');
    for (let i = 0; i < 120; i++) data[3 * i + 2] = 0;
    expect(ghostPath({ data, count })).toBe('');
  });
});
