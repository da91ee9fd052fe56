/** Refusals, what is missing, verdicts and the curve: every code has its sentence. */

import { describe, expect, test } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent, Refusal } from '../../src/bench/benchEvent.ts';
import type { BenchDisplay } from '../../src/bench/display.ts';
import { initialState } from '../../src/bench/setup.ts';
import {
  curveSentence,
  missingSentence,
  readCurve,
  refusalSentence,
  slugName,
  verdictWords,
} from '../../src/describe/sentence.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import type { Verdict } from '../../src/run/verify.ts';
import { MISSING_CODES } from '../../src/session/missing.ts';
import { en } from '../../src/words/en/index.ts';
import { alignmentActs, connectionActs, safetyActs, setUpActs, stateAfter, yActs } from '../session/acts.ts';
import { canSetup, stripSetup } from '../session/setups.ts';

const WHOLE = /^[A-Z0-9].*[.!?]$/s;

describe('refusals', () => {
  const words = en.refusals;
  const reasons = Object.keys(words) as Refusal[];
  const { receiver } = stripSetup();

  test('every reason has a sentence for every act', () => {
    const acts: BenchEvent[] = [
      { type: 'leadConnected', lead: 'rf', to: 'AGC' },
      { type: 'leadRemoved', lead: 'y' },
      { type: 'toolTaken', tool: 'steel' },
      { type: 'crystalPlugged', hz: 45.75e6 },
      { type: 'crystalPulled', hz: 45.75e6 },
      { type: 'slugTurned', slug: 'A3', turns: 0.1 },
      { type: 'partReplaced', element: 'R12' },
      { type: 'signedOff' },
    ];
    for (const act of acts)
      for (const reason of reasons) expect(refusalSentence(en, reason, act, receiver)).toMatch(WHOLE);
  });

  test('what was tried is named where it helps', () => {
    expect(refusalSentence(en, 'pointRefusesLead', { type: 'leadConnected', lead: 'rf', to: 'AGC' })).toBe(
      'The RF lead does not go to AGC.',
    );
    expect(refusalSentence(en, 'slugCracked', { type: 'slugTurned', slug: 'A3', turns: 1 }, receiver)).toBe(
      'Trap F (A3) is cracked and no longer turns.',
    );
    expect(refusalSentence(en, 'rackFull', { type: 'crystalPlugged', hz: 44e6 })).toContain('44.00 MHz');
    expect(refusalSentence(en, 'badTime', { type: 'signedOff' })).toBe(words.badTime);
  });
});

test('everything that can be missing has its way to be mended, and nothing else is spoken of', () => {
  for (const code of MISSING_CODES) expect(missingSentence(en, code)).toMatch(WHOLE);
  expect(new Set(MISSING_CODES.map((code) => missingSentence(en, code))).size).toBe(MISSING_CODES.length);
  expect(() => missingSentence(en, 'toString')).toThrow('no words');
});

test('slugs are called by letter and name', () => {
  const { receiver } = stripSetup();
  expect([
    slugName(en, receiver, 'T1'),
    slugName(en, receiver, 'A1'),
    slugName(en, receiver, 'T5S'),
    slugName(en, receiver, 'Z9'),
  ]).toEqual(['slug A (T1)', 'trap C (A1)', 'slug J (T5S)', 'Z9']);
});

describe('verdicts', () => {
  const score = { total: 84, passed: true, lines: [] };
  const verdicts: readonly Verdict[] = [
    { kind: 'verified', score },
    { kind: 'unclaimed', score },
    {
      kind: 'scoreDiffers',
      claimed: { ...score, total: 91 },
      recomputed: score,
      lines: [{ id: 'G13', claimed: 4, recomputed: null }],
    },
    { kind: 'scoreDiffers', claimed: score, recomputed: score, lines: [{ id: 'G13', claimed: 4, recomputed: 2 }] },
    { kind: 'eventsChanged' },
    { kind: 'truncated', found: 12, recorded: 40 },
    { kind: 'truncated', found: 12, recorded: null },
    { kind: 'reordered', index: 3 },
    { kind: 'reordered', index: null },
    { kind: 'foreign', part: 'version', found: ['version', 2], wanted: ['version', 1] },
    { kind: 'foreign', part: 'engine', found: '9.9.9', wanted: '0.1.0' },
    { kind: 'foreign', part: 'receiver', found: 'a', wanted: 'b' },
    { kind: 'foreign', part: 'scenario', found: 'a', wanted: 'b' },
    { kind: 'impossibleEvent', index: 7, atMs: 61_000, type: 'slugTurned', reason: 'noToolInHand' },
    { kind: 'impossibleEvent', index: 7, atMs: 61_000, type: 'slugTurned', reason: 'badTime' },
    {
      kind: 'unreadable',
      problems: [{ file: 'run.json', place: '/events/3', found: ['nothing'], wanted: ['anObject'] }],
    },
    { kind: 'claimMissing', score },
    { kind: 'foreign', part: 'noReceiver', found: 'a', wanted: ['receiverHere'] },
  ];

  test('each is told apart from the others', () => {
    const told = verdicts.map((verdict) => verdictWords(en, verdict));
    for (const { title, sentence } of told) {
      expect(title).toMatch(/^[A-Z]/);
      expect(sentence).toMatch(WHOLE);
      expect(sentence).not.toMatch(/undefined|null|NaN/);
    }
    expect(new Set(told.map(({ sentence }) => sentence)).size).toBe(verdicts.length);
  });

  test('they say which line, which act, which problem', () => {
    expect(verdictWords(en, verdicts[2]!)).toMatchObject({
      sentence: 'The file claims 91 points; the same actions earn 84.',
      details: ['G13: claimed 4.00, recomputed no such line'],
    });
    expect(verdictWords(en, verdicts[13]!).sentence).toBe(
      'Action 8, at 01:01 (slug turned), cannot have happened. Take a trimming tool first.',
    );
    expect(verdictWords(en, verdicts[15]!).details).toEqual(['run.json, /events/3: found nothing, wanted an object']);
  });
});

