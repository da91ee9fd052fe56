/** What the tests of the bench scene look at: every shipped receiver in each form of the page. */
import type { BenchSetup } from '../../src/bench/setup.ts';
import { type BenchLayout, benchLayout } from '../../src/rooms/bench/layout.ts';
import { SCENARIO } from '../bench/fixture.ts';
import { shippedLibrary } from '../files/shipped.ts';

const SIZES = [
  [1440, 900],
  [1920, 1080],
  [1424, 880],
  [1366, 768],
  [1024, 640],
  [820, 1180],
  [700, 1100],
] as const;

export const SETUPS: readonly BenchSetup[] = [...shippedLibrary().receivers.values()].map(({ receiver, deck }) => ({
  receiver,
  deck,
  scenario: { ...SCENARIO, receiver: receiver.id },
}));

export interface Scene {
  readonly name: string;
  readonly setup: BenchSetup;
  readonly layout: BenchLayout;
}

export const SCENES: readonly Scene[] = SETUPS.flatMap((setup) =>
  SIZES.map(([width, height]) => ({
    name: `${setup.receiver.id} at ${width} x ${height}`,
    setup,
    layout: benchLayout(width, height)!,
  })),
);
