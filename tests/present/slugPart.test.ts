/**
 * What a slug moves, as the panel shows it: held against the response of the bench itself with the slug turned by hand, and against the formula of a tuned circuit,
 * f = 1 / (2 pi sqrt(L C)): more inductance, lower frequency.
 */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { levelAt } from '../../src/present/curves.ts';
import { createSlugParts } from '../../src/present/slugPart.ts';
import { isPresent } from '../../src/receiver/faults/faultEffects.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { SETUPS } from '../rooms/sceneSets.ts';
import { setupOf } from '../technician/oneScenario.ts';

const shipped = (id: string): BenchSetup => SETUPS.find(({ receiver }) => receiver.id === id)!;

/** hertz of the highest place */
function topHz({ hz, relative }: { readonly hz: Float64Array; readonly relative: Float64Array }): number {
  return hz[relative.indexOf(Math.max(...relative))]!;
}

describe.each(SETUPS.map((setup) => [setup.receiver.id, setup] as const))('what the slugs of %s move', (_, setup) => {
  const { receiver } = setup;
  const response = mainResponse(receiver);
  const parts = createSlugParts(setup);
  const state = initialState(setup);
  const spec = response.specification;

  it.each(receiver.adjusters.map(({ id }) => id))('slug %s: a turn is what a turn at the bench does', (id) => {
    const part = parts(state, id, response);
    if (part === null) {
      // Then it has no part in this curve at the bench either.
      const bench = createBench(setup);
      const [now, turned] = [0, 1].map((by) => bench.truth(turnedBy(setup, id, by), response.id));
      const most = now!.relative.reduce(
        (all, level, i) => (inside(now!.hz[i]!) ? Math.max(all, Math.abs(level - turned!.relative[i]!)) : all),
        0,
      );
      expect(most).toBeLessThan(0.05);
      return;
    }
    expect(part.fromHz).toBeLessThanOrEqual(part.mostHz);
    expect(part.mostHz).toBeLessThanOrEqual(part.toHz);
    const bench = createBench(setup);
    for (const way of ['in', 'out'] as const) {
      const curve = part[way];
      if (curve === null) continue;
      const truth = bench.truth(turnedBy(setup, id, way === 'in' ? 1 : -1), response.id);
      // The bench counts from another reference: the factor between the two is taken out, all the rest must agree.
      const places = [...truth.hz.keys()].filter((i) => shown(truth.hz[i]!));
      const pairs = places.map((i) => [levelAt(curve, truth.hz[i]!), truth.relative[i]!] as const);
      const factor = pairs.reduce((sum, [p, t]) => sum + p * t, 0) / pairs.reduce((sum, [, t]) => sum + t * t, 0);
      const top = Math.max(...pairs.map(([p]) => Math.abs(p)));
      expect(pairs.length).toBeGreaterThan(20);
      for (const [p, t] of pairs) expect(Math.abs(p - factor * t) / top).toBeLessThan(0.03);
    }
  });

  const { centreHz, spanHz } = response.setUp;
  const shown = (hz: number): boolean => Math.abs(hz - centreHz) < spanHz / 2;
  const inside = (hz: number): boolean => hz >= spec.fromHz && hz <= spec.toHz;
});

function turnedBy(setup: BenchSetup, id: string, by: number) {
  const state = initialState(setup);
  const slug = state.slugs[id]!;
  return { ...state, slugs: { ...state.slugs, [id]: { ...slug, coreTurns: slug.coreTurns + by } } };
}

it('one can: a core further in lowers the hump, further out raises it, as f = 1 / (2 pi sqrt(L C)) says', () => {
  const setup = shipped('fm-10m7');
  const state = initialState(setup);
  const parts = createSlugParts(setup);
  const response = mainResponse(setup.receiver);
  const [first] = setup.receiver.adjusters;
  const slugs = Object.fromEntries(
    setup.receiver.adjusters.map((a) => [a.id, { ...state.slugs[a.id]!, coreTurns: nominalTurns(a) }]),
  );
  const part = parts({ ...state, slugs }, first!.id, response)!;
  expect(topHz(part.in!)).toBeLessThan(topHz(part.out!));
});

it('a trap moves the curve beside its own notch, and a slug at its stop has no turn that way', () => {
  const setup = shipped('video-valve-45m');
  const { receiver } = setup;
  const state = initialState(setup);
  const parts = createSlugParts(setup);
  const response = mainResponse(receiver);
  const atHome = Object.fromEntries(
    receiver.adjusters.map((a) => [a.id, { ...state.slugs[a.id]!, coreTurns: nominalTurns(a) }]),
  );
  const trap = receiver.adjusters.find(({ trapHz }) => trapHz !== null && trapHz > 41e6 && trapHz < 47e6)!;
  const part = parts({ ...state, slugs: atHome }, trap.id, response)!;
  expect(Math.abs(part.mostHz - trap.trapHz!)).toBeLessThan(1.5e6);
  const atStop = { ...atHome, [trap.id]: { ...atHome[trap.id]!, coreTurns: trap.travelTurns } };
  expect(parts({ ...state, slugs: atStop }, trap.id, response)?.in ?? null).toBeNull();
});

it('a cracked core moves nothing', () => {
  const setup = shipped('fm-10m7');
  const state = initialState(setup);
  const id = setup.receiver.adjusters[0]!.id;
  const slugs = { ...state.slugs, [id]: { ...state.slugs[id]!, cracked: true } };
  expect(createSlugParts(setup)({ ...state, slugs }, id, mainResponse(setup.receiver))).toBeNull();
});

it('a part that comes and goes is in the curve while it has failed, as on the tube, and not while it has not', () => {
  const setup = setupOf('comes-and-goes');
  const { faults, seed } = setup.scenario;
  const response = mainResponse(setup.receiver);
  const { id } = setup.receiver.adjusters[0]!;
  const times = Array.from({ length: 600 }, (_, seconds) => seconds);
  const failedAt = times.find((seconds) => faults.every((fault) => isPresent(fault, { seconds, seed })))!;
  const soundAt = times.find((seconds) => faults.every((fault) => !isPresent(fault, { seconds, seed })))!;
  const state = initialState(setup);
  const parts = createSlugParts(setup);
  const now = (seconds: number) => parts({ ...state, seconds }, id, response)!.now.relative;
  const sound = createSlugParts({ ...setup, scenario: { ...setup.scenario, faults: [] } })(state, id, response)!;
  expect(now(soundAt)).toEqual(sound.now.relative);
  expect(now(failedAt)).not.toEqual(sound.now.relative);
});
