/** The session: it follows the facts, keeps its stages and its clock, and comes back from what was kept. */
import { describe, expect, test } from 'vitest';
import type { Facts } from '../../src/bench/facts.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import type { Findings } from '../../src/bench/witness.ts';
import { PROOFS, type ProofId } from '../../src/scenario/proofId.ts';
import type { OffLine } from '../../src/session/alignment.ts';
import { MISSING_CODES, type MissingCode, missingByPhase } from '../../src/session/missing.ts';
import { PHASES, type Phase } from '../../src/session/phase.ts';
import { aidsWithin, createSession, type Session, sessionViewAt } from '../../src/session/session.ts';
import { ALL_RIGHT, ALL_SAID, IN_LIMITS, NOTHING_RIGHT } from './fakeFacts.ts';

type Asked = Pick<BenchSetup, 'receiver' | 'scenario'>;

function asked(over: Partial<BenchSetup['scenario']> = {}): Asked {
  const scenario = {
    id: 'lopsided',
    proofs: PROOFS,
    timeLimitSeconds: null,
    sealed: false,
    aids: { hints: true, toleranceMarks: true },
    ...over,
  };
  const sheet = (id: string, carrierHz: number | null) => ({
    id,
    setUp: { source: carrierHz === null ? 'sweep' : 'video', spanHz: 12e6, carrierHz, markersHz: [41_250_000] },
  });
  const procedure = (['safe', 'connect', 'setUp', 'setUp', 'align', 'prove'] as const).map((phase) => ({ phase }));
  const receiver = { responses: [sheet('if', null), sheet('video', 45.75e6)], procedure };
  return { scenario, receiver } as unknown as Asked;
}

function working(facts: Facts, over: Partial<BenchSetup['scenario']> = {}): Session {
  const session = createSession(asked(over));
  session.send({ type: 'BEGIN' });
  session.send({ type: 'FACTS', facts, atSeconds: 100, slugs: IN_LIMITS, findings: ALL_SAID });
  return session;
}

const A_LINE: OffLine = {
  response: 'if',
  item: {
    ...{ id: 'peak:44000000', kind: 'peak', hz: 44e6, toHz: null, unit: 'hz', weight: 1 },
    ...{ measured: 300e3, low: -50e3, high: 50e3, tolerance: 50e3 },
  },
  cause: { slug: 'T1', turns: 2 },
};

const UNSAID = [
  ['halveLevel', 'levelNotSaid'],
  ['markersOffOn', 'markersNotSaid'],
  ['touchEarth', 'earthNotSaid'],
  ['swingPhase', 'phaseNotSaid'],
  ['skirts', 'skirtsNotSaid'],
  ['bias', 'biasNotSaid'],
  ['liftCrystal', 'crystalNotSaid'],
  ['pipDown', 'pipNotSaid'],
] as const satisfies readonly (readonly [ProofId, MissingCode])[];

