/** Whether a curve that cannot be seen wants no more than level: everything is clipped on as the sheet has it and runs, and the source stands below what the sheet asks for. Pure. */
import { responseById } from '../receiver/responses.ts';
import type { BenchState } from './benchState.ts';
import type { Facts } from './facts.ts';
import type { BenchSetup } from './setup.ts';

export function faintByLevel(
  { receiver }: Pick<BenchSetup, 'receiver'>,
  facts: Facts,
  { controls }: Pick<BenchState, 'controls'>,
): boolean {
  const clipped = facts.rfAtSheetPoint && facts.yAtSheetPoint && facts.yTipAsSheet && facts.xConnected;
  const swept = facts.powered && facts.sweeping && facts.spanCovers;
  return clipped && swept && controls.levelDb < responseById(receiver, facts.response).setUp.levelDb - 1;
}
