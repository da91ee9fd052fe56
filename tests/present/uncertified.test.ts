/** A scenario that nobody has certified is marked on its card, and one that has a certificate is not. Common practice, no source. */
import { expect, it } from 'vitest';
import { entryOf } from '../../src/present/entryOf.ts';
import { PAR_NOT_KNOWN } from '../../src/scenario/par.ts';
import { stripSetup } from '../session/setups.ts';

it('is marked, until a certificate gives its par', () => {
  const setup = stripSetup();
  const without = { ...setup, scenario: { ...setup.scenario, par: PAR_NOT_KNOWN } };
  expect(entryOf(without).uncertified).toBe(true);
  expect(Object.hasOwn(entryOf(setup), 'uncertified')).toBe(false);
  // As it comes from the index that was made when the page was built.
  expect(JSON.parse(JSON.stringify(entryOf(without)))).toMatchObject({ uncertified: true });
});
