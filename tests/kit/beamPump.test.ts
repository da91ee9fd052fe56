/** When the light of a tube moves and when it stands: frames are asked for only while something fades. Source: the house's own promises. */
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { FrameStep } from '../../src/kit/frameLoop.ts';
import { BeamPump } from '../../src/kit/tube/beamPump.ts';

beforeAll(() => {
  vi.stubGlobal(
    'ImageData',
    class {
      constructor(readonly data: Uint8ClampedArray) {}
    },
  );
});
afterAll(() => {
  vi.unstubAllGlobals();
});

const SIZE = { divAcross: 2, divDown: 2, pixelsPerDiv: 16 };
const beam = (y: number) => ({
  points: { data: Float32Array.of(-0.5, y, 1, 0.5, y, 0), count: 2 },
  brightness: 1,
  blur: 0,
});

/** A pump with its first picture, and the frames that it asks for. */
function started(kind: 'P31' | 'P7' = 'P31') {
  let asked: FrameStep | null = null;
  const pump = new BeamPump(kind, SIZE, {
    ask: (_, step) => {
      asked = step;
    },
    drop: () => {
      asked = null;
    },
  });
  let put = 0;
  pump.attach(Array.from({ length: pump.layers }, () => ({ putImageData: () => void put++ })));
  pump.show(beam(0), 0, 'fading');
  return {
    pump,
    put: () => put,
    moves: () => asked !== null,
    /** frames until none is asked for any more, or so many */
    run(fromMs: number, most: number): number {
      let frames = 0;
      while (asked !== null && frames < most) {
        const step = asked as FrameStep;
        asked = null;
        frames++;
        step(fromMs + (frames * 1000) / 60);
      }
      return frames;
    },
  };
}

describe('the light of a tube', () => {
  it('stands at once with the first picture', () => {
    const { pump, put, moves } = started();
    expect([pump.painted, put(), moves()]).toEqual([1, 1, false]);
  });

  it('fades from one picture into the next that a hand has made, and then rests', () => {
    const { pump, moves, run } = started();
    pump.show(beam(0.5), 100, 'fading');
    expect([pump.painted, moves()]).toEqual([1, true]);
    const frames = run(100, 100);
    expect(frames).toBeGreaterThan(5);
    expect(frames).toBeLessThan(20);
    expect(pump.painted).toBe(1 + frames);
  });

  it.each(['quiet', 'still'] as const)('paints one picture, and no frame more, for one that comes %s', (coming) => {
    const { pump, moves } = started('P7');
    pump.show(beam(0.5), 1000, coming);
    expect([pump.painted, moves()]).toEqual([2, false]);
  });

  it('lets an afterglow end by itself when time brings another picture meanwhile', () => {
    const { pump, moves, run } = started();
    pump.show(beam(0.5), 100, 'fading');
    run(100, 2);
    pump.show(beam(0.6), 140, 'quiet');
    expect(moves()).toBe(true);
    expect(run(140, 100)).toBeGreaterThan(5);
  });

  it('counts no picture in a frame in which no layer is drawn', () => {
    const { pump, run } = started('P7');
    pump.show(beam(0.5), 100, 'fading');
    const frames = run(100, 1000);
    // The tail alone is drawn in every second frame, long after the flash.
    expect(pump.painted).toBeLessThan(0.6 * frames);
    expect(pump.painted).toBeGreaterThan(0.4 * frames);
  });
});
