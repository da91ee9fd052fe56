/**
 * The helper at the page: who may have one, and what he does. A learner who has passed a kind of set-up three times without help has shown that he can.
 * The first bench has a guide who shows each act, so it shows nothing.
 */
import type { BenchState } from '../bench/benchState.ts';
import { kindOfSetUp, takesHelper } from '../bench/madeReady.ts';
import { type BenchSetup, firstResponse } from '../bench/setup.ts';
import { settings } from '../bench/sheetSetUp.ts';
import { byTheNeedle, createHand, fillTube, type Hand } from '../certify/goodHand.ts';
import type { Report } from '../grading/report.ts';
import type { BenchPort } from '../present/ports.ts';
import { GUIDED_SCENARIO } from '../scenario/guided.ts';
import type { KeptRun } from '../services/store/keptRuns.ts';

/** Set-ups of the kind that are passed before it may be left to somebody else. */
export const SET_UPS_FIRST = 3;

/** The kind of set-up that this run shows its learner able to do; null = none. */
export function ownSetUp(
  setup: BenchSetup,
  state: Pick<BenchState, 'helped' | 'hintsTaken'>,
  report: Pick<Report, 'verdicts'>,
): string | null {
  const { scenario } = setup;
  const alone = !state.helped && state.hintsTaken === 0 && scenario.id !== GUIDED_SCENARIO;
  const whole = !scenario.start.prepared.includes('connect');
  return alone && whole && report.verdicts.true.stands ? kindOfSetUp(setup) : null;
}

/** How often the kind of this bench has been passed; null = no helper comes. */
export function setUpsShown(setup: BenchSetup, kept: readonly Pick<KeptRun, 'setUp'>[]): number | null {
  if (!takesHelper(setup.scenario)) return null;
  const kind = kindOfSetUp(setup);
  const shown = kept.filter((run) => run.setUp === kind).length;
  return shown < SET_UPS_FIRST ? null : shown;
}

/** One act for what the sheet says, and then the few knobs that are set by what needle and tube show. */
export function haveItSetUp(port: Pick<BenchPort, 'setup' | 'state' | 'act'>): void {
  const { setup } = port;
  if (!port.act({ type: 'setUpByHelper' }).ok) return;
  const before = port.state();
  const hand = createHand(setup, before);
  byTheNeedle(hand, firstResponse(setup));
  fillTube(setup, hand);
  lowPips(hand);
  for (const [control, value] of settings(hand.state.controls)) {
    if (value !== before.controls[control]) port.act({ type: 'controlSet', control, value });
  }
}

const PIPS_DIV = [0.3, 0.2, 0.1, 0.05] as const;
/** of the trace's height: see G21 */
const PIPS_AT_MOST = 0.15;

/** Pips that a small trace does not drown in. */
function lowPips(hand: Hand): void {
  const height = PIPS_DIV.find((value) => {
    hand.take({ type: 'controlSet', control: 'pipHeightDiv', value });
    return hand.bench.facts(hand.state).pipHeightRatio <= PIPS_AT_MOST;
  });
  if (height === undefined) hand.take({ type: 'controlSet', control: 'pipHeightDiv', value: PIPS_DIV[0] });
}
