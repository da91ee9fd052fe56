/** The one way in which the bench changes: pure, total; an impossible act is refused with a reason and changes nothing. */
import { unreachable } from '../base/never.ts';
import { recordAsFound } from './asFound.ts';
import type { Applied, BenchEvent } from './benchEvent.ts';
import type { BenchState } from './benchState.ts';
import { bridgePart } from './bridge.ts';
import { checkControl } from './controlRange.ts';
import { stateDiagnosis } from './diagnosis.ts';
import { stateFinding } from './finding.ts';
import { connectLead, removeLead } from './leads.ts';
import { setUpByHelper } from './madeReady.ts';
import { plugCrystal, pullCrystal } from './markerRack.ts';
import { done, refused } from './outcome.ts';
import { meterPart } from './partMeter.ts';
import { replacePart } from './parts.ts';
import { acknowledgeCautions, switchIsolation, switchPower } from './power.ts';
import { watchProofs } from './proofs.ts';
import type { BenchSetup } from './setup.ts';
import { placeTool, takeTool, turnSlug } from './slugTurning.ts';

/** Longest name of a reading, characters. */
const LONGEST_READING_NAME = 80;

/** `atSeconds` is bench time: finite, not before the last event. */
export function applyEvent(setup: BenchSetup, state: BenchState, event: BenchEvent, atSeconds: number): Applied {
  if (!Number.isFinite(atSeconds) || atSeconds < state.seconds) return refused('badTime');
  if (isOver(setup, state, event, atSeconds)) return refused('runIsOver');
  const applied = act(setup, { ...state, seconds: atSeconds + 0 }, event);
  // What a helper does proves nothing, and no watcher remembers it.
  if (!applied.ok || event.type === 'setUpByHelper') return applied;
  const watched = watchProofs(setup, state, applied.state);
  return { ok: true, state: watched.state, heard: [...applied.heard, ...watched.heard] };
}

/** A signed run takes no more events. A stopped run, and one past its time limit, still take readings; one past its limit may also still be signed, with its diagnosis. */
function isOver({ scenario }: BenchSetup, state: BenchState, event: BenchEvent, atSeconds: number): boolean {
  if (state.signedOff) return true;
  if (event.type === 'readingTaken') return false;
  if (state.stopped !== null) return true;
  const late = scenario.timeLimitSeconds !== null && atSeconds > scenario.timeLimitSeconds;
  return late && event.type !== 'signedOff' && event.type !== 'diagnosisStated';
}

function act(setup: BenchSetup, state: BenchState, event: BenchEvent): Applied {
  switch (event.type) {
    case 'cautionsAcknowledged':
      return acknowledgeCautions(state);
    case 'isolationSwitched':
      return switchIsolation(setup, state, event.on);
    case 'powerSwitched':
      return switchPower(setup, state, event.on);
    case 'leadConnected':
      return connectLead(setup, state, event.lead, event.to);
    case 'leadRemoved':
      return removeLead(setup, state, event.lead);
    case 'controlSet':
      return setControl(setup, state, event.control, event.value);
    case 'crystalPlugged':
      return plugCrystal(setup, state, event.hz);
    case 'crystalPulled':
      return pullCrystal(setup, state, event.hz);
    case 'toolTaken':
      return takeTool(state, event.tool);
    case 'toolPlaced':
      return placeTool(setup, state, event.slug);
    case 'slugTurned':
      return turnSlug(setup, state, event.slug, event.turns);
    case 'readingTaken':
      return passReading(state, event.what, event.value);
    case 'partReplaced':
      return replacePart(setup, state, event.element);
    case 'partMetered':
      return meterPart(setup, state, event.element);
    case 'partBridged':
      return bridgePart(setup, state, event.element);
    case 'findingStated':
      return stateFinding(setup, state, event.proof, event.answer, event.figure);
    case 'hintAsked':
      return askHint(setup, state, event.index);
    case 'setUpByHelper':
      return setUpByHelper(setup, state);
    case 'asFoundRecorded':
      return recordAsFound(setup, state, event.response);
    case 'diagnosisStated':
      return stateDiagnosis(setup, state, event);
    case 'signedOff':
      return signOff(state);
    default:
      return unreachable(event);
  }
}

function setControl(setup: BenchSetup, state: BenchState, control: string, value: number | boolean | string): Applied {
  const problem = checkControl(setup, control, value);
  if (problem !== null) return refused(problem);
  // Adding zero keeps a negative zero out of the state: it would not survive JSON.
  const kept = typeof value === 'number' ? value + 0 : value;
  const after = { ...state, controls: { ...state.controls, [control]: kept } };
  return typeof value === 'number' ? done(after) : done(after, { kind: 'switch' });
}

/** Accepted without effect: see `readingTaken`. */
function passReading(state: BenchState, what: string, value: number): Applied {
  return Number.isFinite(value) && what.length <= LONGEST_READING_NAME ? done(state) : refused('valueOutOfRange');
}

/** Hints come in order of telling more; asking for a later one counts those before it. */
function askHint({ scenario }: BenchSetup, state: BenchState, index: number): Applied {
  if (!scenario.aids.hints || scenario.sealed) return refused('notInThisScenario');
  if (!Number.isInteger(index) || index < 0 || index >= scenario.hints.length) return refused('noHint');
  return done({ ...state, hintsTaken: Math.max(state.hintsTaken, index + 1) });
}

/** There is something to sign once a slug has been turned, or while a curve could be seen. */
function signOff(state: BenchState): Applied {
  const seen = state.leads.rf !== null && state.leads.y !== null;
  if (state.turnsMade === 0 && !seen) return refused('nothingToSign');
  return done({ ...state, signedOff: true }, { kind: 'sign' });
}
