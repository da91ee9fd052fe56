/** A letter that the page takes for itself must choose no slug: both answer to one press of the key. */
import { describe, expect, it } from 'vitest';
import { slugLetters } from '../../src/receiver/slugLetters.ts';
import { isPageKey, PAGE_KEYS } from '../../src/rooms/bench/pageKeys.ts';
import { shippedLibrary } from '../files/shipped.ts';

describe('keys of the bench page', () => {
  const receivers = [...shippedLibrary().receivers.values()].map(({ receiver }) => receiver);

  it.each(receivers.map((receiver) => [receiver.id, receiver] as const))('are no slugs of %s', (_, receiver) => {
    const letters = [...slugLetters(receiver).values()];
    expect(letters.length).toBeGreaterThan(0);
    for (const key of Object.values(PAGE_KEYS)) expect(letters).not.toContain(key.toUpperCase());
  });

  it('are taken in either case', () => {
    expect(isPageKey({ key: 'W' }, 'whatYouSaw')).toBe(true);
    expect(isPageKey({ key: 'w' }, 'whatYouSaw')).toBe(true);
    expect(isPageKey({ key: 'f' }, 'whatYouSaw')).toBe(false);
  });
});
