/** A sheet that is worded anew cuts no run off: what it earns is the same, and its file is judged like any other. A receiver that does something else is another one. */
import { describe, expect, it } from 'vitest';
import { certifiedSet } from '../../scripts/makeCourseIndex.ts';
import { good } from '../../src/base/result.ts';
import { scenarioHash } from '../../src/files/scenarioFile.ts';
import { sealRun } from '../../src/files/seal.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import { judgeText } from '../../src/judge/judgeRun.ts';
import { asOfThen } from '../../src/run/earlierSheet.ts';
import { doesHash, EARLIER_TEXTS, EARLIER_WORDS, onlyWordsDiffer } from '../../src/run/earlierWords.ts';
import { receiverHash, serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { runOf } from './runs.ts';

const design = shippedLibrary().receivers.get('loose-can-10m7')!;
const { receiver, deck } = design;
const reworded = {
  receiver: {
    ...receiver,
    title: `${receiver.title}, second printing`,
    procedure: receiver.procedure.map((step) => ({ ...step, text: `${step.text} Mind the lid.` })),
    adjusters: receiver.adjusters.map((adjuster) => ({ ...adjuster, label: 'core' })),
  },
  deck,
};

describe('words of a sheet', () => {
  it('are no part of what a receiver does, and values are', () => {
    expect(receiverHash(reworded)).not.toBe(receiverHash(design));
    expect(doesHash(reworded)).toBe(doesHash(design));
    const table = [[receiverHash(reworded), doesHash(reworded)]] as const;
    expect(onlyWordsDiffer(receiverHash(reworded), design, table)).toBe(true);
    expect(onlyWordsDiffer(receiverHash(reworded), design, [])).toBe(false);
    const [first, ...others] = deck.elements;
    const elements = [{ ...first!, value: 1.01 * ('value' in first! ? first.value : 1) } as typeof first, ...others];
    const changed = { receiver, deck: { ...deck, elements: elements as typeof deck.elements } };
    expect(onlyWordsDiffer(receiverHash(reworded), changed, table)).toBe(false);
    const [slug, ...rest] = receiver.adjusters;
    const longer = {
      receiver: { ...receiver, adjusters: [{ ...slug!, travelTurns: slug!.travelTurns + 1 }, ...rest] },
      deck,
    };
    expect(onlyWordsDiffer(receiverHash(reworded), longer, table)).toBe(false);
  });

  it('of before, in a run file, leave it verified; a receiver that nobody knows does not', () => {
    const setup = setupOf('first-curve');
    const run = demonstrate(setup);
    const file = toRunFile(run, claimOf(grade(setup, run.events)));
    const judged = (hash: string) => {
      const { scenario: _, events, claimed: __, seal: ___, ...head } = { ...file, receiverHash: hash };
      const text = serialiseRunFile({ ...file, receiverHash: hash, seal: sealRun(head, events) });
      return judgeText(text, 'run.json', () => good({ ...setup.design!, scenarioHash: null })).verdict.kind;
    };
    expect(judged(file.receiverHash)).toBe('verified');
    expect(judged('0'.repeat(64))).toBe('foreign');
    const before = EARLIER_WORDS.filter(([, does]) => does === doesHash(setup.design!));
    expect(before.map(([hash]) => judged(hash))).toEqual(before.map(() => 'verified'));
  });

  it('each line of the table names another receiver', () => {
    expect(new Set(EARLIER_WORDS.map(([hash]) => hash)).size).toBe(EARLIER_WORDS.length);
    for (const [hash, does] of EARLIER_WORDS) expect(`${hash}${does}`).toMatch(/^[0-9a-f]{128}$/);
  });
});

describe('a sheet that did not ask for the slow sweep yet', () => {
  const BEFORE = 'd23d7f8855c5a534c1e1912c196df437eefae29c0d4142652f0bc9b1228caa38';
  const setup = setupOf('buzz');
  const then = asOfThen(BEFORE, setup.design!);

  it('is that of today but for the slow sweep', () => {
    const slow = (receiver: typeof then.receiver) => receiver.responses.map((r) => [r.id, r.setUp.slowSweep ?? false]);
    expect(slow(setup.receiver)).toEqual([
      ['snd', false],
      ['vid', true],
      ['s', true],
    ]);
    expect(slow(then.receiver)).toEqual([
      ['snd', false],
      ['vid', false],
      ['s', false],
    ]);
    expect(EARLIER_WORDS).toContainEqual([BEFORE, doesHash(then)]);
    expect(onlyWordsDiffer(BEFORE, setup.design!)).toBe(false);
    expect(asOfThen('0'.repeat(64), setup.design!)).toBe(setup.design!);
  });

  it('is what a run of those days is done again by: a helper left the slow sweep off', () => {
    const bench = { ...setup, receiver: { ...setup.receiver, responses: then.receiver.responses } };
    const run = runOf(bench, [
      { type: 'setUpByHelper' },
      { type: 'toolTaken', tool: 'hex' },
      { type: 'slugTurned', slug: 'T3B', turns: -1 },
      { type: 'signedOff' },
    ]);
    expect(run.state.controls.slowSweep).toBe(false);
    const file = toRunFile(run, claimOf(grade(bench, run.events)));
    const { scenario: _, events, claimed: __, seal: ___, ...head } = { ...file, receiverHash: BEFORE };
    const text = serialiseRunFile({ ...file, receiverHash: BEFORE, seal: sealRun(head, events) });
    const certified = setup.scenario.id;
    const judged = judgeText(text, 'run.json', () =>
      good({ ...setup.design!, scenarioHash: scenarioHash(setup.scenario), known: certifiedSet(certified) }),
    );
    expect(judged.verdict.kind).toBe('verified');
    // By the sheet of today the same acts come to something else: the helper leaves the slow sweep on.
    expect(
      runOf(
        setup,
        run.events.map(({ atMs: _at, ...act }) => act),
      ).state.controls.slowSweep,
    ).toBe(true);
  });
});

const REWORDED = [
  [
    'buzz',
    'Y lead on TP3, level up to 4.5 V from zero to either peak: the S',
    'Level up to \u221226 dB, Y lead on TP3: the S',
  ],
  ['third-pair', 'With 80 mV at the top the limiter', 'Near \u221256 dB the limiter'],
] as const;

describe('words of a scenario', () => {
  const setup = setupOf('flat-top');
  const { scenario } = setup;
  const today = scenarioHash(scenario);
  const judged = (was: typeof scenario): string => {
    const run = demonstrate({ ...setup, scenario: was });
    const text = serialiseRunFile(toRunFile(run, claimOf(grade({ ...setup, scenario: was }, run.events))));
    return judgeText(text, 'run.json', () => good({ ...setup.design!, scenarioHash: today })).verdict.kind;
  };
  const hints = scenario.hints.map((hint) =>
    hint.replace('The sheet says about 0.8 V at the top.', 'The sheet says near −46 dB.'),
  );

  it('of before are in the table, beside those of today', () => {
    expect(hints).not.toEqual(scenario.hints);
    expect(EARLIER_TEXTS).toContainEqual([scenarioHash({ ...scenario, hints }), today]);
    for (const [id, words, earlier] of REWORDED) {
      const one = setupOf(id).scenario;
      const before = { ...one, hints: one.hints.map((hint) => hint.replace(words, earlier)) };
      expect(before).not.toEqual(one);
      expect(EARLIER_TEXTS).toContainEqual([scenarioHash(before), scenarioHash(one)]);
    }
    const now = new Set(shippedLibrary().scenarios.map(scenarioHash));
    for (const [before, after] of EARLIER_TEXTS) expect([now.has(before), now.has(after)]).toEqual([false, true]);
  });

  it('in a run file leave it verified; other words and other values do not', () => {
    expect(judged({ ...scenario, hints })).toBe('verified');
    expect(judged({ ...scenario, hints: hints.map((hint) => `${hint} So it is.`) })).toBe('foreign');
    expect(judged({ ...scenario, hints, toleranceFactor: 1.5 })).toBe('foreign');
  });
});
