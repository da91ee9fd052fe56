/**
 * Mains: cautions, isolating transformer, switch.
 *
 * A live chassis carries the mains whichever way the switch stands (it breaks one side only), so a lead clipped to it, or power put on it,
 * without the isolating transformer ends the run.
 */
import type { Applied, BenchSound } from './benchEvent.ts';
import { type BenchState, LEAD_IDS } from './benchState.ts';
import { heatNow } from './heat.ts';
import { withIncident } from './incidents.ts';
import { done, refused } from './outcome.ts';
import type { BenchSetup } from './setup.ts';

export function acknowledgeCautions(state: BenchState): Applied {
  return state.cautionsAcknowledged ? refused('alreadySo') : done({ ...state, cautionsAcknowledged: true });
}

export function switchIsolation(setup: BenchSetup, state: BenchState, on: boolean): Applied {
  if (setup.receiver.mains === null) return refused('notInThisScenario');
  if (state.isolated === on) return refused('alreadySo');
  const switched = { ...state, isolated: on };
  const noted = state.powered ? withIncident(switched, 'wrongPowerOrder', 'isolation') : switched;
  return stopIfChassisLive(setup, noted, 'isolation', { kind: 'relay' });
}

export function switchPower(setup: BenchSetup, state: BenchState, on: boolean): Applied {
  if (setup.receiver.mains === null) return refused('notInThisScenario');
  if (state.powered === on) return refused('alreadySo');
  if (on && !state.cautionsAcknowledged) return refused('cautionsFirst');
  return stopIfChassisLive(setup, { ...state, powered: on, heat: heatNow(state) }, 'power', { kind: 'switch' });
}

/** The X lead joins two instruments. */
const CHASSIS_LEADS = LEAD_IDS.filter((lead) => lead !== 'x');

/** Ends the run where a live chassis now has power or a lead on it and nothing isolates it; else the act is simply done. */
export function stopIfChassisLive(setup: BenchSetup, state: BenchState, subject: string, sound: BenchSound): Applied {
  const live = setup.receiver.mains?.hotChassis === true && !state.isolated;
  const clipped = CHASSIS_LEADS.some((lead) => state.leads[lead] !== null) || state.bridged !== null;
  const touched = state.powered || clipped;
  if (!live || !touched) return done(state, sound);
  return done({ ...withIncident(state, 'hotChassis', subject), stopped: 'hotChassis' }, sound, { kind: 'unsafe' });
}
