/** What was seen during a proof: it is held against the tube of that moment, and nobody comes by it without looking. */
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { choicesOffered } from '../../src/bench/finding.ts';
import { mostSaid } from '../../src/bench/mostSaid.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { findingFits, heightShown, pipAskedFor, trueFinding, witnessOf } from '../../src/bench/witness.ts';
import { ANSWERS } from '../../src/scenario/findingAnswer.ts';
import type { ProofId } from '../../src/scenario/proofId.ts';
import { MOST_READ } from '../adversaries/hands.ts';
import { proofsOn, stateAfter, wholeJob } from '../session/acts.ts';
import { canSetup, stripSetup } from '../session/setups.ts';

type Acts = readonly BenchEvent[];
const allProofs = (setup: BenchSetup): BenchSetup => ({
  ...setup,
  scenario: { ...setup.scenario, proofs: proofsOn(setup) },
});
const setup = allProofs(canSetup());
const said = (act: BenchEvent): boolean => act.type === 'findingStated';
const unsigned = (of: BenchSetup): Acts => wholeJob(of).filter((act) => act.type !== 'signedOff');
const proved = stateAfter(
  setup,
  unsigned(setup).filter((act) => !said(act)),
  initialState(setup),
);
const say = (state: BenchState, event: BenchEvent, at = setup): BenchState => {
  const applied = applyEvent(at, state, event, state.seconds + 1);
  if (!applied.ok) throw new Error(applied.reason);
  return applied.state;
};

const strip = allProofs(stripSetup());
const stripProved = stateAfter(
  strip,
  unsigned(strip).filter((act) => !said(act)),
  initialState(strip),
);
const sets = [
  ...setup.scenario.proofs.map((proof) => [proof, 'a can', setup, proved] as const),
  ...strip.scenario.proofs.map((proof) => [proof, 'a strip', strip, stripProved] as const),
];

