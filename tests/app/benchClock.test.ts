/** The bench's clock on a time that the test makes. Common practice, no source. */
import { expect, it } from 'vitest';
import { createBenchClock } from '../../src/app/benchClock.ts';
import { madeTime } from './madeTime.ts';

function clockFrom(fromMs: number) {
  const time = madeTime();
  const readings: number[] = [];
  let step = 1;
  const clock = createBenchClock(
    {
      now: time.now,
      after: time.after,
      ticked: () => readings.push(clock.elapsedMs()),
      stepSeconds: () => step,
    },
    fromMs,
  );
  return {
    time,
    clock,
    readings,
    goIn(seconds: number) {
      step = seconds;
    },
  };
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

it('ticks on multiples of longer steps when it is told to, and orders nothing between them', () => {
  const { time, clock, readings, goIn } = clockFrom(2300);
  goIn(5);
  clock.run(true);
  time.pass(15_000);
  expect(readings.map((ms) => Math.floor(ms / 1000))).toEqual([5, 10, 15]);
  expect(time.ordered()).toBe(1);
});

it('comes back to the second at once when something is done, and not twice', () => {
  const { time, clock, readings, goIn } = clockFrom(0);
  goIn(5);
  clock.run(true);
  time.pass(6200);
  goIn(1);
  clock.stir();
  clock.stir();
  time.pass(5000);
  expect(readings.map((ms) => Math.floor(ms / 1000))).toEqual([5, 7, 8, 9, 10, 11]);
});

it('is not started by what is done while it stands', () => {
  const { time, clock, readings } = clockFrom(0);
  clock.stir();
  time.pass(3000);
  expect(readings).toEqual([]);
  expect(clock.elapsedMs()).toBe(0);
});
