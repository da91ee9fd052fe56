/** What must hold for any bench and any run of events, however foolish. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import { type Bench, createBench } from '../../src/bench/bench.ts';
import type { BenchEvent, ControlId } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { controlRange } from '../../src/bench/controlRange.ts';
import { type BenchSetup, initialState, RESTING_CONTROLS } from '../../src/bench/setup.ts';
import { canSetup, readySetup, sheetStart, stripSetup } from './fixture.ts';

const lagging = { phaseLagDegrees: 17, xSwapped: true, mainsHz: 50, dialErrorHz: -40e3 } as const;
const SETUPS: readonly BenchSetup[] = [
  canSetup({ start: { ...sheetStart(canSetup()), randomTurns: 4 }, bench: lagging }),
  stripSetup({ start: { ...sheetStart(stripSetup()), randomTurns: 4 }, bench: lagging }),
  stripSetup(),
];

const odd = fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -0, 1e308, -5);

function controlEvents(setup: BenchSetup): fc.Arbitrary<BenchEvent> {
  const controls = Object.keys(RESTING_CONTROLS) as ControlId[];
  return fc.constantFrom(...controls).chain((control): fc.Arbitrary<BenchEvent> => {
    const range = controlRange(setup, control);
    const value: fc.Arbitrary<number | boolean | string> =
      range.kind === 'switch'
        ? fc.boolean()
        : range.kind === 'choice'
          ? fc.constantFrom(...range.choices)
          : fc.oneof(
              {
                weight: 8,
                arbitrary: fc
                  .integer({ min: 0, max: 20 })
                  .map((k) => Math.round(range.min + ((range.max - range.min) * k) / 20)),
              },
              { weight: 1, arbitrary: odd },
            );
    return value.map((v) => ({ type: 'controlSet', control, value: v }));
  });
}

function anyEvent(setup: BenchSetup): fc.Arbitrary<BenchEvent> {
  const { receiver } = setup;
  const lead = fc.constantFrom('rf', 'y', 'x', 'earth', 'biasA', 'biasB', 'meter' as const);
  const end = fc.constantFrom('tube', 'hot', 'nowhere', ...receiver.testPoints.map((p) => p.id));
  const slug = fc.constantFrom('none', ...receiver.adjusters.map((a) => a.id));
  const turns = fc.oneof(
    { weight: 9, arbitrary: fc.double({ min: -2, max: 2, noNaN: true }) },
    { weight: 1, arbitrary: odd },
  );
  const hz = fc.constantFrom(1, ...receiver.crystalsHz);
  return fc.oneof(
    { weight: 8, arbitrary: controlEvents(setup) },
    { weight: 5, arbitrary: fc.record({ type: fc.constant('slugTurned' as const), slug, turns }) },
    {
      weight: 3,
      arbitrary: fc.record({ type: fc.constant('leadConnected' as const), lead, to: end }) as fc.Arbitrary<BenchEvent>,
    },
    {
      weight: 2,
      arbitrary: fc.record({ type: fc.constant('leadRemoved' as const), lead }) as fc.Arbitrary<BenchEvent>,
    },
    {
      weight: 2,
      arbitrary: fc
        .constantFrom('hex', 'blade', 'steel', null)
        .map((tool): BenchEvent => ({ type: 'toolTaken', tool: tool as 'hex' })),
    },
    { weight: 1, arbitrary: fc.record({ type: fc.constant('toolPlaced' as const), slug }) },
    { weight: 2, arbitrary: fc.record({ type: fc.constant('crystalPlugged' as const), hz }) },
    { weight: 1, arbitrary: fc.record({ type: fc.constant('crystalPulled' as const), hz }) },
    { weight: 1, arbitrary: fc.constant<BenchEvent>({ type: 'cautionsAcknowledged' }) },
    { weight: 1, arbitrary: fc.constant<BenchEvent>({ type: 'setUpByHelper' }) },
    { weight: 1, arbitrary: fc.constant<BenchEvent>({ type: 'isolationSwitched', on: true }) },
    { weight: 1, arbitrary: fc.boolean().map((on): BenchEvent => ({ type: 'powerSwitched', on })) },
    {
      weight: 1,
      arbitrary: fc.record({ type: fc.constant('readingTaken' as const), what: fc.string(), value: fc.double() }),
    },
    {
      weight: 1,
      arbitrary: fc.record({ type: fc.constant('hintAsked' as const), index: fc.integer({ min: -1, max: 3 }) }),
    },
    { weight: 1, arbitrary: fc.constant<BenchEvent>({ type: 'partReplaced', element: 'RQ1' }) },
    {
      weight: 1,
      arbitrary: fc.constantFrom<BenchEvent>(
        ...['C2', null].map((element) => ({ type: 'partBridged', element }) as const),
      ),
    },
  );
}

const stepsOf = (setup: BenchSetup) =>
  fc.array(fc.tuple(anyEvent(setup), fc.integer({ min: 0, max: 3000 })), { minLength: 1, maxLength: 40 });

/** Every state that the run passes through, refused events left out. */
function runThrough(setup: BenchSetup, steps: readonly (readonly [BenchEvent, number])[]): BenchState[] {
  const states = [initialState(setup)];
  let ms = 0;
  for (const [event, wait] of steps) {
    ms += wait;
    const before = states.at(-1)!;
    const frozen = JSON.stringify(before);
    const applied = applyEvent(setup, before, event, ms / 1000);
    expect(JSON.stringify(before)).toBe(frozen);
    if (applied.ok) states.push(applied.state);
  }
  return states;
}

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(numbersIn);
}

