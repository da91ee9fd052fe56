/** What was said last stays while nothing can be told. Common practice, no source. */
import { expect, test } from 'vitest';
import { createLastWords } from '../../src/kit/hooks/useLastWords.ts';

test('words stay while the same thing settles, and no longer', () => {
  const words = createLastWords();
  expect(words(3, null)).toBeNull();
  expect(words(3, 'A in')).toBe('A in');
  expect(words(3, null)).toBe('A in');
  expect(words(3, 'A out')).toBe('A out');
  expect(words(4, null)).toBeNull();
  expect(words(3, null)).toBe('A out');
});
