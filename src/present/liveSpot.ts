/** The part of the bench that is meant by what keeps a step of the sheet from its tick, where one part is: a lead and its point, a control, a crystal. Pure. */

import type { ControlId } from '../bench/benchEvent.ts';
import { type BenchState, type LeadId, TUBE_X } from '../bench/benchState.ts';
import { BIAS_OUTPUTS } from '../bench/biasOutputs.ts';
import type { Facts } from '../bench/facts.ts';
import { faintByLevel } from '../bench/faintByLevel.ts';
import { heatersComingUp } from '../bench/heat.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { sheetLeads } from '../bench/sheetSetUp.ts';
import { jobSheet } from '../receiver/jobSheet.ts';
import { responseById } from '../receiver/responses.ts';
import type { MissingCode } from '../session/missing.ts';
import type { GuideSpot } from './guide.ts';
import type { BenchPort } from './ports.ts';
import { stateNow } from './stateNow.ts';
import { lackOfStep, stepMarks, stepNow } from './steps.ts';

/** What a curve that comes with the heaters lacks till then. */
const BY_HEAT: ReadonlySet<MissingCode> = new Set(['nothingOnTube', 'tooWeak']);

const LEADS: Partial<Readonly<Record<MissingCode, LeadId>>> = {
  rfNotConnected: 'rf',
  rfWrongPoint: 'rf',
  yWrongPoint: 'y',
  notEarthed: 'earth',
  earthNotTouched: 'earth',
};

const CONTROLS: Partial<Readonly<Record<MissingCode, ControlId>>> = {
  rfNotTerminated: 'rfTerminated',
  rfNoCapacitor: 'rfCapacitor',
  yWrongTip: 'yTip',
  sweepTooWide: 'spanHz',
  phaseOff: 'phasingDegrees',
  blankingOff: 'blanking',
  overloaded: 'levelDb',
  tooWeak: 'levelDb',
  markersThroughSet: 'markerRoute',
  pipsTooHigh: 'pipHeightDiv',
  pipsTooLow: 'pipHeightDiv',
  dialOff: 'dialTrimHz',
  xReversed: 'mirror',
  traceDark: 'brightness',
  traceTooLow: 'yVoltsPerDiv',
  acCoupled: 'yCoupling',
  verticalLag: 'ySmoothing',
  levelNotHalved: 'levelDb',
  markersNotSwitched: 'pipHeightDiv',
  phaseNotSwung: 'phasingDegrees',
  skirtsNotSeen: 'yVoltsPerDiv',
  pipNotRead: 'yVoltsPerDiv',
};

/** What the step to do now is waiting for. */
export function spotNow(port: BenchPort): GuideSpot | null {
  const session = port.session();
  if (session.stage !== 'working') return null;
  const sheet = jobSheet(port.receiver, port.scenario);
  const lack = lackOfStep(sheet, stepNow(stepMarks(sheet, session)), session);
  return lack === null ? null : spotOfMissing(port.setup, port.facts(), stateNow(port), lack.code);
}

/** null: no one part, or one that only the learner can find */
export function spotOfMissing(
  { receiver, scenario }: Pick<BenchSetup, 'receiver' | 'scenario'>,
  facts: Facts,
  state: Pick<BenchState, 'controls' | 'heat' | 'powered' | 'seconds'>,
  code: MissingCode,
): GuideSpot | null {
  // What is missing comes with the heaters, and no knob brings it sooner.
  if (BY_HEAT.has(code) && heatersComingUp({ receiver, scenario }, state)) return null;
  if (code === 'notIsolated') return { kind: 'isolation' };
  if (code === 'powerOff') return { kind: 'mains' };
  if (code === 'nothingOnTube')
    return faintByLevel({ receiver }, facts, state) ? { kind: 'control', control: 'levelDb' } : null;
  const response = responseById(receiver, facts.response);
  const lead = LEADS[code];
  if (lead !== undefined) {
    const to = sheetLeads(receiver, response)[lead];
    return to == null ? null : { kind: 'lead', lead, to };
  }
  if (code === 'xNotConnected') return { kind: 'lead', lead: 'x', to: TUBE_X };
  const [bias] = response.setUp.biases;
  if (code === 'biasNotMetered') return bias === undefined ? null : { kind: 'lead', lead: 'meter', to: bias.at };
  if (code === 'biasNotConnected')
    return bias === undefined ? null : { kind: 'lead', lead: BIAS_OUTPUTS[0]!.lead, to: bias.at };
  const [hz] = facts.markersMissingHz;
  if (code === 'markersMissing') return hz === undefined ? null : { kind: 'crystal', hz };
  const control = code === 'traceOffScreen' ? knobOfOverflow(facts) : CONTROLS[code];
  return control === undefined ? null : { kind: 'control', control };
}

/** A trace that fits the face is moved; one that does not is made smaller. */
const knobOfOverflow = ({ traceHeightDiv }: Pick<Facts, 'traceHeightDiv'>): ControlId =>
  traceHeightDiv > MOST_TALL_DIV ? 'yVoltsPerDiv' : 'yPositionDiv';

/** of the eight divisions of the face */
const MOST_TALL_DIV = 7.5;
