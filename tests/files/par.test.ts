/** The par that stands for none, and the scenarios that have it. Common practice, no source. */
import { expect, it } from 'vitest';
import { scenarioHash, scenarioToFile } from '../../src/files/scenarioFile.ts';
import { PAR_NOT_KNOWN, parIsKnown } from '../../src/scenario/par.ts';
import { stripSetup } from '../session/setups.ts';

it('is known for what it is after a way through a worker, a database or a text', () => {
  const { scenario } = stripSetup();
  const own = { ...scenario, par: PAR_NOT_KNOWN };
  expect(parIsKnown(scenario)).toBe(true);
  for (const copy of [own, structuredClone(own), JSON.parse(JSON.stringify(own)) as typeof own]) {
    expect(parIsKnown(copy)).toBe(false);
    expect(scenarioHash(copy)).toBe(scenarioHash(own));
    expect(scenarioToFile(copy)).not.toHaveProperty('par');
  }
});

it('is not any par of the same figures', () => {
  const { turns, seconds } = PAR_NOT_KNOWN;
  expect(parIsKnown({ par: { turns, seconds } })).toBe(true);
});
