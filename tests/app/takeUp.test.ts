/** A run that lay open is followed as far as the bench of today can. Source: the house's own promises. */
import { describe, expect, it } from 'vitest';
import { fileOfOpen, takeUp } from '../../src/app/takeUp.ts';
import { readRunFile } from '../../src/files/runFileSchema.ts';
import type { OpenRun } from '../../src/services/store/keptRuns.ts';
import { openRun } from '../services/store/storage.ts';
import { setupOf } from '../technician/oneScenario.ts';

const setup = setupOf('first-curve');
const found = (run: OpenRun, recorded = run.events.length) => ({ run, recorded, text: null });

describe('a run that lay open', () => {
  it('is taken up whole where the bench can follow it', () => {
    const open = openRun('r1', 9);
    const { taken, aside } = takeUp(setup, found(open));
    expect(aside).toBeNull();
    expect(taken).toMatchObject({ elapsedMs: open.elapsedMs, session: open.session });
    expect(taken!.run.events).toEqual(open.events);
    expect(taken!.run.state.turnsMade).toBe(open.turns);
  });

  it('without an act is a run too', () => {
    expect(takeUp(setup, found(openRun('r1', 0)))).toMatchObject({ aside: null, taken: { run: { events: [] } } });
  });

  it('is taken up as far as its acts go through', () => {
    const open = openRun('r1', 9);
    const events = open.events.with(6, { atMs: open.events[6]!.atMs, type: 'slugTurned', slug: 'Z9', turns: 1 });
    const { taken, aside } = takeUp(setup, found({ ...open, events }));
    expect(aside).toBe('stopsShort');
    expect(taken!.run.events).toEqual(open.events.slice(0, 6));
    expect(taken!.elapsedMs).toBe(open.elapsedMs);
  });

  it('is taken up as far as its acts can be read', () => {
    const { taken, aside } = takeUp(setup, found(openRun('r1', 5), 9));
    expect(aside).toBe('stopsShort');
    expect(taken!.run.events).toHaveLength(5);
  });

  it('is set aside where not even its first act goes through, its set is not here, or its scenario does not fit the set', () => {
    const open = openRun('r1', 9);
    const none = { taken: null, aside: 'doesNotStart' };
    expect(takeUp(null, found(open))).toEqual(none);
    const first = { atMs: 0, type: 'slugTurned', slug: 'Z9', turns: 1 } as const;
    expect(takeUp(setup, found({ ...open, events: [first, ...open.events] }))).toEqual(none);
    const start = { ...setup.scenario.start, slugs: { Z9: 1 } };
    expect(takeUp({ ...setup, scenario: { ...setup.scenario, start } }, found(open))).toEqual(none);
  });
});

describe('its file', () => {
  it('is a run file with every act and no claim', () => {
    const open = openRun('r1', 9);
    const read = readRunFile(fileOfOpen(setup, open), 'aside.json');
    expect(read.ok && read.value).toMatchObject({ claimed: null, learner: null, scenario: setup.scenario });
    expect(read.ok && read.value.events).toEqual(open.events);
  });

  it('says of a sealed run no more than the record does', () => {
    const open: OpenRun = { ...openRun('r1', 9), scenario: null, scenarioHash: 'f'.repeat(64) };
    const text = fileOfOpen(setup, open);
    expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(open)));
    expect(text).not.toMatch(/phaseLagDegrees|"start"|"faults"|"seed"/);
  });

  it('is the record itself where its set is not here', () => {
    const open = openRun('r1', 9);
    expect(JSON.parse(fileOfOpen(null, open))).toEqual(open);
  });
});
