/**
 * The guide through a first bench on the real bench and session: done as it says, each step in its turn, the run passes; shown alone it neither aligns nor
 * answers. What counts as done is the sheet of the scenario itself; no other source.
 */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { type BenchSetup, firstResponse, initialState } from '../../src/bench/setup.ts';
import { findingsOf, trueFinding } from '../../src/bench/witness.ts';
import { type GuideMoment, goesUp, guideStepNow, guideSteps } from '../../src/present/guide.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { GUIDED_SCENARIO } from '../../src/scenario/guided.ts';
import type { ProofId } from '../../src/scenario/proofId.ts';
import { createAlignmentWatch } from '../../src/session/alignment.ts';
import { createSession } from '../../src/session/session.ts';
import { en } from '../../src/words/en/index.ts';
import { alignmentActs, stateAfter } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';

const setup: BenchSetup = setupOf(GUIDED_SCENARIO);
const steps = guideSteps(setup);
const bench = createBench(setup);
const watch = createAlignmentWatch(setup);

function momentOf(state: GuideMoment['state']): GuideMoment {
  const session = createSession(setup);
  session.send({ type: 'BEGIN' });
  session.send({
    type: 'FACTS',
    facts: bench.facts(state),
    atSeconds: state.seconds,
    slugs: watch.of(state, true),
    findings: findingsOf(setup, state),
  });
  session.send({ type: 'TICK', elapsedSeconds: state.seconds + 10 });
  return { setup, state, session: session.view() };
}

const cautioned = stateAfter(setup, [{ type: 'cautionsAcknowledged' }], initialState(setup));

/** Presses "Show me" as long as it does anything; `help` is what the learner does where it does nothing. */
function shown(help: (id: string, moment: GuideMoment) => GuideMoment['state'] | null) {
  let state = cautioned;
  const met: string[] = [];
  for (let press = 0; press < 60; press++) {
    const moment = momentOf(state);
    const step = steps[guideStepNow(steps, moment)]!;
    if (met.at(-1) !== step.id) met.push(step.id);
    const acts = step.show(moment);
    const next = acts.length > 0 ? stateAfter(setup, acts, state) : help(step.id, moment);
    if (next === null) return { state, met, moment };
    state = next;
  }
  throw new Error(`the guide does not end: ${met.join(', ')}`);
}