const biasOff = (errorVolts: number): Facts['biases'] => [
  { at: 'AGC', errorVolts, toleranceVolts: 0.2, clamped: true },
];
describe('the session follows the facts', () => {
  test('nothing is done at first, and every phase says what is missing', () => {
    const view = working(NOTHING_RIGHT).view();
    expect(view.stage).toBe('working');
    expect(Object.values(view.done)).toEqual([false, false, false, false, false]);
    expect(view.current).toBe('safe');
    for (const phase of PHASES) expect(view.missing[phase].length).toBeGreaterThan(0);
  });

  test('all phases are done when all facts hold', () => {
    const view = working(ALL_RIGHT).view();
    expect(Object.values(view.done)).toEqual([true, true, true, true, true]);
    expect(PHASES.flatMap((phase) => view.missing[phase])).toEqual([]);
    expect(view.current).toBe('prove');
  });

  type Disturbance = readonly [string, Partial<Facts>, Phase, MissingCode, ('blank' | OffLine)?];
  const disturbances: readonly Disturbance[] = [
    ['isolation taken out', { isolated: false }, 'safe', 'notIsolated'],
    ['cautions', { cautionsAcknowledged: false }, 'safe', 'cautionsNotRead'],
    ['the RF lead falls off', { rfConnected: false, rfAtSheetPoint: false }, 'connect', 'rfNotConnected', 'blank'],
    ['the RF lead elsewhere', { rfAtSheetPoint: false }, 'connect', 'rfWrongPoint'],
    ['no capacitor', { rfThroughCapacitor: false }, 'connect', 'rfNoCapacitor'],
    ['no termination', { rfTerminated: false }, 'connect', 'rfNotTerminated'],
    ['the Y lead elsewhere', { yAtSheetPoint: false }, 'connect', 'yWrongPoint'],
    ['the wrong tip', { yTipAsSheet: false }, 'connect', 'yWrongTip'],
    ['no X lead', { xConnected: false }, 'connect', 'xNotConnected', 'blank'],
    ['the strap falls off', { earthed: false }, 'connect', 'notEarthed'],
    ['the clip falls off', { biasConnected: false }, 'connect', 'biasNotConnected'],
    ['the source is off', { traceHeightDiv: 0.4 }, 'setUp', 'nothingOnTube', 'blank'],
    ['spot', { sweeping: false }, 'setUp', 'notSweeping'],
    ['a narrow sweep', { spanCovers: false }, 'setUp', 'sweepTooNarrow'],
    ['a sweep of more than twice the sheet\u2019s 12 MHz', { spanHz: 24.1e6 }, 'setUp', 'sweepTooWide'],
    ['the phase slips', { residualPhaseDegrees: -2.1 }, 'setUp', 'phaseOff'],
    ['blanking off', { blanking: false }, 'setUp', 'blankingOff'],
    ['the bias drifts', { biases: biasOff(-0.21) }, 'setUp', 'biasOff'],
    ['the wrong mode', { sourceAsSheet: false }, 'setUp', 'sourceNotAsSheet'],
    ['the carrier drifts', { response: 'video', carrierErrorHz: 46e3 }, 'setUp', 'carrierOff'],
    ['the slow sweep off', { slowSweepAsSheet: false }, 'setUp', 'slowSweepOff'],
    ['too fast a sweep', { sweepLag: 0.06 }, 'setUp', 'sweepTooFast'],
    ['a marker that lies', { dialErrorHz: -31e3 }, 'setUp', 'dialOff'],
    ['AC', { dcCoupled: false }, 'setUp', 'acCoupled'],
    ['smoothing', { verticalLagDegrees: 1.1 }, 'setUp', 'verticalLag'],
    ['a bridge left on', { bridge: { across: 'C39' } }, 'setUp', 'bridgeOn'],
    ['steel in a coil', { steelIn: 'T1' }, 'setUp', 'steelInSlug'],
    ['too much level', { compressionDb: 0.51 }, 'setUp', 'overloaded'],
    ['too little level', { detectedPeakVolts: 0.49 }, 'setUp', 'tooWeak'],
    ['a crystal lifted', { markersMissingHz: [41_250_000] }, 'setUp', 'markersMissing'],
    ['markers through the set', { markersAdded: false }, 'setUp', 'markersThroughSet'],
    ['fat pips', { pipHeightRatio: 0.16 }, 'setUp', 'pipsTooHigh'],
    ['no pips', { pipHeightRatio: 0.01 }, 'setUp', 'pipsTooLow'],
    ['X the wrong way', { xDirectionAsSheet: false }, 'setUp', 'xReversed'],
    ['trace off the face', { traceOnScreen: false }, 'setUp', 'traceOffScreen'],
    ['a trace turned dark', { traceLit: false }, 'setUp', 'traceDark'],
    ['a low trace', { traceHeightDiv: 2.9 }, 'setUp', 'traceTooLow'],
    ['a slug astray', {}, 'align', 'linesOutside', A_LINE],
    ['turning', { secondsSinceSlugTurn: 0 }, 'align', 'slugTurning'],
    ['level proof undone', { proofsDone: PROOFS.filter((p) => p !== 'halveLevel') }, 'prove', 'levelNotHalved'],
    ['marker proof undone', { proofsDone: PROOFS.filter((p) => p !== 'markersOffOn') }, 'prove', 'markersNotSwitched'],
    ['earth proof undone', { proofsDone: PROOFS.filter((p) => p !== 'touchEarth') }, 'prove', 'earthNotTouched'],
    ['phase proof undone', { proofsDone: PROOFS.filter((p) => p !== 'swingPhase') }, 'prove', 'phaseNotSwung'],
    ['skirt proof undone', { proofsDone: PROOFS.filter((p) => p !== 'skirts') }, 'prove', 'skirtsNotSeen'],
    ['bias proof undone', { proofsDone: PROOFS.filter((p) => p !== 'bias') }, 'prove', 'biasNotMetered'],
    ['crystal proof undone', { proofsDone: PROOFS.filter((p) => p !== 'liftCrystal') }, 'prove', 'crystalNotLifted'],
    ['pip proof undone', { proofsDone: PROOFS.filter((p) => p !== 'pipDown') }, 'prove', 'pipNotRead'],
  ];

  test.each(disturbances)('%s: the step un-does itself and comes back', (...disturbance) => {
    const [, change, phase, code, also] = disturbance as unknown as Disturbance;
    const session = working(ALL_RIGHT);
    const slugs = typeof also === 'object' ? { ...IN_LIMITS, off: [also] } : IN_LIMITS;
    session.send({ type: 'FACTS', facts: { ...ALL_RIGHT, ...change }, atSeconds: 110, slugs, findings: ALL_SAID });
    const view = session.view();
    // Without a curve nothing that needs one is done either.
    const blank = also === 'blank' ? (['setUp', 'align', 'prove'] as const) : [];
    expect(PHASES.filter((p) => !view.done[p])).toEqual([...new Set<Phase>([phase, ...blank])]);
    for (const p of blank) expect(view.missing[p]).toContain('nothingOnTube');
    expect(blank.length > 0 ? view.missing[phase][0] : view.missing[phase]).toEqual(blank.length > 0 ? code : [code]);
    expect(view.current).toBe(phase);
    session.send({ type: 'FACTS', facts: ALL_RIGHT, atSeconds: 120, slugs: IN_LIMITS, findings: ALL_SAID });
    expect(session.view().done[phase]).toBe(true);
  });

  test.each(UNSAID)(
    '%s: made, but not said, is no proof; said rightly it is, and an answer that does not fit un-does it',
    (proof, code) => {
      const session = working(ALL_RIGHT);
      const standing = (stands: Findings[ProofId]): readonly string[] => {
        const findings = { ...ALL_SAID, [proof]: stands };
        session.send({ type: 'FACTS', facts: ALL_RIGHT, atSeconds: 110, slugs: IN_LIMITS, findings });
        return session.view().missing.prove;
      };
      expect(standing('asked')).toEqual([code]);
      expect(standing(undefined)).toEqual([code]);
      expect(standing('right')).toEqual([]);
      // Nothing more is asked until the act is made once more.
      expect(standing('again')).toHaveLength(1);
      expect(standing('again')).not.toEqual([code]);
      expect(session.view().done.prove).toBe(false);
    },
  );

  test('a set that is switched off un-does the clamp and all that needs a curve', () => {
    const view = working({ ...ALL_RIGHT, powered: false }).view();
    expect(PHASES.filter((p) => view.done[p])).toEqual(['safe']);
    expect(view.missing.connect).toEqual(['powerOff']);
    expect(view.missing.setUp).toEqual(['nothingOnTube', 'powerOff']);
  });

  test('the RF lead at a point that a step sweeps from is no mistake while a line is missed', () => {
    const facts = { ...ALL_RIGHT, rfAtSheetPoint: false, rfAtStepPoint: true };
    expect(working(facts).view().missing.connect).toEqual(['rfWrongPoint']);
    const session = working(facts);
    session.send({ type: 'FACTS', facts, atSeconds: 110, slugs: { ...IN_LIMITS, off: [A_LINE] }, findings: ALL_SAID });
    expect(session.view().missing.connect).toEqual([]);
  });

  test('slugs that were never looked at are not aligned', () => {
    const session = working(ALL_RIGHT);
    session.send({ type: 'FACTS', facts: ALL_RIGHT, atSeconds: 110, slugs: null, findings: ALL_SAID });
    expect(session.view().done.align).toBe(false);
    session.send({ type: 'LOOKED', slugs: IN_LIMITS });
    expect(session.view().done.align).toBe(true);
  });

  test('every code of the list is met by some disturbance', () => {
    const unsaid = UNSAID.map(([, code]) => code);
    expect(new Set([...disturbances.map(([, , , code]) => code), ...unsaid, 'powerOff'])).toEqual(
      new Set(MISSING_CODES),
    );
  });

  test('limits are inclusive: exactly at the tolerance is still right', () => {
    const edge: Facts = {
      ...ALL_RIGHT,
      residualPhaseDegrees: 2,
      biases: biasOff(0.2),
      compressionDb: 0.5,
      detectedPeakVolts: 0.5,
      pipHeightRatio: 0.15,
      traceHeightDiv: 3,
    };
    expect(working(edge).view().done.setUp).toBe(true);
  });

  test('a sheet without bias never misses it', () => {
    const sheet = { source: 'sweep', spanHz: 12e6, carrierHz: null, markersHz: [] } as const;
    expect(
      missingByPhase({ ...ALL_RIGHT, biases: [] }, { proofs: [], sheets: { if: sheet }, steps: [] }, 30, IN_LIMITS, {})
        .setUp,
    ).toEqual([]);
  });

  test('a turned slug comes to rest by the passing of time alone', () => {
    const session = working({ ...ALL_RIGHT, secondsSinceSlugTurn: 0 });
    expect(session.view().alignment).toBe('turning');
    session.send({ type: 'TICK', elapsedSeconds: 101.9 });
    expect(session.view().alignment).toBe('turning');
    session.send({ type: 'TICK', elapsedSeconds: 102 });
    expect(session.view().alignment).toBe('settled');
    expect(session.view().done.align).toBe(true);
  });
});

