/** Where a note of the bench stands. What must stay clear is worked out here, from the corners alone. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import type { Rect } from '../../src/kit/px.ts';
import { notePlace } from '../../src/rooms/bench/notePlace.ts';

const room: Rect = { x: 8, y: 56, width: 1424, height: 836 };
const note = { width: 260, height: 60 };
const tube: Rect = { x: 330, y: 76, width: 500, height: 432 };

const meet = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
const inside = (a: Rect): boolean =>
  a.x >= room.x && a.y >= room.y && a.x + a.width <= room.x + room.width && a.y + a.height <= room.y + room.height;

describe('a note of the bench', () => {
  it('stands above the hand, in the middle of it', () => {
    const hand = { x: 640, y: 700, width: 70, height: 90 };
    expect(notePlace({ hand, clear: [tube], note, room })).toEqual({ x: 545, y: 630 });
  });

  it('stands below where the tube is above', () => {
    const hand = { x: 540, y: 540, width: 70, height: 90 };
    expect(notePlace({ hand, clear: [tube], note, room }).y).toBe(640);
  });

  it('covers neither the hand, nor the tube, nor what is lit, wherever they are', () => {
    const random = seededRandom(7);
    const some = (least: number, most: number): number => least + random() * (most - least);
    for (let i = 0; i < 500; i++) {
      const hand = { x: some(8, 1350), y: some(60, 800), width: some(26, 120), height: some(26, 110) };
      const lit = { x: some(8, 1300), y: some(60, 800), width: some(26, 120), height: some(26, 90) };
      const at = { ...note, ...notePlace({ hand, clear: [tube, lit], note, room }) };
      expect(inside(at)).toBe(true);
      for (const kept of [hand, tube, lit]) expect(meet(at, kept), JSON.stringify({ hand, lit, at })).toBe(false);
    }
  });

  it('covers least where there is no room', () => {
    const narrow = { x: 0, y: 0, width: 260, height: 100 };
    const hand = { x: 100, y: 60, width: 40, height: 40 };
    expect(notePlace({ hand, clear: [], note, room: narrow }).y).toBe(0);
  });
});
