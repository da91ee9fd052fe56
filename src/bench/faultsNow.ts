/** What has failed at this moment: the scenario's faults without those that have been cured, and the set and the bench as they then are. */
import { leadMark } from '../receiver/faults/cure.ts';
import { type FaultEffects, faultEffects, isPresent } from '../receiver/faults/faultEffects.ts';
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

/** Of a state: parts that are new, and the time, as faults may come and go. */
export type FaultBook = (state: Pick<BenchState, 'replaced' | 'seconds'>) => FaultsNow;

/** Keeps every set of failed parts that has been asked for. */
export function createFaultBook(setup: BenchSetup): FaultBook {
  const { receiver, deck, scenario } = setup;
  const awayAt = createComings(setup);
  const kept = keepByKey<FaultsNow>(Number.POSITIVE_INFINITY);
  const of = keepLast(
    (replaced: readonly string[], away: string) => [replaced, away],
    (replaced, away): FaultsNow => {
      const key = scenario.faults.length === 0 ? '' : `${[...replaced].sort().join('|')}${away}`;
      return kept(key, () => {
        const there = scenario.faults.filter((_, i) => !away.includes(`~${i};`));
        const effects = faultEffects(receiver, deck, there, replaced);
        return {
          key,
          effects,
          setup: { ...setup, receiver: effects.receiver, deck: effects.deck },
          really: reality(effects),
        };
      });
    },
  );
  return ({ replaced, seconds }) => of(replaced, awayAt(seconds));
}

/** Of bench time, seconds: the faults that are not there then, by their numbers. Equal texts mean the same parts. */
export function createComings({ scenario }: Pick<BenchSetup, 'scenario'>): (seconds: number) => string {
  const { faults, seed } = scenario;
  return (seconds) => faults.map((fault, i) => (isPresent(fault, { seconds, seed }) ? '' : `~${i};`)).join('');
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