describe('stages', () => {
  test('briefing, working, signing, graded', () => {
    const session = createSession(asked());
    expect(session.view().stage).toBe('briefing');
    expect(session.send({ type: 'ASK_TO_SIGN' })).toBe(false);
    session.send({ type: 'BEGIN' });
    session.send({ type: 'FACTS', facts: ALL_RIGHT, atSeconds: 50, slugs: IN_LIMITS, findings: ALL_SAID });
    session.send({ type: 'ASK_TO_SIGN' });
    expect(session.view().stage).toBe('signing');
    session.send({ type: 'KEEP_WORKING' });
    expect(session.view().stage).toBe('working');
    expect(session.view().done.setUp).toBe(true);
    session.send({ type: 'ASK_TO_SIGN' });
    session.send({ type: 'FACTS', facts: { ...ALL_RIGHT, signedOff: true }, atSeconds: 60 });
    expect(session.view().stage).toBe('graded');
    expect(session.send({ type: 'BEGIN' })).toBe(false);
  });

  test('a live chassis stops the run; from there to the report or away', () => {
    const session = working({ ...NOTHING_RIGHT, stopped: true });
    expect(session.view().stage).toBe('stopped');
    expect(session.send({ type: 'KEEP_WORKING' })).toBe(false);
    session.send({ type: 'REPORT' });
    expect(session.view().stage).toBe('graded');
  });

  test('suspended and taken up again; time does not pass meanwhile', () => {
    const session = working(ALL_RIGHT, { timeLimitSeconds: 200 });
    session.send({ type: 'SUSPEND' });
    expect(session.view().stage).toBe('suspended');
    expect(session.send({ type: 'TICK', elapsedSeconds: 500 })).toBe(false);
    session.send({ type: 'RESUME' });
    expect(session.view().stage).toBe('working');
    expect(session.view().done.prove).toBe(true);
  });

  test('abandoned from anywhere before the end', () => {
    for (const before of [[], ['BEGIN'], ['BEGIN', 'SUSPEND'], ['BEGIN', 'ASK_TO_SIGN']] as const) {
      const session = createSession(asked());
      for (const type of before) session.send({ type });
      session.send({ type: 'ABANDON' });
      expect(session.view().stage).toBe('abandoned');
    }
  });
});

