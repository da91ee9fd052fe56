/** What has failed at this moment: the scenario's faults without those that have been cured, and the set and the bench as they then are. */
import { leadMark } from '../receiver/faults/cure.ts';
import { type FaultEffects, faultEffects } from '../receiver/faults/faultEffects.ts';
import type { Detector, Receiver } from '../receiver/receiver.ts';
import type { BenchState } from './benchState.ts';
import { keepByKey, keepLast } from './kept.ts';
import type { BenchSetup } from './setup.ts';

export interface FaultsNow {
  /** equal keys mean the same set */
  readonly key: string;
  readonly effects: FaultEffects;
  /** receiver and deck as they are with what has failed */
  readonly setup: BenchSetup;
  /** The state as it really is: a strap without contact is no strap, a pad without contact does not end the lead. Equal parts stay the same objects. */
  really(state: BenchState): BenchState;
}

export type FaultBook = (replaced: readonly string[]) => FaultsNow;

/** Keeps each set of failed parts that has been asked for. */
export function createFaultBook(setup: BenchSetup): FaultBook {
  const kept = keepByKey<FaultsNow>(Number.POSITIVE_INFINITY);
  return keepLast(
    (replaced) => [replaced],
    (replaced) => {
      const key = setup.scenario.faults.length === 0 ? '' : [...replaced].sort().join('|');
      return kept(key, () => {
        const effects = faultEffects(setup.receiver, setup.deck, setup.scenario.faults, replaced);
        const receiver = withDetectors(setup.receiver, effects);
        return { key, effects, setup: { ...setup, receiver, deck: effects.deck }, really: reality(effects) };
      });
    },
  );
}

function reality({ earthLoose, leadUnmatched }: FaultEffects): FaultsNow['really'] {
  const withoutEarth = keepLast(
    (leads: BenchState['leads']) => [leads],
    (leads): BenchState['leads'] => ({ ...leads, earth: null }),
  );
  const unended = keepLast(
    (controls: BenchState['controls']) => [controls],
    (controls): BenchState['controls'] => ({ ...controls, rfTerminated: false }),
  );
  return (state) => {
    const loose = earthLoose && state.leads.earth !== null;
    const open = leadUnmatched && state.controls.rfTerminated;
    if (!loose && !open) return state;
    return {
      ...state,
      leads: loose ? withoutEarth(state.leads) : state.leads,
      controls: open ? unended(state.controls) : state.controls,
    };
  };
}

/** A lead that is put on makes contact again. */
export function reconnected(state: BenchState, lead: string): BenchState {
  if (lead !== 'earth' && lead !== 'rf') return state;
  const mark = leadMark(lead);
  return state.replaced.includes(mark) ? state : { ...state, replaced: [...state.replaced, mark] };
}

/** The receiver with its diodes as the faults leave them. */
export function withDetectors(receiver: Receiver, { detectors: faulty }: FaultEffects): Receiver {
  if (Object.keys(faulty).length === 0) return receiver;
  const detectors = receiver.detectors.map((detector): Detector => {
    const fault = faulty[detector.id];
    if (fault === undefined) return detector;
    const { leakOhms } = fault;
    const loadOhms =
      leakOhms === null ? detector.loadOhms : (detector.loadOhms * leakOhms) / (detector.loadOhms + leakOhms);
    if (detector.kind !== 'envelope' || !fault.reversed) return { ...detector, loadOhms };
    return { ...detector, loadOhms, polarity: detector.polarity === 'negative' ? 'positive' : 'negative' };
  });
  return { ...receiver, detectors };
}
