/** The bench as somebody who knows the sheet sets it up: connected, switched on, source, bias and picture as the sheet has them. */
import type { SheetResponse } from '../receiver/receiver.ts';
import type { BenchState, Controls } from './benchState.ts';
import { type BenchSetup, initialState, RESTING_CONTROLS } from './setup.ts';
import { PLAIN_PICTURE, sheetControls, sheetFittings, sheetLeads } from './sheetSetUp.ts';

/** `controls`: those that are to stand otherwise. */
export function asSheetSays(setup: BenchSetup, response: SheetResponse, controls: Partial<Controls>): BenchState {
  const { receiver } = setup;
  const { setUp } = response;
  return {
    ...initialState(setup),
    cautionsAcknowledged: true,
    isolated: receiver.mains !== null,
    powered: true,
    leads: sheetLeads(receiver, response),
    controls: {
      ...RESTING_CONTROLS,
      ...sheetFittings(setUp),
      ...sheetControls(setUp),
      ...PLAIN_PICTURE,
      ...controls,
    },
  };
}
