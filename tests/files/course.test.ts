/** The course as a whole: what a learner must have met by its end. The lists are the project's own; each deception is found on the bench as a scenario begins. */
import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { Facts } from '../../src/bench/facts.ts';
import { firstResponse, initialState } from '../../src/bench/setup.ts';
import { isOff } from '../../src/grading/standing.ts';
import { FAULT_KINDS } from '../../src/receiver/faults/fault.ts';
import type { SheetSetUp } from '../../src/receiver/receiver.ts';
import { responseById } from '../../src/receiver/responses.ts';
import { shippedLibrary } from './shipped.ts';

const { scenarios, receivers } = shippedLibrary();

/** Where all is clipped on, so that what is wrong is wrong by more than not being there. */
const starts = scenarios
  .filter((scenario) => scenario.start.prepared.includes('connect'))
  .map((scenario) => {
    const setup = { ...receivers.get(scenario.receiver)!, scenario };
    const bench = createBench(setup);
    // The sheet's crystals are in: a pip can be too high only where there is one.
    const crystals = [...firstResponse(setup).setUp.markersHz].slice(0, 4);
    const state = { ...initialState(setup), crystals };
    const facts = bench.facts(state);
    return { scenario, facts, sheet: responseById(setup.receiver, facts.response).setUp };
  });

const DECEPTIONS: Readonly<Record<string, (facts: Facts, sheet: SheetSetUp, dialErrorHz: number) => boolean>> = {
  'phasing off': (f, sheet) => isOff('G13', f, sheet),
  'retrace not blanked': (f) => !f.blanking,
  overload: (f, sheet) => isOff('G16', f, sheet),
  'wrong bias': (f) => f.biases.some((b) => b.clamped && Math.abs(b.errorVolts) > b.toleranceVolts),
  'AGC unclamped': (f) => f.biases.some((b) => !b.clamped),
  'probe loading': (f) => !f.yTipAsSheet,
  'lead unterminated': (f) => f.rfConnected && !f.rfTerminated,
  'ground missing': (f) => !f.earthed,
  'pips too high': (f) => f.pipHeightRatio > 0.15,
  'markers through the set': (f) => !f.markersAdded,
  'AC coupling': (f) => !f.dcCoupled,
  'vertical bandwidth too low': (f) => f.verticalLagDegrees > 2,
  'wrong test point': (f) => (f.rfConnected && !f.rfAtSheetPoint) || !f.yAtSheetPoint,
  'mains hum': (f, sheet) => isOff('G57', f, sheet),
  'steel tool in a slug': (f) => f.steelIn !== null,
  'dial error': (_f, _sheet, dialErrorHz) => dialErrorHz !== 0,
  'sweep too fast': (f, sheet) => isOff('G60', f, sheet),
};

test('sixty scenarios and more, each with a number and a place of its own', () => {
  expect(scenarios.length).toBeGreaterThanOrEqual(60);
  expect(new Set(scenarios.map((s) => s.code)).size).toBe(scenarios.length);
  expect(new Set(scenarios.map((s) => `${s.track} ${s.order}`)).size).toBe(scenarios.length);
});

test('every receiver is worked on', () => {
  expect([...receivers.keys()].filter((id) => !scenarios.some((s) => s.receiver === id))).toEqual([]);
});

test('X reversed occurs: a lead that turns left and right round, and the mirror not set for it', () => {
  expect(scenarios.some((s) => s.bench.xSwapped && s.start.controls.mirror !== true)).toBe(true);
});

test('every kind of fault occurs and stands in the description of the format, and once at least two of them together', () => {
  const met = new Set(scenarios.flatMap((s) => s.faults.map((fault) => fault.kind)));
  expect(FAULT_KINDS.filter((kind) => !met.has(kind))).toEqual([]);
  const format = readFileSync('docs/scenario-format.md', 'utf8');
  expect(FAULT_KINDS.filter((kind) => !format.includes(`\`${kind}\``))).toEqual([]);
  expect(scenarios.some((s) => new Set(s.faults.map((fault) => fault.kind)).size > 1)).toBe(true);
});

test('no sheet and no text of a scenario asks for a level as a setting of the source', () => {
  // A difference ("by 6 dB") is none.
  const asked = /[-\u2212]\d+(?:\.\d+)? dB/;
  const texts = [
    ...scenarios.flatMap(({ id, words, hints }) =>
      [...Object.values(words), ...hints].map((text) => [id, text] as const),
    ),
    ...[...receivers].flatMap(([id, { receiver }]) => receiver.procedure.map(({ text }) => [id, text] as const)),
  ];
  expect(texts.length).toBeGreaterThan(300);
  expect(texts.filter(([, text]) => asked.test(text))).toEqual([]);
});

describe('deceptions that stand on the bench as a scenario begins', () => {
  it.each(Object.entries(DECEPTIONS))('%s', (_, found) => {
    const where = starts.filter(({ facts, sheet, scenario }) => found(facts, sheet, scenario.bench.dialErrorHz));
    expect(where.map(({ scenario }) => scenario.id)).not.toEqual([]);
  });
});

test('aids fade along a track: the last of each has no more of them than the first, and a sealed one has none', () => {
  for (const track of new Set(scenarios.map((s) => s.track))) {
    const ordered = scenarios.filter((s) => s.track === track).sort((a, b) => a.order - b.order);
    const aids = ordered.map(({ aids: a }) => Number(a.hints) + Number(a.toleranceMarks));
    expect(aids.at(-1)!, track).toBeLessThanOrEqual(aids[0]!);
  }
  for (const { id, sealed, aids, hints } of scenarios) {
    if (sealed) expect([aids.hints, aids.toleranceMarks, hints.length], id).toEqual([false, false, 0]);
  }
});
