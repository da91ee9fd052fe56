/**
 * Receivers whose sheet once asked for less: the same circuits, but no slow sweep. A helper sets the bench as the sheet has it, so a run of before is done again by the sheet of before,
 * to the last digit. Each line is the hash of such a receiver; what it did is held by `EARLIER_WORDS`, so that a line holds no more once anything else changes.
 */
import type { BenchSetup } from '../bench/setup.ts';

type Receiver = BenchSetup['receiver'];

const WITHOUT_SLOW_SWEEP: readonly string[] = [
  '4e8587198ab4ba389fd1d0d88a5c8b7dde8171a95fadf2380247455524916dbf',
  'd23d7f8855c5a534c1e1912c196df437eefae29c0d4142652f0bc9b1228caa38',
];

/** One object for each receiver, so that runs on it share a bench. */
const known = new WeakMap<Receiver, Receiver>();

/** The receiver as it was under this hash (of file and deck, `receiverHash`), as far as its sheet asked for less then; otherwise as it is. */
export function asOfThen<T extends Pick<BenchSetup, 'receiver'>>(hash: string, design: T): T {
  if (!WITHOUT_SLOW_SWEEP.includes(hash)) return design;
  const then = known.get(design.receiver) ?? withoutSlowSweep(design.receiver);
  known.set(design.receiver, then);
  return { ...design, receiver: then };
}

function withoutSlowSweep(receiver: Receiver): Receiver {
  const responses = receiver.responses.map((response) => {
    const { slowSweep: _, ...setUp } = response.setUp;
    return { ...response, setUp };
  });
  return { ...receiver, responses };
}