describe('the guide through a first bench', () => {
  it('begins with the earth strap and names a part of the bench and words for each step', () => {
    const moment = momentOf(cautioned);
    expect(steps[guideStepNow(steps, moment)]!.id).toBe('earth');
    expect(steps[0]!.spot(moment)).toEqual({ kind: 'lead', lead: 'earth', to: 'Earth' });
    for (const step of steps) expect(en.guide.steps[step.words].title).not.toBe('');
  });

  it('stops at the first slug where nobody turns: one eighth is shown, and no more', () => {
    const { met, state, moment } = shown(() => null);
    expect(met.at(-1)).toMatch(/^slug /);
    expect(state.turnsMade).toBe(1 / 8);
    expect(moment.session.done.setUp).toBe(true);
    expect(moment.session.done.align).toBe(false);
  });

  it('leads whoever aligns and looks through both proofs to the signature', () => {
    const { met, moment } = shown((id, { state }) => {
      if (id.startsWith('slug ')) return stateAfter(setup, alignmentActs(setup, state), state);
      if (id.endsWith(' seen')) {
        const proof = id.split(' ')[0] as ProofId;
        return stateAfter(setup, [trueFinding(setup, state, proof)], state);
      }
      return null;
    });
    expect(met.at(-1)).toBe('sign');
    expect(met).toContain('phasing');
    expect(met).toContain('crystals');
    expect(met.filter((id) => id.endsWith('seen'))).toEqual(['halveLevel seen', 'swingPhase seen']);
    expect(Object.values(moment.session.done)).toEqual([true, true, true, true, true]);
  });

  it('stays with the card while an answer does not fit the picture, then with the act, and never goes on to the signature', () => {
    // A level that is halved makes the whole curve smaller: the height cannot have stayed.
    const wrong = { type: 'findingStated', proof: 'halveLevel', answer: 'hardly', figure: 2.5 } as const;
    const { state, moment } = shown((id, { state: now }) =>
      id.startsWith('slug ') ? stateAfter(setup, alignmentActs(setup, now), now) : null,
    );
    expect(steps[guideStepNow(steps, moment)]!.id).toBe('halveLevel seen');
    const said = stateAfter(setup, [wrong], state);
    expect(steps[guideStepNow(steps, momentOf(said))]!.id).toBe('halveLevel seen');
    const twice = stateAfter(setup, [wrong], said);
    expect(steps[guideStepNow(steps, momentOf(twice))]!.id).toBe('halveLevel');
  });

  it('means the knob that is off, and says which way it goes', () => {
    const { setUp } = firstResponse(setup);
    const at = (id: string) => steps.find((step) => step.id === id)!;
    const with_ = (...acts: BenchEvent[]): GuideMoment => momentOf(stateAfter(setup, acts, cautioned));
    const wide = with_(
      { type: 'controlSet', control: 'centreHz', value: setUp.centreHz },
      { type: 'controlSet', control: 'spanHz', value: 4 * setUp.spanHz },
    );
    expect(at('sweep').spot(wide)).toEqual({ kind: 'control', control: 'spanHz' });
    expect(goesUp(at('sweep'), wide)).toBe(false);
    const low = with_({ type: 'controlSet', control: 'centreHz', value: setUp.centreHz - setUp.spanHz });
    expect(at('sweep').spot(low)).toEqual({ kind: 'control', control: 'centreHz' });
    expect(goesUp(at('sweep'), low)).toBe(true);
    // The sweep lags: the phasing has to go below nought, to the left.
    const even = with_({ type: 'controlSet', control: 'phasingDegrees', value: 0 });
    expect(setup.scenario.bench.phaseLagDegrees).toBeGreaterThan(0);
    expect(goesUp(at('phasing'), even)).toBe(false);
    const past = with_({ type: 'controlSet', control: 'phasingDegrees', value: -60 });
    expect(goesUp(at('phasing'), past)).toBe(true);
  });

  it('names the way of a slug as its thread goes: what it says brings the slug nearer', () => {
    const { moment, state } = shown(() => null);
    const settled = { ...moment, state };
    const step = steps[guideStepNow(steps, settled)]!;
    const spot = step.spot(settled);
    const off = step.off!(settled);
    if (spot.kind !== 'slug' || off === undefined) throw new Error('no slug is meant');
    expect(spot).toEqual({ kind: 'slug', slug: off.id, way: off.turns < 0 ? 'in' : 'out' });
    const adjuster = setup.receiver.adjusters.find(({ id }) => id === off.id)!;
    const stillIn = nominalTurns(adjuster) - state.slugs[off.id]!.screwTurns;
    expect(Math.sign(stillIn)).toBe(spot.way === 'in' ? 1 : -1);
  });

  it('keeps to a slug that stands off though every line is inside, until something has been proved', () => {
    const { state } = shown((id, { state: now }) =>
      id.startsWith('slug ') ? stateAfter(setup, alignmentActs(setup, now), now) : null,
    );
    const slug = setup.receiver.adjusters[1]!.id;
    const turned: BenchEvent[] = [
      { type: 'toolTaken', tool: 'hex' },
      { type: 'slugTurned', slug, turns: 3 / 8 },
    ];
    const leaning = stateAfter(setup, turned, state);
    const moment = momentOf(leaning);
    expect(moment.session.done.align).toBe(true);
    const step = steps[guideStepNow(steps, moment)]!;
    expect(step.id).toBe(`slug ${slug}`);
    expect(step.off!(moment)?.id).toBe(slug);
    const proved = { ...leaning.proofs, halveLevel: { ...leaning.proofs.halveLevel, done: true } };
    expect(steps[guideStepNow(steps, momentOf({ ...leaning, proofs: proved }))]!.id).toBe('halveLevel seen');
  });

  it('answers no card and signs nothing', () => {
    for (const id of ['halveLevel seen', 'swingPhase seen', 'sign'])
      expect(steps.find((step) => step.id === id)!.show(momentOf(cautioned))).toEqual([]);
  });

  it('goes back to what no longer stands', () => {
    const { state } = shown(() => null);
    const off = stateAfter(setup, [{ type: 'leadRemoved', lead: 'earth' }], state);
    expect(steps[guideStepNow(steps, momentOf(off))]!.id).toBe('earth');
  });
});
