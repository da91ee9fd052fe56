/** The service sheet on the page: figures and cautions; and the wax marks, held against the bench's own tube. */

import { describe, expect, it } from 'vitest';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { cautionsOf } from '../../src/present/cautions.ts';
import { pipNumbers, sheetFigures } from '../../src/present/sheetFigures.ts';
import { createSlugParts } from '../../src/present/slugPart.ts';
import { partOnGlass, waxOn } from '../../src/present/wax.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { en } from '../../src/words/en/index.ts';
import { sheetStart, stripSetup } from '../bench/fixture.ts';
import { heightAt, trace } from '../bench/look.ts';
import { SETUPS } from '../rooms/sceneSets.ts';

const SHIPPED = SETUPS.map((setup) => [setup.receiver.id, setup] as const);

/** The sheet's own set-up with the slugs right, no pips, a trace that fills the graticule. */
function rightlySet(setup: BenchSetup, controls: Partial<BenchState['controls']> = {}): BenchSetup {
  const start = sheetStart(setup);
  const bare = { ...setup, scenario: { ...setup.scenario, start } };
  const peak = Math.abs(createBench(bare).facts(initialState(bare)).detectedPeakVolts);
  const yVoltsPerDiv = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2].find((gain) => peak / gain <= 6)!;
  const more = { pipHeightDiv: 0, yVoltsPerDiv, ...controls };
  return { ...setup, scenario: { ...setup.scenario, start: { ...start, controls: { ...start.controls, ...more } } } };
}