describe('a finding', () => {
  test.each(sets)(
    'of %s on %s fits where it is what was to be seen, and not well beside it',
    (proof, _, setup, proved) => {
      const right = trueFinding(setup, proved, proof) as Extract<BenchEvent, { type: 'findingStated' }>;
      expect(findingFits(setup, say(proved, right, setup), proof)).toBe(true);
      const witness = witnessOf(setup, proved, proof)!;
      const wrong = ANSWERS[proof].find((answer) => !witness.answers.includes(answer))!;
      expect(findingFits(setup, say(proved, { ...right, answer: wrong }, setup), proof)).toBe(false);
      if (right.figure !== null) {
        const off = { ...right, figure: 1.1 * witness.figure!.high + 0.1 };
        expect(findingFits(setup, say(proved, off, setup), proof)).toBe(false);
        expect(findingFits(setup, say(proved, { ...right, figure: null }, setup), proof)).toBe(false);
      }
      expect(findingFits(setup, say(proved, { ...right, answer: 'notLooked' }, setup), proof)).toBe(false);
    },
  );

  describe('of pips that are turned down click by click', () => {
    const clicks = (from: number): BenchState => {
      const pips = (value: number): BenchEvent => ({ type: 'controlSet', control: 'pipHeightDiv', value });
      const stood = stateAfter(setup, [pips(0), pips(from)], proved, 5);
      const left = { ...stood, proofs: initialState(setup).proofs };
      const steps = Array.from({ length: Math.round(10 * from) }, (_, i) => i / 10);
      const down = steps.toReversed().map(pips);
      const up = [...steps.slice(1), from].map(pips);
      return stateAfter(setup, [...down, ...up], left, 0.05);
    };

    test('they went, however small the last click had them', () => {
      expect(witnessOf(setup, clicks(0.5), 'markersOffOn')!.answers).toEqual(['pipsOnly']);
    });

    test('pips that could hardly be seen where they stood were none', () => {
      expect(witnessOf(setup, clicks(0.05), 'markersOffOn')!.answers).toEqual(['noPips']);
    });
  });

  test('reads the height with the level halved off the beam of that moment', () => {
    const { away } = proved.proofs.halveLevel.act!;
    expect(away.controls.levelDb).toBe(proved.controls.levelDb - 6);
    // By hand, from the beam: the highest point of the forward trace over the blanked retrace, less half of what pips may add.
    const { beam } = createBench(setup).display(away);
    const y = Array.from({ length: beam.count }, (_, i) => beam.data[3 * i + 1]!);
    const base = y.slice(beam.count / 2).sort((a, b) => a - b)[beam.count / 4]!;
    const height = Math.max(...y.slice(0, beam.count / 2)) - base;
    const { figure } = witnessOf(setup, proved, 'halveLevel')!;
    expect(height).toBeGreaterThan(figure!.low);
    expect(height - away.controls.pipHeightDiv / 2).toBeLessThan(figure!.high);
  });

  test('of a pip low down is in decibels: 20 lg of the ratio of two heights, and what the gain was turned by', () => {
    const { away, rest } = stripProved.proofs.pipDown.act!;
    const no = pipAskedFor(strip, stripProved, 'pipDown')!;
    const bench = createBench(strip);
    // By hand, from the beam without pips: forward trace over the blanked retrace.
    const traceOf = (state: BenchState) => {
      const { beam } = bench.display({ ...state, controls: { ...state.controls, pipHeightDiv: 0 } });
      const points = Array.from({ length: beam.count }, (_, i) => ({ x: beam.data[3 * i]!, y: beam.data[3 * i + 1]! }));
      const base = points
        .slice(beam.count / 2)
        .map(({ y }) => y)
        .sort((a, b) => a - b)[beam.count / 4]!;
      return points.slice(0, beam.count / 2).map(({ x, y }) => ({ x, y, height: Math.abs(y - base) }));
    };
    const top = Math.max(...traceOf(rest).map(({ height }) => height));
    const xDiv = bench
      .display(rest)
      .tags.flatMap((tag) => (tag.xDiv === null ? [] : [tag.xDiv]))
      .sort((a, b) => a - b)[no - 1]!;
    const pointOn = (state: BenchState) =>
      traceOf(state).reduce((a, b) => (Math.abs(b.x - xDiv) < Math.abs(a.x - xDiv) ? b : a));
    // Where the large picture runs off the face, 4 divisions from its middle, the plain one is read.
    const isOff = Math.abs(pointOn(away).y) > 4;
    const read = pointOn(isOff ? rest : away).height;
    const gainDb = 20 * Math.log10(rest.controls.yVoltsPerDiv / away.controls.yVoltsPerDiv);
    const levelDb = away.controls.levelDb - rest.controls.levelDb;
    const down = 20 * Math.log10(top / read) + (isOff ? 0 : gainDb + levelDb);
    const { answers, figure } = witnessOf(strip, stripProved, 'pipDown')!;
    expect(down).toBeGreaterThan(figure!.low);
    expect(down).toBeLessThan(figure!.high);
    expect(figure!.high - figure!.low).toBeLessThan(8);
    expect(answers).toContain(down > 20 ? 'atFoot' : 'onSlope');
  });

  test('of the bias is what the needle showed, on the range that holds it', () => {
    const { away } = stripProved.proofs.bias.act!;
    const volts = Math.abs(createBench(strip).display(away).meterVolts);
    const { answers, figure } = witnessOf(strip, stripProved, 'bias')!;
    expect(answers).toContain('asSheet');
    // Centre zero, ten small divisions to a range: half of one is 0.15 V of 3.
    expect([figure!.low, figure!.high].map((end) => Math.abs(end - volts))).toEqual([
      expect.closeTo(0.15 + 0.02 * volts, 6),
      expect.closeTo(0.15 + 0.02 * volts, 6),
    ]);
    const lines = strip.receiver.responses[0]!.setUp.biases;
    expect(Math.abs(volts - Math.abs(lines[0]!.volts))).toBeLessThan(0.3);
  });

  test('of one crystal is its own pip: the side on which it stood, and the curve there', () => {
    const { away, rest } = proved.proofs.liftCrystal.act!;
    const hz = rest.crystals.find((one) => !away.crystals.includes(one))!;
    const { xDiv } = createBench(setup)
      .display(rest)
      .tags.find((tag) => tag.hz === hz)!;
    const { answers, figure } = witnessOf(setup, proved, 'liftCrystal')!;
    expect(answers).toContain(xDiv! < 0 ? 'pipLeft' : 'pipRight');
    const bare = { ...away, controls: { ...away.controls, pipHeightDiv: 0 } };
    const there = heightShown(setup, bare, xDiv!)!;
    expect(there).toBeGreaterThan(figure!.low);
    expect(there).toBeLessThan(figure!.high);
    const none = {
      ...proved,
      proofs: { ...proved.proofs, liftCrystal: { ...proved.proofs.liftCrystal, act: { away, rest: away } } },
    };
    expect(witnessOf(setup, none, 'liftCrystal')!.answers).toEqual(['noPipWent']);
  });

  test('looks where the knob rested longest while it was away, not at where it came past', () => {
    const levelDb = proved.controls.levelDb - 12;
    let state = say(proved, { type: 'findingStated', proof: 'halveLevel', answer: 'again', figure: null });
    const level = (value: number, after: number): void => {
      const event = { type: 'controlSet', control: 'levelDb', value } as const;
      const applied = applyEvent(setup, state, event, state.seconds + after);
      if (!applied.ok) throw new Error(applied.reason);
      state = applied.state;
    };
    // Far away from where it first stood, and for minutes: but that is not where it comes back to.
    level(levelDb, 1);
    level(levelDb - 6, 200);
    level(levelDb - 5, 8);
    level(levelDb, 0.2);
    expect(state.proofs.halveLevel.done).toBe(true);
    expect(state.proofs.halveLevel.act!.away.controls.levelDb).toBe(levelDb - 6);
  });

  test('is refused before its act, falls when a slug moves, and may be made again', () => {
    const start = initialState(setup);
    const early = applyEvent(setup, start, trueFinding(setup, proved, 'halveLevel'), 1);
    expect(early).toEqual({ ok: false, reason: 'nothingProved' });
    const again = say(proved, { type: 'findingStated', proof: 'skirts', answer: 'again', figure: null });
    expect(again.proofs.skirts.done).toBe(false);
    const slug = setup.receiver.adjusters[0]!;
    const tool = slug.head === 'hex' ? 'hex' : 'blade';
    const turned = stateAfter(
      setup,
      [
        { type: 'toolTaken', tool },
        { type: 'slugTurned', slug: slug.id, turns: 0.25 },
      ],
      say(proved, trueFinding(setup, proved, 'halveLevel')),
    );
    expect(findingFits(setup, turned, 'halveLevel')).toBe(false);
  });

  test('is asked once more in practice, and once in all where the job is sealed', () => {
    const wrong = { type: 'findingStated', proof: 'skirts', answer: 'offFace', figure: 0 } as const;
    let state = proved;
    for (let i = 0; i < mostSaid({ sealed: false }); i++) state = say(state, wrong);
    expect(applyEvent(setup, state, wrong, state.seconds + 1)).toEqual({ ok: false, reason: 'alreadySaid' });
    const sealed = { ...setup, scenario: { ...setup.scenario, sealed: true } };
    const once = applyEvent(sealed, proved, wrong, proved.seconds + 1);
    expect(once.ok && applyEvent(sealed, once.state, wrong, once.state.seconds + 1)).toEqual({
      ...{ ok: false, reason: 'alreadySaid' },
    });
  });

  test('that was missed is asked anew by the act itself, and what was made stands until then', () => {
    const { levelDb } = proved.controls;
    const level = (value: number): BenchEvent => ({ type: 'controlSet', control: 'levelDb', value });
    const missed = say(proved, { type: 'findingStated', proof: 'halveLevel', answer: 'notLooked', figure: null });
    const down = say(missed, level(levelDb - 6));
    expect(down.proofs.halveLevel).toMatchObject({ done: true, finding: { answer: 'notLooked' } });
    const back = say(down, level(levelDb));
    expect([back.proofs.halveLevel.done, back.proofs.halveLevel.finding]).toEqual([true, undefined]);
    // A finding that holds is not lost by the same act.
    const found = say(proved, trueFinding(setup, proved, 'halveLevel'));
    const again = say(say(found, level(levelDb - 6)), level(levelDb));
    expect(findingFits(setup, again, 'halveLevel')).toBe(true);
  });

  test('an answer of another proof is no answer', () => {
    const strange = { type: 'findingStated', proof: 'skirts', answer: 'humCame', figure: 1 } as const;
    expect(applyEvent(setup, proved, strange, proved.seconds + 1)).toEqual({ ok: false, reason: 'valueOutOfRange' });
  });
});

