/** The bench's clock on a time that the test makes. Common practice, no source. */
import { expect, it } from 'vitest';
import { createBenchClock } from '../../src/app/benchClock.ts';
import { madeTime } from './madeTime.ts';

function clockFrom(fromMs: number) {
  const time = madeTime();
  const readings: number[] = [];
  const clock = createBenchClock(
    { now: time.now, after: time.after, ticked: () => readings.push(clock.elapsedMs()) },
    fromMs,
  );
  return { time, clock, readings };
}

it('stands until it is started, and orders nothing while it stands', () => {
  const { time, clock } = clockFrom(2300);
  time.pass(5000);
  expect(clock.elapsedMs()).toBe(2300);
  expect(time.ordered()).toBe(0);
});

it('ticks once a second, just after the second is full', () => {
  const { time, clock, readings } = clockFrom(2300);
  clock.run(true);
  time.pass(3000);
  expect(readings.map((ms) => Math.floor(ms / 1000))).toEqual([3, 4, 5]);
  for (const ms of readings) expect(ms % 1000).toBeLessThan(20);
});

it('keeps what has passed over a pause, and a tick ordered before the pause is none', () => {
  const { time, clock, readings } = clockFrom(0);
  clock.run(true);
  time.pass(700);
  clock.run(false);
  time.pass(60_000);
  expect(clock.elapsedMs()).toBe(700);
  expect(readings).toEqual([]);
  clock.run(true);
  clock.run(true);
  time.pass(1000);
  expect(clock.elapsedMs()).toBe(1700);
  expect(readings.map((ms) => Math.floor(ms / 1000))).toEqual([1]);
});

it('ticks no more once it is closed', () => {
  const { time, clock, readings } = clockFrom(0);
  clock.run(true);
  clock.close();
  time.pass(5000);
  expect(readings).toEqual([]);
});