function pictureOf(bench: Bench, state: BenchState) {
  const display = bench.display(state);
  return { ...display, beam: Float32Array.from(display.beam.data), facts: bench.facts(state) };
}

describe.each([0, 1, 2])('on bench %i', (which) => {
  const setup = SETUPS[which]!;

  test('events never throw, states survive JSON and hold no number that is none', () => {
    fc.assert(
      fc.property(stepsOf(setup), (steps) => {
        for (const state of runThrough(setup, steps)) {
          expect(JSON.parse(JSON.stringify(state))).toEqual(state);
          expect(numbersIn(state).every(Number.isFinite)).toBe(true);
        }
      }),
      { numRuns: 60, seed: 11 },
    );
  });

  test('the same events give the same states, also from a state that was put away and taken up again', () => {
    fc.assert(
      fc.property(stepsOf(setup), fc.nat(), (steps, at) => {
        const whole = runThrough(setup, steps);
        expect(runThrough(setup, steps)).toEqual(whole);
        const middle = whole[at % whole.length]!;
        const next: BenchEvent = { type: 'toolTaken', tool: middle.tool === 'hex' ? 'blade' : 'hex' };
        const kept: BenchState = JSON.parse(JSON.stringify(middle));
        expect(applyEvent(setup, kept, next, 1e6)).toEqual(applyEvent(setup, middle, next, 1e6));
      }),
      { numRuns: 30, seed: 12 },
    );
  });

  test('picture and facts are finite, and do not depend on what was asked before', () => {
    const used = createBench(setup);
    fc.assert(
      fc.property(stepsOf(setup), (steps) => {
        const states = runThrough(setup, steps);
        for (const state of states.slice(-4)) {
          const seen = pictureOf(used, state);
          expect(seen.beam.every(Number.isFinite)).toBe(true);
          expect(numbersIn({ ...seen, beam: null }).every(Number.isFinite)).toBe(true);
          expect(pictureOf(createBench(setup), state)).toEqual(seen);
        }
        const last = states.at(-1)!;
        expect(used.truth(last)).toEqual(createBench(setup).truth(last));
      }),
      { numRuns: 8, seed: 13 },
    );
  });

  test('slugs stay on their thread and cores within half the backlash of their screws', () => {
    fc.assert(
      fc.property(stepsOf(setup), (steps) => {
        const state = runThrough(setup, steps).at(-1)!;
        for (const adjuster of setup.receiver.adjusters) {
          const slug = state.slugs[adjuster.id]!;
          expect(slug.screwTurns).toBeGreaterThanOrEqual(0);
          expect(slug.screwTurns).toBeLessThanOrEqual(adjuster.travelTurns);
          expect(Math.abs(slug.screwTurns - slug.coreTurns)).toBeLessThanOrEqual(adjuster.backlashTurns / 2 + 1e-12);
        }
      }),
      { numRuns: 60, seed: 14 },
    );
  });
});

test('the truth asks only for the slugs', () => {
  const setup = readySetup(stripSetup);
  const bench = createBench(setup);
  const state = initialState(setup);
  const curve = bench.truth(state);
  const spoilt: BenchState = {
    ...state,
    powered: false,
    leads: { ...state.leads, rf: null, biasA: null },
    controls: { ...state.controls, levelDb: 0, biasAVolts: 12 },
  };
  expect(bench.truth(spoilt)).toEqual(curve);
});
