/** Attempts at sealed scenarios: dealt afresh, the same again from the same number, of no use to whoever copies the turns of an earlier one, and judged like any run. */
import { describe, expect, it } from 'vitest';
import { certifiedSet } from '../../scripts/makeCourseIndex.ts';
import { RULES_VERSION, type RulesVersion } from '../../src/base/engine.ts';
import { good } from '../../src/base/result.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { attemptSetup, NO_ROOM } from '../../src/certify/attempt.ts';
import { certifyScenario } from '../../src/certify/certifyScenario.ts';
import { earlierHumVolts } from '../../src/certify/dealt.ts';
import { createDemands } from '../../src/certify/demands.ts';
import { worstOf } from '../../src/certify/search.ts';
import { scenarioHash, scenarioToFile } from '../../src/files/scenarioFile.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import { sealRun } from '../../src/files/seal.ts';
import { claimOf, grade, gradeUnder } from '../../src/grading/grade.ts';
import { heldAgainst } from '../../src/judge/heldAgainst.ts';
import { judgeText } from '../../src/judge/judgeRun.ts';
import { workResponses } from '../../src/receiver/responses.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { resumeRun } from '../../src/run/runLog.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { asDealtBefore, isDealtAfresh } from '../../src/scenario/attempt.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { shippedLibrary } from '../files/shipped.ts';

const { receivers, scenarios } = shippedLibrary();
const sealed = scenarios.filter(isDealtAfresh);

function attemptAt(scenario: Scenario, attempt: number): BenchSetup {
  const setup = attemptSetup(receivers.get(scenario.receiver)!, scenario, attempt);
  if (!setup.ok) throw new Error(JSON.stringify(setup.problems));
  return setup.value;
}

/** How far outside the sheet the set is with each failed part cured and each slug turned by so much from where it stands. */
function excessAfter(setup: BenchSetup, turns: Readonly<Record<string, number>>): number {
  const { receiver, deck, scenario, design } = setup;
  const start = initialState(setup).slugs;
  const slugs = receiver.adjusters.map((a) => a.id);
  const demands = createDemands(
    receiver,
    deck,
    workResponses(receiver, scenario),
    scenario.toleranceFactor,
    slugs,
    design!,
  );
  const at = receiver.adjusters.map((a) => {
    const wanted = start[a.id]!.coreTurns + (turns[a.id] ?? 0);
    return [a.id, Math.min(Math.max(wanted, 0), a.travelTurns)];
  });
  return worstOf(demands.standings(Object.fromEntries(at))).excess;
}

/** What whoever knows the answer of an attempt turns. */
function turnsOf(setup: BenchSetup): Readonly<Record<string, number>> {
  const start = initialState(setup).slugs;
  return Object.fromEntries(setup.receiver.adjusters.map((a) => [a.id, nominalTurns(a) - start[a.id]!.coreTurns]));
}

