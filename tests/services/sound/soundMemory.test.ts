/** How loud the bench is: off at first, the same again when the page is opened anew. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { createSoundMemory } from '../../../src/services/sound/soundMemory.ts';

function shelf(kept: Map<string, string> = new Map()) {
  return {
    kept,
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  };
}

describe('loudness', () => {
  it('is off at first and is there again when the page is opened anew', () => {
    const storage = shelf();
    const first = createSoundMemory(() => storage);
    expect(first.read()).toBe('off');
    first.write('low');
    expect(first.read()).toBe('low');
    expect(createSoundMemory(() => storage).read()).toBe('low');
  });

  it('reads as off where something else stands in its place', () => {
    const storage = shelf();
    createSoundMemory(() => storage).write('full');
    for (const key of storage.kept.keys()) storage.kept.set(key, 'deafening');
    expect(createSoundMemory(() => storage).read()).toBe('off');
  });

  it('lasts as long as the page where there is no storage', () => {
    const memory = createSoundMemory(() => {
      throw new Error('no storage');
    });
    memory.write('full');
    expect(memory.read()).toBe('full');
  });
});
