/** What a part of the tray says it is must not tell what stands in the set on the bench: by the project's own rule that a sheet prints the design. */
import { expect, it } from 'vitest';
import { printedTray } from '../../src/bench/parts.ts';
import { designOf } from '../../src/bench/setup.ts';
import { partsTray } from '../../src/receiver/faults/partsTray.ts';
import { setupOf } from '../technician/oneScenario.ts';

it('bears the values of the design, where the set has its own', () => {
  const setup = setupOf('sagging-line');
  const { receiver, deck } = designOf(setup);
  const own = partsTray(setup.receiver, setup.deck);
  expect(printedTray(setup)).toEqual(partsTray(receiver, deck));
  expect(printedTray(setup)).not.toEqual(own);
  expect(printedTray(setup).map(({ name }) => name)).toEqual(own.map(({ name }) => name));
});
