/**
 * Where a failed part is looked for: the stages of a sheet that names none, what nothing on the tube says from one point after another, and whole searches in a set of which nobody says a
 * word. The parts that have failed are put there by the test; which coils lie behind which valve is read off the deck.
 */
import { describe, expect, it } from 'vitest';
import { type BenchSetup, designOf } from '../../src/bench/setup.ts';
import { judgeDiagnosis } from '../../src/grading/diagnosis.ts';
import { grade } from '../../src/grading/grade.ts';
import type { Fault } from '../../src/receiver/faults/fault.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { stoppingParts } from '../../src/technician/person/deadStage.ts';
import type { PrintedCurve, PrintedResponse, PrintedSheet } from '../../src/technician/person/sheet.ts';
import { stageByStage } from '../../src/technician/stageByStage.ts';
import { attempt } from '../adversaries/hands.ts';
import { setupOf } from './oneScenario.ts';

function soundSet(id: string): BenchSetup {
  const setup = setupOf(id);
  const { scenario } = setup;
  return {
    ...setup,
    ...designOf(setup),
    scenario: { ...scenario, start: { ...scenario.start, slugs: {} }, faults: [] },
  };
}

describe('the stages of a sheet', () => {
  it('that names no points: from the detector back, each coil with the valve that it is behind', () => {
    const steps = stageByStage(soundSet('from-cold')).filter(({ phase }) => phase === 'align');
    // video-valve-45m: T1, T2 to V1; V1 to T3 with its trap; V2 to T4; V3 to T5. The traps are set first.
    expect(steps.map(({ at, slugs }) => [at, [...slugs].sort()])).toEqual([
      [undefined, ['A1', 'A2', 'A3']],
      ['TP3', ['T5P', 'T5S']],
      ['TP4', ['T4']],
      ['TP2', ['A3', 'T3']],
      [undefined, ['T1', 'T2']],
    ]);
  });

  it('that names them stay as they are printed', () => {
    const sound = soundSet('marram-sealed');
    expect(stageByStage(sound)).toEqual(sound.receiver.procedure);
  });
});

describe('nothing on the tube', () => {
  const curve = (injectAt: string): PrintedCurve => ({
    response: 'if',
    injectAt,
    levelDb: -40,
    hz: [1, 2, 3],
    volts: [0.1, 1, 0.1],
    levels: [],
    louder: [],
    trapsHz: [],
    effects: [],
    besides: [],
  });
  const SOUND = [0.1, 1, 0.1];
  const LEAST = 0.002;
  const NOTHING = [0, 1e-4, 0];
  /** Three points: the front, between the valves, before the detector. */
  const sheet = {
    curves: ['front', 'middle', 'back'].map(curve),
    chart: [
      { part: 'first', voltsFrom: { front: NOTHING, middle: SOUND, back: SOUND } },
      { part: 'second', voltsFrom: { front: NOTHING, middle: NOTHING, back: SOUND } },
      { part: 'detector', voltsFrom: { front: NOTHING, middle: NOTHING, back: NOTHING } },
      { part: 'weak', voltsFrom: { front: [0, 0.3, 0], middle: SOUND, back: SOUND } },
    ],
  } as unknown as PrintedSheet;
  const main = { id: 'if' } as PrintedResponse;

  it.each([
    ['first', ['middle', 'back']],
    ['second', ['back']],
    ['detector', []],
  ] as const)('points to the part %s where something comes through from %j', (part, through) => {
    const share = ({ injectAt }: PrintedCurve): number => ((through as readonly string[]).includes(injectAt) ? 0.5 : 0);
    expect(stoppingParts(sheet, main, share, LEAST)).toEqual([part]);
  });

  it('points to none where what comes through fits no line of the chart', () => {
    expect(stoppingParts(sheet, main, ({ injectAt }) => (injectAt === 'front' ? 0.5 : 0), LEAST)).toEqual([]);
  });

  it('takes for stopped what leaks past the part, on the tube as in the chart', () => {
    const leaks = [0, 0.004, 0];
    const leaking = {
      ...sheet,
      chart: [{ part: 'second', voltsFrom: { front: leaks, middle: leaks, back: SOUND } }],
    } as unknown as PrintedSheet;
    const share = ({ injectAt }: PrintedCurve): number => (injectAt === 'back' ? 0.9 : 0.004);
    expect(stoppingParts(leaking, main, share, 5 * 0.004)).toEqual(['second']);
    // By the same figure for both; else it would be a weak stage's.
    expect(stoppingParts(sheet, main, share, LEAST)).toEqual(['weak']);
    expect(stoppingParts(sheet, main, share, 5 * 0.004)).toEqual(['second']);
  });
});

describe('in a sealed set the technician', () => {
  const search = (faults: readonly Fault[]) => {
    const setup = setupOf('not-a-word');
    const dealt = { ...setup, scenario: { ...setup.scenario, faults } };
    const stated = demonstrate(dealt).events.findLast((event) => event.type === 'diagnosisStated');
    const { unnamed, blamed } = judgeDiagnosis(dealt, stated ?? null);
    return { unnamed, blamed, parts: stated?.parts };
  };

  it.each([
    ['a winding through which nothing comes', { kind: 'openWinding', slug: 'T4' }, 'Lc2'],
    ['the capacitor of a trap whose notch is gone', { kind: 'driftedCapacitor', element: 'C39a', factor: 1.6 }, 'C39a'],
  ] as const)('finds %s, and blames nothing else', (_, fault, part) => {
    expect(search([fault])).toEqual({ unnamed: [], blamed: [], parts: [part] });
  });

  it('finds a damping resistor that has opened, with both slugs of its stage astray', () => {
    const dealt = attempt(setupOf('not-a-word').scenario, 10);
    const { faults, start } = dealt.scenario;
    expect([faults, Object.keys(start.slugs)]).toEqual([
      [{ kind: 'openResistor', element: 'Rc1' }],
      expect.arrayContaining(['T3B', 'T3T']),
    ]);
    const report = grade(dealt, demonstrate(dealt).events);
    expect([report.passed, report.total >= 90], `${report.total}`).toEqual([true, true]);
  });

  it('blames no part where none has failed', () => {
    expect(search([])).toEqual({ unnamed: [], blamed: [], parts: [] });
  });
});
