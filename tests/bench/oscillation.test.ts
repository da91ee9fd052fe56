/**
 * The oscillator that runs. Frequency by f = 1 / (2 pi sqrt(L C)) and df/f = -dC/2C (Terman, Radio Engineers' Handbook 1943, from memory); the beat of two
 * carriers through one pole (from memory).
 */
import { describe, expect, test } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { driftsOf, OSCILLATOR_DRIFT } from '../../src/bench/heat.ts';
import { pipAskedFor, witnessOf } from '../../src/bench/witness.ts';
import { responseById } from '../../src/receiver/responses.ts';
import { slugHenries } from '../../src/receiver/slugLaw.ts';
import { onBench, set } from './shippedSheet.ts';

const tuner = onBench('tuner-vhf', 'osc');
const oscillator = tuner.setup.receiver.oscillator!;
const oscillatorSheet = responseById(tuner.setup.receiver, 'osc').setUp;
const valueIn = (name: string): number => tuner.deck.elements.find((e) => e.name === name)!.value;
const coil = tuner.setup.receiver.adjusters.find(({ id }) => id === 'L4')!;

const thomson = (henries: number, farads: number): number => 1 / (2 * Math.PI * Math.sqrt(henries * farads));
const hzNow = (state: BenchState, farads: number): number =>
  thomson(slugHenries(coil, state.slugs.L4!.coreTurns), farads);

/** What is heard with the source standing at a frequency. */
const noteAt = (hz: number, ...acts: Parameters<typeof tuner.after>): number | null =>
  tuner.bench.display(tuner.after(...acts, set('sourceMode', 'spot'), set('centreHz', hz), set('pipHeightDiv', 0)))
    .beatHz;

/** Height at each point of the forward half, divisions. */
const line = (state: BenchState): number[] => {
  const { beam } = tuner.bench.display(state);
  return Array.from({ length: beam.count / 2 }, (_, i) => beam.data[3 * i + 1]!);
};
const spread = (heights: readonly number[]): number => Math.max(...heights) - Math.min(...heights);
const CLOSE = [set('yVoltsPerDiv', 0.01), set('pipHeightDiv', 0)];

describe('where it runs', () => {
  test.each([-2, 0, 1.5])('by the slug at %d turns from where it stands, in is lower (within 20 Hz)', (turns) => {
    const turned = tuner.after();
    const moved = {
      ...turned,
      slugs: { ...turned.slugs, L4: { ...turned.slugs.L4!, coreTurns: turned.slugs.L4!.coreTurns + turns } },
    };
    const wanted = hzNow(moved, valueIn('C4'));
    const at = { ...moved, controls: { ...moved.controls, sourceMode: 'spot' as const, centreHz: wanted - 2000 } };
    expect(Math.abs(createBench(tuner.setup).display(at).beatHz! - 2000)).toBeLessThan(20);
    if (turns > 0) expect(wanted).toBeLessThan(hzNow(turned, valueIn('C4')));
  });

  test.each([-1, 0.4, 1])('with the fine tuning at %d (within 20 Hz)', (share) => {
    const wanted = hzNow(tuner.after(), valueIn('C4') + share * oscillator.fineTuningFarads);
    expect(Math.abs(noteAt(wanted + 1500, set('fineTuning', share))! - 1500)).toBeLessThan(20);
  });

  test('cold, its valve lacks capacitance and it stands too high by df/f = -dC/2C (within 5 kHz of some hundreds)', () => {
    const whole = onBench('front-to-detector', 'osc');
    const scenario = {
      ...whole.setup.scenario,
      life: { ...whole.setup.scenario.life, cold: true, driftFarads: 0.1e-12 },
    };
    const setup = { ...whole.setup, scenario };
    const farads = driftsOf(setup.receiver, scenario).get(OSCILLATOR_DRIFT)!;
    expect(farads).toBeGreaterThan(0.04e-12);
    // Forty seconds after the switch the cathode gives all it can, and the chassis is a fifth of the way.
    const state: BenchState = { ...whole.after(), heat: { atSeconds: 0, heater: 0, chassis: 0 }, seconds: 40 };
    const chill = Math.exp(-40 / 200);
    const warm = 221.0127e6;
    const shift = (221e6 * chill * farads) / (2 * 12e-12);
    const bench = createBench(setup);
    const note = (hz: number) =>
      bench.display({ ...state, controls: { ...state.controls, sourceMode: 'spot', centreHz: hz } }).beatHz;
    const heard = [-4, -2, 0, 2, 4].map((kHz) => note(warm + shift + kHz * 1e3));
    expect(heard.some((hz) => hz !== null)).toBe(true);
    expect(note(warm)).toBeNull();
  });
});

