/** `deck`: the set that a scenario puts on the bench, connected as its sheet says, as a SPICE deck for a time run. */
import { bad, type Result } from '../base/result.ts';
import { lineVoltsAt } from '../bench/biasLine.ts';
import { type LineVolts, slugElementValues, stageElementValues } from '../bench/conditions.ts';
import { connectedDeck, RF_SOURCE } from '../bench/connections.ts';
import { observedAt, standingVolts } from '../bench/detection.ts';
import { createFaultBook } from '../bench/faultsNow.ts';
import { diodesNow } from '../bench/loads.ts';
import { createMoments, type Moment } from '../bench/moment.ts';
import { type Observation, observe } from '../bench/observation.ts';
import { type Deck, nodeKey } from '../physics/deck.ts';
import { deckParts } from '../receiver/deckParts.ts';
import { createSignalPath } from '../receiver/signalPath.ts';
import { SOURCE_OHMS } from '../receiver/sourceLevel.ts';
import { deckText, type Mixer } from './deckText.ts';
import { type DeckDiode, settlingSeconds } from './settling.ts';
import { hertzOf, type SetOptions, type SheetBench, sheetBench } from './sheetBench.ts';
import { EXIT, type ExitCode, type Terminal, tellProblems, worded } from './terminal.ts';

export interface DeckOptions extends SetOptions {
  readonly hz: string;
}

export function deck(terminal: Terminal, name: string, options: DeckOptions): ExitCode {
  const hz = hertzOf(terminal, options.hz);
  const bench = sheetBench(terminal, name, options);
  const text = bench.ok ? written(terminal, name, bench.value, hz) : bench;
  if (!text.ok) return tellProblems(terminal, text.problems);
  terminal.out(text.value);
  return EXIT.good;
}

function written(terminal: Terminal, name: string, bench: SheetBench, hz: number): Result<string> {
  const { setup, response, standing } = bench;
  const say = terminal.words.cli.deck;
  const { receiver: whole, scenario } = setup;
  if (response.setUp.source === 'video') {
    return bad(worded({ file: name, place: '/work', found: say.videoSweep(response.title), wanted: say.plainSweep }));
  }
  const faults = createFaultBook(setup);
  const state = bench.stateAt(hz);
  const moment = createMoments(setup, faults)(faults(state).really(state));
  const { receiver } = moment.setup;
  const lineVolts = lineVoltsAt(moment);
  const { slugs, stages, sourceVolts } = moment.conditions(lineVolts);
  const { rf } = moment.connections;
  const observation = observe(moment.setup, moment.state, moment.connections);
  if (observation === null || rf === null) {
    return bad(worded({ file: name, place: '/work', found: say.nothingSeen(response.title), wanted: say.something }));
  }
  const values = [
    ...Object.entries(slugs).flatMap(([id, { coreTurns }]) =>
      slugElementValues(moment.setup, id, coreTurns, moment.connections.steelIn === id),
    ),
    ...stageElementValues(moment.setup, stages),
  ];
  const standingDeck = withValues(
    connectedDeck(moment.setup, moment.connections),
    new Map(values.map((v) => [v.element.toLowerCase(), v.value])),
  );
  const own = rf.inject?.kind === 'deckSource' ? rf.inject : null;
  const drive = own?.element ?? RF_SOURCE;
  const amps = sourceVolts * (own?.siemens ?? 1 / SOURCE_OHMS);
  const diodes = receiver.detectors.map(
    (detector): DeckDiode => ({
      detector,
      diodes: diodesNow(moment.setup, detector, moment.state, moment.connections),
    }),
  );
  const mixer = mixerOf(moment, standingDeck, drive);
  const turned = mixer !== null && mixer.oscillatorHz > hz;
  const settling = settlingSeconds(moment, lineVolts, observation, diodes, response.setUp.spanHz, turned);
  return {
    ok: true,
    value: deckText(say, {
      set: whole.setName,
      scenario: scenario.id,
      number: scenario.set ?? null,
      standing,
      response: response.title,
      levelDb: response.setUp.levelDb,
      hz,
      deck: standingDeck,
      stages: receiver.stages,
      drive,
      amps,
      lineVolts,
      mixer,
      diodes,
      point: moment.connections.y!,
      observation,
      heldVolts: heldVolts(moment, lineVolts, observation),
      settling,
    }),
  };
}

function heldVolts(moment: Moment, lineVolts: LineVolts, observation: Observation): number {
  const { node, minusNode, pair } = observation;
  if (minusNode === null || pair === null) return 0;
  const { solvers, hz } = moment.full;
  solvers.solve(hz, moment.conditions(lineVolts));
  const at = (one: string): number => solvers.magnitude(one, new Float64Array(1))[0]!;
  const sum: Observation = { ...observedAt(moment, observation), pair: { ...pair, tap: 'sum' } };
  return standingVolts(sum, at(node), at(minusNode), undefined, 0);
}

function withValues(plain: Deck, values: ReadonlyMap<string, number>): Deck {
  const elements = plain.elements.map((e) => ({ ...e, value: values.get(e.name.toLowerCase()) ?? e.value }));
  return { ...plain, elements };
}

/** Null where the signal meets no mixer on its way. */
function mixerOf({ setup: { receiver } }: Moment, standing: Deck, drive: string): Mixer | null {
  const { converter } = receiver;
  if (converter === null) return null;
  const parts = deckParts(standing);
  const partOf = (element: string) =>
    parts.find((part) => part.deck.elements.some((e) => e.name.toLowerCase() === element.toLowerCase()));
  const driven = partOf(drive);
  if (driven === undefined || !driven.nodes.has(nodeKey(converter.from)) || partOf(converter.into) === driven)
    return null;
  const oscillatorHz = createSignalPath(receiver, standing).oscillatorHz();
  if (oscillatorHz === null) return null;
  return { from: converter.from, into: converter.into, siemens: converter.siemens, oscillatorHz };
}