describe('the clock', () => {
  test('at the limit nothing is left but to sign', () => {
    const session = working(ALL_RIGHT, { timeLimitSeconds: 600 });
    session.send({ type: 'TICK', elapsedSeconds: 599.9 });
    expect(session.view().stage).toBe('working');
    session.send({ type: 'TICK', elapsedSeconds: 600 });
    expect(session.view()).toMatchObject({ stage: 'signing', timeUp: true });
    expect(session.send({ type: 'KEEP_WORKING' })).toBe(false);
    session.send({ type: 'FACTS', facts: { ...ALL_RIGHT, signedOff: true }, atSeconds: 600 });
    expect(session.view().stage).toBe('graded');
  });

  test('it runs on while the question is open', () => {
    const session = working(ALL_RIGHT, { timeLimitSeconds: 600 });
    session.send({ type: 'ASK_TO_SIGN' });
    session.send({ type: 'TICK', elapsedSeconds: 600 });
    expect(session.view()).toMatchObject({ stage: 'signing', timeUp: true });
  });

  test('put away, it takes no ticks', () => {
    const session = working(ALL_RIGHT, { timeLimitSeconds: 600 });
    session.send({ type: 'SUSPEND' });
    expect(session.send({ type: 'TICK', elapsedSeconds: 700 })).toBe(false);
    session.send({ type: 'RESUME' });
    expect(session.view().stage).toBe('working');
  });

  test('time never runs back', () => {
    const session = working(ALL_RIGHT, { timeLimitSeconds: 600 });
    session.send({ type: 'TICK', elapsedSeconds: 599 });
    session.send({ type: 'TICK', elapsedSeconds: 5 });
    session.send({ type: 'FACTS', facts: { ...ALL_RIGHT, secondsSinceSlugTurn: 0 }, atSeconds: 598 });
    expect(session.view().alignment).toBe('turning');
    session.send({ type: 'TICK', elapsedSeconds: 600 });
    expect(session.view().timeUp).toBe(true);
  });
});

