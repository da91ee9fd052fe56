/**
 * The sheet as a person has it: printed from a sound set with its slugs right, at a bench without errors. What the tube shows there, after phasing, is read off
 * point by point in volts at the Y input.
 */
import { applyEvent } from '../bench/applyEvent.ts';
import { createBench } from '../bench/bench.ts';
import type { BenchEvent } from '../bench/benchEvent.ts';
import type { BenchState } from '../bench/benchState.ts';
import { choicesOf } from '../bench/controlRange.ts';
import { type BenchSetup, designOf, initialState } from '../bench/setup.ts';
import {
  PLAIN_PICTURE,
  type Setting,
  settings,
  sheetControls,
  sheetFittings,
  sheetLeads,
} from '../bench/sheetSetUp.ts';
import type { SheetResponse } from '../receiver/receiver.ts';
import { responseById, workResponses } from '../receiver/responses.ts';
import { evaluateSpecification, widenSpecification } from '../receiver/specification.ts';
import { specificationFrequencies } from '../receiver/specificationGrid.ts';
import { createStatedResponse } from '../receiver/statedResponse.ts';
import { asksDiagnosis, offersParts } from '../scenario/diagnosis.ts';
import { NO_LIFE } from '../scenario/life.ts';
import { chartedParts } from './faultChart.ts';
import type { ChartEntry, PrintedCurve, PrintedLine, PrintedResponse, PrintedSheet } from './person/sheet.ts';
import { slugEffects, stageEffects } from './slugEffects.ts';

/** Points of a printed curve, beside those at its traps. */
const POINTS = 41;
/** As far as the curve is printed, as a share of the sweep from its centre. */
const REACH = 0.46;

export function printSheet(setup: BenchSetup): PrintedSheet {
  const { receiver, deck, scenario } = setup;
  const work = workResponses(receiver, scenario);
  const sound: BenchSetup = { ...designOf(setup), scenario: soundScenario(setup) };
  const curves: PrintedCurve[] = [];
  const print = (response: SheetResponse, injectAt: string): void => {
    if (curves.some((c) => c.response === response.id && c.injectAt === injectAt)) return;
    const own = receiver.procedure.filter((step) => step.at === injectAt && injectAt !== response.setUp.injectAt);
    curves.push(printCurve(sound, response, injectAt, [...new Set(own.flatMap((step) => step.slugs))]));
  };
  for (const response of work) print(response, response.setUp.injectAt);
  for (const step of receiver.procedure) {
    const id = step.response ?? work[0]?.id;
    if (step.phase !== 'align' || step.at === undefined || !work.some((r) => r.id === id)) continue;
    print(responseById(receiver, id!), step.at);
  }
  return {
    mains: receiver.mains !== null,
    slugs: receiver.adjusters.map(({ id, element, kind, head, trapHz, travelTurns, twoPeaks }) => ({
      id,
      goesThrough: twoPeaks !== undefined,
      coil: deck.elements.find((e) => e.name.toLowerCase() === element.toLowerCase())?.name ?? element,
      kind,
      head,
      trapHz,
      travelTurns,
    })),
    testPoints: receiver.testPoints.map(({ id, role, inject }) => ({ id, role, inject })),
    responses: work.map((response) => printResponse(sound, response, scenario.toleranceFactor)),
    procedure: receiver.procedure,
    curves,
    chart: !offersParts(scenario) ? [] : chartOf(sound, curves, work[0]),
    lines: receiver.biasLines.map(({ at }) => printLine(sound, at)),
    proofs: scenario.proofs,
    sealed: scenario.sealed,
    asksDiagnosis: asksDiagnosis(scenario),
    timeLimitSeconds: scenario.timeLimitSeconds,
    toleranceFactor: scenario.toleranceFactor,
  };
}

function printResponse(sound: BenchSetup, response: SheetResponse, toleranceFactor: number): PrintedResponse {
  const { receiver } = sound;
  const { id, setUp, specification } = response;
  // The level is printed with each curve.
  const { levelDb: _, ...source } = sheetControls(setUp);
  const demands = demandsOn(sound, response, toleranceFactor);
  return {
    id,
    setUp,
    specification,
    ...demands,
    effects: slugEffects(sound, response, demands.lookAtHz),
    leads: sheetLeads(receiver, response),
    fittings: settings(sheetFittings(setUp)),
    knobs: settings({ ...source, ...PLAIN_PICTURE, pipHeightDiv: 0 }),
  };
}

/** The sheet's demands as somebody with its figures in hand works them out: from readings alone. */
function demandsOn(
  sound: BenchSetup,
  response: SheetResponse,
  toleranceFactor: number,
): Pick<PrintedResponse, 'lookAtHz' | 'judge'> {
  const { setUp, specification } = response;
  const wide = widenSpecification(specification, toleranceFactor);
  const hz = specificationFrequencies(specification);
  const { centreHz, spanHz } = setUp;
  // Levels are read against the printed peak: so is the gain.
  const { gain, sCurve } = wide;
  const printed = gain === null || sCurve !== null ? null : levelsOf(sound, response, [...hz])[hz.indexOf(gain.hz)];
  const asRead = { ...wide, gain: gain === null || printed == null ? null : { ...gain, nominal: printed } };
  const lookAtHz = [...hz].filter((f) => Math.abs(f - centreHz) <= spanHz / 2);
  const place = new Map(lookAtHz.map((f, i) => [f, i]));
  const placed = Array.from(hz, (f) => place.get(f) ?? null);
  return {
    lookAtHz,
    judge(read) {
      // What the sweep does not reach is not seen, and counts as nothing.
      const volts = new Float64Array(hz.length);
      for (let i = 0; i < volts.length; i++) volts[i] = placed[i] === null ? 0 : (read[placed[i]!] ?? 0);
      return evaluateSpecification(asRead, hz, volts, null);
    },
  };
}