describe('on the tube', () => {
  test('without the RF lead the line is straight: there is no tank to be swept', () => {
    const state = tuner.after(...CLOSE);
    const alone = { ...state, leads: { ...state.leads, rf: null } };
    expect(spread(line(alone))).toBeLessThan(0.2);
  });

  test('swept, the beat stands where the sweep crosses it, and moves with the fine tuning (within 0.1 divisions)', () => {
    for (const share of [-1, 0, 1]) {
      const state = tuner.after(...CLOSE, set('fineTuning', share));
      const hz = hzNow(state, valueIn('C4') + share * oscillator.fineTuningFarads);
      const { beam } = tuner.bench.display(state);
      const heights = line(state);
      const middle = [...heights].sort((a, b) => a - b)[heights.length >> 1]!;
      let best = 0;
      heights.forEach((y, i) => {
        if (Math.abs(y - middle) > Math.abs(heights[best]! - middle)) best = i;
      });
      const { centreHz, spanHz } = state.controls;
      expect(Math.abs(heights[best]! - middle)).toBeGreaterThan(0.1);
      expect(Math.abs(beam.data[3 * best]! - (10 * (hz - centreHz)) / spanHz)).toBeLessThan(0.1);
    }
  });

  test('standing still the source makes a wave of the difference, which rests at zero beat', () => {
    const at = (off: number): BenchState => {
      const state = tuner.after(...CLOSE, set('sourceMode', 'spot'));
      return { ...state, controls: { ...state.controls, centreHz: hzNow(state, valueIn('C4')) + off } };
    };
    const crossings = (heights: readonly number[]): number => {
      const middle = (Math.max(...heights) + Math.min(...heights)) / 2;
      return heights.filter((y, i) => i > 0 && y > middle !== heights[i - 1]! > middle).length;
    };
    // 1200 Hz is ten whole waves in half of a sixtieth of a second.
    expect(Math.abs(crossings(line(at(1200))) - 20)).toBeLessThanOrEqual(3);
    expect(spread(line(at(1200)))).toBeGreaterThan(5 * spread(line(at(0))));
    const now = at(0);
    const then = { ...now, seconds: now.seconds + 0.05 };
    const early = line(now);
    const late = line(then);
    expect(Math.max(...early.map((y, i) => Math.abs(y - late[i]!)))).toBeLessThan(spread(line(at(1200))) / 2);
    // As many waves as the period has points: a band, and nothing that stands still (Nyquist).
    const { count } = tuner.bench.display(at(0)).beam;
    const quick = line(at(count * oscillatorSheet.mainsHz));
    expect(crossings(quick)).toBeGreaterThan(quick.length / 2);
    expect(spread(quick)).toBeGreaterThan(3 * spread(line(at(0))));
    // Far off diode and tube follow it no more: one pole.
    expect(spread(line(at(3e5)))).toBeLessThan(spread(line(at(1200))) / 3);
  });
});

describe('read as a person reads it', () => {
  /** All phases of the beat together, forward half: four seconds of sweeps, ten periods of its slide. */
  const reach = (state: BenchState): readonly number[] => {
    const all: number[] = [];
    for (let k = 0; k < 40; k++) all.push(...line({ ...state, seconds: state.seconds + k / 10 }));
    return all;
  };

  test('trace in sight goes by what the beam reaches: the beat is over before the pole lets it rise (G63)', () => {
    const state = tuner.after(set('pipHeightDiv', 0));
    for (const [voltsPerDiv, positionDiv] of [
      [0.005, -3.5],
      [0.005, -2.5],
      [0.01, 0],
      [0.01, -3.5],
      [0.02, 3.5],
    ] as const) {
      const at = { ...state, controls: { ...state.controls, yVoltsPerDiv: voltsPerDiv, yPositionDiv: positionDiv } };
      const inside = reach(at).every((y) => Math.abs(y) <= 4);
      const facts = tuner.bench.facts(at);
      expect(facts.traceOnScreen, `${voltsPerDiv} V/div at ${positionDiv}`).toBe(inside);
      // The tube's own noise is not counted: a fiftieth of a division at the most of these gains.
      expect(Math.abs(facts.traceHeightDiv - spread(reach(at)))).toBeLessThan(0.1);
    }
    const full = tuner.bench.facts(state);
    const half = tuner.bench.facts({ ...state, controls: { ...state.controls, levelDb: state.controls.levelDb - 6 } });
    // A small carrier beats with a large one in proportion to itself (within 2 per cent).
    expect(Math.abs(half.traceHeightDiv / full.traceHeightDiv / 10 ** (-6 / 20) - 1)).toBeLessThan(0.02);
  });

  test('with the level halved the beat is read over all of its phases, whenever one looks (G64)', () => {
    const level = tuner.after().controls.levelDb;
    for (const seconds of [0, 0.11, 0.22, 0.33]) {
      const made = tuner.after(...CLOSE, set('levelDb', level - 6), set('levelDb', level));
      const { act } = made.proofs.halveLevel;
      const state = {
        ...made,
        proofs: {
          ...made.proofs,
          halveLevel: {
            ...made.proofs.halveLevel,
            act: { rest: act!.rest, away: { ...act!.away, seconds: act!.away.seconds + seconds } },
          },
        },
      };
      const { answers, figure } = witnessOf(tuner.setup, state, 'halveLevel')!;
      expect(answers).toEqual(['shrankWhole']);
      const read = spread(reach(act!.away));
      expect(read).toBeGreaterThan(figure!.low);
      expect(read).toBeLessThan(figure!.high);
      expect(figure!.high - figure!.low).toBeLessThan(1.2);
    }
  });

  test('no height is asked for under the beat, where the curve has none', () => {
    const pips = tuner.after().controls.pipHeightDiv || 0.3;
    for (let seed = 1; seed <= 12; seed++) {
      const setup = { ...tuner.setup, scenario: { ...tuner.setup.scenario, seed } };
      const gone = tuner.after(...CLOSE.slice(0, 1), set('pipHeightDiv', pips), set('pipHeightDiv', 0));
      const back = tuner.after(
        ...CLOSE.slice(0, 1),
        set('pipHeightDiv', pips),
        set('pipHeightDiv', 0),
        set('pipHeightDiv', pips),
      );
      const no = pipAskedFor(setup, back, 'markersOffOn')!;
      const tags = tuner.bench
        .display(back)
        .tags.map(({ xDiv }) => xDiv!)
        .sort((a, b) => a - b);
      const at = tags[no - 1]!;
      const { beam } = tuner.bench.display(gone);
      const places = Array.from({ length: beam.count / 2 }, (_, i) => beam.data[3 * i]!);
      const heights = line(gone).filter((_, i) => Math.abs(places[i]! - at) < 0.1);
      expect(spread(heights)).toBeLessThan(0.3);
    }
  });
});
