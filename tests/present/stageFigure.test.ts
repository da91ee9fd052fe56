/**
 * Figures of the stages between, and levels as detected volts. The curve from a later point is held against the whole network solved by the dense route, diodes and stages
 * included; volts and divisions against the beam of the bench with the sheet's set-up.
 */
import { describe, expect, test } from 'vitest';
import { levelReading, sheetFigures } from '../../src/present/sheetFigures.ts';
import { stageFigures, stageSwept, turnings } from '../../src/present/stageFigure.ts';
import { createDetectedLevels } from '../../src/receiver/detectedLevels.ts';
import { driveAt, onBench, ownLoads, set, worked } from '../bench/shippedSheet.ts';
import { shippedLibrary } from '../files/shipped.ts';

describe('the figure of a stage', () => {
  test.each([
    ['video-solid-45m', 'TP4'],
    ['video-solid-45m', 'TP3'],
    ['video-b-38m9', 'TP3'],
  ])('%s from %s: tops and dips stand as the network has them (within 4 per cent of the top)', (id, at) => {
    const bench = onBench(id, 'if');
    const { stage } = stageFigures(bench.setup, sheetFigures(bench.setup, bench.response), at)!;
    const { receiver } = bench.setup;
    const node = receiver.testPoints.find((point) => point.id === at)!.node!;
    const { quantity } = bench.response;
    if (quantity.kind !== 'carrier') throw new Error('a curve of carriers');
    const fedWith = (amps: number, hz: number): number => {
      const of = worked(bench.deck, driveAt(node), 'Itest', amps, hz, receiver.stages, ownLoads(bench.setup));
      return Math.hypot(...of(quantity.node));
    };
    // The same volts at the detector as the sheet's own level gives from the front.
    const wanted = createDetectedLevels(receiver, bench.deck, bench.response).referenceCarrierVolts;
    const topHz = stage!.peaks.reduce((best, peak) => (peak.level > best.level ? peak : best)).hz;
    let amps = 1e-4;
    for (let round = 0; round < 4; round++) amps *= wanted / fedWith(amps, topHz);
    const volts = (hz: number): number => fedWith(amps, hz);
    const all = [...stage!.peaks, ...stage!.dips];
    const solved = all.map(({ hz }) => volts(hz));
    const top = Math.max(...solved);
    all.forEach(({ level }, i) => {
      expect(Math.abs(solved[i]! / top - level)).toBeLessThan(0.04);
    });
    // To either side of a top it falls, of a dip it rises.
    for (const { hz } of stage!.peaks) expect(volts(hz)).toBeGreaterThan(Math.max(volts(hz - 2e5), volts(hz + 2e5)));
    for (const { hz } of stage!.dips) expect(volts(hz)).toBeLessThan(Math.min(volts(hz - 2e5), volts(hz + 2e5)));
    for (const hz of stage!.halfWayHz ?? []) expect(Math.abs(volts(hz) / top - 0.5)).toBeLessThan(0.04);
  });

  test('the two slugs of an output pair, which answer to one number, each change its figure', () => {
    const bench = onBench('video-solid-45m', 'if');
    const { stage } = stageFigures(bench.setup, sheetFigures(bench.setup, bench.response), 'TP4')!;
    expect(stage!.peaks.length + stage!.dips.length).toBeGreaterThanOrEqual(3);
    expect(Math.abs(stage!.peaks[0]!.level - stage!.peaks.at(-1)!.level)).toBeLessThan(0.2);
  });

  test('only where the lead is farther on than the sheet has it, and something comes through', () => {
    const { setup, response } = onBench('front-to-detector', 'rf');
    const { receiver } = setup;
    const swept = (rf: string | null) => stageSwept(receiver, response, rf);
    expect([null, 'TP5', 'TP8', 'Earth', 'AGC'].map(swept)).toEqual([null, null, null, null, null]);
    expect(swept('TP4')).toBe('TP4');
    // The strip stands behind the mixer: nothing of it comes back there.
    expect(stageFigures(setup, sheetFigures(setup, response), 'TP4')).toBeNull();
  });

  test('turnings of a curve drawn by hand', () => {
    const hz = Float64Array.from({ length: 101 }, (_, i) => i);
    const two = hz.map((f) => Math.exp(-(((f - 30) / 8) ** 2)) + 0.8 * Math.exp(-(((f - 70) / 8) ** 2)));
    expect(turnings({ hz, relative: two }, false)).toMatchObject({
      peaks: [{ hz: 30 }, { hz: 70 }],
      dips: [{}],
      halfWayHz: null,
    });
    const one = hz.map((f) => Math.max(0, 1 - Math.abs(f - 50) / 40));
    expect(turnings({ hz, relative: one }, false)).toMatchObject({
      peaks: [{ hz: 50 }],
      dips: [],
      halfWayHz: [30, 70],
    });
    const s = hz.map((f) => Math.sin(((f - 50) / 50) * Math.PI));
    expect(turnings({ hz, relative: s }, true).peaks.map((peak) => peak.hz)).toEqual([25, 75]);
  });
});

describe('a level as the sheet asks for it', () => {
  const all = [...shippedLibrary().receivers.values()].flatMap(({ receiver }) =>
    receiver.responses
      .filter(({ specification: { peaks } }) => !peaks.some(({ oscillator }) => oscillator === true))
      .map(({ id }) => [receiver.id, id] as const),
  );
  test.each(all)('%s %s stands so high at that click of the Y gain (within 5 per cent)', (id, response) => {
    const bench = onBench(id, response);
    const { voltsPerDiv, div, volts } = levelReading(bench.setup, sheetFigures(bench.setup, bench.response));
    expect(div).toBeLessThanOrEqual(6);
    expect(div).toBeGreaterThan(2);
    expect(volts).toBeCloseTo(div * voltsPerDiv, 9);
    const trace = bench.volts(set('yVoltsPerDiv', voltsPerDiv), set('pipHeightDiv', 0)).trace.map(({ y }) => y);
    const { centreHz, spanHz } = bench.response.setUp;
    const { referenceHz, sCurve } = bench.response.specification;
    const x = bench.volts().trace.map((spot) => spot.x);
    const at = (hz: number): number => {
      const place = (10 * (hz - centreHz)) / spanHz;
      return x.reduce((best, here, i) => (Math.abs(here - place) < Math.abs(x[best]! - place) ? i : best), 0);
    };
    const height =
      referenceHz !== undefined
        ? Math.abs(trace[at(referenceHz)]!)
        : sCurve === null
          ? Math.max(...trace.map(Math.abs))
          : (Math.max(...trace) - Math.min(...trace)) / 2;
    expect(Math.abs(height / volts - 1)).toBeLessThan(0.05);
  });
});

test('an oscillator has its beat in the figure, whole, where the sheet wants it, and nothing a division to either side', () => {
  const { setup, response } = onBench('tuner-vhf', 'osc');
  const { curve, stage } = sheetFigures(setup, response);
  expect(stage).toBeNull();
  const top = curve.relative.indexOf(Math.max(...curve.relative));
  expect([curve.hz[top], curve.relative[top]]).toEqual([221e6, 1]);
  const aside = [...curve.hz].flatMap((hz, i) => (Math.abs(hz - 221e6) > 1.6e6 ? [curve.relative[i]!] : []));
  expect(Math.max(...aside)).toBeLessThan(0.02);
});