describe('kept and taken up', () => {
  const lives: readonly (readonly [string, () => Session])[] = [
    ['briefing', () => createSession(asked())],
    ['at work', () => working({ ...ALL_RIGHT, blanking: false })],
    ['turning', () => working({ ...ALL_RIGHT, secondsSinceSlugTurn: 0 })],
    ['suspended', () => sent(working(ALL_RIGHT), 'SUSPEND')],
    ['signing', () => sent(working(ALL_RIGHT), 'ASK_TO_SIGN')],
    ['stopped', () => working({ ...NOTHING_RIGHT, stopped: true })],
    ['graded', () => working({ ...ALL_RIGHT, signedOff: true })],
    ['abandoned', () => sent(working(ALL_RIGHT), 'ABANDON')],
  ];
  const sent = (session: Session, type: 'SUSPEND' | 'ASK_TO_SIGN' | 'ABANDON'): Session => {
    session.send({ type });
    return session;
  };

  test.each(lives)('%s: the same after JSON and back, and it goes on the same way', (_, live) => {
    const before = live();
    const kept = JSON.parse(JSON.stringify(before.snapshot())) as unknown;
    expect(kept).toEqual(before.snapshot());
    const after = createSession(asked());
    expect(after.restore(kept)).toBe(true);
    expect(after.view()).toEqual(before.view());
    for (const type of ['RESUME', 'KEEP_WORKING', 'BEGIN', 'REPORT'] as const) {
      expect(after.send({ type })).toBe(before.send({ type }));
      expect(after.view()).toEqual(before.view());
    }
    expect(after.snapshot()).toEqual(before.snapshot());
  });

  test('takes up a run that was kept with the standing of the work among its states', () => {
    const before = working({ ...ALL_RIGHT, blanking: false });
    const kept = before.snapshot();
    const part = 'right';
    const setUp = {
      sweep: part,
      phasing: part,
      blanking: 'wrong',
      bias: part,
      level: part,
      markers: part,
      trace: part,
    };
    const regions = { safety: 'made', connection: 'made', setUp, alignment: 'settled', proof: 'proved' };
    const machine = { ...(kept.machine as object), value: { working: { ...regions, clock: 'running' } } };
    const after = createSession(asked());
    expect(after.restore({ ...kept, machine })).toBe(true);
    expect(after.view()).toEqual(before.view());
    expect(after.snapshot()).toEqual(kept);
    after.send({ type: 'FACTS', facts: ALL_RIGHT, atSeconds: 120, slugs: IN_LIMITS, findings: ALL_SAID });
    expect(after.view().done.setUp).toBe(true);
  });

  const damaged: readonly (readonly [string, (kept: Record<string, unknown>) => unknown])[] = [
    ['nothing', () => null],
    ['a word', () => 'working'],
    ['another format', (kept) => ({ ...kept, format: 'notes' })],
    ['another scenario', (kept) => ({ ...kept, scenario: 'two-humps' })],
    ['no machine', (kept) => ({ ...kept, machine: null })],
    ['a state that is none', (kept) => ({ ...kept, machine: { ...(kept.machine as object), value: 'asleep' } })],
    ['no time', (kept) => ({ ...kept, machine: { ...(kept.machine as object), context: { facts: null } } })],
  ];
  test.each(damaged)('refuses %s and stays as it was', (_, damage) => {
    const kept = working(ALL_RIGHT).snapshot() as unknown as Record<string, unknown>;
    const session = createSession(asked());
    expect(session.restore(damage(kept))).toBe(false);
    expect(session.view().stage).toBe('briefing');
  });
});

