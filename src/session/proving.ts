/**
 * A proof spoils for a while what it proves: the level goes down, the strap comes off, a crystal is out. Where all else stood before the act, and nothing but what
 * the act needs has changed since, the work has not fallen back to its set-up: what is still to do is to finish the proof. Pure.
 */
import type { BenchState } from '../bench/benchState.ts';
import { keepLast } from '../bench/kept.ts';
import type { ProofId } from '../scenario/proofId.ts';
import { openProofs } from './missing.ts';
import type { SessionView } from './phase.ts';

/** A moment at which all but the proofs stood. */
interface Stood {
  readonly state: BenchState;
  readonly view: SessionView;
}

function standsToBeProved({ done }: SessionView): boolean {
  return done.safe && done.connect && done.setUp && done.align;
}

/**
 * A reader of the standing that remembers the last moment at which all but the proofs stood. Given `view`, the standing of `state`, it answers with that; during an
 * act of proof, with all but the proofs as it stood before. The same object for the same two.
 */
export function createProving(proofs: readonly ProofId[]): (state: BenchState, view: SessionView) => SessionView {
  let stood: Stood | null = null;
  const besides = keepLast(
    (state: BenchState, view: SessionView) => [state, view],
    (state, view) => besidesProof(proofs, stood, state, view),
  );
  return (state, view) => {
    // The question before signing is told the plain truth, and a sealed run knows nothing to be kept.
    if (view.stage !== 'working' || view.ticked !== null) return view;
    if (standsToBeProved(view)) {
      stood = { state, view };
      return view;
    }
    return besides(state, view);
  };
}

function besidesProof(
  proofs: readonly ProofId[],
  stood: Stood | null,
  state: BenchState,
  view: SessionView,
): SessionView {
  if (stood === null) return view;
  const open = openProofs(proofs, view.missing.prove);
  if (!isWithin(open, stood.state, state)) return view;
  const codes = view.missing.prove.filter((code) => code !== 'nothingOnTube');
  return {
    ...view,
    done: { ...stood.view.done, prove: view.done.prove },
    current: 'prove',
    missing: { ...stood.view.missing, prove: codes },
  };
}

type Control = keyof BenchState['controls'];

/** What each act moves, and which way. */
const MOVES: Readonly<Record<ProofId, Partial<Readonly<Record<Control, 'up' | 'down' | 'any'>>>>> = {
  halveLevel: { levelDb: 'down' },
  markersOffOn: { pipHeightDiv: 'down', comb: 'any', tunableOn: 'any' },
  touchEarth: {},
  swingPhase: { phasingDegrees: 'any', blanking: 'any' },
  skirts: { levelDb: 'up', yVoltsPerDiv: 'down', yPositionDiv: 'any' },
  bias: { meterMode: 'any', meterRangeVolts: 'any' },
  liftCrystal: {},
  pipDown: { levelDb: 'up', yVoltsPerDiv: 'down', yPositionDiv: 'any' },
};

function isWithin(open: readonly ProofId[], before: BenchState, now: BenchState): boolean {
  if (before.turnsMade !== now.turnsMade || before.powered !== now.powered || before.toolIn !== now.toolIn)
    return false;
  const controls = Object.keys(now.controls) as Control[];
  return (
    controls.every((control) => mayMove(open, control, before.controls[control], now.controls[control])) &&
    sameLeads(open, before.leads, now.leads) &&
    sameCrystals(open, before.crystals, now.crystals)
  );
}

function mayMove(open: readonly ProofId[], control: Control, from: unknown, to: unknown): boolean {
  if (from === to) return true;
  const way = Number(to) > Number(from) ? 'up' : 'down';
  return open.some((proof) => [way, 'any'].includes(MOVES[proof][control] ?? ''));
}

function sameLeads(open: readonly ProofId[], before: BenchState['leads'], now: BenchState['leads']): boolean {
  return (Object.keys(now) as (keyof BenchState['leads'])[]).every(
    (lead) =>
      before[lead] === now[lead] ||
      (lead === 'earth' && now.earth === null && open.includes('touchEarth')) ||
      (lead === 'meter' && open.includes('bias')),
  );
}

function sameCrystals(open: readonly ProofId[], before: readonly number[], now: readonly number[]): boolean {
  const mayLift = open.includes('markersOffOn') || open.includes('liftCrystal');
  return (mayLift || before.length === now.length) && now.every((hz) => before.includes(hz));
}
