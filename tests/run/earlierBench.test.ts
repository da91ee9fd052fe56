/** A run that a bench of before has signed off is done again on that bench: it earns what it claims, although today's has other volts. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ENGINE, ENGINES } from '../../src/base/engine.ts';
import { asSheetSays } from '../../src/bench/asSheetSays.ts';
import { createFaultBook } from '../../src/bench/faultsNow.ts';
import { createPictureMaker } from '../../src/bench/picture.ts';
import { type BenchSetup, firstResponse } from '../../src/bench/setup.ts';
import { readRunFile } from '../../src/files/runFileSchema.ts';
import { judgeText } from '../../src/judge/judgeRun.ts';
import { onBenchOf } from '../../src/run/onBenchOf.ts';
import { createRun } from '../../src/run/runLog.ts';
import { toRunFile } from '../../src/run/serialise.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';

/**
 * What changed since then, of the highest of today's bench, at least: 3 % of lead on the early strip (docs/model.md), pulses between two diodes and circuits of their own on the sound detector, a
 * tuner's S-curve under ten times its sheet's span, the pulses of the probe's current on a can and on its own load.
 */
const RUNS = [
  { id: 'one-of-five', engine: '0.3.0', spans: 1, apart: 0.01 },
  { id: 'buzz', engine: '0.4.0', spans: 1, apart: 0.005 },
  { id: 'zero', engine: '0.5.0', spans: 10, apart: 0.05 },
  { id: 'off-centre', engine: '0.6.0', spans: 1, apart: 0.02 },
  { id: 'dots', engine: '0.6.0', spans: 1, apart: 0.2 },
] as const;

const volts = (setup: BenchSetup, spans: number): Float64Array => {
  const faults = createFaultBook(setup);
  const sheet = asSheetSays(setup, firstResponse(setup), {});
  const state = { ...sheet, controls: { ...sheet.controls, spanHz: spans * sheet.controls.spanHz } };
  return createPictureMaker(setup, faults)(faults(state).really(state)).volts;
};

describe.each(RUNS)('$id of $engine', ({ id, engine, spans, apart }) => {
  const text = readFileSync(new URL(`../fixtures/runsAfresh/${id}-${engine}.json`, import.meta.url), 'utf8');
  const read = readRunFile(text, id);
  if (!read.ok) throw new Error('the run cannot be read');
  const run = read.value;
  const today = setupOf(id);

  it('is of a bench before today\u2019s', () => {
    expect(run.engine).toBe(engine);
    expect(ENGINES.indexOf(engine)).toBeLessThan(ENGINES.indexOf(ENGINE));
  });

  it('earns what it claims', () => {
    const design = shippedLibrary().receivers.get(run.scenario.receiver)!;
    const { verdict } = judgeText(text, id, () => ({ ok: true, value: { ...design, scenarioHash: null } }));
    expect(verdict).toEqual({ kind: 'verified', score: run.claimed });
  });

  it('stands on a bench with other volts, whose own runs name it', () => {
    const before = onBenchOf(run.engine, today);
    const [then, now] = [volts(before, spans), volts(today, spans)];
    const most = Math.max(...now.map(Math.abs));
    expect(Math.max(...now.map((v, i) => Math.abs(then[i]! - v))) / most).toBeGreaterThan(apart);
    expect(toRunFile(createRun(before, null), null).engine).toBe(engine);
    expect(onBenchOf(ENGINE, today)).toBe(today);
    expect(onBenchOf('0.2.0', today)).toBe(today);
  });
});
