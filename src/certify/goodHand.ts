/** The acts of a good hand that knows where every slug belongs, from making safe to signing: for par, and to check that every line of the score can be had. */
import { unreachable } from '../base/never.ts';
import { roundTo } from '../base/rounding.ts';
import { applyEvent } from '../bench/applyEvent.ts';
import type { Bench } from '../bench/bench.ts';
import type { BenchEvent, Refusal } from '../bench/benchEvent.ts';
import type { BenchState, Controls, LeadId } from '../bench/benchState.ts';
import { BIAS_OUTPUTS } from '../bench/biasOutputs.ts';
import { choicesOf } from '../bench/controlRange.ts';
import { CONTROL_ROWS } from '../bench/controls/rows.ts';
import { mirrorFor } from '../bench/deflection.ts';
import { WARM_UP_SECONDS, warmthOf } from '../bench/heat.ts';
import { HALF_HEIGHT_DIV } from '../bench/instruments.ts';
import { readersBench } from '../bench/readersBench.ts';
import { type BenchSetup, initialState } from '../bench/setup.ts';
import { PLAIN_PICTURE, settings, sheetControls, sheetFittings, sheetLeads } from '../bench/sheetSetUp.ts';
import { inPieces } from '../bench/slugTurning.ts';
import { toolFor } from '../bench/tools.ts';
import type { TimedEvent } from '../files/runFile.ts';
import { cureOf } from '../receiver/faults/cure.ts';
import type { SheetResponse } from '../receiver/receiver.ts';
import type { CoreTurns } from '../receiver/statedResponse.ts';
import type { ProofId } from '../scenario/proofId.ts';

const STEP_MS = 100;
/** A set farther from warm than this is waited for. */
const CHILLY = 0.1;

export interface Hand {
  readonly state: BenchState;
  readonly events: readonly TimedEvent[];
  readonly bench: Bench;
  /** acts that the bench refused */
  readonly refused: readonly { readonly event: BenchEvent; readonly reason: Refusal }[];
  take(...events: readonly BenchEvent[]): void;
  /** lets the bench's clock run */
  rest(seconds: number): void;
}

/** `from`: how the bench stands; left out: as before the first act. */
export function createHand(setup: BenchSetup, from: BenchState = initialState(setup)): Hand {
  let state = from;
  const events: TimedEvent[] = [];
  let atMs = Math.ceil(1000 * from.seconds);
  const refused: { event: BenchEvent; reason: Refusal }[] = [];
  return {
    get state() {
      return state;
    },
    events,
    refused,
    bench: readersBench(setup),
    rest(seconds) {
      atMs += 1000 * seconds;
    },
    take(...more) {
      for (const event of more) {
        const applied = applyEvent(setup, state, event, (atMs + STEP_MS) / 1000);
        if (applied.ok) {
          atMs += STEP_MS;
          state = applied.state;
          events.push({ atMs, ...event });
        } else if (applied.reason !== 'alreadySo' && applied.reason !== 'crystalAlreadyIn') {
          refused.push({ event, reason: applied.reason });
        }
      }
    },
  };
}

/** Safe, every failed part replaced and every bad contact made again, before the set is switched on. */
export function makeSound(setup: BenchSetup, hand: Hand): void {
  const { receiver, deck, scenario } = setup;
  hand.take({ type: 'cautionsAcknowledged' });
  if (receiver.mains !== null) hand.take({ type: 'isolationSwitched', on: true });
  if (receiver.mains !== null) hand.take({ type: 'powerSwitched', on: false });
  for (const fault of scenario.faults) {
    const cure = cureOf(fault, receiver, deck);
    if (cure.kind === 'replace' && !hand.state.replaced.includes(cure.part)) {
      hand.take({ type: 'partReplaced', element: cure.part });
    }
    if (cure.kind === 'reconnect' && hand.state.leads[cure.lead] !== null) {
      hand.take({ type: 'leadRemoved', lead: cure.lead });
    }
  }
}