/** What each failure makes of the first response, from every point that the sheet sweeps for it. */
function chartOf(sound: BenchSetup, curves: readonly PrintedCurve[], main: SheetResponse | undefined): ChartEntry[] {
  if (main === undefined) return [];
  const own = curves.filter((c) => c.response === main.id);
  return chartedParts(sound.receiver, sound.deck).map(({ part, faults }) => {
    const setup = { ...sound, scenario: { ...sound.scenario, faults } };
    const bench = createBench(setup);
    const voltsFrom = Object.fromEntries(
      own.map(({ injectAt, levelDb, hz }) => [injectAt, readAt(bench, setup, main, injectAt, levelDb, hz)]),
    );
    return { part, voltsFrom };
  });
}

/** On a finer range the meter would load the line too much. */
const LEAST_RANGE_VOLTS = 3;

function printLine(sound: BenchSetup, at: string): PrintedLine {
  const read = (meterRangeVolts: number): PrintedLine => {
    const events: BenchEvent[] = [
      { type: 'cautionsAcknowledged' },
      ...(sound.receiver.mains === null ? [] : [{ type: 'isolationSwitched', on: true } as const]),
      { type: 'leadConnected', lead: 'meter', to: at },
      ...(sound.receiver.mains === null ? [] : [{ type: 'powerSwitched', on: true } as const]),
      { type: 'controlSet', control: 'meterMode', value: 'dc' },
      { type: 'controlSet', control: 'meterRangeVolts', value: meterRangeVolts },
    ];
    const restVolts = createBench(sound).display(stateAfter(sound, events)).meterVolts;
    const valves = sound.receiver.stages.filter((stage) => stage.agc === at).map((stage) => stage.element);
    return { at, meterRangeVolts, restVolts, valves };
  };
  const ranges = choicesOf(sound, 'meterRangeVolts').map(Number);
  const enough = ranges.find((range) => range >= LEAST_RANGE_VOLTS && Math.abs(read(range).restVolts) < range);
  return read(enough ?? ranges.at(-1)!);
}

/** Nothing out of place, nothing failed, a bench without errors of its own, as clean as a drawing. */
function soundScenario({ scenario }: BenchSetup): BenchSetup['scenario'] {
  return {
    ...scenario,
    start: { slugs: {}, randomTurns: 0, controls: {}, prepared: [] },
    bench: { phaseLagDegrees: 0, xSwapped: false, mainsHz: scenario.bench.mainsHz, dialErrorHz: 0 },
    life: NO_LIFE,
    faults: [],
    timeLimitSeconds: null,
  };
}

function printCurve(
  sound: BenchSetup,
  response: SheetResponse,
  injectAt: string,
  slugs: readonly string[],
): PrintedCurve {
  const { setUp } = response;
  const bench = createBench(sound);
  // Stage by stage the level is set for the volts that the sheet's own level gives from the front.
  const wanted = peakOf(bench, sound, response, setUp.injectAt, setUp.levelDb);
  let levelDb = setUp.levelDb;
  if (injectAt !== setUp.injectAt) {
    for (levelDb = -80; levelDb < 0; levelDb++) {
      if (peakOf(bench, sound, response, injectAt, levelDb) >= wanted) break;
    }
  }
  const even = Array.from(
    { length: POINTS },
    (_, i) => setUp.centreHz + setUp.spanHz * REACH * ((2 * i) / (POINTS - 1) - 1),
  );
  const traps = sound.receiver.adjusters.flatMap(({ trapHz }) =>
    trapHz !== null && Math.abs(trapHz - setUp.centreHz) < REACH * setUp.spanHz ? [trapHz] : [],
  );
  const hz = [...new Set([...even, ...traps])].sort((a, b) => a - b);
  return {
    response: response.id,
    injectAt,
    levelDb,
    hz,
    volts: readAt(bench, sound, response, injectAt, levelDb, hz),
    levels: injectAt === setUp.injectAt ? levelsOf(sound, response, hz) : [],
    effects: stageEffects(sound.receiver, slugs, (depths) =>
      readAt(bench, sound, response, injectAt, levelDb, hz, depths),
    ),
  };
}

/** Relative to the largest of them. */
function levelsOf({ receiver, deck }: BenchSetup, response: SheetResponse, hz: readonly number[]): readonly number[] {
  const at = createStatedResponse(receiver, deck, response, Float64Array.from(hz)).nominal.volts;
  const peak = Math.max(...at.map(Math.abs));
  return [...at].map((level) => level / peak);
}

type Bench = ReturnType<typeof createBench>;

function peakOf(bench: Bench, sound: BenchSetup, response: SheetResponse, injectAt: string, levelDb: number): number {
  return bench.facts(stateFor(sound, response, injectAt, levelDb)).detectedPeakVolts;
}

/** One volt a division, straight from the beam: no eye is needed for what is printed. `depths`: of cores that stand elsewhere than they should. */
function readAt(
  bench: Bench,
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
      const [a, b] = [beam.data[3 * (i - 1)]!, beam.data[3 * i]!];
      if ((a - at) * (b - at) > 0) continue;
      const [ya, yb] = [beam.data[3 * (i - 1) + 1]!, beam.data[3 * i + 1]!];
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

function stateAfter(sound: BenchSetup, events: readonly BenchEvent[]): BenchState {
  let state = initialState(sound);
  for (const event of events) {
    const applied = applyEvent(sound, state, event, state.seconds + 0.1);
    if (applied.ok) state = applied.state;
    else if (applied.reason !== 'alreadySo') throw new Error(`printing the sheet: ${applied.reason}`);
  }
  return state;
}