describe('attempts', () => {
  it('are dealt for the sealed scenarios of the course, and for no other', () => {
    expect(sealed.map((s) => s.id).sort()).toEqual(
      scenarios
        .filter((s) => s.sealed)
        .map((s) => s.id)
        .sort(),
    );
    expect(sealed.length).toBeGreaterThan(5);
    expect(isDealtAfresh(attemptAt(sealed.find((s) => s.id === 'can-examined')!, 1).scenario)).toBe(false);
  });

  describe.each(sealed.map((s) => [s.id, s] as const))('at %s', (_, scenario) => {
    const first = attemptAt(scenario, 11);
    const second = attemptAt(scenario, 12);

    it('differ in set and start, and not in what the scenario is about', () => {
      expect(first.scenario.set).not.toBe(second.scenario.set);
      expect(first.deck).not.toEqual(second.deck);
      expect(first.scenario.start.slugs).not.toEqual(second.scenario.start.slugs);
      const own = ({ attempt, set, seed, start, bench, par, faults, life, ...rest }: Scenario) => ({
        ...rest,
        faults: rest.dealsFaults === true ? [] : faults,
        start: { ...start, slugs: Object.keys(start.slugs).length },
        life: { ...life, strapHumVolts: 0 },
        xSwapped: bench.xSwapped,
        lies: [bench.phaseLagDegrees !== 0, bench.dialErrorHz !== 0, (bench.centreErrorHz ?? 0) !== 0],
        made: [attempt, set, seed, par].every((one) => one !== undefined),
      });
      expect(own(first.scenario)).toEqual({ ...own({ ...scenario, attempt: 0 }) });
      expect(own(second.scenario)).toEqual(own(first.scenario));
    });

    it('are the same again from the same number, and scenarios like any other', () => {
      expect(attemptAt(scenario, 11)).toEqual(first);
      expect(parseScenario(JSON.parse(JSON.stringify(scenarioToFile(first.scenario))), 'attempt.json')).toEqual(
        good(first.scenario),
      );
      const outcome = certifyScenario(first, { spot: true });
      expect(outcome.ok && outcome.certificate.par).toEqual(first.scenario.par);
    });

    it('are met by their own turns, and not by those of another', () => {
      for (const [setup, other] of [
        [first, second],
        [second, first],
      ] as const) {
        expect(excessAfter(setup, turnsOf(setup))).toBeLessThan(0);
        expect(excessAfter(setup, turnsOf(other))).toBeGreaterThan(0);
        expect(excessAfter(setup, {})).toBeGreaterThan(0);
      }
    });
  });
});

describe('the set of an attempt', () => {
  const radio = sealed.find((s) => s.id === 'radio-sealed')!;
  const design = receivers.get(radio.receiver)!;
  /** A number whose first set came inside its sheet by less than a hand can set and an eye can read. */
  const TIGHT = 21;
  const tight = attemptSetup(design, radio, TIGHT, () => {}, NO_ROOM);
  if (!tight.ok) throw new Error(JSON.stringify(tight.problems));
  const first = tight.value;

  it('leaves room to work in at its best place, where it was dealt without', () => {
    const today = attemptAt(radio, TIGHT);
    expect(excessAfter(first, turnsOf(first))).toBeGreaterThan(-0.15);
    expect(excessAfter(today, turnsOf(today))).toBeLessThan(-0.15);
    expect(today.scenario.set).not.toBe(first.scenario.set);
  });

  it('is the same as ever where there was room', () => {
    const ever = attemptSetup(design, radio, TIGHT + 1, () => {}, NO_ROOM);
    expect(ever.ok && ever.value.scenario).toEqual(attemptAt(radio, TIGHT + 1).scenario);
  });

  it('is what a run is held against, the one of before where the run has it', () => {
    const held = ({ scenario }: BenchSetup) =>
      heldAgainst(design, radio, scenario, certifiedSet(radio.id)).scenarioHash;
    for (const setup of [first, attemptAt(radio, TIGHT)]) expect(held(setup)).toBe(scenarioHash(setup.scenario));
    const nobodys = { ...first, scenario: { ...first.scenario, set: 1 } };
    expect(held(nobodys)).not.toBe(scenarioHash(nobodys.scenario));
  });
});

