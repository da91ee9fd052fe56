/**
 * What the tube would show of a sound set, slugs right, if one part had failed: worked out from the design, as a fault-finding chart is, so it tells nothing of the set on the bench.
 * Of the ways in which a part may fail, the first that shows; an open one before any other. Pure.
 */
import { keepByKey } from '../../bench/kept.ts';
import { type BenchSetup, designOf } from '../../bench/setup.ts';
import { cureOf } from '../../receiver/faults/cure.ts';
import type { Fault, FaultKind } from '../../receiver/faults/fault.ts';
import { faultEffects } from '../../receiver/faults/faultEffects.ts';
import { plausibleFaults } from '../../receiver/faults/faultsThatFit.ts';
import type { SheetResponse } from '../../receiver/receiver.ts';
import { createStatedResponse } from '../../receiver/statedResponse.ts';
import { acrossSweep, type Curve, highest } from '../curves.ts';

export interface FailedPart {
  readonly kind: FaultKind;
  /** levels over the highest place of the whole set's curve */
  readonly whole: Curve;
  readonly failed: Curve;
}

/** A smaller change, of the height, is none that anybody would see. */
const LEAST = 0.08;
const POINTS = 241;

/** Null where nothing that may happen to the part shows in this curve. */
export function createFailedParts(setup: BenchSetup): (part: string, response: SheetResponse) => FailedPart | null {
  const { receiver, deck } = designOf(setup);
  let all: readonly Fault[] | null = null;
  const known = keepByKey<FailedPart | null>(Number.POSITIVE_INFINITY);
  const faultsOf = (part: string): readonly Fault[] => {
    all ??= plausibleFaults(receiver, deck);
    const own = all.filter((fault) => {
      const cure = cureOf(fault, receiver, deck);
      return cure.kind === 'replace' && cure.parts.includes(part);
    });
    return [
      ...own.filter(({ kind }) => kind.startsWith('open')),
      ...own.filter(({ kind }) => !kind.startsWith('open')),
    ];
  };
  const look = (part: string, response: SheetResponse): FailedPart | null => {
    const hz = acrossSweep(response, POINTS);
    const whole = createStatedResponse(receiver, deck, response, hz).nominal.volts;
    const top = highest(whole);
    if (!(top > 0)) return null;
    const relative = (volts: Float64Array): Curve => ({ hz, relative: volts.map((v) => v / top) });
    for (const fault of faultsOf(part)) {
      const set = faultEffects(receiver, deck, [fault], []);
      const failed = createStatedResponse(set.receiver, set.deck, response, hz).nominal.volts;
      if (failed.some((v, i) => Math.abs(v - whole[i]!) > LEAST * top))
        return { kind: fault.kind, whole: relative(whole), failed: relative(failed) };
    }
    return null;
  };
  return (part, response) => known(`${response.id} ${part}`, () => look(part, response));
}
