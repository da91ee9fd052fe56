/** Undo and redo. */
import { describe, expect, it } from 'vitest';
import { begun, changed, paused, redone, undone } from '../../src/workshop/history.ts';

describe('what was before and after', () => {
  it('comes back step by step, and goes on again', () => {
    const all = changed(changed(begun('a'), 'b'), 'c');
    expect(undone(all).now).toBe('b');
    expect(undone(undone(all)).now).toBe('a');
    expect(undone(undone(undone(all)))).toEqual(undone(undone(all)));
    expect(redone(redone(undone(undone(all)))).now).toBe('c');
    expect(redone(all)).toEqual(all);
  });

  it('is one step for a drag, and two for two of them', () => {
    const dragged = changed(changed(changed(begun(0), 1, 'slug A'), 2, 'slug A'), 3, 'slug A');
    expect(undone(dragged).now).toBe(0);
    expect(undone(changed(paused(dragged), 4, 'slug A')).now).toBe(3);
    expect(undone(changed(dragged, 4, 'slug B')).now).toBe(3);
    // After an undo the same drag does not overwrite what has come back.
    expect(undone(changed(undone(dragged), 9, 'slug A')).now).toBe(0);
  });

  it('forgets what was to come once something else is done, and keeps nothing of no change', () => {
    const other = changed(undone(changed(begun('a'), 'b')), 'c');
    expect(redone(other)).toEqual(other);
    expect(changed(other, 'c')).toBe(other);
  });
});
