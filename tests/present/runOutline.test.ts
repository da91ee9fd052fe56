/** A run in a few lines, and its turns over time. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { runOutline, turnsOverTime } from '../../src/present/runOutline.ts';

const RUN: readonly TimedEvent[] = [
  { atMs: 1000, type: 'cautionsAcknowledged' },
  { atMs: 2000, type: 'leadConnected', lead: 'earth', to: 'E' },
  { atMs: 3000, type: 'controlSet', control: 'yTip', value: 'probe' },
  { atMs: 4000, type: 'controlSet', control: 'levelDb', value: -6 },
  { atMs: 5000, type: 'crystalPlugged', hz: 10.7e6 },
  { atMs: 6000, type: 'toolTaken', tool: 'hex' },
  { atMs: 7000, type: 'slugTurned', slug: 'T1', turns: 1 },
  { atMs: 7500, type: 'controlSet', control: 'yVoltsPerDiv', value: 0.1 },
  { atMs: 8000, type: 'slugTurned', slug: 'T1', turns: -0.25 },
  { atMs: 9000, type: 'slugTurned', slug: 'T2', turns: -0.5 },
  { atMs: 9500, type: 'slugTurned', slug: 'T2', turns: 0.5 },
  { atMs: 9800, type: 'controlSet', control: 'phasingDegrees', value: 3 },
  { atMs: 9900, type: 'partReplaced', element: 'R1' },
  { atMs: 9950, type: 'findingStated', proof: 'skirts', answer: 'again', figure: null },
  { atMs: 10_000, type: 'findingStated', proof: 'skirts', answer: 'alike', figure: 2 },
  { atMs: 11_000, type: 'signedOff' },
];

describe('an outline', () => {
  it('says what was done in its order, and joins what goes on, whatever was turned to see it', () => {
    expect(runOutline(RUN).map(({ act }) => act)).toEqual([
      { kind: 'safe' },
      { kind: 'connect' },
      { kind: 'setUp' },
      { kind: 'slug', slug: 'T1', turns: 0.75, made: 1.25 },
      { kind: 'slug', slug: 'T2', turns: 0, made: 1 },
      { kind: 'setUp' },
      { kind: 'part', part: 'R1' },
      { kind: 'proof' },
      { kind: 'signed' },
    ]);
  });

  it('keeps from when to when', () => {
    const [safe, connect] = runOutline(RUN);
    expect([safe!.fromSeconds, connect!.fromSeconds, connect!.toSeconds]).toEqual([1, 2, 3]);
  });

  it('is empty for a run in which nothing was done', () => {
    expect(runOutline([])).toEqual([]);
    expect(turnsOverTime([])).toEqual([{ seconds: 0, turns: 0 }]);
  });

  it('counts every turn, in and out, as it was made', () => {
    expect(turnsOverTime(RUN)).toEqual([
      { seconds: 0, turns: 0 },
      { seconds: 7, turns: 1 },
      { seconds: 8, turns: 1.25 },
      { seconds: 9, turns: 1.75 },
      { seconds: 9.5, turns: 2.25 },
    ]);
  });
});
