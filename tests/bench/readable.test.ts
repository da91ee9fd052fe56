/** Where a proof is read: on a picture that can be read, and in a sealed job at a place or a pip that the attempt picks. The rules are the project's own (docs/grading.md, G64). */
import { describe, expect, test } from 'vitest';
import { RULES_VERSION } from '../../src/base/engine.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import {
  findingFits,
  findingsOf,
  heightShown,
  pipAskedFor,
  placeAskedFor,
  trueFinding,
  unreadable,
  witnessOf,
} from '../../src/bench/witness.ts';
import type { ProofId } from '../../src/scenario/proofId.ts';
import { proofActs, proofsOn, stateAfter, wholeJob } from '../session/acts.ts';
import { stripSetup } from '../session/setups.ts';

const PROOFS: readonly ProofId[] = ['halveLevel', 'markersOffOn', 'touchEarth', 'swingPhase', 'skirts', 'pipDown'];
const known = new Map<number, BenchSetup>();
/** The bench of a seed, the same each time: what was drawn for it is kept with it. */
const sealedAs = (seed: number): BenchSetup => {
  const one = known.get(seed) ?? sealedAnew(seed);
  known.set(seed, one);
  return one;
};
const sealedAnew = (seed: number): BenchSetup => {
  const strip = stripSetup();
  const { scenario } = strip;
  const life = { ...scenario.life, strapHumVolts: 0.05 };
  const proofs = proofsOn(strip).filter((proof) => PROOFS.includes(proof));
  return { ...strip, scenario: { ...scenario, sealed: true, attempt: 1, seed, life, proofs } };
};
const setup = sealedAs(7);
const practice: BenchSetup = { ...setup, scenario: { ...setup.scenario, sealed: false } };
const unsigned = wholeJob(setup).filter(({ type }) => type !== 'signedOff' && type !== 'findingStated');
const ready = { ...stateAfter(setup, unsigned, initialState(setup)), proofs: initialState(setup).proofs };
const set = (control: Extract<BenchEvent, { type: 'controlSet' }>['control'], value: number): BenchEvent => ({
  ...({ type: 'controlSet', control } as const),
  value,
});
/** The act of a proof with these knobs changed before it. */
const madeWith = (proof: ProofId, ...acts: readonly BenchEvent[]): BenchState => {
  const changed = { ...stateAfter(setup, acts, ready), proofs: ready.proofs };
  return stateAfter(setup, proofActs(proof, setup, changed), changed);
};

describe('an act on a picture that shows the same to everybody', () => {
  test.each<[ProofId, string, readonly BenchEvent[]]>([
    ['halveLevel', 'small', [set('yVoltsPerDiv', 5)]],
    ['markersOffOn', 'small', [set('yVoltsPerDiv', 5)]],
    ['markersOffOn', 'noPip', ready.crystals.slice(1).map((hz): BenchEvent => ({ type: 'crystalPulled', hz }))],
    ['swingPhase', 'small', [set('yVoltsPerDiv', 5)]],
    ['skirts', 'small', [set('levelDb', -80)]],
    ['touchEarth', 'humOff', [set('yVoltsPerDiv', 0.001)]],
    ['touchEarth', 'humSmall', [set('yVoltsPerDiv', 5)]],
    ['pipDown', 'noPip', ready.crystals.slice(1).map((hz): BenchEvent => ({ type: 'crystalPulled', hz }))],
  ])('%s, %s, proves nothing, whatever is said of it', (proof, why, acts) => {
    const state = madeWith(proof, ...acts);
    expect(state.proofs[proof].done).toBe(true);
    expect(unreadable(setup, state, proof)).toBe(why);
    const said = stateAfter(setup, [trueFinding(setup, state, proof)], state);
    expect([findingFits(setup, said, proof), findingFits(setup, said, proof, 5)]).toEqual([false, true]);
    expect(findingsOf(setup, said)[proof]).toBe('again');
  });

  test('with the level all the way down there is nothing left to read', () => {
    const { levelDb } = ready.controls;
    const state = stateAfter(setup, [set('levelDb', -80), set('levelDb', levelDb)], ready);
    expect([state.proofs.halveLevel.done, unreadable(setup, state, 'halveLevel')]).toEqual([true, 'turnedDown']);
  });

  test('a picture so large that its skirts run off the face', () => {
    const { levelDb } = ready.controls;
    const state = stateAfter(setup, [set('levelDb', Math.min(levelDb + 40, 0)), set('levelDb', levelDb)], ready);
    expect(witnessOf(setup, state, 'skirts', null, 5)!.answers).toEqual(['offFace']);
    expect(unreadable(setup, state, 'skirts')).toBe('tooLarge');
  });

  test.each<[ProofId, string, readonly BenchEvent[]]>([
    ['halveLevel', 'narrow', [set('spanHz', ready.controls.spanHz / 4)]],
    ['markersOffOn', 'narrow', [set('spanHz', ready.controls.spanHz / 4)]],
    ['skirts', 'narrow', [set('spanHz', ready.controls.spanHz / 4)]],
    ['markersOffOn', 'small', [set('levelDb', ready.controls.levelDb - 7)]],
    ['touchEarth', 'humSmall', [set('yVoltsPerDiv', 0.1)]],
  ])('%s, %s: taken under rules 6, when its size could be told from that alone, and not since', (proof, why, acts) => {
    const state = madeWith(proof, ...acts);
    expect([unreadable(setup, state, proof, 6), unreadable(setup, state, proof)]).toEqual([null, why]);
    const said = stateAfter(setup, [trueFinding(setup, state, proof)], state);
    expect(findingFits(setup, said, proof)).toBe(false);
  });

  test('half the level is half', () => {
    const { levelDb } = ready.controls;
    const by = (db: number) => stateAfter(setup, [set('levelDb', levelDb - db), set('levelDb', levelDb)], ready);
    expect([6, 8, 9].map((db) => unreadable(setup, by(db), 'halveLevel'))).toEqual([null, null, 'turnedDown']);
    expect(unreadable(setup, by(9), 'halveLevel', 6)).toBe(null);
  });

  test.each<[ProofId, string, readonly BenchEvent[]]>([
    ['halveLevel', 'small', [set('yVoltsPerDiv', 5)]],
    ['markersOffOn', 'noPip', ready.crystals.slice(1).map((hz): BenchEvent => ({ type: 'crystalPulled', hz }))],
  ])('%s, %s: in practice too since rules 7', (proof, why, acts) => {
    const state = madeWith(proof, ...acts);
    expect([unreadable(practice, state, proof, 6), unreadable(practice, state, proof)]).toEqual([null, why]);
  });

  test.each([0.001, 0.1, 5])('in practice the hum stands as the gain of the sheet has it, %d V a division', (gain) => {
    const bench = { ...practice, scenario: { ...practice.scenario, life: {} } };
    const { attempt: _, ...scenario } = bench.scenario;
    expect(unreadable({ ...bench, scenario }, madeWith('touchEarth', set('yVoltsPerDiv', gain)), 'touchEarth')).toBe(
      null,
    );
  });

  test('in practice, where nothing is kept from anybody, it need not be large', () => {
    const state = madeWith('markersOffOn', set('levelDb', ready.controls.levelDb - 7));
    expect(unreadable(practice, state, 'markersOffOn')).toBe(null);
    const narrow = madeWith('skirts', set('spanHz', ready.controls.spanHz / 4));
    expect(unreadable(practice, narrow, 'skirts')).toBe(null);
  });
});

