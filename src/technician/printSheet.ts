/**
 * The sheet as a person has it: printed from a sound set with its slugs right, at a bench without errors. What the tube shows there, after phasing, is read off
 * point by point in volts at the Y input.
 */
import { createBench } from '../bench/bench.ts';
import type { BenchEvent } from '../bench/benchEvent.ts';
import { choicesOf } from '../bench/controlRange.ts';
import { type BenchSetup, designOf } from '../bench/setup.ts';
import { PLAIN_PICTURE, settings, sheetControls, sheetFittings, sheetLeads } from '../bench/sheetSetUp.ts';
import type { SheetResponse } from '../receiver/receiver.ts';
import { responseById, workResponses } from '../receiver/responses.ts';
import { evaluateSpecification, widenSpecification } from '../receiver/specification.ts';
import { specificationFrequencies } from '../receiver/specificationGrid.ts';
import { asksDiagnosis, offersParts } from '../scenario/diagnosis.ts';
import { NO_LIFE } from '../scenario/life.ts';
import { chartedParts } from './faultChart.ts';
import { keptFigure, printBench } from './keptPrints.ts';
import type { ChartEntry, PrintedCurve, PrintedLine, PrintedResponse, PrintedSheet } from './person/sheet.ts';
import { levelsOf, printCurve, readAt, stateAfter } from './printCurve.ts';
import { slugEffects } from './slugEffects.ts';
import { stageByStage } from './stageByStage.ts';

export function printSheet(setup: BenchSetup): PrintedSheet {
  const { receiver, deck, scenario } = setup;
  const sound: BenchSetup = { ...designOf(setup), scenario: soundScenario(setup) };
  const work = workResponses(receiver, scenario);
  const searches = offersParts(scenario);
  const procedure = stageByStage(sound);
  const curves = curvesOf(sound, work, procedure, searches);
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
    procedure,
    curves,
    chart: !searches ? [] : chartOf(sound, curves, work[0]),
    lines: receiver.biasLines.map(({ at }) => printLine(sound, at)),
    proofs: scenario.proofs,
    sealed: scenario.sealed,
    asksDiagnosis: asksDiagnosis(scenario),
    timeLimitSeconds: scenario.timeLimitSeconds,
    toleranceFactor: scenario.toleranceFactor,
  };
}

type Effects = PrintedResponse['effects'];

/** The notebook of a design is filled once, for whoever works at a set of its kind. */
const notebooks = new WeakMap<
  BenchSetup['deck'],
  { readonly receiver: BenchSetup['receiver']; readonly by: Map<string, Effects> }
>();

function effectsOf(design: Pick<BenchSetup, 'receiver' | 'deck'>, response: SheetResponse): Effects {
  const { receiver, deck } = design;
  const before = notebooks.get(deck);
  const { by } = before?.receiver === receiver ? before : { by: new Map<string, Effects>() };
  notebooks.set(deck, { receiver, by });
  const effects = by.get(response.id) ?? slugEffects(design, response, lookedAt(response));
  by.set(response.id, effects);
  return effects;
}

/** `searches`: a part may have failed, and the first response is printed from every point where a signal can be put in. */
function curvesOf(
  sound: BenchSetup,
  work: readonly SheetResponse[],
  procedure: PrintedSheet['procedure'],
  searches: boolean,
): readonly PrintedCurve[] {
  const { receiver } = sound;
  const curves: PrintedCurve[] = [];
  const placed = new Set<string>();
  const print = (response: SheetResponse, injectAt: string): void => {
    if (curves.some((c) => c.response === response.id && c.injectAt === injectAt)) return;
    const own = procedure.filter((step) => step.at === injectAt && injectAt !== response.setUp.injectAt);
    const slugs = [...new Set(own.flatMap((step) => step.slugs))];
    for (const id of slugs) placed.add(id);
    const ahead = receiver.adjusters.filter(({ id, trapHz }) => trapHz === null && !placed.has(id));
    const besides = searches && slugs.length > 0 ? ahead.map(({ id }) => id) : [];
    curves.push(printCurve(sound, response, injectAt, slugs, besides));
  };
  for (const response of work) print(response, response.setUp.injectAt);
  for (const step of procedure) {
    const id = step.response ?? work[0]?.id;
    if (step.phase !== 'align' || step.at === undefined || !work.some((r) => r.id === id)) continue;
    print(responseById(receiver, id!), step.at);
  }
  const [main] = work;
  if (!searches || main === undefined || main.setUp.source !== 'sweep') return curves;
  const { injectAt } = main.setUp;
  const behind = receiver.testPoints.filter(({ id, inject }) => inject?.kind === 'node' && id !== injectAt);
  for (const { id } of behind) print(main, id);
  return curves;
}

/** The frequencies of a sheet's demands that its sweep reaches. */
function lookedAt({ setUp: { centreHz, spanHz }, specification }: SheetResponse): readonly number[] {
  return [...specificationFrequencies(specification)].filter((f) => Math.abs(f - centreHz) <= spanHz / 2);
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
    effects: effectsOf(sound, response),
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
  const { specification } = response;
  const wide = widenSpecification(specification, toleranceFactor);
  const hz = specificationFrequencies(specification);
  // Levels are read against the printed peak: so is the gain.
  const { gain, sCurve } = wide;
  const printed = gain === null || sCurve !== null ? null : levelsOf(sound, response, [...hz])[hz.indexOf(gain.hz)];
  const asRead = { ...wide, gain: gain === null || printed == null ? null : { ...gain, nominal: printed } };
  const lookAtHz = lookedAt(response);
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
    const bench = printBench(setup);
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
    const restVolts = keptFigure(
      sound,
      ['rest', at, meterRangeVolts],
      () => createBench(sound).display(stateAfter(sound, events)).meterVolts,
    );
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
