/** The sprite file itself: every name is there, loops meet at their ends, short sounds begin and end in silence. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { BenchSound } from '../../../src/bench/benchEvent.ts';
import type { AnswerSound } from '../../../src/present/answers.ts';
import { spriteOf } from '../../../src/services/sound/sprites.ts';

const MAP: Record<string, [number, number, true?]> = JSON.parse(readFileSync('assets/sounds/sprites.json', 'utf8'));
const WAV = readFileSync('assets/sounds/sprites.wav');
const RATE = WAV.readUInt32LE(24);

/** Sample at a place in milliseconds, -1 to 1. */
function sampleAt(ms: number): number {
  return WAV.readInt16LE(44 + 2 * Math.round((ms * RATE) / 1000)) / 32768;
}

function samples(name: string): number[] {
  const [start, length] = MAP[name]!;
  const count = Math.round((length * RATE) / 1000);
  const first = Math.round((start * RATE) / 1000);
  return Array.from({ length: count }, (_, i) => WAV.readInt16LE(44 + 2 * (first + i)) / 32768);
}

/** Amplitude of one frequency in a whole loop: the discrete Fourier sum. */
function partial(values: readonly number[], hz: number): number {
  let re = 0;
  let im = 0;
  values.forEach((value, i) => {
    re += value * Math.cos((2 * Math.PI * hz * i) / RATE);
    im += value * Math.sin((2 * Math.PI * hz * i) / RATE);
  });
  return (2 * Math.hypot(re, im)) / values.length;
}

describe('sprite file', () => {
  it('is mono PCM and small', () => {
    expect([WAV.readUInt16LE(20), WAV.readUInt16LE(22), WAV.readUInt16LE(34)]).toEqual([1, 1, 16]);
    expect(WAV.readUInt32LE(40)).toBe(WAV.length - 44);
    expect(WAV.length).toBeLessThanOrEqual(120_000);
  });

  it('has a sprite for every happening and both loops, each on whole samples inside the file and none over another', () => {
    const kinds = [
      'switch',
      'relay',
      'clip',
      'unclip',
      'crystal',
      'blade',
      'stop',
      'crack',
      'slip',
      'unsafe',
      'sign',
    ] as const;
    const sounds: BenchSound[] = [
      ...kinds.map((kind) => ({ kind })),
      { kind: 'detent', slug: 'T1', nearStop: false },
      { kind: 'detent', slug: 'T1', nearStop: true },
      { kind: 'proof', proof: 'skirts' },
    ];
    const answers: AnswerSound[] = ['stepDone', 'lineIn', 'foundRight', 'missed'];
    expect(Object.keys(MAP).sort()).toEqual([...sounds.map(spriteOf), ...answers, 'hum', 'tone'].sort());
    const ends = Object.values(MAP).map(([start, length]) => [start, start + length] as const);
    ends.forEach(([start, end], i) => {
      for (const ms of [start, end]) expect((ms * RATE) / 1000).toBeCloseTo(Math.round((ms * RATE) / 1000), 6);
      if (i > 0) expect(start).toBeGreaterThan(ends[i - 1]![1]);
      expect(44 + (2 * end * RATE) / 1000).toBeLessThanOrEqual(WAV.length);
    });
  });

  it('lets every short sound be heard and end in silence', () => {
    for (const [name, [start, length, loop]] of Object.entries(MAP)) {
      if (loop) continue;
      const peak = samples(name).reduce((most, value) => Math.max(most, Math.abs(value)), 0);
      expect(peak, name).toBeGreaterThan(0.2);
      expect(peak, name).toBeLessThan(1);
      expect(Math.abs(sampleAt(start + length - 1000 / RATE)), name).toBeLessThan(0.001);
    }
  });

  it('loops the tone at 400 Hz and the hum on the mains and its harmonics', () => {
    const tone = samples('tone');
    const hum = samples('hum');
    expect(partial(tone, 400)).toBeCloseTo(0.7, 3);
    expect(partial(tone, 300)).toBeLessThan(1e-4);
    expect(partial(hum, 100)).toBeGreaterThan(partial(hum, 50));
    expect(partial(hum, 50)).toBeGreaterThan(0.2);
    expect(partial(hum, 60)).toBeLessThan(1e-4);
  });

  it('goes on past both ends of a loop as the loop itself does, so that a player that resamples hears no seam', () => {
    for (const name of ['hum', 'tone']) {
      const [start, length] = MAP[name]!;
      for (const ms of [-4, -1, 0, 1, 4]) {
        expect(sampleAt(start + length + ms), `${name} ${ms}`).toBeCloseTo(sampleAt(start + ms), 3);
      }
    }
  });
});