describe('aids and replay', () => {
  test('a sealed run reaches none, practice reaches those of the scenario', () => {
    expect(aidsWithin(asked({ sealed: true }).scenario)).toEqual({
      hints: false,
      toleranceMarks: false,
    });
    expect(aidsWithin(asked().scenario).hints).toBe(true);
  });

  test('a view is the same object until something is heard', () => {
    const session = working(ALL_RIGHT);
    const view = session.view();
    expect(session.view()).toBe(view);
    session.send({ type: 'TICK', elapsedSeconds: 200 });
    expect(session.view()).not.toBe(view);
  });

  test('any moment of a replay has its view', () => {
    expect(sessionViewAt(asked(), ALL_RIGHT, 90, true, ALL_SAID)).toEqual(working(ALL_RIGHT).view());
    expect(sessionViewAt(asked(), ALL_RIGHT, 90, false, ALL_SAID).current).toBe('align');
  });
});

describe('a sealed run', () => {
  const bad: Facts = { ...NOTHING_RIGHT, cautionsAcknowledged: true };

  test.each([
    ['all is right', ALL_RIGHT],
    ['nothing is', bad],
  ])('says the same of how it stands when %s', (_, facts) => {
    const view = working(facts, { sealed: true }).view();
    expect(Object.values(view.done)).toEqual([false, false, false, false, false]);
    expect(PHASES.flatMap((phase) => view.missing[phase])).toEqual([]);
    expect(view).toMatchObject({ current: 'safe', slugs: null, ticked: [], alignment: 'idle' });
  });

  test('is ticked by the learner, step by step, and the rail is where he says he is', () => {
    const session = working(bad, { sealed: true });
    session.send({ type: 'TICK_STEP', step: 0 });
    expect(session.view()).toMatchObject({ current: 'connect', ticked: [0] });
    session.send({ type: 'TICK_STEP', step: 2 });
    session.send({ type: 'TICK_STEP', step: 1 });
    // Two steps make the set-up; one of them is open.
    expect(session.view()).toMatchObject({ current: 'setUp', ticked: [0, 1, 2] });
    expect(session.view().done).toMatchObject({ safe: true, connect: true, setUp: false });
    session.send({ type: 'TICK_STEP', step: 0 });
    expect(session.view()).toMatchObject({ current: 'safe', ticked: [1, 2] });
  });

  test('keeps the ticks and nothing that was measured', () => {
    const session = working({ ...bad, residualPhaseDegrees: 31.25, dialErrorHz: 30_250 }, { sealed: true });
    session.send({ type: 'TICK_STEP', step: 3 });
    const kept = session.snapshot();
    expect(JSON.stringify(kept)).not.toMatch(/31\.25|30250|residual|compression/);
    const after = createSession(asked({ sealed: true }));
    expect(after.restore(kept)).toBe(true);
    expect(after.view()).toEqual(session.view());
    const strange = { ...kept, machine: { ...(kept.machine as object), context: { ticked: [99, 'x'] } } };
    expect(createSession(asked({ sealed: true })).restore(strange)).toBe(false);
  });

  test('in practice nobody ticks a step himself', () => {
    const session = working(NOTHING_RIGHT);
    expect(session.send({ type: 'TICK_STEP', step: 0 })).toBe(false);
    expect(session.view().ticked).toBeNull();
  });
});
