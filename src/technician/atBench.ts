/**
 * Seats the person of `person/` at a bench: prints the sheet from a sound set, hands over eyes and hands, keeps the log. This file alone sees bench and
 * receiver; what it hands on is the display, the knobs, the leads and how deep each core stands.
 */
import { createBench } from '../bench/bench.ts';
import type { BenchEvent } from '../bench/benchEvent.ts';
import type { BenchState } from '../bench/benchState.ts';
import { controlRange } from '../bench/controlRange.ts';
import type { ControlRange } from '../bench/controls/range.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { MOST_TURNS_PER_EVENT } from '../bench/slugTurning.ts';
import { pipAskedFor, placeAskedFor } from '../bench/witness.ts';
import { workResponses } from '../receiver/responses.ts';
import { appendEvent, createRun, type Run } from '../run/runLog.ts';
import { extent, see } from './person/eyes.ts';
import type { Engraving, Hands } from './person/hands.ts';
import type { Remark } from './person/remark.ts';
import { doTheJob, type Habits } from './person/technician.ts';
import { createTurner } from './person/turner.ts';
import { printSheet } from './printSheet.ts';

/** How long a hand takes for each kind of act, milliseconds. */
const PACE_MS: Readonly<Record<BenchEvent['type'], number>> = {
  cautionsAcknowledged: 8000,
  isolationSwitched: 2000,
  powerSwitched: 3000,
  leadConnected: 4000,
  leadRemoved: 2000,
  controlSet: 700,
  crystalPlugged: 1500,
  crystalPulled: 1000,
  toolTaken: 1500,
  toolPlaced: 500,
  slugTurned: 900,
  readingTaken: 500,
  partReplaced: 60_000,
  partBridged: 15_000,
  partMetered: 10_000,
  findingStated: 4000,
  hintAsked: 1000,
  setUpByHelper: 300_000,
  asFoundRecorded: 4000,
  diagnosisStated: 4000,
  signedOff: 1000,
};

/** The technician's run with what he says at it. */
export interface Demonstration {
  /** signed off */
  readonly run: Run;
  readonly said: readonly Saying[];
}

export interface Saying {
  /** said before this event of the run, from 0 */
  readonly before: number;
  readonly remark: Remark;
}

/** The technician's run, signed off. */
export const demonstrate = (setup: BenchSetup, habits: Habits = {}): Run => demonstration(setup, undefined, habits).run;

/** `onAct` is told how many acts have been done. */
export function demonstration(
  setup: BenchSetup,
  onAct: (acts: number) => void = () => {},
  habits: Habits = {},
): Demonstration {
  const said: Saying[] = [];
  const sheet = printSheet(setup);
  const bench = createBench(setup);
  let run = createRun(setup, null);
  let atMs = 0;
  /** the bench as it stands, and before that as it stood after each turn of a Y knob in a row: one picture looked at in several sizes */
  let sizes = [run.state];
  const lookAt = (state: BenchState, sweepsLater = 0) => {
    const seconds = atMs / 1000 + sweepsLater / setup.scenario.bench.mainsHz;
    return bench.display(seconds === state.seconds ? state : { ...state, seconds });
  };
  const hands: Hands = {
    act(event) {
      atMs += PACE_MS[event.type];
      const taken = appendEvent(run, event, atMs);
      if (!taken.ok) return taken.reason;
      run = taken.run;
      sizes = isYKnob(event) ? [...sizes, run.state] : [run.state];
      onAct(run.events.length);
      return null;
    },
    note(remark) {
      const last = said.at(-1);
      // The Y knobs go back after a reading. It is said while the whole trace that was read is still on the face.
      const isWhole = (state: BenchState): boolean =>
        extent(see({ look: (later) => lookAt(state, later) }).forward).whole;
      const seen = remark.kind === 'reads' ? sizes.findLastIndex(isWhole) : -1;
      const ago = seen < 0 ? 0 : sizes.length - 1 - seen;
      const before = Math.max(last?.before ?? 0, run.events.length - ago);
      // Said already, and nothing has been done since.
      if (last?.before === before && JSON.stringify(last.remark) === JSON.stringify(remark)) return;
      said.push({ before, remark });
    },
    look: (sweepsLater) => lookAt(run.state, sweepsLater),
    wait(seconds) {
      atMs += 1000 * seconds;
    },
    knobs: () => run.state.controls,
    scale: (knob) => engraved(controlRange(setup, knob)),
    clockSeconds: () => atMs / 1000,
    pipAskedFor: (proof) => pipAskedFor(setup, run.state, proof),
    placeAskedFor: (proof) => placeAskedFor(setup, run.state, proof),
    leads: () => run.state.leads,
  };
  const turner = createTurner(hands, sheet, MOST_TURNS_PER_EVENT, (slug) => run.state.slugs[slug]?.screwTurns ?? 0);
  if (workResponses(setup.receiver, setup.scenario).length > 0)
    doTheJob(hands, sheet, turner, setup.receiver.crystalsHz, habits);
  return { run, said };
}

const isYKnob = (event: BenchEvent): boolean =>
  event.type === 'controlSet' && (event.control === 'yVoltsPerDiv' || event.control === 'yPositionDiv');

function engraved(range: ControlRange): Engraving {
  if (range.kind === 'number') return { low: range.min, high: range.max, clicks: [] };
  const clicks = range.kind === 'choice' ? range.choices.map(Number) : [];
  return { low: clicks[0] ?? 0, high: clicks.at(-1) ?? 0, clicks };
}
