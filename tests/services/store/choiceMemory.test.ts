/** A choice that is remembered: the first at first, the same again when the page is opened anew. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { createChoiceMemory } from '../../../src/services/store/choiceMemory.ts';

const LOUD = ['off', 'low', 'full'] as const;

function shelf(kept: Map<string, string> = new Map()) {
  return {
    kept,
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  };
}

describe('a remembered choice', () => {
  it('is the first at first and is there again when the page is opened anew, each under its own key', () => {
    const storage = shelf();
    const first = createChoiceMemory(() => storage, 'sound', LOUD);
    expect(first.read()).toBe('off');
    first.write('low');
    expect(first.read()).toBe('low');
    expect(createChoiceMemory(() => storage, 'sound', LOUD).read()).toBe('low');
    expect(createChoiceMemory(() => storage, 'keys', ['on', 'off']).read()).toBe('on');
  });

  it('is the first where something else stands in its place', () => {
    const storage = shelf(new Map([['sound', 'deafening']]));
    expect(createChoiceMemory(() => storage, 'sound', LOUD).read()).toBe('off');
  });

  it('lasts as long as the page where there is no storage', () => {
    const memory = createChoiceMemory(
      () => {
        throw new Error('no storage');
      },
      'sound',
      LOUD,
    );
    memory.write('full');
    expect(memory.read()).toBe('full');
  });
});
