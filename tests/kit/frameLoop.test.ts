/** The page's one animation frame: asked of the browser once, in three strokes, and not at all while nobody wants it. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { createFrameLoop, type FrameLoop } from '../../src/kit/frameLoop.ts';

/** A browser that draws its frame when it is told to. */
function browser(): { readonly loop: FrameLoop; readonly asked: () => number; frame(nowMs: number): void } {
  let waiting: ((nowMs: number) => void)[] = [];
  const loop = createFrameLoop((callback) => waiting.push(callback));
  return {
    loop,
    asked: () => waiting.length,
    frame(nowMs) {
      const now = waiting;
      waiting = [];
      for (const callback of now) callback(nowMs);
    },
  };
}

describe('the frame loop', () => {
  it('asks the browser once, however many ask, and for nothing while nobody does', () => {
    const { loop, asked, frame } = browser();
    expect(asked()).toBe(0);
    const seen: string[] = [];
    loop.ask('paint', () => seen.push('paint'));
    loop.ask('act', () => seen.push('act'));
    loop.ask('tell', () => seen.push('tell'));
    expect(asked()).toBe(1);
    frame(16);
    expect(seen).toEqual(['act', 'tell', 'paint']);
    expect(asked()).toBe(0);
  });

  it('does a step once, with the time of the frame', () => {
    const { loop, frame } = browser();
    const times: number[] = [];
    const step = (nowMs: number): void => void times.push(nowMs);
    loop.ask('tell', step);
    loop.ask('tell', step);
    frame(100);
    frame(116);
    expect(times).toEqual([100]);
  });

  it('takes what is asked for a later stroke into the same frame, and the rest into the next', () => {
    const { loop, asked, frame } = browser();
    const seen: string[] = [];
    const again = (): void => void seen.push('again');
    loop.ask('act', () => {
      loop.ask('paint', () => {
        seen.push('paint');
        loop.ask('paint', again);
      });
      loop.ask('act', again);
    });
    frame(1);
    expect(seen).toEqual(['paint']);
    expect(asked()).toBe(1);
    frame(2);
    // Asked for two strokes, it comes in both.
    expect(seen).toEqual(['paint', 'again', 'again']);
    expect(asked()).toBe(0);
  });

  it('forgets what is dropped, also by a step before it', () => {
    const { loop, frame } = browser();
    const seen: string[] = [];
    const late = (): void => void seen.push('late');
    const sooner = (): void => {
      seen.push('sooner');
      loop.drop(late);
    };
    loop.ask('tell', sooner);
    loop.ask('tell', late);
    loop.ask('paint', late);
    frame(1);
    expect(seen).toEqual(['sooner']);
  });

  it('goes on after a step that failed', () => {
    const { loop, asked, frame } = browser();
    const seen: string[] = [];
    loop.ask('act', () => {
      throw new Error('on purpose');
    });
    loop.ask('tell', () => seen.push('told'));
    expect(() => frame(1)).toThrow('on purpose');
    expect(asked()).toBe(1);
    frame(2);
    expect(seen).toEqual(['told']);
  });
});
