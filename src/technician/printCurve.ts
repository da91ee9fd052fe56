/** A curve as it is printed with a sheet: shown on the tube of a sound set and read off point by point, in volts at the Y input. */
import { applyEvent } from '../bench/applyEvent.ts';
import { createBench } from '../bench/bench.ts';
import type { BenchEvent } from '../bench/benchEvent.ts';
import type { BenchState } from '../bench/benchState.ts';
import { controlRange } from '../bench/controlRange.ts';
import { type BenchSetup, initialState } from '../bench/setup.ts';
import { type Setting, settings, sheetControls, sheetFittings, sheetLeads } from '../bench/sheetSetUp.ts';
import type { SheetResponse } from '../receiver/receiver.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import { keptFigure, printBench } from './keptPrints.ts';
import type { PrintedCurve, SlugEffect } from './person/sheet.ts';
import { stageEffects } from './slugEffects.ts';

/** What is low is looked at with so much more from the source. */
const LOUDER_DB = [16, 20];
/** Points of a printed curve, beside those at its traps. */
const POINTS = 41;
/** As far as the curve is printed, as a share of the sweep from its centre. */
const REACH = 0.46;

export function printCurve(
  sound: BenchSetup,
  response: SheetResponse,
  injectAt: string,
  slugs: readonly string[],
  others: readonly string[] = [],
): PrintedCurve {
  const { setUp } = response;
  const bench = printBench(sound);
  const levelDb = keptFigure(sound, ['level', response.id, injectAt], () =>
    levelFor(createBench(sound), sound, response, injectAt),
  );
  const even = Array.from(
    { length: POINTS },
    (_, i) => setUp.centreHz + setUp.spanHz * REACH * ((2 * i) / (POINTS - 1) - 1),
  );
  const traps = sound.receiver.adjusters.flatMap(({ trapHz }) =>
    trapHz !== null && Math.abs(trapHz - setUp.centreHz) < REACH * setUp.spanHz ? [trapHz] : [],
  );
  const hz = [...new Set([...even, ...traps])].sort((a, b) => a - b);
  const read = (depths: Readonly<Record<string, number>>): readonly number[] =>
    readAt(bench, sound, response, injectAt, levelDb, hz, depths);
  const whole = injectAt === setUp.injectAt && response.specification.sCurve === null;
  const range = controlRange(sound, 'levelDb');
  const high = range.kind === 'number' ? range.max : setUp.levelDb;
  return {
    response: response.id,
    injectAt,
    levelDb,
    hz,
    volts: readAt(bench, sound, response, injectAt, levelDb, hz),
    levels: injectAt === setUp.injectAt ? levelsOf(sound, response, hz) : [],
    louder: !whole
      ? []
      : LOUDER_DB.filter((byDb) => levelDb + byDb <= high).map((byDb) => ({
          byDb,
          volts: readAt(bench, sound, response, injectAt, levelDb + byDb, hz),
        })),
    trapsHz: traps,
    effects: stageEffects(sound.receiver, slugs, read),
    besides: stageEffects(sound.receiver, others, read).filter(isSeen),
  };
}

/** Of the height of the right curve. */
const SEEN = 0.05;

function isSeen({ turns, levels }: SlugEffect): boolean {
  const right = levels[turns.indexOf(0)]!;
  return levels.some((turned) => turned.some((v, i) => Math.abs(v - right[i]!) > SEEN));
}

/** Stage by stage the level is set for the volts that the sheet's own level gives from the front. */
export function levelFor(bench: Bench, sound: BenchSetup, response: SheetResponse, injectAt: string): number {
  const { setUp } = response;
  if (injectAt === setUp.injectAt) return setUp.levelDb;
  const wanted = peakOf(bench, sound, response, setUp.injectAt, setUp.levelDb);
  const state = stateFor(sound, response, injectAt, setUp.levelDb);
  for (let levelDb = -80; levelDb < 0; levelDb++) {
    const { controls } = state;
    if (bench.facts({ ...state, controls: { ...controls, levelDb } }).detectedPeakVolts >= wanted) return levelDb;
  }
  return 0;
}