describe('a run of an attempt', () => {
  const scenario = sealed.find((s) => s.id === 'can-examined')!;
  const design = receivers.get(scenario.receiver)!;
  const setup = attemptAt(scenario, 21);
  const run = demonstrate(setup);
  const text = (changed: Partial<Scenario> = {}): string => {
    const on = { ...setup, scenario: { ...setup.scenario, ...changed } };
    return serialiseRunFile(toRunFile({ ...run, setup: on }, claimOf(grade(on, run.events))));
  };
  const judged = (file: string) =>
    judgeText(file, 'run.json', (its) => good(heldAgainst(design, scenario, its, certifiedSet(scenario.id))));

  /** As a bench of these rules wrote it. */
  const underRules = (rules: RulesVersion, on: BenchSetup, { events, learner }: typeof run): string => {
    const file = {
      ...toRunFile({ setup: on, events, learner } as typeof run, claimOf(gradeUnder(rules)(on, events))),
      rules,
    };
    return serialiseRunFile({ ...file, seal: sealRun(file, events) });
  };

  it('is passed by the technician, and verified by whoever makes the attempt again', () => {
    expect(grade(setup, run.events).passed).toBe(true);
    expect(judged(text())).toMatchObject({ verdict: { kind: 'verified' }, scenarioKnown: true });
  });

  it.each<[string, Partial<Scenario>]>([
    ['another number', { attempt: 22 }],
    ['another set', { set: 1 }],
    ['slugs that stand nearer', { start: { ...setup.scenario.start, slugs: { T1B: 0.125 } } }],
    ['an easier par', { par: { turns: 90, seconds: 900 } }],
  ])('is foreign with %s in it', (_, changed) => {
    expect(judged(text(changed)).verdict).toMatchObject({ kind: 'foreign', part: 'scenario' });
  });

  it('has a hum of its own without the strap, and the Y gain of its scenario, for the sheet asks for volts', () => {
    const lives = Array.from({ length: 12 }, (_, i) => attemptAt(scenario, 100 + i).scenario.life!);
    const hums = lives.map(({ strapHumVolts }) => strapHumVolts!);
    expect(new Set(hums).size).toBeGreaterThan(8);
    expect(Math.max(...hums) / Math.min(...hums)).toBeGreaterThan(3);
    expect(lives.map(({ yGainError }) => yGainError)).toEqual(lives.map(() => scenario.life?.yGainError));
  });

  it('earns no pass when its acts are done again on other attempts', () => {
    for (const number of [22, 23, 24, 25]) {
      const other = attemptAt(scenario, number);
      const copied = resumeRun(other, null, run.events).run;
      expect(grade(other, copied.events).passed).toBe(false);
    }
  });

  it('of the days before the hum was dealt is verified as it was', () => {
    const { strapHumVolts, ...life } = setup.scenario.life!;
    expect(strapHumVolts).toBeGreaterThan(0);
    const before = { ...setup, scenario: { ...setup.scenario, life } };
    expect(asDealtBefore(setup.scenario)).toEqual(before.scenario);
    const old = demonstrate(before);
    expect(judged(underRules(5, before, old))).toMatchObject({ verdict: { kind: 'verified' }, scenarioKnown: true });
    // Whoever writes it into a run of today has chosen a hum that all know.
    expect(judged(underRules(RULES_VERSION, before, old)).verdict).toMatchObject({ kind: 'foreign', part: 'scenario' });
    // A hum that nobody dealt is nobody's.
    expect(
      judged(text({ life: { ...life, strapHumVolts: strapHumVolts === 0.1 ? 0.11 : 0.1 } })).verdict,
    ).toMatchObject({ kind: 'foreign', part: 'scenario' });
  });

  it('of the days when the hum was the same on every receiver is verified as it was', () => {
    const { life } = setup.scenario;
    const hum = earlierHumVolts(setup.scenario)!;
    expect(hum).toBeGreaterThanOrEqual(0.025);
    expect(hum).toBeLessThanOrEqual(0.25);
    const before = { ...setup, scenario: { ...setup.scenario, life: { ...life, strapHumVolts: hum } } };
    const old = demonstrate(before);
    const file = (volts: number): string => {
      const on = { ...before, scenario: { ...before.scenario, life: { ...life, strapHumVolts: volts } } };
      return underRules(5, on, old);
    };
    expect(judged(file(hum))).toMatchObject({ verdict: { kind: 'verified' }, scenarioKnown: true });
    expect(judged(file(hum + 0.01)).verdict).toMatchObject({ kind: 'foreign', part: 'scenario' });
  });

  it('of the days before attempts is read and verified as it was', () => {
    const found = heldAgainst(design, scenario, scenario, certifiedSet(scenario.id));
    expect(found.scenarioHash).not.toBeNull();
    expect(found.known).toEqual(certifiedSet(scenario.id));
  });
});
