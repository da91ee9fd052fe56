/** The sentence after a turn: what has changed is in it, and nothing that has not. Our own wording; no source. */
import { describe, expect, it } from 'vitest';
import { curveChange } from '../../src/describe/curveChange.ts';
import { en } from '../../src/words/en/index.ts';

const seen = (heightDiv: number, topXDiv: number) => ({ heightDiv, topXDiv });

describe('the curve after a turn', () => {
  it('is told in one sentence: how tall, and which way the top went', () => {
    const said = curveChange(en, seen(3, 0.5), seen(3.4, 1.1));
    expect(said).toBe('Height 3.4, was 3.0 divisions; the top 0.6 divisions further right.');
    expect(curveChange(en, seen(3, 0), seen(3, -0.3))).toBe(
      'Height still 3.0 divisions; the top 0.3 divisions further left.',
    );
  });

  it('names no way where the top has moved by less than can be read', () => {
    for (const moved of [0, 0.04, -0.04])
      expect(curveChange(en, seen(3, 1), seen(3.1, 1 + moved))).toBe(
        'Height 3.1, was 3.0 divisions; the top where it was.',
      );
  });

  it('says when nothing is left', () => {
    expect(curveChange(en, seen(3, 1), seen(0, 0))).toBe('No curve is left.');
  });
});