/** Relative to the largest of them. */
export function levelsOf(sound: BenchSetup, response: SheetResponse, hz: readonly number[]): readonly number[] {
  const { receiver, deck } = sound;
  return keptFigure(sound, ['levels', response.id, ...hz], () => {
    const at = createStatedResponse(receiver, deck, response, Float64Array.from(hz)).nominal.volts;
    const peak = Math.max(...at.map(Math.abs));
    return [...at].map((level) => level / peak);
  });
}

type Bench = ReturnType<typeof createBench>;

function peakOf(bench: Bench, sound: BenchSetup, response: SheetResponse, injectAt: string, levelDb: number): number {
  return bench.facts(stateFor(sound, response, injectAt, levelDb)).detectedPeakVolts;
}

/** One volt a division, straight from the beam: no eye is needed for what is printed. `depths`: of cores that stand elsewhere than they should. */
export function readAt(
  bench: Pick<Bench, 'display'>,
  sound: BenchSetup,
  response: SheetResponse,
  injectAt: string,
  levelDb: number,
  hz: readonly number[],
  depths: Readonly<Record<string, number>> = {},
): number[] {
  const { setUp } = response;
  const state = stateFor(sound, response, injectAt, levelDb);
  const slugs = Object.fromEntries(
    Object.entries(state.slugs).map(([id, slug]) => {
      const depth = depths[id];
      return [id, depth === undefined ? slug : { ...slug, coreTurns: depth, screwTurns: depth }];
    }),
  );
  const { beam } = bench.display({ ...state, slugs });
  const half = beam.count / 2;
  return hz.map((f) => {
    const at = (10 * (f - setUp.centreHz)) / setUp.spanHz;
    for (let i = 1; i < half; i++) {
      const a = beam.data[3 * (i - 1)]!;
      const b = beam.data[3 * i]!;
      if ((a - at) * (b - at) > 0) continue;
      const ya = beam.data[3 * (i - 1) + 1]!;
      const yb = beam.data[3 * i + 1]!;
      return a === b ? ya : ya + ((yb - ya) * (at - a)) / (b - a);
    }
    return 0;
  });
}

function stateFor(sound: BenchSetup, response: SheetResponse, injectAt: string, levelDb: number) {
  const { receiver } = sound;
  const { setUp } = response;
  const leads = { ...sheetLeads(receiver, response), rf: injectAt };
  const set = ([control, value]: Setting): BenchEvent => ({ type: 'controlSet', control, value });
  const knobs = { ...sheetControls(setUp), levelDb, blanking: true, yVoltsPerDiv: 1, pipHeightDiv: 0 };
  const events: BenchEvent[] = [
    { type: 'cautionsAcknowledged' },
    ...(receiver.mains === null ? [] : [{ type: 'isolationSwitched', on: true } as const]),
    ...Object.entries(leads).flatMap(([lead, to]): BenchEvent[] =>
      to === null ? [] : [{ type: 'leadConnected', lead: lead as keyof typeof leads, to }],
    ),
    ...settings(sheetFittings(setUp)).map(set),
    ...(receiver.mains === null ? [] : [{ type: 'powerSwitched', on: true } as const]),
    ...settings(knobs).map(set),
  ];
  return stateAfter(sound, events);
}

export function stateAfter(sound: BenchSetup, events: readonly BenchEvent[]): BenchState {
  let state = initialState(sound);
  for (const event of events) {
    const applied = applyEvent(sound, state, event, state.seconds + 0.1);
    if (applied.ok) state = applied.state;
    else if (applied.reason !== 'alreadySo') throw new Error(`printing the sheet: ${applied.reason}`);
  }
  return state;
}
