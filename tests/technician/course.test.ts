/** The whole course: every scenario that is shipped can be passed by somebody who sees nothing but the bench. */
import { describe, expect, it } from 'vitest';
import { shippedLibrary } from '../scenario/shipped.ts';
import { demonstrated } from './oneScenario.ts';

const IDS = shippedLibrary().scenarios.map((scenario) => scenario.id);

describe('the whole course', () => {
  it.each(IDS)('%s is passed by the technician', (id) => {
    const { passed, total } = demonstrated(id);
    expect(passed, `${id}: ${total}`).toBe(true);
  });
});
