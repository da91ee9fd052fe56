/**
 * The fault-finding chart that goes with a sheet: for each part that may fail, what the tube of a set shows in which that part alone has failed, worked out from
 * the nominal receiver. The sizes are those of the table of faults.
 */
import type { Deck } from '../physics/deck.ts';
import { cureOf } from '../receiver/faults/cure.ts';
import type { Fault } from '../receiver/faults/fault.ts';
import { chartedFaults } from '../receiver/faults/faultsThatFit.ts';
import { partsTray } from '../receiver/faults/partsTray.ts';
import type { Receiver } from '../receiver/receiver.ts';

export interface ChartedPart {
  /** the part to replace, the first where there are several */
  readonly part: string;
  readonly faults: readonly Fault[];
}

/** A capacitor of which the table says nothing else may have drifted either way so far. */
const DRIFTS = [0.5, 2];

/** Faults whose cure is a new part; a stuck core is felt, and a leaky bias line is found with the meter. */
export function chartedParts(receiver: Receiver, deck: Deck): readonly ChartedPart[] {
  const charted = chartedFaults(receiver, deck).flatMap((faults): ChartedPart[] => {
    const cure = cureOf(faults[0]!, receiver, deck);
    return cure.kind === 'replace' ? [{ part: cure.part, faults }] : [];
  });
  const named = new Set(charted.map(({ part }) => part));
  const drifted = partsTray(receiver, deck)
    .filter(({ name, kind }) => kind === 'capacitor' && !named.has(name))
    .flatMap(({ name }) =>
      DRIFTS.map(
        (factor): ChartedPart => ({ part: name, faults: [{ kind: 'driftedCapacitor', element: name, factor }] }),
      ),
    );
  return [...charted, ...drifted];
}
