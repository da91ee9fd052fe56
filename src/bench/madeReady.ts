/**
 * A helper who sets the bench up: for a learner who has shown that he can do it himself. The set is made safe, the leads are clipped, source, markers and picture stand as the
 * sheet says, phased. It is one act of the run, the same for whoever replays it. It proves nothing, and what it is worth is for grading to say (G68).
 */
import type { Scenario } from '../scenario/scenario.ts';
import type { Applied } from './benchEvent.ts';
import { type BenchState, NO_PROOFS } from './benchState.ts';
import { mirrorFor } from './deflection.ts';
import { heatNow } from './heat.ts';
import { done, refused } from './outcome.ts';
import { type BenchSetup, firstResponse, initialState } from './setup.ts';
import { PLAIN_PICTURE, sheetControls, sheetFittings, sheetLeads } from './sheetSetUp.ts';

/** Tall enough to be seen, and too small to bend the curve, divisions. */
const PIP_HEIGHT_DIV = 0.3;

/** In practice, where the leads are not on yet. */
export function takesHelper({ sealed, start }: Pick<Scenario, 'sealed' | 'start'>): boolean {
  return !sealed && !start.prepared.includes('connect');
}

/** Set-ups are of one kind where the same things are clipped on and set: whoever can do one can do the other. */
export function kindOfSetUp(setup: BenchSetup): string {
  const { source, observeWith, biases, slowSweep } = firstResponse(setup).setUp;
  return [source, observeWith, biases.length, slowSweep === true ? 'slow' : 'fast'].join(' ');
}

export function setUpByHelper(setup: BenchSetup, state: BenchState): Applied {
  const { receiver, scenario } = setup;
  if (!takesHelper(scenario)) return refused('notInThisScenario');
  if (state.helped) return refused('alreadySo');
  if (!isUntouched(setup, state)) return refused('alreadyBegun');
  if (receiver.mains !== null && !state.cautionsAcknowledged) return refused('cautionsFirst');
  const response = firstResponse(setup);
  const { setUp } = response;
  const after: BenchState = {
    ...state,
    isolated: receiver.mains !== null,
    powered: true,
    heat: state.powered ? state.heat : heatNow(state),
    leads: sheetLeads(receiver, response),
    rfHasBeenOn: true,
    controls: {
      ...state.controls,
      ...sheetFittings(setUp),
      ...sheetControls(setUp),
      centreHz: setUp.centreHz - (scenario.bench.centreErrorHz ?? 0),
      phasingDegrees: -scenario.bench.phaseLagDegrees + 0,
      mirror: mirrorFor(setup, setUp.lowFrequencyAtLeft),
      blanking: true,
      pipHeightDiv: PIP_HEIGHT_DIV,
      ...PLAIN_PICTURE,
    },
    crystals: setUp.markersHz,
    proofs: NO_PROOFS,
    helped: true,
  };
  return done(after, { kind: 'clip' });
}

function isUntouched(setup: BenchSetup, state: BenchState): boolean {
  const { leads } = initialState(setup);
  const asBefore = Object.entries(leads).every(([lead, at]) => state.leads[lead as keyof typeof leads] === at);
  return asBefore && state.turnsMade === 0 && state.replaced.length === 0 && state.bridged === null;
}
