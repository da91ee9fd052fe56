/** The endless track: the same word is the same set, every set can be done, and its run is worth what anybody makes it. */
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { attemptSetup } from '../../src/certify/attempt.ts';
import { certifyScenario } from '../../src/certify/certifyScenario.ts';
import { dealFaults } from '../../src/certify/dealFaults.ts';
import { endlessScenario } from '../../src/certify/endless.ts';
import { checkScenario } from '../../src/files/checkScenario.ts';
import { hashOf } from '../../src/files/hash.ts';
import { scenarioHash, scenarioToFile } from '../../src/files/scenarioFile.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import { grade } from '../../src/grading/grade.ts';
import { heldAgainst } from '../../src/judge/heldAgainst.ts';
import { endlessId, readEndlessId } from '../../src/scenario/endlessId.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { shippedLibrary } from '../files/shipped.ts';

const { receivers } = shippedLibrary();
const make = (id: string) => endlessScenario(receivers, id);
/** What a name made the first time; that it makes the same again is tried of each. */
const made = new Map<string, Scenario | null>();
const known = (id: string): Scenario | null => {
  if (!made.has(id)) made.set(id, make(id));
  return made.get(id)!;
};
const IDS = ([1, 2, 3] as const).flatMap((difficulty) =>
  ['gale', 'ebb', 'lantern7'].map((seed) => endlessId(difficulty, seed)),
);

describe('a scenario of the endless track', () => {
  it.each(IDS)('%s is whole, certified and the same again', (id) => {
    const scenario = known(id);
    expect(scenario).not.toBeNull();
    const loaded = receivers.get(scenario!.receiver)!;
    expect(parseScenario(scenarioToFile(scenario!), `${id}.json`)).toMatchObject({ ok: true });
    expect(checkScenario(scenario!, loaded)).toEqual([]);
    const outcome = certifyScenario({ ...loaded, scenario: scenario! });
    expect(outcome.ok && outcome.certificate.par).toEqual(scenario!.par);
    expect(make(id)).toEqual(scenario);
  });

  it('is the same file whatever the words of the page: its fingerprint is that of the runs that people have kept', () => {
    // From the first release of the track, when scenarios were of the first version.
    const first = (scenario: Scenario | null): unknown => {
      const { recommendedAfter, aids, start, ...same } = scenario!;
      const { randomTurns, ...standing } = start;
      const then = { hints: aids.hints, waxMarks: aids.toleranceMarks, exactReadouts: false };
      return {
        ...same,
        version: 1,
        after: recommendedAfter,
        aids: then,
        start: { ...standing, scatterTurns: randomTurns },
      };
    };
    expect([known('endless-1-gale'), known('endless-2-gale')].map((one) => hashOf(first(one)))).toEqual([
      '7b4cc06315cae96010440162fe688e5aba2c9e9b82bdd0c6d21ab3a071c8e151',
      'e4f8f3b871a827b9ce22ac083ea40d07a0f43f82475eb4455025299938c51528',
    ]);
  });

  it('differs from word to word, and is harder where it is asked to be', () => {
    const all = IDS.map((id) => known(id)!);
    expect(new Set(all.map((s) => JSON.stringify(s.start.slugs) + s.receiver)).size).toBe(IDS.length);
    const mean = (level: number) => {
      const of = all.filter((s) => s.difficulty === level);
      return of.reduce((sum, s) => sum + Object.keys(s.start.slugs).length, 0) / of.length;
    };
    expect(mean(1)).toBeLessThan(mean(2));
    expect(mean(2)).toBeLessThan(mean(3));
  });

  it('can be passed by somebody who sees nothing but the bench', () => {
    const scenario = known(endlessId(1, 'gale'))!;
    const setup = { ...receivers.get(scenario.receiver)!, scenario };
    expect(grade(setup, demonstrate(setup).events).passed).toBe(true);
  });

  it('that is sealed is dealt afresh each attempt, and a run of any is known by whoever has the name', () => {
    const scenario = known(endlessId(3, 'gale'))!;
    const design = receivers.get(scenario.receiver)!;
    const [one, two] = [1, 2].map((number) => {
      const setup = attemptSetup(design, scenario, number);
      if (!setup.ok) throw new Error('not dealt');
      return setup.value;
    }) as [BenchSetup, BenchSetup];
    expect(one.scenario.start.slugs).not.toEqual(two.scenario.start.slugs);
    expect(one.deck).not.toEqual(two.deck);
    expect(heldAgainst(design, scenario, one.scenario, null).scenarioHash).toBe(scenarioHash(one.scenario));
    expect(heldAgainst(design, scenario, { ...one.scenario, attempt: 2 }, null).scenarioHash).toBe(
      scenarioHash(two.scenario),
    );
    // Of the days before: as its name makes it.
    expect(heldAgainst(design, scenario, scenario, null).scenarioHash).toBe(scenarioHash(scenario));
  });

  it('that is sealed has had a part fail in two of five attempts', () => {
    const scenario = known(endlessId(3, 'gale'))!;
    const chance = seededRandom(5);
    const design = receivers.get(scenario.receiver)!;
    const failed = Array.from({ length: 400 }, () => dealFaults(design, scenario, chance).length);
    expect(Math.max(...failed)).toBe(1);
    // 160 of 400, give or take four standard deviations (binomial, 9.8 each).
    expect(Math.abs(failed.filter((count) => count === 1).length - 160)).toBeLessThan(40);
  });

  it.each(['endless-4-a', 'endless-1-', 'endless-1-ABC', 'endless-1-abcdefghijklm', 'first-curve'])(
    '%s is none',
    (id) => {
      expect(readEndlessId(id)).toBeNull();
      expect(make(id)).toBeNull();
    },
  );
});