describe('the curve, told', () => {
  const setup = stripSetup({ start: { slugs: {}, randomTurns: 0, controls: {}, prepared: [] } });
  const bench = createBench(setup);
  const bare = initialState(setup);
  const made = stateAfter(setup, [...safetyActs(setup), ...connectionActs(setup), ...setUpActs(setup)], bare);
  const ready = stateAfter(
    setup,
    [...yActs(setup, made), { type: 'controlSet', control: 'pipHeightDiv', value: 0.2 }],
    made,
  );

  test('an aligned strip: the pips stand where the sheet has them, as an eye reads them', () => {
    const { heightDiv, pips } = readCurve(bench.display(ready));
    expect(heightDiv).toBeGreaterThan(3);
    const at = (hz: number): number => pips.find((pip) => pip.tag.hz === hz)!.share!;
    // The detector bends low levels down, so half of the carrier shows as rather less.
    expect(at(44e6)).toBeGreaterThanOrEqual(0.9);
    expect(at(45.75e6)).toBeGreaterThanOrEqual(0.3);
    expect(at(45.75e6)).toBeLessThanOrEqual(0.6);
    expect(at(47.25e6)).toBeLessThanOrEqual(0.05);
    expect(at(39.75e6)).toBeLessThanOrEqual(0.05);
  });

  test('a sentence with the height, the top and each pip by number', () => {
    const said = curveSentence(en, bench.display(ready));
    expect(said).toMatch(
      /^A curve \d\.\d divisions high; top between 42\.17 MHz and 45\.75 MHz|^A curve \d\.\d divisions high; top between 42\.17 MHz and 44\.00 MHz|^A curve \d\.\d divisions high; top between 44\.00 MHz and 45\.75 MHz/,
    );
    expect(said).toMatch(/pip 5, 45\.75 MHz, at \d+%/);
    expect(said).toMatch(WHOLE);
  });

  test('turning a slug changes what is said', () => {
    const off = stripSetup({ start: { slugs: { T4: -3 }, randomTurns: 0, controls: {}, prepared: [] } });
    const away = { ...ready, slugs: initialState(off).slugs };
    expect(curveSentence(en, createBench(off).display(away))).not.toBe(curveSentence(en, bench.display(ready)));
  });

  test('a dark or flat face says why', () => {
    const said = (state: typeof ready): string => curveSentence(en, bench.display(state));
    expect(said(bare)).toBe(en.curve.notes.noY);
    expect(said(stateAfter(setup, [{ type: 'powerSwitched', on: false }], ready))).toBe(en.curve.notes.powerOff);
    expect(said(stateAfter(setup, [{ type: 'leadRemoved', lead: 'rf' }], ready))).toBe(en.curve.notes.noSignal);
    expect(said(stateAfter(setup, [{ type: 'leadRemoved', lead: 'x' }], ready))).toBe(en.curve.notes.noX);
  });

  test('no pips, pips off the sweep, hum and the tunable marker are spoken of; its frequency is not', () => {
    const toldAfter = (...acts: readonly BenchEvent[]): string =>
      curveSentence(en, bench.display(stateAfter(setup, acts, ready)));
    const pulled = mainResponse(setup.receiver).setUp.markersHz.map(
      (hz): BenchEvent => ({ type: 'crystalPulled', hz }),
    );
    expect(toldAfter(...pulled)).toContain('no pips');
    expect(toldAfter({ type: 'controlSet', control: 'spanHz', value: 6e6 })).toContain('off the sweep');
    expect(toldAfter({ type: 'leadRemoved', lead: 'earth' })).toContain('wavers with the mains');
    const tuned = toldAfter(
      ...pulled,
      { type: 'controlSet', control: 'tunableHz', value: 43.3e6 },
      { type: 'controlSet', control: 'tunableOn', value: true },
    );
    expect(tuned).toContain('tunable marker at');
    expect(tuned).not.toContain('43.3');
  });

  test('it reads the screen alone: an empty beam is no curve', () => {
    const empty: BenchDisplay = {
      ...{
        beam: { data: new Float32Array(0), count: 0 },
        tags: [],
        meterVolts: 0,
        meterPinned: false,
        toneVolts: 0,
        beatHz: null,
        humDiv: 0,
        grassDiv: 0,
        note: 'none',
      },
    };
    expect(curveSentence(en, empty)).toBe(en.curve.notes.noSignal);
  });

  test('the can, too: the top stands on the middle pip', () => {
    const can = canSetup();
    const start = initialState(can);
    const acts = [...safetyActs(can), ...connectionActs(can), ...setUpActs(can), ...alignmentActs(can, start)];
    const state = stateAfter(can, acts, start);
    const { pips } = readCurve(createBench(can).display(stateAfter(can, yActs(can, state), state)));
    expect(pips.map((pip) => pip.share! >= 0.7)).toEqual([true, true, true]);
  });
});
