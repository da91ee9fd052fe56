/**
 * The fault-finding chart that goes with a sheet: for each part that may fail, what the tube of a set shows in which that part alone has failed, worked out from
 * the nominal receiver. The sizes are those of `plausible.ts`; for the failures that it leaves out (a leaky diode, a resistor of another value, a
 * screen left off, trap capacitors that have changed places) round figures of our own, no source.
 */
import { type Deck, nodeKey } from '../physics/deck.ts';
import type { Fault } from '../receiver/faults/fault.ts';
import { cureOf } from '../receiver/faults/faultEffects.ts';
import { plausibleFaults, trapCapacitors } from '../receiver/faults/plausible.ts';
import type { Receiver } from '../receiver/receiver.ts';

const WRONG_VALUE = 0.3;
const LEAK_SHARE = 0.2;
const STRAY_FARADS = 0.2e-12;
/** Links and leads of some ohms are no loads. */
const LEAST_OHMS = 100;

export interface ChartedFault {
  /** the part to replace, the first where there are several */
  readonly part: string;
  readonly faults: readonly Fault[];
}

/** Faults whose cure is a new part; a stuck core is felt, and a leaky bias line is found with the meter. */
export function chartedFaults(receiver: Receiver, deck: Deck): readonly ChartedFault[] {
  const single = [...plausibleFaults(receiver, deck), ...further(receiver, deck)].map((fault) => [fault]);
  return [...single, ...changedSets(receiver, deck)].flatMap((faults) => {
    const cure = cureOf(faults[0]!, receiver, deck);
    return cure.kind === 'replace' ? [{ part: cure.part, faults }] : [];
  });
}

function further({ adjusters, stages, detectors }: Receiver, deck: Deck): readonly Fault[] {
  const faults: Fault[] = [];
  for (const { kind, name, value } of deck.elements) {
    if (kind === 'R' && value >= LEAST_OHMS) {
      faults.push({ kind: 'wrongLoad', element: name, ohms: value * WRONG_VALUE });
    }
  }
  for (const { id, loadOhms } of detectors) {
    faults.push({ kind: 'leakyDiode', detector: id, ohms: loadOhms * LEAK_SHARE });
  }
  for (const set of swaps(adjusters, deck)) faults.push(...set);
  for (const pair of shieldedNodes(stages, deck)) faults.push({ kind: 'missingShield', ...pair, farads: STRAY_FARADS });
  return faults;
}

/** Of traps with more than one capacitor: all of them changed about. */
function changedSets({ adjusters }: Receiver, deck: Deck): readonly (readonly Fault[])[] {
  return swaps(adjusters, deck).filter((set) => set.length > 1);
}

/** For each two traps: the capacitors that may have changed places, one fault for each pair of them. */
function swaps(adjusters: Receiver['adjusters'], deck: Deck): readonly (readonly Fault[])[] {
  const traps = adjusters.flatMap((a) => (a.trapHz === null ? [] : [trapCapacitors(deck, a.element)]));
  return traps.flatMap((firsts, i) =>
    traps.slice(i + 1).map((seconds) =>
      firsts.flatMap((first, n): Fault[] => {
        const second = seconds[n];
        return second === undefined ? [] : [{ kind: 'swappedTraps', first, second }];
      }),
    ),
  );
}

/** A screen keeps each stage's output from the inputs of the stages before it. */
function shieldedNodes(
  stages: Receiver['stages'],
  { elements }: Deck,
): readonly { readonly from: string; readonly to: string }[] {
  const hot = (nodes: readonly [string, string]): string => (nodeKey(nodes[0]) === '0' ? nodes[1] : nodes[0]);
  const found = stages.flatMap(({ element }) =>
    elements.flatMap((e) => (e.kind === 'G' && e.name === element ? [{ in: hot(e.control), out: hot(e.nodes) }] : [])),
  );
  return found.flatMap((late, i) => found.slice(0, i).map((early) => ({ from: late.out, to: early.in })));
}
