/**
 * Every way in which a bench may deceive is recognised: signed off in that state the run costs points, under the rule and with the sentence that name it,
 * and a slug turned by such a picture is told with the code of the lie.
 */
import { describe, expect, test } from 'vitest';
import type { BenchEvent, ControlId } from '../../src/bench/benchEvent.ts';
import type { LeadId } from '../../src/bench/benchState.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { initialState } from '../../src/bench/setup.ts';
import { findings } from '../../src/describe/findings.ts';
import { scoreLineSentence } from '../../src/describe/scoreLine.ts';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { blindTurns, LIES, type Lie } from '../../src/grading/blindTurns.ts';
import { grade } from '../../src/grading/grade.ts';
import type { Adjuster, Receiver } from '../../src/receiver/receiver.ts';
import { responseById } from '../../src/receiver/responses.ts';
import { en } from '../../src/words/en/index.ts';
import { SCENARIO } from '../bench/fixture.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { alignmentActs, connectionActs, safetyActs, setUpActs, stateAfter, yActs } from '../session/acts.ts';

const library = shippedLibrary();
const set = (control: ControlId, value: number | boolean | string): BenchEvent => ({
  type: 'controlSet',
  control,
  value,
});
const clip = (lead: LeadId, to: string): BenchEvent => ({ type: 'leadConnected', lead, to });
const lift = (lead: LeadId): BenchEvent => ({ type: 'leadRemoved', lead });

interface Deception {
  readonly name: string;
  readonly lie: Lie;
  readonly receiver: string;
  readonly response?: string;
  /** how the bench is spoilt after it was rightly set up */
  readonly acts: readonly BenchEvent[];
  /** the line that names it, and words of its sentence */
  readonly rule: string;
  readonly says: RegExp;
}

const VALVE = 'video-valve-45m';
const DECEPTIONS: readonly Deception[] = [
  {
    name: 'phasing off',
    lie: 'phaseOff',
    receiver: VALVE,
    acts: [set('phasingDegrees', 10)],
    rule: 'G13',
    says: /phasing was left 10° out/,
  },
  {
    name: 'X reversed',
    lie: 'xReversed',
    receiver: VALVE,
    acts: [set('mirror', true)],
    rule: 'G19',
    says: /wrong side/,
  },
  {
    name: 'retrace not blanked',
    lie: 'retraceShown',
    receiver: VALVE,
    acts: [set('blanking', false)],
    rule: 'G14',
    says: /blanking was off/,
  },
  {
    name: 'overload',
    lie: 'overloaded',
    receiver: VALVE,
    acts: [set('levelDb', -26)],
    rule: 'G16',
    says: /too strong/,
  },
  {
    name: 'wrong bias',
    lie: 'biasOff',
    receiver: VALVE,
    acts: [set('biasAVolts', 6)],
    rule: 'G15',
    says: /bias on AGC was 3 V off/,
  },
  {
    name: 'AGC unclamped',
    lie: 'agcFree',
    receiver: VALVE,
    acts: [lift('biasA')],
    rule: 'G61',
    says: /AGC was left to follow/,
  },
  {
    name: 'probe loading',
    lie: 'probeLoads',
    receiver: VALVE,
    acts: [set('yTip', 'plain')],
    rule: 'G25',
    says: /tip it asks for/,
  },
  {
    name: 'lead unterminated',
    lie: 'unterminated',
    receiver: VALVE,
    acts: [set('levelDb', -54), set('rfTerminated', false)],
    rule: 'G24',
    says: /not terminated/,
  },
  {
    name: 'ground missing',
    lie: 'notEarthed',
    receiver: VALVE,
    acts: [lift('earth')],
    rule: 'G26',
    says: /strap was off/,
  },
  { name: 'mains hum', lie: 'notEarthed', receiver: VALVE, acts: [lift('earth')], rule: 'G57', says: /Hum was/ },
  {
    name: 'pips too high',
    lie: 'pipsTooHigh',
    receiver: VALVE,
    acts: [set('pipHeightDiv', 3)],
    rule: 'G21',
    says: /distort what they mark/,
  },
  {
    name: 'markers through the set',
    lie: 'markersThrough',
    receiver: VALVE,
    acts: [set('markerRoute', 'through')],
    rule: 'G22',
    says: /went through the set/,
  },
  {
    name: 'AC coupling',
    lie: 'acCoupled',
    receiver: VALVE,
    acts: [set('yCoupling', 'AC')],
    rule: 'G55',
    says: /AC coupled/,
  },
  {
    name: 'vertical bandwidth too low',
    lie: 'verticalLag',
    receiver: VALVE,
    acts: [set('ySmoothing', true)],
    rule: 'G56',
    says: /lagged/,
  },
  {
    name: 'wrong test point',
    lie: 'wrongPoint',
    receiver: 'fm-10m7',
    response: 's',
    acts: [clip('y', 'TP8')],
    rule: 'G25',
    says: /not at the sheet/,
  },
  {
    name: 'steel tool in a slug',
    lie: 'steelIn',
    receiver: 'loose-can-10m7',
    acts: [
      { type: 'toolTaken', tool: 'steel' },
      { type: 'toolPlaced', slug: 'T1T' },
    ],
    rule: 'G58',
    says: /steel blade was left in/,
  },
  {
    name: 'dial error',
    lie: 'dialOff',
    receiver: VALVE,
    acts: [set('tunableOn', true)],
    rule: 'G59',
    says: /tunable marker was 60 kHz off/,
  },
  {
    name: 'sweep too fast',
    lie: 'tooFast',
    receiver: 'am-455k',
    acts: [set('slowSweep', false)],
    rule: 'G60',
    says: /too fast/,
  },
  { name: 'no picture', lie: 'noPicture', receiver: VALVE, acts: [lift('x')], rule: 'G13', says: /no picture/ },
];

