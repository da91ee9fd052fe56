/** Every receiver and scenario that ships, on the bench: the sheet's set-up shows the sheet's curve. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { checkControl, choicesOf } from '../../src/bench/controlRange.ts';
import { SOCKETS } from '../../src/bench/markerRack.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import { readDeck } from '../../src/physics/readDeck.ts';
import type { Receiver } from '../../src/receiver/receiver.ts';
import { responseById } from '../../src/receiver/responses.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { play, SCENARIO, sheetStart } from './fixture.ts';

const root = join(import.meta.dirname, '../../scenarios');
const json = (...path: string[]): unknown => JSON.parse(readFileSync(join(root, ...path), 'utf8'));
const folders = readdirSync(join(root, 'receivers'));
const tracks = readdirSync(root, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && entry.name !== 'receivers' && entry.name !== 'schema')
  .map((entry) => entry.name);
const files = tracks.flatMap((track) => readdirSync(join(root, track)).map((name) => join(track, name)));

function setupWith(folder: string, scenario: Scenario): BenchSetup {
  const receiver = json('receivers', folder, 'receiver.json') as Receiver;
  const deck = readDeck(readFileSync(join(root, 'receivers', folder, receiver.deck), 'utf8'), folder);
  if (!deck.ok) throw new Error(JSON.stringify(deck.problems));
  return { receiver, deck: deck.value, scenario };
}

test('there are some', () => {
  expect(folders.length).toBeGreaterThan(0);
  expect(files.length).toBeGreaterThan(0);
});

const sheets = folders.flatMap((folder) =>
  setupWith(folder, SCENARIO).receiver.responses.map((response) => [folder, response.id] as const),
);

describe.each(sheets)('%s, %s', (folder, id) => {
  const bare = setupWith(folder, { ...SCENARIO, responses: [id] });
  const response = responseById(bare.receiver, id);
  const { setUp, specification, quantity } = response;
  // A running oscillator is seen by its beat, which swings too fast for smoothing and is no curve of a tank.
  const beats = specification.peaks.some((peak) => peak.oscillator === true);
  const scenario: Scenario = {
    ...SCENARIO,
    responses: [id],
    start: sheetStart(bare, response),
    bench: { ...SCENARIO.bench, mainsHz: setUp.mainsHz },
  };
  const setup: BenchSetup = { ...bare, scenario };
  const plugs = setUp.markersHz.map((hz): BenchEvent => ({ type: 'crystalPlugged', hz }));
  const bench = createBench(setup);

  test("the sheet's set-up can be made and has its facts right", () => {
    expect(setUp.markersHz.length).toBeLessThanOrEqual(SOCKETS);
    const facts = bench.facts(play(setup, plugs));
    expect(facts).toMatchObject({
      response: id,
      rfAtSheetPoint: true,
      yAtSheetPoint: true,
      yTipAsSheet: true,
      earthed: true,
      biasConnected: true,
      sourceAsSheet: true,
      slowSweepAsSheet: true,
      residualPhaseDegrees: 0,
      spanCovers: true,
      markersMissingHz: [],
      sweeping: true,
    });
    for (const bias of facts.biases) expect(bias.errorVolts).toBe(0);
    expect(facts.compressionDb).toBeLessThan(0.5);
    // As the score wants them (G60, G56).
    expect(facts.sweepLag).toBeLessThanOrEqual(0.05);
    expect(facts.verticalLagDegrees).toBeLessThanOrEqual(1);
    const share = facts.detectedPeakVolts / facts.sheetPeakVolts;
    expect(share).toBeGreaterThan(0.97);
    // Where levels are relative to a frequency, the peak is another; an S-curve's two peaks are not quite alike.
    if (specification.referenceHz === undefined) expect(share).toBeLessThan(quantity.kind === 'carrier' ? 1.01 : 1.05);
  });

  test('some Y gain and position put the whole trace on the screen', () => {
    const range = choicesOf(setup, 'yVoltsPerDiv').map(Number);
    const peak = bench.facts(play(setup, [])).detectedPeakVolts;
    const tall = quantity.kind === 'carrier' ? 7 : 3.5;
    const yVoltsPerDiv = range.find((v) => peak / v <= tall)!;
    const facts = (yPositionDiv: number) =>
      bench.facts(
        play(setup, [
          { type: 'controlSet', control: 'yVoltsPerDiv', value: yVoltsPerDiv },
          { type: 'controlSet', control: 'yPositionDiv', value: yPositionDiv },
          ...(beats ? [{ type: 'controlSet', control: 'yInput', value: 'raw' } as const] : []),
        ]),
      );
    expect([3.6, 0, -3.6].some((position) => facts(position).traceOnScreen)).toBe(true);
    expect(facts(0).traceHeightDiv).toBeGreaterThan(2.5);
  });

  // A video sweep stands on a carrier, and an S-curve is a difference of two: neither is a raw curve.
  const raw = quantity.kind === 'carrier' && setUp.source === 'sweep' && !beats;
  if (raw)
    test("the raw curve on the tube at the sheet's level is the truth of the sheet, to the noise of the tube", () => {
      const gain = (yVoltsPerDiv: number): BenchEvent[] => [
        { type: 'controlSet', control: 'yInput', value: 'raw' },
        { type: 'controlSet', control: 'yVoltsPerDiv', value: yVoltsPerDiv },
      ];
      const heights = (yVoltsPerDiv: number): number => bench.facts(play(setup, gain(yVoltsPerDiv))).traceHeightDiv;
      const yVoltsPerDiv = [0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1].find((v) => heights(v) < 16)!;
      const state = play(setup, gain(yVoltsPerDiv));
      const { data } = bench.display(state).beam;
      const truth = bench.truth(state, id);
      const tallest = truth.relative.reduce((most, v) => Math.max(most, v), 0);
      let peak = 0;
      for (let i = 0; i < 1024; i++) peak = Math.max(peak, Math.abs(data[3 * i + 1]!));
      // A sweep that is not quite slow shows the curve late by as much as it says.
      const late = bench.facts(state).sweepLag;
      let compared = 0;
      for (let i = 0; i < 1024; i += 16) {
        const hz = setUp.centreHz + (setUp.spanHz / 2) * (data[3 * i]! / 5);
        const at = truth.hz.findIndex((f) => f >= hz);
        if (at < 1) continue;
        compared++;
        const [a, b] = [truth.hz[at - 1]!, truth.hz[at]!];
        const level = truth.relative[at - 1]! + ((truth.relative[at]! - truth.relative[at - 1]!) * (hz - a)) / (b - a);
        const noise = 0.01 + 0.3e-3 / (peak * yVoltsPerDiv);
        expect(Math.abs(Math.abs(data[3 * i + 1]!) / peak - level / tallest)).toBeLessThan(noise + 2 * late);
      }
      expect(compared).toBeGreaterThan(30);
    });
});

test.each(files)('scenario %s stands up', (file) => {
  const parsed = parseScenario(json(file), file);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const scenario = parsed.value;
  const setup = setupWith(scenario.receiver, scenario);
  for (const [control, value] of Object.entries(scenario.start.controls)) {
    expect([control, checkControl(setup, control, value)]).toEqual([control, null]);
  }
  const state = initialState(setup);
  for (const [slug, away] of Object.entries(scenario.start.slugs)) {
    expect(Object.hasOwn(state.slugs, slug)).toBe(true);
    const { travelTurns } = setup.receiver.adjusters.find((a) => a.id === slug)!;
    // Not cut short by a stop.
    expect(state.slugs[slug]!.screwTurns).toBeGreaterThan(0);
    expect(state.slugs[slug]!.screwTurns).toBeLessThan(travelTurns);
    expect(Math.abs(away)).toBeLessThan(travelTurns);
  }
  expect(createBench(setup).display(state).beam.data.every(Number.isFinite)).toBe(true);
});
