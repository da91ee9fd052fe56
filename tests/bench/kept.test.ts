/** What the bench keeps: the same parts give the same answer, and nothing else does. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { createFaultBook } from '../../src/bench/faultsNow.ts';
import { keepByKey, keepLast } from '../../src/bench/kept.ts';
import { canSetup, play, readySetup, stripSetup } from './fixture.ts';

describe('the last answer', () => {
  it('is given again while all parts are the same objects and figures', () => {
    let made = 0;
    const sum = keepLast(
      (a: { readonly n: number }, b: number) => [a, b],
      (a, b) => {
        made++;
        return { of: a.n + b };
      },
    );
    const one = { n: 1 };
    const answer = sum(one, 2);
    expect(sum(one, 2)).toBe(answer);
    expect(made).toBe(1);
    expect(sum({ n: 1 }, 2)).toEqual(answer);
    expect(sum({ n: 1 }, 2)).not.toBe(answer);
    expect(sum(one, 3)).toEqual({ of: 4 });
    // Only the last is kept.
    expect(sum(one, 2)).not.toBe(answer);
  });

  it('knows a figure that is none again, and tells the two zeros apart', () => {
    const seen: number[] = [];
    const look = keepLast(
      (n: number) => [n],
      (n) => void seen.push(n),
    );
    for (const n of [Number.NaN, Number.NaN, 0, -0, -0]) look(n);
    expect(seen).toEqual([Number.NaN, 0, -0]);
  });

  it('is forgotten when the next one fails', () => {
    let fails = false;
    let made = 0;
    const look = keepLast(
      (part: object) => [part],
      () => {
        if (fails) throw new Error('on purpose');
        return ++made;
      },
    );
    const part = {};
    expect(look(part)).toBe(1);
    fails = true;
    expect(() => look({})).toThrow('on purpose');
    fails = false;
    expect(look(part)).toBe(2);
  });
});

describe('answers by key', () => {
  it('are made once, and the one longest not asked for goes first', () => {
    const made: string[] = [];
    const kept = keepByKey<number | undefined>(2);
    const ask = (key: string): unknown => kept(key, () => (key === 'none' ? undefined : made.push(key)));
    ask('a');
    ask('b');
    ask('a');
    ask('c');
    expect(made).toEqual(['a', 'b', 'c']);
    ask('a');
    ask('b');
    expect(made).toEqual(['a', 'b', 'c', 'b']);
    expect(ask('none')).toBeUndefined();
  });
});

describe('the bench', () => {
  const setup = readySetup(stripSetup);
  const first = play(setup, [{ type: 'toolTaken', tool: 'hex' }]);
  const turned = play(setup, [{ type: 'slugTurned', slug: 'T1', turns: 1 / 8 }], first);
  const picture = (bench: ReturnType<typeof createBench>, state: BenchState) => {
    const display = bench.display(state);
    return { ...display, beam: { ...display.beam, data: display.beam.data.slice() } };
  };

  it('gives the same object for the same state, and the same picture after any other', () => {
    const bench = createBench(setup);
    const before = picture(bench, first);
    expect(bench.display(first)).toBe(bench.display(first));
    expect(bench.facts(first)).toBe(bench.facts(first));
    const other = picture(bench, turned);
    expect(other.beam.data).not.toEqual(before.beam.data);
    expect(picture(bench, first)).toEqual(before);
    expect(picture(bench, { ...first })).toEqual(before);
    expect(picture(createBench(setup), turned)).toEqual(other);
  });

  it('keeps the tags while a slug turns, for a slug moves no pip', () => {
    const bench = createBench(setup);
    const { tags } = bench.display(first);
    expect(bench.display(turned).tags).toBe(tags);
    const moved = play(setup, [{ type: 'controlSet', control: 'phasingDegrees', value: 12 }], first);
    expect(bench.display(moved).tags).not.toBe(tags);
  });

  it('leaves a state without faults alone, and gives the same parts for the same parts where a strap makes no contact', () => {
    const whole = readySetup(canSetup);
    const state = play(whole, []);
    expect(createFaultBook(whole)(state).really(state)).toBe(state);
    const scenario = { ...whole.scenario, faults: [{ kind: 'looseEarth' as const }] };
    const now = createFaultBook({ ...whole, scenario })(state);
    const loose = now.really(state);
    expect(loose.leads).toEqual({ ...state.leads, earth: null });
    expect(now.really({ ...state, seconds: 9 }).leads).toBe(loose.leads);
  });
});