/** Leads, knobs and crystals as the sheet has them for one response. */
export function setUpFor(setup: BenchSetup, hand: Hand, response: SheetResponse): void {
  const { receiver, scenario } = setup;
  const { setUp } = response;
  if (receiver.mains !== null) hand.take({ type: 'powerSwitched', on: false });
  for (const [lead, to] of Object.entries(sheetLeads(receiver, response)) as [LeadId, string | null][]) {
    if (hand.state.leads[lead] === to) continue;
    if (hand.state.leads[lead] !== null) hand.take({ type: 'leadRemoved', lead });
  }
  for (const [lead, to] of Object.entries(sheetLeads(receiver, response)) as [LeadId, string | null][]) {
    if (to !== null && hand.state.leads[lead] !== to) hand.take({ type: 'leadConnected', lead, to });
  }
  setAll(hand, sheetFittings(setUp));
  if (receiver.mains !== null) hand.take({ type: 'powerSwitched', on: true });
  if (warmthOf(setup, hand.state).chill > CHILLY) hand.rest(WARM_UP_SECONDS);
  setAll(hand, {
    ...sheetControls(setUp),
    centreHz: setUp.centreHz - (scenario.bench.centreErrorHz ?? 0),
    phasingDegrees: -scenario.bench.phaseLagDegrees,
    mirror: mirrorFor(setup, setUp.lowFrequencyAtLeft),
    blanking: true,
  });
  byTheNeedle(hand, response);
  for (const hz of hand.state.crystals) if (!setUp.markersHz.includes(hz)) hand.take({ type: 'crystalPulled', hz });
  for (const hz of setUp.markersHz) {
    if (!hand.state.crystals.includes(hz)) hand.take({ type: 'crystalPlugged', hz });
  }
  setAll(hand, { pipHeightDiv: 0.3, ...PLAIN_PICTURE });
}

/** A line that the supply's knob leaves too far off is brought to its volts by the needle. */
export function byTheNeedle(hand: Hand, { id, setUp }: SheetResponse): void {
  const facts = hand.bench.facts(hand.state);
  if (facts.response !== id) return;
  for (const [i, { errorVolts, toleranceVolts }] of facts.biases.entries()) {
    const output = BIAS_OUTPUTS[i];
    if (output === undefined || Math.abs(errorVolts) <= toleranceVolts / 2) continue;
    const { volts } = setUp.biases[i]!;
    // What is given goes with what the knob says.
    const said = (Math.abs(hand.state.controls[output.volts]) * volts) / (volts + errorVolts);
    set(hand, output.volts, roundTo(said, 0.01));
  }
}

/** Each slug straight to where it belongs, its backlash taken up; returns those that could not be turned. */
export function turnAll(setup: BenchSetup, hand: Hand, wanted: CoreTurns): void {
  for (const adjuster of setup.receiver.adjusters) {
    const slug = hand.state.slugs[adjuster.id]!;
    const away = (wanted[adjuster.id] ?? slug.coreTurns) - slug.coreTurns;
    if (Math.abs(away) < LEAST_TURN) continue;
    const screw = slug.coreTurns + away + (Math.sign(away) * adjuster.backlashTurns) / 2;
    const whole = Math.min(Math.max(screw, 0), adjuster.travelTurns) - slug.screwTurns;
    if (whole === 0) continue;
    hand.take({ type: 'toolTaken', tool: toolFor(adjuster.head) });
    for (const turns of inPieces(whole)) hand.take({ type: 'slugTurned', slug: adjuster.id, turns });
  }
  hand.take({ type: 'toolTaken', tool: null });
}

