/**
 * Watchers that find acts of proof. Each looks only at the bench before and after an event; what it must remember stands in the state.
 *
 * halveLevel    the level goes down by about half (5 dB or more) and comes back (within 1 dB)
 * swingPhase    the phasing moves by 10 degrees or more and comes back (within 1 degree)
 * skirts        the picture is made 10 dB larger or more (two clicks of Y gain are 12 dB, or the level is raised), and comes back (within 1 dB)
 * markersOffOn  every pip goes and pips come back
 * touchEarth    the earth lead is lifted and put back
 * bias          the meter has shown the volts of a bias line of the running set, and is taken off
 * liftCrystal   one crystal is pulled and plugged again
 * pipDown       the picture is made larger and comes back, as for the skirts
 *
 * An act counts only while there is a curve to look at. A slug that moves undoes them all (slugTurning). The last three are watched for where the scenario asks for them.
 * "Comes back" is to a value at which the knob stood: where it was first found, where it rested for a second, or where a single jump left it.
 */

import { PROOFS, type ProofId, WHERE_ASKED } from '../scenario/proofId.ts';
import type { BenchSound } from './benchEvent.ts';
import { type BenchState, NO_PROOFS, type ProofWatch, type StoodValue } from './benchState.ts';
import { isSwept } from './moment.ts';
import { mostSaid } from './mostSaid.ts';
import type { BenchSetup } from './setup.ts';

const HALVED_DB = -5;
const SWUNG_DEGREES = 10;
const ENLARGED_DB = 10;
const BACK_WITHIN = 1;
const RESTED_SECONDS = 1;
const MOST_STOOD = 40;

/** The state with its watchers moved on, and the proofs that this event has completed. */
export function watchProofs(
  setup: BenchSetup,
  before: BenchState,
  after: BenchState,
): { readonly state: BenchState; readonly heard: readonly BenchSound[] } {
  // A slug has moved, or nothing has that a watcher looks at.
  if (after.lastSlugTurnSeconds !== before.lastSlugTurnSeconds || after.turnsMade !== before.turnsMade) {
    return { state: after, heard: [] };
  }
  const live = curveIsUp(setup, before) || curveIsUp(setup, after);
  let proofs = after.proofs;
  const heard: BenchSound[] = [];
  for (const id of PROOFS) {
    if (WHERE_ASKED.includes(id) && !setup.scenario.proofs.includes(id)) continue;
    const was = proofs[id];
    const moved = was.done && !mayBeMadeAgain(setup, was) ? was : step(setup, id, was, before, after);
    if (moved === was) continue;
    if (was.done && !moved.done) {
      // What was made stands until it has been made again.
      const { from, stood, movedAtSeconds } = moved;
      const on = {
        from,
        ...(stood === undefined ? {} : { stood }),
        ...(movedAtSeconds === undefined ? {} : { movedAtSeconds }),
      };
      proofs = { ...proofs, [id]: { ...was, ...on } };
      continue;
    }
    // With nothing on the tube the watcher forgets what it had seen.
    const kept = live ? moved : { done: false, doneAtSeconds: null, from: null };
    proofs = { ...proofs, [id]: kept };
    if (kept.done) heard.push({ kind: 'proof', proof: id });
  }
  return { state: proofs === after.proofs ? after : { ...after, proofs }, heard };
}

/** Nobody looked, or the last answer of a practice is spent: the act by itself asks anew. */
function mayBeMadeAgain({ scenario }: BenchSetup, { finding }: ProofWatch): boolean {
  if (finding === undefined) return false;
  return finding.answer === 'notLooked' || (!scenario.sealed && finding.said >= mostSaid(scenario));
}

/** A swept curve is on the tube: source, tube and set are joined and running. */
function curveIsUp({ receiver }: BenchSetup, state: BenchState): boolean {
  const { leads } = state;
  const joined = leads.rf !== null && leads.y !== null && leads.x !== null;
  const running = receiver.mains === null || state.powered;
  return joined && running && isSwept(state);
}

/** Any pip that could be seen: something plugged or switched on, and height given to it. */
export function pipsOn({ controls, crystals }: BenchState): boolean {
  return controls.pipHeightDiv > 0 && (crystals.length > 0 || controls.comb || controls.tunableOn);
}

function step(setup: BenchSetup, id: ProofId, watch: ProofWatch, before: BenchState, after: BenchState): ProofWatch {
  switch (id) {
    case 'halveLevel':
      return comeBack(
        watch,
        before,
        after,
        ({ controls }) => controls.levelDb,
        (d) => d <= HALVED_DB,
      );
    case 'swingPhase':
      return comeBack(
        watch,
        before,
        after,
        ({ controls }) => controls.phasingDegrees,
        (d) => Math.abs(d) >= SWUNG_DEGREES,
      );
    case 'skirts':
    case 'pipDown':
      return comeBack(watch, before, after, sizeDb, (d) => d >= ENLARGED_DB);
    case 'markersOffOn':
      return pipsGoAndCome(watch, before, after);
    case 'touchEarth':
      return offAndOn(watch, before, after, ({ leads }) => leads.earth !== null);
    case 'liftCrystal':
      return liftedAndBack(watch, before, after);
    case 'bias':
      return metersLine(setup, before) && !metersLine(setup, after) ? madeBy(before, after) : watch;
  }
}

