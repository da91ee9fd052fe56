/** The report's figure: the corridor is the sheet's, the callouts are in the clear, the points told of are those that matter. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Report, ScoreLine } from '../../src/grading/report.ts';
import { toleranceCorridor } from '../../src/present/corridor.ts';
import { type Curve, levelAt } from '../../src/present/curves.ts';
import { highest } from '../../src/receiver/curveReading.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { widenSpecification } from '../../src/receiver/specification.ts';
import { createStatedResponse } from '../../src/receiver/statedResponse.ts';
import { type BoxPlaced, placeBoxes } from '../../src/rooms/report/placeBoxes.ts';
import { responseFigure, sheetPoints } from '../../src/rooms/report/responseFigure.ts';
import { reportWords } from '../../src/words/en/reportPage.ts';
import { shippedReceiver } from '../files/shipped.ts';

const SETS = ['loose-can-10m7', 'video-valve-45m'].map((id) => {
  const { receiver, deck } = shippedReceiver(id);
  const { specification: spec } = mainResponse(receiver);
  const { nominal } = createStatedResponse(receiver, deck, mainResponse(receiver));
  const { fromHz, toHz } = spec;
  const peak = highest(nominal, fromHz, toHz).volts;
  const curve: Curve = {
    hz: Float64Array.from(nominal.hz),
    relative: Float64Array.from(nominal.volts, (v) => v / peak),
  };
  return { id, spec, curve };
});

const at = (corridor: ReturnType<typeof toleranceCorridor>, hz: number) => corridor.find((c) => c.hz === hz);

describe.each(SETS)('the corridor of $id', ({ spec, curve }) => {
  it('holds the nominal curve everywhere', () => {
    const corridor = toleranceCorridor(spec, curve);
    expect(corridor.length).toBeGreaterThan(100);
    for (const { hz, low, high } of corridor) {
      expect(levelAt(curve, hz)).toBeGreaterThanOrEqual(low - 1e-9);
      expect(levelAt(curve, hz)).toBeLessThanOrEqual(high + 1e-9);
    }
  });

  it('has the sheet’s own limits at the sheet’s points and traps', () => {
    const corridor = toleranceCorridor(spec, curve);
    for (const { hz, low, high } of spec.points) {
      const here = at(corridor, hz);
      // Inside a window the ripple may ask for more than the point does; a skirt or trap may cap it.
      expect(here?.low, `${hz}`).toBeGreaterThanOrEqual(low - 1e-9);
      expect(here?.high, `${hz}`).toBeCloseTo(high, 9);
    }
    for (const { hz, maxDb } of spec.traps) expect(at(corridor, hz)?.high).toBeCloseTo(10 ** (maxDb / 20), 9);
  });

  it('widens with the scenario’s tolerance', () => {
    const narrow = toleranceCorridor(spec, curve);
    const wide = toleranceCorridor(widenSpecification(spec, 1.5), curve);
    const area = (c: typeof narrow): number => c.reduce((sum, p) => sum + p.high - p.low, 0);
    expect(area(wide)).toBeGreaterThan(1.2 * area(narrow));
  });
});

describe('a corridor from widths alone', () => {
  const { spec, curve } = SETS[0]!;
  const bare = { ...spec, points: [], windows: [], skirts: [], traps: [] };

  it('opens sideways at the edges of the band', () => {
    const corridor = toleranceCorridor({ ...bare, bandwidths: spec.bandwidths }, curve);
    const edge = corridor.reduce((a, b) =>
      Math.abs(levelAt(curve, b.hz) - Math.SQRT1_2) < Math.abs(levelAt(curve, a.hz) - Math.SQRT1_2) ? b : a,
    );
    expect(edge.high).toBeGreaterThan(Math.SQRT1_2);
    expect(edge.low).toBeLessThan(Math.SQRT1_2);
  });

  it('takes the stricter of two demands that meet', () => {
    const point = { hz: 10.7e6, target: 1, weight: 1 };
    const both = [
      { ...point, low: 0.9, high: 1.3 },
      { ...point, low: 0.5, high: 1.1 },
    ];
    for (const points of [both, [...both].reverse()]) {
      const here = at(toleranceCorridor({ ...bare, bandwidths: [], points }, curve), 10.7e6);
      expect(here?.low).toBeCloseTo(0.9, 9);
      expect(here?.high).toBeCloseTo(1.1, 9);
    }
  });

  it('is nothing where the sheet asks for nothing', () => {
    expect(toleranceCorridor({ ...bare, bandwidths: [] }, curve)).toEqual([]);
  });
});

describe('placeBoxes', () => {
  const room = { left: 0, top: 0, right: 760, bottom: 420 };
  const spots = fc.array(fc.record({ x: fc.integer({ min: 20, max: 740 }), y: fc.integer({ min: 20, max: 400 }) }), {
    minLength: 1,
    maxLength: 6,
  });
  const sized = (list: readonly { x: number; y: number }[]) => list.map((s) => ({ ...s, w: 150, h: 42 }));

  it('never lays boxes on one another or out of the room', () => {
    fc.assert(
      fc.property(spots, (list) => {
        const wanted = sized(list);
        const placed = placeBoxes(wanted, room, []);
        const boxes = placed.filter((b): b is BoxPlaced => b !== null);
        boxes.forEach((a, i) => {
          expect(a.x).toBeGreaterThanOrEqual(0);
          expect(a.y).toBeGreaterThanOrEqual(0);
          expect(a.x + 150).toBeLessThanOrEqual(760);
          expect(a.y + 42).toBeLessThanOrEqual(420);
          for (const b of boxes.slice(i + 1))
            expect(Math.abs(a.x - b.x) >= 150 || Math.abs(a.y - b.y) >= 42).toBe(true);
        });
      }),
      { numRuns: 40 },
    );
  });

  it('stays off a curve when it can', () => {
    const points = Array.from({ length: 60 }, (_, i) => [300 + i, 210] as const);
    const [box] = placeBoxes(sized([{ x: 300, y: 210 }]), room, [{ points, cost: 14, crossing: 60 }]);
    const covers = points.filter(([x, y]) => x > box!.x && x < box!.x + 150 && y > box!.y && y < box!.y + 42);
    expect(covers).toEqual([]);
  });

  it('is the same each time', () => {
    const wanted = sized([
      { x: 100, y: 300 },
      { x: 140, y: 310 },
      { x: 500, y: 80 },
    ]);
    expect(placeBoxes(wanted, room, [])).toEqual(placeBoxes(wanted, room, []));
  });
});

function pointLine(hz: number, measured: number, max: number, rule = 'G3'): ScoreLine {
  return {
    ...{
      id: `${rule}:${hz}`,
      rule,
      block: 'response',
      response: 'if',
      points: 0,
      max,
      measured,
      low: 45,
      high: 55,
      unit: 'percent',
    },
    ...{ hz, toHz: null, subject: null, atSeconds: null, cause: null },
  };
}

function reportOf(lines: readonly ScoreLine[], curve: Curve): Report {
  const block = { points: 10, max: 20 };
  const verdict = { stands: false, lacks: [] };
  return {
    rules: 2,
    verdicts: { aligned: verdict, true: verdict, proved: verdict, safe: verdict },
    ...{
      total: 50,
      passed: false,
      wanting: [],
      word: 'swath',
      lines,
      caps: [],
      turns: 1,
      parTurns: 1,
      seconds: 60,
      parSeconds: 60,
    },
    blocks: { response: block, truth: block, proofs: block, care: block, economy: block },
    curves: [{ response: 'if', before: curve, after: curve, nominal: curve }],
  };
}

describe('the points told of', () => {
  const { spec, curve } = SETS[1]!;
  const lines = [
    ...Array.from({ length: 9 }, (_, i) => pointLine(42e6 + i * 5e5, 50, i)),
    pointLine(39.75e6, 80, 0.1, 'G6'),
    pointLine(41e6, 50, 99, 'G8'),
  ];

  it('are the missed ones and then the weightiest, numbered by frequency', () => {
    const told = sheetPoints(reportOf(lines, curve), 'if').filter((p) => p.no !== null);
    expect(told.map((p) => p.no)).toEqual([1, 2, 3, 4, 5, 6]);
    expect(told[0]).toMatchObject({ hz: 39.75e6, met: false });
    expect(told.slice(1).map((p) => p.line.max)).toEqual([4, 5, 6, 7, 8]);
  });

  it('all have a mark in the figure, and a box or a number', () => {
    const report = reportOf(lines, curve);
    for (const width of [800, 360]) {
      const svg = responseFigure(width, 400, report, report.curves[0]!, spec, reportWords);
      for (let no = 1; no <= 6; no++) expect(svg, `${width}: ${no}`).toContain(`>${no}</text>`);
      expect(svg.split('<circle').length - 1).toBe(10 + 6);
    }
    const wide = responseFigure(800, 400, report, report.curves[0]!, spec, reportWords);
    expect(wide).toContain('>80%, wanted 45 to 55<');
    expect(wide).toContain('>as found<');
  });
});

describe('words', () => {
  it('give measured and wanted in few figures', () => {
    const line = pointLine(45.75e6, 53.4, 3);
    expect(reportWords.wants(line)).toBe('53%, wanted 45 to 55');
    expect(reportWords.wants({ ...line, measured: -41.26, low: null, high: -30, unit: 'db' })).toBe(
      '−41.3 dB, wanted −30 or less',
    );
    expect(reportWords.wants({ ...line, measured: 5.94, low: 3.125, high: 6.9 })).toBe('5.9%, wanted 3.1 to 6.9');
  });

  it('compare with the best so far', () => {
    expect([
      reportWords.against(86, 72),
      reportWords.against(72, 72),
      reportWords.against(60, 72),
      reportWords.against(60, null),
    ]).toEqual(['best so far, up 14', 'as good as your best', 'your best is 72', null]);
  });
});
