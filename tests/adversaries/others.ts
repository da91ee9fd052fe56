/** Who turns for the tallest or brightest picture and looks at nothing else of it, who does again what the technician was seen to do elsewhere, and who tells proofs by reckoning on the printed design. */
import { createBench } from '../../src/bench/bench.ts';
import { type BenchSetup, designOf, initialState } from '../../src/bench/setup.ts';
import { createHand, fillTube, setUpFor } from '../../src/certify/goodHand.ts';
import { workResponses } from '../../src/receiver/responses.ts';
import { extent, see } from '../../src/technician/person/eyes.ts';

const STEPS = [2, 1, 0.5, 0.25] as const;
const MOST_MOVES = 8;

/** Every slug in turn, this way and that, for the most that stands on the tube: where the cores end. */
export function tallest(setup: BenchSetup): Readonly<Record<string, number>> {
  const start = initialState(setup).slugs;
  const turns: Record<string, number> = Object.fromEntries(
    setup.receiver.adjusters.map(({ id }) => [id, start[id]!.coreTurns]),
  );
  const [main] = workResponses(setup.receiver, setup.scenario);
  if (main === undefined) return turns;
  const hand = createHand(setup);
  setUpFor(setup, hand, main);
  fillTube(setup, hand);
  // So coarse that nothing runs off the face.
  hand.take({ type: 'controlSet', control: 'yVoltsPerDiv', value: 1 });
  const bench = createBench(setup);
  const height = (): number => {
    const slugs = Object.fromEntries(
      Object.entries(hand.state.slugs).map(([id, slug]) => [id, { ...slug, coreTurns: turns[id] ?? slug.coreTurns }]),
    );
    const { low, high } = extent(see({ look: () => bench.display({ ...hand.state, slugs }) }).forward);
    return high - low;
  };
  let most = height();
  for (const step of STEPS) {
    for (const { id, travelTurns } of setup.receiver.adjusters) {
      if (start[id]!.cracked) continue;
      for (const way of [step, -step]) {
        for (let moves = 0; moves < MOST_MOVES; moves++) {
          const before = turns[id]!;
          turns[id] = Math.min(Math.max(before + way, 0), travelTurns);
          const now = height();
          if (now > most) most = now;
          else {
            turns[id] = before;
            break;
          }
        }
      }
    }
  }
  return turns;
}

/** The same job on a set as it is printed, in which nothing has failed, aligned: what whoever has the receiver's file and the bench at home can reckon. */
export function onTheDesign(setup: BenchSetup): BenchSetup {
  const { strapHumVolts: _, ...life } = setup.scenario.life ?? {};
  return { ...setup, ...designOf(setup), scenario: { ...setup.scenario, faults: [], life } } as BenchSetup;
}