/** How large the picture is, decibels: source level and Y gain together. */
export function sizeDb({ controls }: BenchState): number {
  return controls.levelDb - 20 * Math.log10(controls.yVoltsPerDiv);
}

function comeBack(
  watch: ProofWatch,
  before: BenchState,
  after: BenchState,
  knob: (bench: BenchState) => number,
  isFar: (away: number) => boolean,
): ProofWatch {
  const [from, to] = [knob(before), knob(after)];
  if (from === to) return watch;
  const atSeconds = after.seconds;
  const known = watch.stood ?? [];
  // Of this knob: what else is done meanwhile does not count.
  const restedSeconds = atSeconds - (watch.movedAtSeconds ?? 0);
  const rested = restedSeconds >= RESTED_SECONDS;
  const stoodHere = known.length === 0 || rested || isFar(to - from);
  const fresh: readonly StoodValue[] = [...known, { value: from, far: false }];
  const added = stoodHere && !known.some((s) => s.value === from) ? fresh : known;
  const stood = added.slice(-MOST_STOOD).map((s): StoodValue => {
    // Where the knob rested longest while it was away is where one looked.
    const longest = isFar(from - s.value) && restedSeconds >= (s.away?.seconds ?? 0);
    const away = longest ? { bench: plain(before), seconds: restedSeconds } : s.away;
    return { value: s.value, far: s.far || isFar(to - s.value), ...(away === undefined ? {} : { away }) };
  });
  const back = stood.find((s) => s.far && Math.abs(to - s.value) <= BACK_WITHIN);
  if (back !== undefined) {
    const act = { away: back.away?.bench ?? plain(before), rest: plain(after) };
    return { done: true, doneAtSeconds: atSeconds, from: null, act };
  }
  return {
    done: false,
    doneAtSeconds: null,
    from: stood.findLast((s) => s.far)?.value ?? null,
    stood,
    movedAtSeconds: atSeconds,
  };
}

function offAndOn(
  watch: ProofWatch,
  before: BenchState,
  after: BenchState,
  on: (bench: BenchState) => boolean,
): ProofWatch {
  const isOn = on(after);
  if (on(before) === isOn) return watch;
  if (!isOn) return { done: false, doneAtSeconds: null, from: 1 };
  if (watch.from === null) return watch;
  return madeBy(before, after);
}

/** What was to be seen was there until this act, and the bench after it is as it was. */
function madeBy(before: BenchState, after: BenchState): ProofWatch {
  const act = { away: plain(before), rest: plain(after) };
  return { done: true, doneAtSeconds: after.seconds, from: null, act };
}

/** The needle shows what a bias line of the running set holds. */
function metersLine({ receiver }: BenchSetup, { leads, controls, powered }: BenchState): boolean {
  const running = receiver.mains === null || powered;
  return running && controls.meterMode === 'dc' && receiver.biasLines.some(({ at }) => at === leads.meter);
}

/** One crystal out of its socket and the same one back; pulling another meanwhile starts it again. */
function liftedAndBack(watch: ProofWatch, before: BenchState, after: BenchState): ProofWatch {
  if (before.crystals === after.crystals) return watch;
  const pulled = before.crystals.find((hz) => !after.crystals.includes(hz));
  if (pulled !== undefined) return { done: false, doneAtSeconds: null, from: pulled };
  if (watch.from === null || before.crystals.includes(watch.from) || !after.crystals.includes(watch.from)) return watch;
  return madeBy(before, after);
}

/** Pips off and on, and how tall they last rested: a knob turned click by click makes them small before they go and when they come back. */
function pipsGoAndCome(watch: ProofWatch, before: BenchState, after: BenchState): ProofWatch {
  const value = before.controls.pipHeightDiv;
  const turned = value !== after.controls.pipHeightDiv;
  const rested = after.seconds - (watch.movedAtSeconds ?? 0) >= RESTED_SECONDS;
  // At nought there are none: that is the act itself.
  const stood = turned && value > 0 && (watch.stood === undefined || rested) ? [{ value, far: false }] : watch.stood;
  const kept = {
    ...(stood === undefined ? {} : { stood }),
    ...(turned ? { movedAtSeconds: after.seconds } : {}),
  };
  const next = offAndOn(watch, before, after, pipsOn);
  if (next === watch) return turned ? { done: false, doneAtSeconds: null, from: watch.from, ...kept } : watch;
  if (next.act === undefined) return { ...next, ...kept };
  const { away, rest } = next.act;
  const pipHeightDiv = stood?.at(-1)?.value ?? rest.controls.pipHeightDiv;
  return { ...next, act: { away, rest: { ...rest, controls: { ...rest.controls, pipHeightDiv } } } };
}

/** Without what it remembers itself. */
function plain(bench: BenchState): BenchState {
  return { ...bench, proofs: NO_PROOFS };
}
