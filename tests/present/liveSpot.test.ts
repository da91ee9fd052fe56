/** What is lit in practice: done at the lit part, each thing that is missing of the connections goes, the earth strap first as the sheets have it. The sheet of the scenario itself; no other source. */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { initialState } from '../../src/bench/setup.ts';
import { lackStages } from '../../src/describe/lack.ts';
import { missingSentence } from '../../src/describe/sentence.ts';
import { spotOfMissing } from '../../src/present/liveSpot.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import type { MissingCode } from '../../src/session/missing.ts';
import { createSession } from '../../src/session/session.ts';
import { en } from '../../src/words/en/index.ts';
import { connectionActs, safetyActs, setUpActs, stateAfter } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';

const setup = setupOf('off-centre');
const bench = createBench(setup);

describe('the part that is lit in practice', () => {
  it('is the level where all is clipped on and no more than level is wanting, and the words say so', () => {
    const first = setupOf('first-curve');
    const clipped = stateAfter(
      first,
      [{ type: 'cautionsAcknowledged' }, ...connectionActs(first)],
      initialState(first),
    );
    const lack = { code: 'nothingOnTube' };
    const told = (state: BenchState) => {
      const facts = createBench(first).facts(state);
      return {
        spot: spotOfMissing(first, facts, state, 'nothingOnTube'),
        words: lackStages(en, first, facts, state, lack)[0],
      };
    };
    const { levelDb } = mainResponse(first.receiver).setUp;
    expect(clipped.controls.levelDb).toBeLessThan(levelDb);
    const faint = told(clipped);
    expect(faint.spot).toEqual({ kind: 'control', control: 'levelDb' });
    expect(faint.words).toContain(en.format.written(levelDb, 0));
    // With the level of the sheet, or with a lead off, it is something else.
    const loud = told(stateAfter(first, [{ type: 'controlSet', control: 'levelDb', value: levelDb }], clipped));
    const loose = told(stateAfter(first, [{ type: 'leadRemoved', lead: 'y' }], clipped));
    for (const other of [loud, loose])
      expect(other).toEqual({ spot: null, words: missingSentence(en, 'nothingOnTube') });
  });

  it('is no one part where the sweep is beside the band, and the words say where the band is, and what answers at half of it', () => {
    // A band answers at half its frequency to the second harmonic of the source (common practice, no source).
    const strip = setupOf('one-slug-out');
    const ready = stateAfter(strip, [...connectionActs(strip), ...setUpActs(strip)], initialState(strip));
    const { centreHz, spanHz } = mainResponse(strip.receiver).setUp;
    const told = (at: number, wide: number): string => {
      const state = stateAfter(
        strip,
        [
          { type: 'controlSet', control: 'centreHz', value: at },
          { type: 'controlSet', control: 'spanHz', value: wide },
        ],
        ready,
      );
      const facts = createBench(strip).facts(state);
      expect(facts.spanCovers).toBe(false);
      expect(spotOfMissing(strip, facts, state, 'nothingOnTube')).toBeNull();
      return lackStages(en, strip, facts, state, { code: 'nothingOnTube' })[0]!;
    };
    const [half, far] = [told(centreHz / 2, spanHz / 2), told(3 * centreHz, spanHz)];
    for (const words of [half, far]) expect(words).toContain(en.format.frequency(centreHz));
    expect(half).toContain('second harmonic');
    expect(far).not.toContain('second harmonic');
  });

  it('is none while the heaters come up, and the words say that the curve comes by itself; after half a minute no more', () => {
    // Dead for some ten seconds, all there after thirty (`src/bench/heat.ts`; common practice, no source).
    const cold = setupOf('painted-numbers');
    const acts = [...safetyActs(cold), ...connectionActs(cold), ...setUpActs(cold)];
    const on = stateAfter(cold, acts, initialState(cold));
    const told = (seconds: number, code: 'nothingOnTube' | 'tooWeak') => {
      const state = { ...on, seconds };
      const facts = createBench(cold).facts(state);
      return [spotOfMissing(cold, facts, state, code), lackStages(en, cold, facts, state, { code })[0]];
    };
    for (const seconds of [2, 8, 15])
      for (const code of ['nothingOnTube', 'tooWeak'] as const) {
        const [spot, words] = told(seconds, code);
        expect(spot).toBeNull();
        expect(words).toContain('heaters');
        expect(words).toContain('half a minute');
      }
    expect(told(40, 'nothingOnTube')).toEqual([null, missingSentence(en, 'nothingOnTube')]);
    expect(told(40, 'tooWeak')[1]).not.toContain('heaters');
  });

  it('is the lead and the point, or the switch, that the step is waiting for', () => {
    let state = stateAfter(setup, [{ type: 'cautionsAcknowledged' }], initialState(setup));
    const lit: string[] = [];
    for (let act = 0; act < 12; act++) {
      const facts = bench.facts(state);
      const session = createSession(setup);
      session.send({ type: 'BEGIN' });
      session.send({ type: 'FACTS', facts, atSeconds: state.seconds, slugs: null, findings: {} });
      const [code] = session.view().missing.connect;
      if (code === undefined) break;
      const spot = spotOfMissing(setup, facts, state, code as MissingCode);
      lit.push(spot?.kind === 'lead' ? spot.lead : spot?.kind === 'control' ? spot.control : code);
      if (spot?.kind === 'lead')
        state = stateAfter(setup, [{ type: 'leadConnected', lead: spot.lead, to: spot.to }], state);
      else if (spot?.kind === 'control') {
        const value = spot.control === 'yTip' ? 'probe' : true;
        state = stateAfter(setup, [{ type: 'controlSet', control: spot.control, value }], state);
      }
    }
    expect(lit).toEqual(['earth', 'rf', 'rfTerminated', 'rfCapacitor', 'y', 'yTip', 'x']);
  });

  it('is the first crystal that is missing, and nothing where no one part is meant', () => {
    const state = initialState(setup);
    const facts = bench.facts(state);
    expect(facts.markersMissingHz.length).toBeGreaterThan(1);
    expect(spotOfMissing(setup, facts, state, 'markersMissing')).toEqual({
      kind: 'crystal',
      hz: facts.markersMissingHz[0],
    });
    expect(spotOfMissing(setup, facts, state, 'notIsolated')).toEqual({ kind: 'isolation' });
    expect(spotOfMissing(setup, facts, state, 'linesOutside')).toBeNull();
    expect(spotOfMissing(setup, facts, state, 'levelNotSaid')).toBeNull();
  });

  it('is what the act of a proof is done with, and doing it there is the proof', () => {
    let state = stateAfter(setup, [{ type: 'cautionsAcknowledged' }, ...connectionActs(setup)], initialState(setup));
    for (const hz of mainResponse(setup.receiver).setUp.markersHz)
      state = stateAfter(setup, [{ type: 'crystalPlugged', hz }], state);
    const facts = bench.facts(state);
    const knobs = [
      ['halveLevel', 'levelNotHalved', (value: number) => value - 6],
      ['markersOffOn', 'markersNotSwitched', () => 0],
      ['swingPhase', 'phaseNotSwung', (value: number) => value + 15],
      // Two clicks.
      ['skirts', 'skirtsNotSeen', (value: number) => value / 5],
    ] as const;
    for (const [proof, code, away] of knobs) {
      const spot = spotOfMissing(setup, facts, state, code);
      if (spot?.kind !== 'control') throw new Error(`${code}: nothing is lit`);
      const stood = state.controls[spot.control] as number;
      const done = [away(stood), stood].reduce(
        (now, value) => stateAfter(setup, [{ type: 'controlSet', control: spot.control, value }], now),
        state,
      );
      expect(state.proofs[proof].done, proof).toBe(false);
      expect(done.proofs[proof].done, proof).toBe(true);
    }
    const earth = spotOfMissing(setup, facts, state, 'earthNotTouched');
    if (earth?.kind !== 'lead') throw new Error('no lead is lit');
    const touched = stateAfter(
      setup,
      [
        { type: 'leadRemoved', lead: earth.lead },
        { type: 'leadConnected', lead: earth.lead, to: earth.to },
      ],
      state,
    );
    expect(touched.proofs.touchEarth.done).toBe(true);
  });
});
