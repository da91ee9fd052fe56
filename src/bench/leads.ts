/**
 * Leads: which may go where, and what it costs to handle them at the wrong time.
 *
 * RF goes to points that the receiver marks for injection; Y to signal and detector points; bias to the AGC line; earth to earth; X to the tube;
 * the meter anywhere. Two leads may share a point, save two bias outputs, which would fight each other.
 * On a mains set that is switched on, handling RF, Y or bias is an incident. Three leads are free: X joins two instruments, the meter's
 * prods are made for live work, and the earth strap must be lifted and put back for a proof. The generator's lead, once it has been clipped on, may be moved from
 * point to point on a live set where the transformer isolates it and its capacitor keeps direct current off: that is how a strip is signal-traced.
 * The strap goes on first: where the chassis may be live or the set is on, RF, Y or bias clipped to a chassis without it is an incident of its own, for whatever
 * stands between chassis and instrument then stands across the hand with the clip (common practice, no source).
 */
import { pointTakes } from '../receiver/leadEnds.ts';
import { offersParts } from '../scenario/diagnosis.ts';
import type { Applied } from './benchEvent.ts';
import { type BenchState, HOT_CORNER, type LeadEnd, type LeadId, TUBE_X } from './benchState.ts';
import { BIAS_OUTPUTS, twinEnd } from './biasOutputs.ts';
import { reconnected } from './faultsNow.ts';
import { withIncident } from './incidents.ts';
import { done, refused } from './outcome.ts';
import { stopIfChassisLive } from './power.ts';
import type { BenchSetup } from './setup.ts';

export function connectLead(setup: BenchSetup, state: BenchState, lead: LeadId, to: LeadEnd): Applied {
  if (!isLead(state, lead)) return refused('noSuchLead');
  const { receiver } = setup;
  if (to === HOT_CORNER && receiver.plan.hot !== null && lead !== 'x') {
    if (receiver.mains !== null && !state.cautionsAcknowledged) return refused('cautionsFirst');
    const back = { ...state, leads: { ...state.leads, [lead]: null } };
    return done(withIncident(back, 'hotTouch', lead), { kind: 'unsafe' });
  }
  const point = receiver.testPoints.find((p) => p.id === to);
  if (to !== TUBE_X && point === undefined) return refused('noSuchPoint');
  if (!accepts(setup, lead, to)) return refused('pointRefusesLead');
  if (state.leads[lead] === to) return refused('alreadySo');
  if (twinEnd(state.leads, lead) === to) return refused('pointTaken');
  if (lead === 'x') return done({ ...state, leads: { ...state.leads, x: to } }, { kind: 'clip' });
  if (receiver.mains !== null && !state.cautionsAcknowledged) return refused('cautionsFirst');
  const joined = offersParts(setup.scenario) ? reconnected(state, lead) : state;
  const noted = strapFirst(setup, handled(setup, joined, lead), lead);
  const clipped = { ...noted, leads: { ...noted.leads, [lead]: to }, rfHasBeenOn: noted.rfHasBeenOn || lead === 'rf' };
  return stopIfChassisLive(setup, clipped, lead, { kind: 'clip' });
}

export function removeLead(setup: BenchSetup, state: BenchState, lead: LeadId): Applied {
  if (!isLead(state, lead)) return refused('noSuchLead');
  if (state.leads[lead] === null) return refused('leadNotConnected');
  return done(handled(setup, { ...state, leads: { ...state.leads, [lead]: null } }, lead), { kind: 'unclip' });
}

/** Where a lead may be put as the leads stand, in the order of the receiver's list of points: views mark these for the lead in the hand. */
export function legalEnds(setup: BenchSetup, leads: BenchState['leads'], lead: LeadId): LeadEnd[] {
  const twin = twinEnd(leads, lead);
  return [TUBE_X, ...setup.receiver.testPoints.map((p) => p.id)].filter(
    (end) => end !== twin && accepts(setup, lead, end),
  );
}

/** Whether a lead may go on a point at all. */
export function accepts({ receiver }: BenchSetup, lead: LeadId, to: LeadEnd): boolean {
  if (lead === 'x') return to === TUBE_X;
  const point = receiver.testPoints.find((p) => p.id === to);
  return point !== undefined && pointTakes(lead, point);
}

const LIVE_HANDLING: readonly LeadId[] = ['rf', 'y', ...BIAS_OUTPUTS.map(({ lead }) => lead)];

function handled({ receiver }: BenchSetup, state: BenchState, lead: LeadId): BenchState {
  const live = receiver.mains !== null && state.powered && LIVE_HANDLING.includes(lead);
  const traces = lead === 'rf' && state.rfHasBeenOn && state.isolated && state.controls.rfCapacitor;
  return live && !traces ? withIncident(state, 'wrongPowerOrder', lead) : state;
}

function strapFirst({ receiver }: BenchSetup, state: BenchState, lead: LeadId): BenchState {
  const live = receiver.mains !== null && (receiver.mains.hotChassis || state.powered);
  const bare = live && state.leads.earth === null && LIVE_HANDLING.includes(lead);
  return bare ? withIncident(state, 'beforeEarth', lead) : state;
}

function isLead(state: BenchState, lead: string): lead is LeadId {
  return Object.hasOwn(state.leads, lead);
}