/** Y gain that shows the trace as tall as the graticule allows, put in its middle: a carrier that never goes away lifts a line that may be small itself. */
export function fillTube(setup: BenchSetup, hand: Hand): void {
  const gains = choicesOf(setup, 'yVoltsPerDiv').map(Number);
  const most = 2 * HALF_HEIGHT_DIV * 0.95;
  for (const gain of gains) {
    set(hand, 'yVoltsPerDiv', gain);
    if (hand.bench.facts(hand.state).traceHeightDiv > most) continue;
    for (const position of [0, -3.5, 3.5, -3.75, 3.75, -4, 4, -3, 3]) {
      set(hand, 'yPositionDiv', position);
      if (hand.bench.facts(hand.state).traceOnScreen) return;
    }
  }
}

/** The act of a proof, with the picture as it stands. */
export function prove(proof: ProofId, hand: Hand): void {
  const { controls, leads } = hand.state;
  // What setting up happened to prove was made on another picture.
  if (hand.state.proofs[proof].done) hand.take({ type: 'findingStated', proof, answer: 'again', figure: null });
  switch (proof) {
    case 'halveLevel':
      thereAndBack(hand, 'levelDb', controls.levelDb - 6);
      break;
    case 'markersOffOn':
      thereAndBack(hand, 'pipHeightDiv', 0);
      break;
    case 'swingPhase':
      thereAndBack(hand, 'phasingDegrees', controls.phasingDegrees + (controls.phasingDegrees > 0 ? -15 : 15));
      break;
    case 'skirts':
    case 'pipDown':
      if (controls.levelDb <= -LARGER_DB) thereAndBack(hand, 'levelDb', controls.levelDb + LARGER_DB);
      else thereAndBack(hand, 'yVoltsPerDiv', finer(controls.yVoltsPerDiv));
      break;
    case 'touchEarth':
      if (leads.earth === null) break;
      hand.take({ type: 'leadRemoved', lead: 'earth' }, { type: 'leadConnected', lead: 'earth', to: leads.earth });
      break;
    case 'liftCrystal': {
      const hz = lowestPip(hand);
      if (hz !== null) hand.take({ type: 'crystalPulled', hz }, { type: 'crystalPlugged', hz });
      break;
    }
    case 'bias': {
      const at = leads.biasA;
      if (at === null) break;
      set(hand, 'meterMode', 'dc');
      hand.take({ type: 'leadConnected', lead: 'meter', to: at }, { type: 'leadRemoved', lead: 'meter' });
      break;
    }
    default:
      unreachable(proof);
  }
}

/** The picture of the skirts is larger by this much: two clicks of the Y gain. */
const LARGER_DB = 12;

/** At least twelve decibels more gain, as near as the clicks allow. */
function finer(voltsPerDiv: number): number {
  const clicks = CONTROL_ROWS.yVoltsPerDiv.choices;
  return clicks.findLast((click) => click <= voltsPerDiv / 3.99) ?? clicks[0];
}

/** Of the crystals whose pips stand on the sweep, the one that is lowest in frequency. */
function lowestPip(hand: Hand): number | null {
  const shown = hand.bench.display(hand.state).tags.filter(({ kind, xDiv }) => kind === 'crystal' && xDiv !== null);
  const hz = shown.map((tag) => tag.hz).sort((a, b) => a - b);
  return hz.find((one) => hand.state.crystals.includes(one)) ?? null;
}

/** Nearer than this nobody turns a slug. */
const LEAST_TURN = 1e-3;

function set(hand: Hand, control: keyof Controls, value: number | boolean | string): void {
  if (hand.state.controls[control] !== value) hand.take({ type: 'controlSet', control, value });
}

function setAll(hand: Hand, controls: Partial<Controls>): void {
  for (const [control, value] of settings(controls)) set(hand, control, value);
}

function thereAndBack(
  hand: Hand,
  control: 'levelDb' | 'yVoltsPerDiv' | 'pipHeightDiv' | 'phasingDegrees',
  away: number,
): void {
  const here = hand.state.controls[control];
  hand.take({ type: 'controlSet', control, value: away }, { type: 'controlSet', control, value: here });
}