test('a place among the choices tells nothing', () => {
  const at = new Map<string, Set<number>>();
  for (let seed = 0; seed < 200; seed++) {
    const other = { ...setup, scenario: { ...setup.scenario, seed } };
    choicesOffered(other, proved, 'halveLevel').forEach((answer, i) => {
      at.set(answer, (at.get(answer) ?? new Set()).add(i));
    });
  }
  expect([...at.values()].map((places) => places.size)).toEqual([4, 4, 4, 4]);
});

describe.each([
  ['a can', setup],
  ['a strip', strip],
])('answers at random, %s', (_, of) => {
  const done = stateAfter(
    of,
    unsigned(of).filter((act) => !said(act)),
    initialState(of),
  );
  test.each<ProofId>([...of.scenario.proofs])('prove %s in less than a quarter of all tries', (proof) => {
    const random = seededRandom(4242);
    const witness = witnessOf(of, done, proof)!;
    const tries = 2000;
    let hits = 0;
    for (let n = 0; n < tries; n++) {
      const answer = ANSWERS[proof][Math.floor(4 * random())]!;
      const figure = MOST_READ[proof] * random();
      const near = witness.figure === null || (figure >= witness.figure.low && figure <= witness.figure.high);
      if (near && witness.answers.includes(answer)) hits++;
    }
    expect(hits / tries).toBeLessThan(0.25);
  });
});
