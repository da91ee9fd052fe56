/** A complete good run as acts that a mouse can do. */
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { wholeJob } from '../session/acts.ts';

/** All acts but the signature, which is asked for in a dialog. */
export function pointerActs(setup: BenchSetup): readonly BenchEvent[] {
  return (
    wholeJob(setup)
      .filter((act) => act.type !== 'signedOff')
      // The wheel goes by fifths of a division; a tenth beside the tallest picture is as good.
      .map((act) =>
        act.type === 'controlSet' && act.control === 'yPositionDiv'
          ? { ...act, value: Math.trunc(Number(act.value) * 5) / 5 }
          : act,
      )
  );
}
