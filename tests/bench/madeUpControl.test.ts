/** Controls that nobody has built: with their rows and words alone they are met wherever a control is met, from the file to the panel and the replay. */
import * as v from 'valibot';
import { describe, expect, it, vi } from 'vitest';
import { applyEvent } from '../../src/bench/applyEvent.ts';
import type { BenchEvent, ControlId, KnobId } from '../../src/bench/benchEvent.ts';
import { checkControl, controlRange } from '../../src/bench/controlRange.ts';
import { CONTROLS } from '../../src/bench/controls/controls.ts';
import { deriveControls } from '../../src/bench/controls/derive.ts';
import type { ControlRows } from '../../src/bench/controls/row.ts';
import { initialState, RESTING_CONTROLS } from '../../src/bench/setup.ts';
import { controlSchema } from '../../src/files/controlSchema.ts';
import { timedEventSchemaOf } from '../../src/files/eventSchema.ts';
import { schemaText } from '../../src/files/jsonSchema.ts';
import { readRunFile } from '../../src/files/runFileSchema.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import { startControlsSchemaOf } from '../../src/files/startControlsSchema.ts';
import { fitKnob, fitRow } from '../../src/present/controlScales.ts';
import { positionsOf, unplaced } from '../../src/present/panelRows.ts';
import { runOutline } from '../../src/present/runOutline.ts';
import { replay } from '../../src/run/replay.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import type { ControlWordsFor } from '../../src/words/controlWords.ts';
import { en } from '../../src/words/en/index.ts';
import type { Words } from '../../src/words/words.ts';
import { saidOf } from '../files/said.ts';
import { runOf } from '../run/runs.ts';
import { canSetup } from './fixture.ts';

/** An attenuator pad on the RF lead in steps of 6 dB, a switch for sets with a converter, and positions of which one needs a video part. */
const made = vi.hoisted(
  () =>
    ({
      padDb: { kind: 'range', panel: 'leads', unit: 'db', min: -18, max: 0, step: 6, stepped: true, resting: 0 },
      squelch: { kind: 'switch', panel: 'sweep', drawnWith: 'converter', resting: true },
      strobe: {
        kind: 'positions',
        panel: 'tube',
        choices: ['free', 'line', 'field'],
        needs: { field: 'videoFeed' },
        resting: 'line',
      },
    }) as const,
);

vi.mock('../../src/bench/controls/rows.ts', async (original) => {
  const { CONTROL_ROWS } = await original<typeof import('../../src/bench/controls/rows.ts')>();
  return { CONTROL_ROWS: { ...CONTROL_ROWS, ...made } };
});

const ROWS = made satisfies ControlRows;
const SAY: ControlWordsFor<typeof made> = {
  padDb: { label: 'Pad' },
  squelch: { label: 'Squelch' },
  strobe: { label: 'Strobe', positions: { free: { word: 'free' }, line: { word: 'line' }, field: { word: 'field' } } },
};
const words = { ...en, controls: { ...en.controls, ...SAY } } as Words;

const can = canSetup();
const pad = 'padDb' as ControlId;
const set = (control: string, value: number | boolean | string): BenchEvent => ({
  type: 'controlSet',
  control: control as ControlId,
  value,
});

/** A whole scenario, as a file holds it. */
const starting = (controls: Scenario['start']['controls']): Scenario => ({
  ...can.scenario,
  words: { brief: 'b', story: 's', lesson: 'l' },
  proofs: ['halveLevel'],
  start: { ...can.scenario.start, controls },
});

