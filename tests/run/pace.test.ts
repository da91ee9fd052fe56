/** How fast hands can be: the technician and the page's own quickest hands are safe, the same acts squeezed together are not. Limits: `docs/run-file.md`; measured, no source. */
import { describe, expect, it } from 'vitest';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { PACE_LIMITS, tooFast } from '../../src/run/pace.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { wholeJob } from '../session/acts.ts';
import { stripSetup } from '../session/setups.ts';

const at = (everyMs: number, acts: readonly BenchEvent[]): TimedEvent[] =>
  acts.map((act, i) => ({ atMs: Math.round(i * everyMs), ...act }));
const many = (count: number, act: (i: number) => BenchEvent): BenchEvent[] =>
  Array.from({ length: count }, (_, i) => act(i));
const knob = (control: 'levelDb' | 'centreHz', value: number): BenchEvent => ({ type: 'controlSet', control, value });

describe('hands that are safe', () => {
  const { events } = demonstrate(stripSetup());

  it('the technician, and one twice as fast', () => {
    expect(events.length).toBeGreaterThan(300);
    expect(tooFast(events)).toBeNull();
    expect(tooFast(events.map((event) => ({ ...event, atMs: Math.round(event.atMs / 2) })))).toBeNull();
  });

  it('a whole job at three acts a second', () => expect(tooFast(at(333, wholeJob(stripSetup())))).toBeNull());

  it('a knob turned without a pause, thirty acts a second as the page sends them', () =>
    expect(
      tooFast(
        at(
          33,
          many(2000, (i) => knob('levelDb', -i % 60)),
        ),
      ),
    ).toBeNull());

  it('two knobs at once under two fingers', () =>
    expect(
      tooFast(
        at(
          16,
          many(4000, (i) => knob(i % 2 === 0 ? 'levelDb' : 'centreHz', i)),
        ),
      ),
    ).toBeNull());

  it('a hand that trembles on a slug: every move of the pointer turns it back, 240 times a second', () =>
    expect(
      tooFast(
        at(
          1000 / 240,
          many(1000, (i) => ({ type: 'slugTurned', slug: 'T1', turns: i % 2 ? 0.02 : -0.02 })),
        ),
      ),
    ).toBeNull());

  it('a wheel that runs free, an eighth of a turn a step', () =>
    expect(
      tooFast(
        at(
          10,
          many(300, () => ({ type: 'slugTurned', slug: 'T1', turns: 1 / 8 })),
        ),
      ),
    ).toBeNull());

  it('crystals plugged one after another from the keyboard, five a second', () =>
    expect(
      tooFast(
        at(
          200,
          many(40, (i) => ({ type: 'crystalPlugged', hz: 1e6 * (i + 1) })),
        ),
      ),
    ).toBeNull());

  it('ten fingers on ten things', () =>
    expect(
      tooFast(
        at(
          5,
          many(10, (i) => ({ type: 'crystalPlugged', hz: 1e6 * (i + 1) })),
        ),
      ),
    ).toBeNull());
});

describe('what no hand does', () => {
  it.each([
    [
      'acts',
      at(
        3,
        many(400, (i) => knob('levelDb', i)),
      ),
    ],
    [
      'turns',
      at(
        30,
        many(60, () => ({ type: 'slugTurned', slug: 'T1', turns: 2 })),
      ),
    ],
    [
      'things',
      at(
        50,
        many(13, (i) => ({ type: 'crystalPlugged', hz: 1e6 * (i + 1) })),
      ),
    ],
    [
      'moves',
      at(
        100,
        many(100, (i) => ({ type: 'crystalPlugged', hz: 1e6 * (i + 1) })),
      ),
    ],
  ] as const)('%s: told with the first act that is too much', (limit, events) => {
    const { most, withinMs } = PACE_LIMITS[limit];
    const found = tooFast(events);
    expect(found).toMatchObject({ limit, most, withinMs });
    expect(found!.found).toBeGreaterThan(most);
    expect(tooFast(events.slice(0, found!.index))).toBeNull();
  });

  it('a whole job squeezed into two seconds, and all of it in one moment', () => {
    const acts = wholeJob(stripSetup());
    expect(tooFast(at(2000 / acts.length, acts))).not.toBeNull();
    expect(tooFast(at(0, acts))).not.toBeNull();
  });
});
