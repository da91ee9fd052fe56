/**
 * Hands pictures to the painter in buffers that go to and fro. There are only a few: while all are away the newest picture waits, and those
 * between are never painted. The bench writes its next picture into the same points, so what waits is a copy.
 */
import type { Beam } from './faceLight.ts';
import type { Coming, ToPainter } from './tubeMessages.ts';

type Show = Extract<ToPainter, { say: 'show' }>;

const MOST_BUFFERS = 3;

export interface BeamPost {
  send(beam: Beam, coming: Coming): void;
  /** a buffer has come back */
  back(data: ArrayBuffer): void;
}

export function createBeamPost(post: (message: Show, transfer: Transferable[]) => void): BeamPost {
  const free: ArrayBuffer[] = [];
  let made = 0;
  let late: Show | null = null;
  let lateData = new Float32Array(0);

  const bufferFor = (length: number): ArrayBuffer | null => {
    const bytes = length * Float32Array.BYTES_PER_ELEMENT;
    const found = free.pop();
    if (found !== undefined) return found.byteLength === bytes ? found : new ArrayBuffer(bytes);
    if (made === MOST_BUFFERS) return null;
    made++;
    return new ArrayBuffer(bytes);
  };
  const hand = (message: Omit<Show, 'data'>, points: Float32Array, data: ArrayBuffer): void => {
    new Float32Array(data).set(points);
    post({ ...message, data }, [data]);
  };
  return {
    send({ points, brightness, blur }, coming) {
      const from = points?.data ?? NO_POINTS;
      const message = { say: 'show', count: points?.count ?? 0, brightness, blur, coming } as const;
      const data = bufferFor(from.length);
      if (data !== null) {
        late = null;
        hand(message, from, data);
        return;
      }
      if (lateData.length !== from.length) lateData = new Float32Array(from.length);
      lateData.set(from);
      late = { ...message, data: lateData.buffer };
    },
    back(data) {
      free.push(data);
      if (late === null) return;
      const message = late;
      late = null;
      hand(message, lateData, bufferFor(lateData.length)!);
    },
  };
}

const NO_POINTS = new Float32Array(0);