describe('a control of the bench by its row alone', () => {
  it('has a resting value, at which every bench begins', () => {
    expect(RESTING_CONTROLS).toMatchObject({ padDb: 0, squelch: true, strobe: 'line' });
    expect(initialState(can).controls).toMatchObject({ padDb: 0, squelch: true, strobe: 'line' });
  });

  it('has a range, and is refused beyond it or between its steps', () => {
    expect(controlRange(can, pad)).toEqual({
      kind: 'number',
      unit: 'db',
      min: -18,
      max: 0,
      step: 6,
      fineStep: 6,
      stepped: true,
    });
    for (const value of [-18, -12, 0]) expect(checkControl(can, 'padDb', value)).toBeNull();
    for (const value of [-24, 6, -5, Number.NaN, true, 'free'])
      expect(checkControl(can, 'padDb', value)).toBe('valueOutOfRange');
    expect(checkControl(can, 'squelch', 1)).toBe('valueOutOfRange');
    expect(checkControl(can, 'strobe', 'free')).toBeNull();
    expect(checkControl(can, 'strobe', 'neither')).toBe('valueOutOfRange');
    expect(checkControl(can, 'strobe', 'field')).toBe('notInThisScenario');
    expect(checkControl(can, 'strobes', 'free')).toBe('noSuchControl');
  });

  it('may stand otherwise at the start of a scenario', () => {
    const read = parseScenario(starting({ padDb: -12, strobe: 'free' }), 'made-up.json');
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(initialState({ ...can, scenario: read.value }).controls).toMatchObject({
      padDb: -12,
      strobe: 'free',
      squelch: true,
    });
    for (const wrong of [{ padDb: -13 }, { padDb: 6 }, { strobe: 'both' }, { squelch: 'on' }, { noPad: 0 }]) {
      const bad = parseScenario(starting(wrong), 'made-up.json');
      expect(saidOf(bad).map(({ place }) => place)).toEqual([`/start/controls/${Object.keys(wrong)[0]}`]);
    }
  });

  it('is in the published schema', () => {
    const { controls } = JSON.parse(schemaText('scenario.schema.json')).properties.start.properties;
    expect(controls.properties).toMatchObject({
      padDb: { minimum: -18, maximum: 0, multipleOf: 6 },
      squelch: { type: 'boolean' },
      strobe: { enum: ['free', 'line', 'field'] },
    });
    expect(controls.required).toEqual([]);
  });

  it('is set by an act that is kept in the run file and played again', () => {
    const run = runOf(can, [set('padDb', -6), set('squelch', false), set('strobe', 'free')]);
    expect(run.state.controls).toMatchObject({ padDb: -6, squelch: false, strobe: 'free' });
    const text = serialiseRunFile(toRunFile({ ...run, setup: { ...can, scenario: starting({}) } }, null));
    const file = readRunFile(text, 'made-up.json');
    if (!file.ok) throw new Error(JSON.stringify(file.problems));
    expect(replay(can, file.value.events)).toEqual({ state: run.state, taken: 3, refused: null });
    const refused = applyEvent(can, run.state, set('padDb', -7), 60);
    expect(refused).toEqual({ ok: false, reason: 'valueOutOfRange' });
  });

  it('belongs to setting up in what the report tells of a run', () => {
    const { events } = runOf(can, [set('padDb', -6), set('strobe', 'free')]);
    expect(runOutline(events).map(({ act }) => act)).toEqual([{ kind: 'setUp' }]);
  });

  it('stands on its panel without any layout naming it', () => {
    const { receiver } = can;
    const named = Object.keys(CONTROLS.rows).filter((id) => !(id in made));
    expect(unplaced(CONTROLS, receiver, 'leads', named)).toEqual(['padDb']);
    expect(unplaced(CONTROLS, receiver, 'tube', named)).toEqual(['strobe']);
    expect(unplaced(CONTROLS, receiver, 'rack', named)).toEqual([]);
    // This set has no converter.
    expect(unplaced(CONTROLS, receiver, 'sweep', named)).toEqual([]);
    const converting = { ...receiver, converter: {} as NonNullable<typeof receiver.converter> };
    expect(unplaced(CONTROLS, converting, 'sweep', named)).toEqual(['squelch']);
  });

  it('has a knob with its words, every position of which the bench takes', () => {
    const { label, scale, coarse, resting, shown, parse, signed } = fitKnob(words, can, 'padDb' as KnobId);
    expect({ label, last: scale.last, coarse, resting, signed }).toEqual({
      label: 'Pad',
      last: 3,
      coarse: 1,
      resting: 0,
      signed: false,
    });
    for (let i = 0; i <= scale.last; i++) {
      expect(checkControl(can, 'padDb', scale.valueAt(i))).toBeNull();
      expect(parse(shown(scale.valueAt(i)))).toBeCloseTo(scale.valueAt(i), 12);
    }
  });

  it('has positions with their words, less what this set has no part for', () => {
    const positions = positionsOf(can.receiver, ROWS.strobe, SAY.strobe.positions);
    expect(positions).toEqual([
      { value: 'free', word: 'free' },
      { value: 'line', word: 'line' },
    ]);
  });
});

describe('what follows from any table of rows', () => {
  const table = deriveControls(made);

  it('is what the bench has of its own', () => {
    expect(table.ids).toEqual(['padDb', 'squelch', 'strobe']);
    expect(table.resting).toEqual({ padDb: 0, squelch: true, strobe: 'line' });
    expect(table.check(can.receiver, 'padDb', -6)).toBeNull();
    expect(table.check(can.receiver, 'levelDb', -6)).toBe('noSuchControl');
    expect(fitRow(words.format, can.receiver, ROWS.padDb, SAY.padDb.label).label).toBe('Pad');
  });

  it('is the shape of its files', () => {
    const start = startControlsSchemaOf(made);
    expect(Object.keys(start.entries)).toEqual(table.ids);
    expect(v.safeParse(start, {}).success).toBe(true);
    expect(v.safeParse(start, { padDb: -6, levelDb: -6 }).success).toBe(false);
    expect(v.safeParse(controlSchema(ROWS.padDb), -6).success).toBe(true);
    const event = timedEventSchemaOf(table.ids);
    expect(v.safeParse(event, { atMs: 0, ...set('strobe', 'free') }).success).toBe(true);
    expect(v.safeParse(event, { atMs: 0, ...set('levelDb', -6) }).success).toBe(false);
  });

  it('does not compile without its words', () => {
    const { strobe, ...some } = SAY;
    const { field: _, ...less } = strobe.positions;
    // @ts-expect-error: no words for the strobe
    const wordless: ControlWordsFor<typeof made> = some;
    const half = { label: 'Strobe', positions: less };
    // @ts-expect-error: no word for one of its positions
    const shortOne: ControlWordsFor<typeof made> = { ...some, strobe: half };
    expect([Object.keys(wordless).length, Object.keys(shortOne).length]).toEqual([2, 3]);
  });
});
