/**
 * What a set is under its sheet's own conditions, whatever is done to it: sound, printed, as found, with some parts replaced; and its bench. The run of a learner changes none of
 * it, so it is kept for the setups that were graded last. Equal questions get equal answers whatever was asked before (statedResponse.ts, bench.ts).
 */

import type { Bench } from '../bench/bench.ts';
import { modelOf } from '../bench/benchModel.ts';
import { readersBench } from '../bench/readersBench.ts';
import { type BenchSetup, initialState } from '../bench/setup.ts';
import { statedOn } from '../bench/statedOn.ts';
import type { Deck } from '../physics/deck.ts';
import { faultEffects } from '../receiver/faults/faultEffects.ts';
import type { SetParts } from '../receiver/individualSet.ts';
import type { Detector, Receiver, SheetResponse } from '../receiver/receiver.ts';
import { workResponses } from '../receiver/responses.ts';
import { createStatedResponse, type StatedResponse } from '../receiver/statedResponse.ts';
import { allCures } from './faultLines.ts';

type Curves = readonly StatedResponse[];

export interface SetCurves {
  readonly bench: Bench;
  readonly sound: Curves;
  /** the design that the sheet was printed from, its slugs where they belong */
  readonly printed: Curves;
  readonly asFound: Curves;
  /** of a set without faults the sound ones */
  with(replaced: readonly string[]): Curves;
}

/** A run and the file that it came in are two setups; a class hands in runs on the scenarios of an evening, in any order. */
const MOST_SETUPS = 8;
/** Ways in which the parts of one set were replaced; each holds a solver, and the first that was made goes first. */
const MOST_WAYS = 6;

const kept: { readonly setup: BenchSetup; readonly curves: SetCurves }[] = [];

export function setCurves(setup: BenchSetup): SetCurves {
  const at = kept.findIndex((one) => one.setup === setup);
  const found = at < 0 ? { setup, curves: make(setup) } : kept.splice(at, 1)[0]!;
  kept.push(found);
  if (kept.length > MOST_SETUPS) kept.shift();
  return found.curves;
}

const ofDesigns = { today: new WeakMap<Deck, OfDesign>(), before: new WeakMap<Deck, OfDesign>() };
type OfDesign = WeakMap<SheetResponse, StatedResponse>;

/** Sets of one design have one printed curve: it is made once for all of them, however many are graded. */
function printedBy({ receiver, deck }: SetParts, response: SheetResponse, probePulses: boolean): StatedResponse {
  const known = probePulses ? ofDesigns.today : ofDesigns.before;
  const ofDesign: OfDesign = known.get(deck) ?? new WeakMap();
  known.set(deck, ofDesign);
  const stated = ofDesign.get(response) ?? createStatedResponse(receiver, deck, response, undefined, probePulses);
  ofDesign.set(response, stated);
  return stated;
}

/** As benches of before had it: of two diodes both leak. */
function bothLeak(receiver: Receiver): Receiver {
  const detectors = receiver.detectors.map((detector): Detector => {
    if (detector.kind === 'envelope') return detector;
    const { minusLoadOhms: _, ...alike } = detector;
    return alike;
  });
  return { ...receiver, detectors };
}

function make(setup: BenchSetup): SetCurves {
  const { receiver, deck, scenario, design } = setup;
  const { ownDiodes, probePulses } = modelOf(setup.engine);
  const work = workResponses(receiver, scenario);
  const ways = new Map<string, Curves>();
  const statedWith = (cured: readonly string[]): Curves => {
    const key = JSON.stringify(cured);
    const known = ways.get(key);
    if (known !== undefined) return known;
    const faulty = faultEffects(receiver, deck, scenario.faults, cured);
    const judged = ownDiodes ? faulty.receiver : bothLeak(faulty.receiver);
    const curves = work.map((response) => statedOn(setup.engine, { receiver: judged, deck: faulty.deck }, response));
    ways.set(key, curves);
    if (ways.size > MOST_WAYS) ways.delete(ways.keys().next().value!);
    return curves;
  };
  const sound = statedWith(allCures(setup));
  const printed = design === undefined ? sound : work.map((response) => printedBy(design, response, probePulses));
  const ofReplaced = (replaced: readonly string[]): Curves =>
    scenario.faults.length === 0 ? sound : statedWith(replaced);
  return {
    bench: readersBench(setup),
    sound,
    printed,
    asFound: ofReplaced(initialState(setup).replaced),
    with: ofReplaced,
  };
}
