/** A demonstration at a bench: the technician's acts go the one way there is, nobody else's do, and what is taken over goes on from there. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { createShownBench } from '../../src/app/shownBench.ts';
import { remarkSentence } from '../../src/describe/remark.ts';
import { createFrameLoop } from '../../src/kit/frameLoop.ts';
import { doJob } from '../../src/services/jobs/doJob.ts';
import { shownRun } from '../../src/services/jobs/plainJobs.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { en } from '../../src/words/en/index.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { madeTime } from './madeTime.ts';

const setup = setupOf('first-curve');
const run = shownRun(setup);
const captions = run.said.map(({ before, remark }) => ({
  before,
  text: remarkSentence(en, setup.receiver, remark, run.passed),
}));

function watch() {
  const time = madeTime();
  const told: string[] = [];
  const bench = createShownBench({
    setup,
    events: run.events,
    captions,
    loop: createFrameLoop(() => {}),
    now: time.now,
    after: time.after,
    taken: () => told.push('taken'),
    finished: () => told.push('finished'),
    left: () => told.push('left'),
    fromStart: () => told.push('fromStart'),
  });
  return { ...bench, time, told };
}

describe('what the technician says', () => {
  it('changes nothing of what he does', () => {
    expect(run.events).toEqual(demonstrate(setup).events);
    expect(run.passed).toBe(true);
  });

  it('begins before his first act, goes on in order, and gives a reason before every spell at the slugs', () => {
    expect(run.said[0]!.before).toBe(0);
    const places = run.said.map(({ before }) => before);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    const firstTurn = run.events.findIndex(({ type }) => type === 'slugTurned');
    const reasons = run.said.filter(({ before }) => before <= firstTurn).slice(-2);
    expect(reasons.map(({ remark }) => remark.kind)).toEqual(['reads', 'turns']);
  });

  it('says what is read with the limits of the sheet, and turns by the letters on the chassis', () => {
    const [reads, turns] = captions.filter(
      ({ before }) => before === captions.find((c) => /notebook/.test(c.text))!.before,
    );
    expect(reads!.text).toMatch(/486 kHz.*wanted 328 to 433 kHz.*outside/);
    expect(turns!.text).toBe(
      'By the notebook this should mend it: slug A (T1B) 1 1/8 turns in and slug B (T1T) 3/4 turn out.',
    );
  });

  it('comes from the job with a share that never falls', async () => {
    const shares: number[] = [];
    const world = {
      library: () => Promise.reject(new Error('not asked')),
      knownSet: async () => null,
      par: async () => null,
    };
    const outcome = await doJob('demonstrate', { setup }, world, (share) => shares.push(share));
    expect(outcome.said).toEqual(run.said);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    expect(shares.length).toBeGreaterThan(100);
  });
});

describe('a bench on which somebody watches', () => {
  it('says each caption before the acts that it is about, and steps from one to the next', () => {
    const { shown, port } = watch();
    expect(shown.view().caption).toBe(captions[0]!.text);
    expect(port.state().cautionsAcknowledged).toBe(false);
    shown.step();
    expect(port.state().cautionsAcknowledged).toBe(true);
    expect(shown.view()).toMatchObject({ caption: captions[1]!.text, at: 2, of: captions.length, ended: false });
    expect(port.state().leads.rf).toBeNull();
  });

  it('plays by itself, stands still when it is stopped, and ends unsigned where he ended', () => {
    const { shown, port, time } = watch();
    shown.toggle();
    expect(shown.view().playing).toBe(true);
    time.pass(20_000);
    const stood = shown.view().at;
    expect(stood).toBeGreaterThan(2);
    shown.toggle();
    time.pass(600_000);
    expect(shown.view()).toMatchObject({ at: stood, playing: false });
    shown.setSpeed('quick');
    shown.toggle();
    time.pass(600_000);
    expect(shown.view()).toMatchObject({ at: captions.length, playing: false, ended: true });
    expect(port.state().signedOff).toBe(false);
    expect(port.state().turnsMade).toBeCloseTo(demonstrate(setup).state.turnsMade, 9);
    // The clock of the bench is his.
    expect(port.elapsedSeconds()).toBeCloseTo(run.events.at(-2)!.atMs / 1000, 3);
  });

  it('goes back: to where the present saying was said, then saying by saying, the bench as it stood and the captions with it', () => {
    const { shown, port, time } = watch();
    const stood = [{ state: port.state(), seconds: port.elapsedSeconds() }];
    for (let n = 1; n < 8; n++) {
      shown.step();
      stood.push({ state: port.state(), seconds: port.elapsedSeconds() });
    }
    let heard = 0;
    port.subscribe(() => heard++);
    for (let n = 6; n >= 0; n--) {
      shown.stepBack();
      expect(shown.view()).toMatchObject({ caption: captions[n]!.text, at: n + 1, playing: false });
      expect(port.state()).toEqual(stood[n]!.state);
      expect(port.elapsedSeconds()).toBeCloseTo(stood[n]!.seconds, 3);
      expect(port.session().stage).toBe('working');
    }
    expect(heard).toBeGreaterThanOrEqual(7);
    // Before the first there is none.
    shown.stepBack();
    expect(shown.view().at).toBe(1);
    // In the middle of what belongs to a saying: to its beginning.
    shown.step();
    shown.setSpeed('slow');
    shown.toggle();
    for (let n = 0; n < 400 && port.state().leads.rf === null; n++) time.pass(100);
    const { at } = shown.view();
    shown.stepBack();
    expect(shown.view()).toMatchObject({ at, caption: captions[at - 1]!.text, playing: false });
    expect(port.state().leads.rf).toBeNull();
    time.pass(600_000);
    expect(shown.view().at).toBe(at);
  });

  it('ends the same by whatever way one came, and is the learner’s from wherever he went back to', () => {
    const { shown, port, time } = watch();
    for (let n = 0; n < 6; n++) shown.step();
    for (let n = 0; n < 3; n++) shown.stepBack();
    for (let n = 0; n < 600 && !shown.view().ended; n++) shown.step();
    expect(shown.view()).toMatchObject({ at: captions.length, ended: true });
    expect(port.state().turnsMade).toBeCloseTo(demonstrate(setup).state.turnsMade, 9);
    shown.stepBack();
    expect(shown.view().ended).toBe(false);
    shown.takeOver();
    const seconds = port.elapsedSeconds();
    time.pass(2000);
    expect(port.elapsedSeconds()).toBeCloseTo(seconds + 2, 3);
    shown.stepBack();
    expect(port.act({ type: 'controlSet', control: 'levelDb', value: -20 }).ok).toBe(true);
  });

  it('is quicker where quick is asked for', () => {
    const [slow, quick] = (['slow', 'quick'] as const).map((speed) => {
      const { shown, time } = watch();
      shown.setSpeed(speed);
      shown.toggle();
      time.pass(15_000);
      return shown.view().at;
    });
    expect(quick).toBeGreaterThan(slow!);
  });

  it('refuses every act of another hand, and says why', () => {
    const { port } = watch();
    const heard: string[] = [];
    port.onRefused((reason) => heard.push(reason));
    expect(port.act({ type: 'leadConnected', lead: 'earth', to: 'E' })).toEqual({
      ok: false,
      reason: 'technicianAtBench',
    });
    port.actSoon({ type: 'controlSet', control: 'levelDb', value: -20 });
    port.askToSign();
    expect(heard).toEqual(['technicianAtBench', 'technicianAtBench', 'technicianAtBench']);
    expect(port.session().stage).toBe('working');
  });

  it('is the learner’s once it is taken over: from where it stands, by the clock of the page, and nothing plays on', () => {
    const { shown, port, time, told } = watch();
    for (let n = 0; n < 5; n++) shown.step();
    const stood = port.state();
    const seconds = port.elapsedSeconds();
    shown.toggle();
    shown.takeOver();
    expect(told).toEqual(['taken']);
    time.pass(2000);
    expect(port.state()).toBe(stood);
    expect(port.elapsedSeconds()).toBeCloseTo(seconds + 2, 3);
    shown.toggle();
    shown.step();
    expect(port.state()).toBe(stood);
    expect(port.act({ type: 'controlSet', control: 'levelDb', value: -20 }).ok).toBe(true);
    port.askToSign();
    port.sign();
    expect(told).toEqual(['taken', 'finished']);
  });
});