describe.each(SHIPPED)('the sheet of %s', (_, setup) => {
  const { receiver } = setup;
  const response = mainResponse(receiver);
  const figures = sheetFigures(setup, response);

  it('draws a curve whose highest place is 1 and that keeps to its own table', () => {
    const { hz, relative } = figures.curve;
    const spec = response.specification;
    if (spec.referenceHz === undefined) {
      let top = 0;
      for (let i = 0; i < hz.length; i++) {
        if (hz[i]! >= spec.fromHz && hz[i]! <= spec.toHz) top = Math.max(top, relative[i]!);
      }
      // An S-curve is drawn over half the distance between its peaks, which need not be of one height.
      const low = spec.sCurve === null ? -1 : relative.reduce((least, v) => Math.min(least, v), 0);
      expect((top - low) / 2).toBeCloseTo(1, 3);
    }
    for (const row of figures.levels) {
      const i = hz.findIndex((f) => Math.abs(f - row.hz) < 1);
      expect(i, `${row.hz} Hz is a sample`).toBeGreaterThanOrEqual(0);
      expect(relative[i]).toBeGreaterThanOrEqual(row.low);
      expect(relative[i]).toBeLessThanOrEqual(row.high);
    }
  });

  it('gives each level its place on the tube: never above the carrier level, in the same order', () => {
    expect(figures.onTube(1)).toBeCloseTo(1, 9);
    expect(figures.onTube(0)).toBe(0);
    let before = 0;
    for (let level = 0.02; level < 1; level += 0.02) {
      const shown = figures.onTube(level);
      // A diode reads a smaller carrier too low (square law when small, an offset when large), never too high; an S-curve is volts as they are.
      if (response.specification.sCurve === null) expect(shown).toBeLessThan(level);
      else expect(shown).toBeCloseTo(level, 9);
      expect(shown).toBeGreaterThan(before);
      before = shown;
    }
  });

  it('widens its tolerances with the scenario', () => {
    const wide = sheetFigures({ ...setup, scenario: { ...setup.scenario, toleranceFactor: 2 } }, response);
    figures.levels.forEach((row, i) => {
      const wider = wide.levels[i]!;
      expect(wider.high - wider.target).toBeCloseTo(2 * (row.high - row.target), 9);
      const low = 2 * row.low - row.target;
      expect(wider.low).toBeCloseTo(response.specification.sCurve === null ? Math.max(0, low) : low, 9);
      expect(wider.target).toBe(row.target);
    });
  });

  it('numbers its pips as the tube does with the sheet\u2019s crystals in', () => {
    let state = initialState(rightlySet(setup));
    for (const hz of response.setUp.markersHz) {
      const applied = applyEvent(setup, state, { type: 'crystalPlugged', hz }, state.seconds + 1);
      expect(applied.ok).toBe(true);
      if (applied.ok) state = applied.state;
    }
    const tags = createBench(rightlySet(setup))
      .display(state)
      .tags.filter((tag) => tag.kind === 'crystal');
    expect(new Map(tags.map((tag) => [tag.hz, tag.number]))).toEqual(pipNumbers(response));
  });

  it.each([
    ['as the sheet has it', {}],
    ['turned over and moved', { yInvert: true, yPositionDiv: -2, xPositionDiv: 0.6, xGain: 0.9 }],
    ['mirrored', { mirror: true }],
  ])('the curve of right slugs passes through every wax mark, %s', (_name, controls) => {
    const ready = rightlySet(setup, controls);
    const state = initialState(ready);
    const bench = createBench(ready);
    const marks = waxOn(ready, state.controls, figures, bench.facts(state));
    expect(marks.length).toBe(figures.levels.filter((row) => row.pip !== null).length);
    expect(marks.length).toBeGreaterThan(0);
    const marked = figures.levels.filter((row) => row.pip !== null);
    const plugged = { ...state, crystals: marked.map((row) => row.hz) };
    const tags = bench.display(plugged).tags.filter((tag) => tag.kind === 'crystal');
    marks.forEach(({ xDiv }, i) => {
      // The bench says where the pip of the same frequency stands.
      expect(xDiv).toBeCloseTo(tags.find((tag) => tag.hz === marked[i]!.hz)!.xDiv!, 6);
    });
    const line = trace(bench.display(state));
    // The spot and the noise of the tube are not part of the sheet: a twentieth of a division.
    for (const { xDiv, lowDiv, highDiv } of marks) {
      const height = heightAt(line, xDiv);
      expect(height).toBeGreaterThan(lowDiv - 0.05);
      expect(height).toBeLessThan(highDiv + 0.05);
    }
  });

  it('a slug a turn out of place draws what the wax said of it before', () => {
    const ready = rightlySet(setup);
    const state = initialState(ready);
    const bench = createBench(ready);
    const parts = createSlugParts(ready);
    const moving = receiver.adjusters.flatMap(({ id }) => {
      const part = parts(state, id, response);
      return part === null ? [] : [{ id, part }];
    });
    expect(moving.length).toBeGreaterThan(0);
    const { id, part } = moving[0]!;
    const glass = partOnGlass(ready, state.controls, figures, bench.facts(state), part)!;
    for (const [way, by] of [
      ['in', 1],
      ['out', -1],
    ] as const) {
      if (part[way] === null) continue;
      const slug = state.slugs[id]!;
      const turned = { ...state, slugs: { ...state.slugs, [id]: { ...slug, coreTurns: slug.coreTurns + by } } };
      const line = trace(bench.display(turned));
      const points = [...glass[way].matchAll(/(-?\d+) (-?\d+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
      expect(points.length).toBeGreaterThan(30);
      // In hundredths of a division; what a sweep lags behind, and the load of a diode at another level, are not part of the sheet: a third of a division.
      for (const [x, y] of points.filter(([x]) => Math.abs(x) < 430))
        expect(Math.abs(-y / 100 - heightAt(line, x / 100))).toBeLessThan(0.34);
    }
  });

  it('has no wax marks where base line or scale are unknown', () => {
    const ready = rightlySet(setup);
    const state = initialState(ready);
    const facts = createBench(ready).facts(state);
    const none = (controls: Partial<BenchState['controls']>, other: Partial<typeof facts> = {}): void => {
      expect(waxOn(ready, { ...state.controls, ...controls }, figures, { ...facts, ...other })).toEqual([]);
    };
    none({ yCoupling: 'AC' });
    none({ yInput: 'raw' });
    none({}, { yAtSheetPoint: false });
    none({}, { sweeping: false });
  });
});

describe('cautions', () => {
  const { receiver } = stripSetup();
  // What the product must show before any scenario on a mains set.
  const needed = [
    /isolating transformer/i,
    /lethal charge/i,
    /discharge/i,
    /x-ray/i,
    /implode/i,
    /one hand/i,
    /local codes/i,
  ];

  it('are complete for a mains set whose file says nothing itself', () => {
    const lines = cautionsOf(en, { ...receiver, cautions: [] })
      .map(({ text }) => text)
      .join(' ');
    for (const words of needed) expect(lines).toMatch(words);
  });

  it.each(SHIPPED.filter(([, { receiver: r }]) => r.mains !== null))(
    'are complete for %s, and say nothing twice',
    (_, setup) => {
      const lines = cautionsOf(en, setup.receiver).map(({ text }) => text);
      const { hotChassis, pictureTube } = setup.receiver.mains!;
      const here = needed.filter(
        (words) =>
          (pictureTube || !/lethal|x-ray|implode/i.test(words.source)) &&
          (hotChassis || !/isolating/i.test(words.source)),
      );
      for (const words of here) {
        expect(lines.join(' ')).toMatch(words);
        expect(lines.filter((line) => words.test(line)).length, String(words)).toBe(1);
      }
    },
  );

  it('leave a bench without mains to its own file', () => {
    expect(cautionsOf(en, { ...receiver, mains: null, cautions: ['Do not force a slug.'] })).toEqual([
      { text: 'Do not force a slug.', lang: undefined },
    ]);
  });
});