describe('where a sealed job asks', () => {
  const seeds = Array.from({ length: 60 }, (_, i) => 1000 + 37 * i);
  const placesOf = (proof: ProofId): readonly number[] => {
    const state = madeWith(proof);
    return [...new Set(seeds.map((seed) => placeAskedFor(sealedAs(seed), state, proof)!))];
  };

  test.each<ProofId>(['skirts', 'halveLevel'])(
    '%s: at places that differ from attempt to attempt, all of them to be read',
    (proof) => {
      const state = madeWith(proof);
      const places = placesOf(proof);
      expect(places.length).toBeGreaterThan(2);
      const { away } = state.proofs[proof].act!;
      for (const seed of seeds.slice(0, 6)) {
        const one = sealedAs(seed);
        const { figure } = witnessOf(one, state, proof)!;
        const read = heightShown(one, away, placeAskedFor(one, state, proof)!)!;
        expect(read).toBeGreaterThan(figure!.low);
        expect(read).toBeLessThan(figure!.high);
        // Where too few places can be read it is asked where practice asks.
        if (placeAskedFor(one, state, proof) !== -4) expect(read).toBeGreaterThan(0.5);
      }
    },
  );

  test('markers: never at a pip on the foot, where all attempts are alike, while two stand higher', () => {
    const state = madeWith('markersOffOn');
    const asked = seeds.map((seed) => witnessOf(sealedAs(seed), state, 'markersOffOn')!.figure!);
    for (const { low, high } of asked) expect((low + high) / 2).toBeGreaterThan(0.7);
    const numbers = (rules: 5 | 6) =>
      new Set(seeds.map((seed) => pipAskedFor(sealedAs(seed), state, 'markersOffOn', rules)));
    expect(numbers(5).size).toBeGreaterThan(numbers(6).size);
    expect(numbers(6).size).toBeGreaterThan(1);
  });

  test('practice and runs of earlier rules ask as they did', () => {
    const { attempt: _, ...scenario } = setup.scenario;
    const practice = { ...setup, scenario: { ...scenario, sealed: false } };
    const [skirts, half] = [madeWith('skirts'), madeWith('halveLevel')];
    expect([placeAskedFor(practice, skirts, 'skirts'), placeAskedFor(practice, half, 'halveLevel')]).toEqual([
      -4,
      null,
    ]);
    expect([placeAskedFor(setup, skirts, 'skirts', 5), placeAskedFor(setup, half, 'halveLevel', 5)]).toEqual([
      -4,
      null,
    ]);
    expect(RULES_VERSION).toBeGreaterThan(5);
  });
});