/** A slug that moves the response: the last of all belongs to the discriminator. */
function slugOf({ adjusters }: Receiver, response?: string): Adjuster {
  return response === 's' ? adjusters.at(-1)! : adjusters[0]!;
}

/** One slug a turn and a half out, then put right as it should be. */
function rightly({ receiver: id, response }: Deception): {
  readonly setup: BenchSetup;
  readonly acts: readonly BenchEvent[];
} {
  const loaded = library.receivers.get(id)!;
  const first = response === undefined ? loaded.receiver.responses[0]! : responseById(loaded.receiver, response);
  const scenario = {
    ...SCENARIO,
    receiver: id,
    work: [first.id],
    start: { ...SCENARIO.start, slugs: { [slugOf(loaded.receiver, response).id]: 1.5 } },
    bench: { ...SCENARIO.bench, mainsHz: first.setUp.mainsHz, dialErrorHz: 60e3 },
  };
  const setup = { ...loaded, scenario };
  const acts: BenchEvent[] = [];
  const take = (more: readonly BenchEvent[]): void => void acts.push(...more);
  take(safetyActs(setup));
  take(connectionActs(setup));
  take(setUpActs(setup));
  // A small trace is made tall before anything is turned by it: its pips would be giants.
  take(yActs(setup, stateAfter(setup, acts, initialState(setup))));
  take(alignmentActs(setup, initialState(setup)));
  take(yActs(setup, stateAfter(setup, acts, initialState(setup))));
  return { setup, acts };
}

const timed = (acts: readonly BenchEvent[]): readonly TimedEvent[] =>
  acts.map((act, i) => ({ atMs: 4000 * i, ...act }));
const SIGN: BenchEvent = { type: 'signedOff' };

describe.each(DECEPTIONS.map((one) => [one.name, one] as const))('%s', (_, deception) => {
  const { setup, acts } = rightly(deception);
  const honest = grade(setup, timed([...acts, SIGN]));
  const deceived = [...acts, ...deception.acts];

  test('costs points at sign-off, under the rule and with the sentence that name it', () => {
    expect(honest.total).toBe(100);
    const report = grade(setup, timed([...deceived, SIGN]));
    expect(report.total).toBeLessThan(100);
    const line = report.lines.find((one) => one.rule === deception.rule)!;
    expect(line.points).toBeLessThan(line.max);
    expect(scoreLineSentence(en, line, setup.receiver)).toMatch(deception.says);
    // The receiver itself is as good as it was: its true curve is graded, not the picture.
    expect(report.blocks.response).toEqual(honest.blocks.response);
  });

  test('a slug turned by it is told with its code, and in the findings', () => {
    const { id, head } = slugOf(setup.receiver, deception.response);
    const tool: BenchEvent[] = deception.lie === 'steelIn' ? [] : [{ type: 'toolTaken', tool: head }];
    const run = timed([...deceived, ...tool, { type: 'slugTurned', slug: id, turns: 1.5 }, SIGN]);
    const blind = blindTurns(setup, run);
    expect(blind.map((one) => [one.lie, one.slug])).toEqual([[deception.lie, id]]);
    const report = grade(setup, run);
    const looks = findings(en, report, setup.receiver, blind).filter((one) => one.tone === 'lookAgain');
    expect(looks.some((one) => one.atSeconds === blind[0]!.atSeconds)).toBe(true);
  });

  test('the rightly set bench is called no liar', () => {
    const { id, head } = slugOf(setup.receiver, deception.response);
    const run = timed([...acts, { type: 'toolTaken', tool: head }, { type: 'slugTurned', slug: id, turns: 0.5 }, SIGN]);
    expect(blindTurns(setup, run)).toEqual([]);
  });
});

test('a slug turned under a bridge is told with its code, and in the findings', () => {
  const { setup, acts } = rightly(DECEPTIONS.find(({ lie, receiver }) => lie !== 'steelIn' && receiver === VALVE)!);
  const spares: BenchSetup = { ...setup, scenario: { ...setup.scenario, faults: [{ kind: 'looseEarth' }] } };
  const { id, head } = slugOf(setup.receiver);
  const run = timed([
    ...acts,
    { type: 'partBridged', element: 'C39' },
    { type: 'toolTaken', tool: head },
    { type: 'slugTurned', slug: id, turns: 1.5 },
    SIGN,
  ]);
  const blind = blindTurns(spares, run);
  expect(blind.map((one) => [one.lie, one.slug])).toEqual([['bridged', id]]);
  const looks = findings(en, grade(spares, run), spares.receiver, blind).filter((one) => one.tone === 'lookAgain');
  expect(looks.some((one) => one.atSeconds === blind[0]!.atSeconds)).toBe(true);
});

test('every lie but hum, which comes with the strap, is among them', () => {
  const told = new Set(DECEPTIONS.map((one) => one.lie));
  expect(LIES.filter((lie) => !told.has(lie))).toEqual(['bridged', 'hum']);
});
