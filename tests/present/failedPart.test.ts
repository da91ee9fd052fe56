/**
 * The figure of a part that has failed: it is of the design and tells nothing of the set on the bench; an open bypass takes the gain down as an unbypassed cathode resistor
 * does, by 1 / (1 + gm R) (F. Langford-Smith, Radiotron Designer's Handbook, 4th edition, chapter 12, cathode degeneration; from memory).
 */
import { describe, expect, it } from 'vitest';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { findElement } from '../../src/physics/deck.ts';
import { createFailedParts, type FailedPart } from '../../src/present/circuit/failedPart.ts';
import { plausibleFaults } from '../../src/receiver/faults/faultsThatFit.ts';
import { partsTray } from '../../src/receiver/faults/partsTray.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { SETUPS } from '../rooms/sceneSets.ts';

const top = ({ failed }: FailedPart): number => Math.max(...failed.relative.map(Math.abs));

describe.each(SETUPS.map((setup) => [setup.receiver.id, setup] as const))('failed parts of %s', (_, setup) => {
  const { receiver, deck } = setup;
  const response = mainResponse(receiver);

  it('are drawn beside the whole curve, and show', () => {
    const figures = partsTray(receiver, deck)
      .map(({ name }) => createFailedParts(setup)(name, response))
      .filter((one) => one !== null);
    expect(figures.length).toBeGreaterThan(2);
    for (const { whole, failed } of figures) {
      expect(Math.max(...whole.relative.map(Math.abs))).toBeCloseTo(1, 12);
      const most = Math.max(...failed.relative.map((level, i) => Math.abs(level - whole.relative[i]!)));
      expect(most).toBeGreaterThan(0.08);
    }
  });

  it('are the same whatever has failed in the set on the bench', () => {
    const [fault] = plausibleFaults(receiver, deck);
    const broken: BenchSetup = { ...setup, scenario: { ...setup.scenario, faults: [fault!] } };
    for (const { name } of partsTray(receiver, deck).slice(0, 6))
      expect(createFailedParts(broken)(name, response)).toEqual(createFailedParts(setup)(name, response));
  });
});

it('an open bypass: the stage gives 1 / (1 + gm R) of its gain', () => {
  const setup = SETUPS.find(({ receiver }) => receiver.id === 'video-valve-45m')!;
  const { receiver, deck } = setup;
  const bypasses = plausibleFaults(receiver, deck).filter((fault) => fault.kind === 'openBypass');
  expect(bypasses.length).toBeGreaterThan(0);
  for (const fault of bypasses) {
    const stage = findElement(deck, fault.element)!;
    const ratio = top(createFailedParts(setup)(`bypass:${fault.element}`, mainResponse(receiver))!);
    // The circuits' own loss and what a stage before it is loaded with shift it a little.
    expect(ratio / (1 / (1 + stage.value * fault.ohms))).toBeGreaterThan(0.85);
    expect(ratio / (1 / (1 + stage.value * fault.ohms))).toBeLessThan(1.2);
  }
});
