/** One tab at a bench. The locks are a model of the Web Locks API (W3C), the clock is wound by hand. */
import { describe, expect, it, vi } from 'vitest';
import { type BenchClaim, type ClaimGiven, claimBench } from '../../../src/services/store/benchClaims.ts';
import { fakeLocks } from './locks.ts';
import { tabs } from './storage.ts';

function handClock() {
  let now = 0;
  const waiting = new Set<{ at: number; callback: () => void }>();
  return {
    after(milliseconds: number, callback: () => void) {
      const one = { at: now + milliseconds, callback };
      waiting.add(one);
      return () => waiting.delete(one);
    },
    pass(milliseconds: number) {
      now += milliseconds;
      for (const one of [...waiting]) {
        if (one.at > now) continue;
        waiting.delete(one);
        one.callback();
      }
    },
  };
}

function browser() {
  const locks = fakeLocks();
  const clock = handClock();
  const channel = tabs();
  const tab = (): ClaimGiven => ({ locks, channel: channel(), after: clock.after });
  const states = (claim: BenchClaim): string[] => {
    const seen = [claim.state() as string];
    claim.subscribe(() => seen.push(claim.state()));
    return seen;
  };
  return { locks, clock, tab, states };
}

const settle = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
const nothing = async (): Promise<void> => {};
const LOCK = 'haystack-bench-x';

describe('a bench', () => {
  it('belongs to the tab that comes first, and to each scenario its own', async () => {
    const { tab } = browser();
    const one = claimBench(tab(), 'x', nothing);
    const other = claimBench(tab(), 'y', nothing);
    expect(one.state()).toBe('asking');
    await settle();
    expect([one.state(), other.state()]).toEqual(['held', 'held']);
  });

  it('is elsewhere for the second, who gets it as soon as the first leaves', async () => {
    const { tab, clock, states } = browser();
    const one = claimBench(tab(), 'x', nothing);
    await settle();
    const two = claimBench(tab(), 'x', nothing);
    const seen = states(two);
    await settle();
    // The first may be leaving just now: nothing is said at once.
    expect(two.state()).toBe('asking');
    clock.pass(400);
    expect(two.state()).toBe('elsewhere');
    one.release();
    await settle();
    expect(seen).toEqual(['asking', 'elsewhere', 'held']);
  });

  it('is not called taken where the other is just leaving', async () => {
    const { tab, clock, states } = browser();
    const one = claimBench(tab(), 'x', nothing);
    await settle();
    const two = claimBench(tab(), 'x', nothing);
    const seen = states(two);
    clock.pass(300);
    one.release();
    await settle();
    clock.pass(1000);
    expect(seen).toEqual(['asking', 'held']);
  });

  it('is handed over when asked for, once the first has written what it has', async () => {
    const { tab, clock, states } = browser();
    let written = (): void => {};
    const handOver = vi.fn(() => new Promise<void>((resolve) => (written = resolve)));
    const one = claimBench(tab(), 'x', handOver);
    await settle();
    const two = claimBench(tab(), 'x', nothing);
    await settle();
    clock.pass(400);
    two.takeOver();
    const seen = [states(one), states(two)];
    await settle();
    expect(handOver).toHaveBeenCalledTimes(1);
    expect([one.state(), two.state()]).toEqual(['held', 'asking']);
    written();
    await settle();
    clock.pass(5000);
    await settle();
    expect(seen).toEqual([
      ['held', 'lost'],
      ['asking', 'held'],
    ]);
  });

  it('is handed over even where the writing fails', async () => {
    const { tab, clock } = browser();
    const one = claimBench(tab(), 'x', () => Promise.reject(new Error('no room')));
    await settle();
    const two = claimBench(tab(), 'x', nothing);
    clock.pass(400);
    two.takeOver();
    await settle();
    expect([one.state(), two.state()]).toEqual(['lost', 'held']);
  });

  it('is taken from a tab that does not answer', async () => {
    const { tab, clock } = browser();
    const one = claimBench(tab(), 'x', () => new Promise(() => {}));
    await settle();
    const two = claimBench(tab(), 'x', nothing);
    clock.pass(400);
    two.takeOver();
    clock.pass(1999);
    await settle();
    expect([one.state(), two.state()]).toEqual(['held', 'asking']);
    clock.pass(1);
    await settle();
    expect([one.state(), two.state()]).toEqual(['lost', 'held']);
  });

  it('is taken at once where tabs cannot speak to one another', async () => {
    const { tab, clock } = browser();
    const one = claimBench({ ...tab(), channel: null }, 'x', nothing);
    await settle();
    const two = claimBench({ ...tab(), channel: null }, 'x', nothing);
    clock.pass(400);
    two.takeOver();
    clock.pass(0);
    await settle();
    expect([one.state(), two.state()]).toEqual(['lost', 'held']);
  });

  it('can be taken back, and again', async () => {
    const { tab, clock } = browser();
    const one = claimBench(tab(), 'x', nothing);
    await settle();
    const two = claimBench(tab(), 'x', nothing);
    clock.pass(400);
    for (const [taker, loser] of [
      [two, one],
      [one, two],
      [two, one],
    ] as const) {
      taker.takeOver();
      await settle();
      expect([taker.state(), loser.state()]).toEqual(['held', 'lost']);
    }
  });

  it('is let go with nothing left behind', async () => {
    const { tab, locks, clock } = browser();
    const one = claimBench(tab(), 'x', nothing);
    await settle();
    const two = claimBench(tab(), 'x', nothing);
    const heard = vi.fn();
    two.subscribe(heard);
    two.release();
    await settle();
    clock.pass(5000);
    expect(locks.size(LOCK)).toBe(1);
    one.release();
    await settle();
    expect(locks.size(LOCK)).toBe(0);
    expect(heard).not.toHaveBeenCalled();
  });

  it('is let go where it was asked for and left before it came', async () => {
    const { tab, locks } = browser();
    const one = claimBench(tab(), 'x', nothing);
    one.release();
    await settle();
    expect(locks.size(LOCK)).toBe(0);
    const two = claimBench(tab(), 'x', nothing);
    await settle();
    expect(two.state()).toBe('held');
  });
});

describe('a browser without locks', () => {
  it('goes on unguarded, and says so', () => {
    const { tab } = browser();
    const one = claimBench({ ...tab(), locks: null }, 'x', nothing);
    const two = claimBench({ ...tab(), locks: null }, 'x', nothing);
    expect([one.state(), two.state()]).toEqual(['unguarded', 'unguarded']);
    two.takeOver();
    expect(two.state()).toBe('unguarded');
  });

  it('is one that refuses them too', async () => {
    const { tab } = browser();
    const request = () => Promise.reject(new DOMException('no', 'SecurityError'));
    const one = claimBench({ ...tab(), locks: { request } }, 'x', nothing);
    await settle();
    expect(one.state()).toBe('unguarded');
  });
});
