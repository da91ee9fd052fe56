/** Every line of a score has its sentence: with what was measured, what was wanted, who is to blame and where it could have been seen. */

import { describe, expect, test } from 'vitest';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { findings } from '../../src/describe/findings.ts';
import { scoreLineSentence } from '../../src/describe/scoreLine.ts';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { blindTurns } from '../../src/grading/blindTurns.ts';
import { grade } from '../../src/grading/grade.ts';
import { parTold, type Report, type ScoreLine } from '../../src/grading/report.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { PAR_NOT_KNOWN, type Par } from '../../src/scenario/par.ts';
import { en } from '../../src/words/en/index.ts';
import { careLines } from '../grading/drafts.ts';
import { connectionActs, safetyActs, setUpActs, wholeJob } from '../session/acts.ts';
import { canSetup, stripSetup } from '../session/setups.ts';

const timed = (acts: readonly BenchEvent[]): TimedEvent[] => acts.map((act, i) => ({ atMs: i * 1000, ...act }));
const strip = stripSetup();
const { receiver } = strip;

const LINE: ScoreLine = {
  ...{
    id: 'G3:point:41250000',
    rule: 'G3',
    block: 'response',
    points: 0,
    max: 3,
    measured: 14.7,
    low: 3.5,
    high: 6.5,
    unit: 'percent',
  },
  ...{ hz: 41.25e6, toHz: null, subject: null, atSeconds: null, cause: { slug: 'A3', turns: 0.62 } },
};
const sentence = (change: Partial<ScoreLine>): string => scoreLineSentence(en, { ...LINE, ...change }, receiver);

describe('what is outside by less than is written', () => {
  const gain = { rule: 'G11', id: 'G11:gain', unit: 'db', low: -1.5, high: null, cause: null } as const;

  test('is never written like its own limit', () => {
    expect(sentence({ ...gain, measured: -1.52 })).toContain(
      'is a hair over 1.5 dB below the sheet; 1.5 dB is allowed',
    );
    expect(sentence({ ...gain, measured: -1.6 })).toContain('is 1.6 dB below the sheet; 1.5 dB is allowed');
    const tilt = { rule: 'G5', id: 'G5:tilt', unit: 'db', low: -1, high: 1, toHz: 45e6, cause: null } as const;
    expect(sentence({ ...tilt, measured: -1.01 })).toContain('is higher by a hair over 1 dB, wanted within 1 dB');
  });

  test('and what is just inside is written as it is', () => {
    expect(sentence({ ...gain, measured: -1.48, points: 3 })).not.toContain('hair');
  });
});

describe('what a failed part does by itself', () => {
  const said = (symptom: NonNullable<ScoreLine['symptom']>): string =>
    scoreLineSentence(
      en,
      {
        ...LINE,
        rule: 'G62',
        id: 'G62:Rp1',
        subject: 'Rp1',
        measured: 1,
        low: 1,
        high: null,
        unit: 'yes',
        cause: null,
        symptom,
      },
      receiver,
    );
  const curve = {
    kind: 'curve',
    response: 'if',
    peakDb: 0.1,
    peakShiftHz: 1000,
    widthRatio: 1.01,
    worstDb: 0.3,
    worstHz: 44e6,
  } as const;

  test('a curve: level, width, top and the worst place, each only where it is worth a word', () => {
    expect(
      said({ ...curve, peakDb: 4.02, widthRatio: 0.67, peakShiftHz: -463e3, worstDb: 18.2, worstHz: 47.25e6 }),
    ).toBe(
      'Rp1 had failed, and you found it. By itself, with every slug in its place, it leaves the curve 4 dB higher, 33% narrower, with its top 463 kHz down in frequency and 18.2 dB too high at 47.25 MHz.',
    );
    expect(said({ ...curve, peakDb: -9.1, worstDb: -9.1 })).toContain('it leaves the curve 9.1 dB lower.');
    expect(said({ ...curve, widthRatio: 1.25 })).toContain('it leaves the curve 25% wider.');
    expect(said(curve)).toContain('it leaves the curve almost unchanged.');
  });

  test('an S-curve, a diode, a line, a core', () => {
    const s = { kind: 'sCurve', response: 'if', heightDb: -3, zeroShiftHz: 12e3 } as const;
    expect(said(s)).toContain('3 dB lower and crossing zero 12 kHz high.');
    expect(said({ ...s, zeroShiftHz: null })).toContain('3 dB lower and without a zero.');
    expect(said({ kind: 'diode', reversed: true, detectedRatio: 1 })).toContain('upside down.');
    expect(said({ kind: 'diode', reversed: false, detectedRatio: 0.19 })).toContain(
      'leaves the detector 19% of its volts.',
    );
    expect(said({ kind: 'line', volts: -0.24, soundVolts: -1 })).toContain('at \u22120.24 V instead of \u22121 V.');
    expect(said({ kind: 'core' })).toContain('Its screw turns');
  });
});

describe('response lines', () => {
  test('a carrier too high because its trap stands wrong: figures, slug with letter and turns, side of the pip', () => {
    expect(sentence({})).toBe(
      '41.25 MHz sits 7.1 dB too high: 15%, wanted 3.5 to 6.5%; trap F (A3) is 5/8 turn too far in, and on the tube its notch lies left of the pip.',
    );
    expect(sentence({ cause: { slug: 'A3', turns: -1.4 } })).toContain(
      '1 3/8 turns too far out, and on the tube its notch lies right of the pip.',
    );
  });

  test('off by less than can be said in decibels is a hair', () => {
    expect(sentence({ measured: 6.52 })).toContain('41.25 MHz sits a hair too high: 6.5%, wanted 3.5 to 6.5%');
  });

  test('with low frequency at the right, the notch is on the other side', () => {
    const main = mainResponse(receiver);
    const turned = { ...main, setUp: { ...main.setUp, lowFrequencyAtLeft: false } };
    const mirrored = { ...receiver, responses: [turned] };
    expect(scoreLineSentence(en, LINE, mirrored)).toContain('its notch lies right of the pip');
  });

  test('a level too low, for a slug that is no trap', () => {
    const low = {
      id: 'G3:point:44000000',
      measured: 70,
      low: 94,
      high: 106,
      hz: 44e6,
      cause: { slug: 'T4', turns: -1 },
    };
    expect(sentence(low)).toBe(
      '44.00 MHz sits 2.6 dB too low: 70%, wanted 94 to 106%; slug G (T4) is 1 turn too far out, and on the tube pip 44.00 MHz shows it against the top of the curve.',
    );
  });

  test('where the box has no crystal, the tunable marker would have shown it', () => {
    expect(sentence({ hz: 43.5e6 })).toContain('on the tube the tunable marker at 43.50 MHz shows it');
  });

  test('a hair is called so, and without a culprit none is named', () => {
    expect(sentence({ cause: { slug: 'A3', turns: 0.011 } })).toContain('trap F (A3) is a hair too far in');
    expect(sentence({ cause: null })).toBe(
      '41.25 MHz sits 7.1 dB too high: 15%, wanted 3.5 to 6.5%; on the tube pip 41.25 MHz shows it against the top of the curve.',
    );
  });

  test.each<[string, Partial<ScoreLine>, string]>([
    [
      'G4',
      { id: 'G4:window:1-2', unit: 'db', measured: 2.04, low: null, high: 1, hz: 42.9e6, toHz: 44.7e6 },
      'The top is uneven from 42.90 MHz to 44.70 MHz: 2 dB, wanted 1 dB at most',
    ],
    [
      'G5',
      { id: 'G5:tilt:1-2', unit: 'db', measured: -1.9, low: -0.8, high: 0.8, hz: 43e6, toHz: 44.5e6 },
      'of 43.00 MHz and 44.50 MHz, 44.50 MHz is higher by 1.9 dB, wanted within 0.8 dB',
    ],
    [
      'G6',
      { id: 'G6:trap:1', unit: 'db', measured: -33.8, low: null, high: -40, hz: 47.25e6 },
      '47.25 MHz comes through 6.2 dB too strong: \u221233.8 dB, wanted \u221240 dB at most',
    ],
    [
      'G7',
      { id: 'G7:notch:1', unit: 'hz', measured: -180_000, low: -120e3, high: 120e3, hz: 47.25e6 },
      'The notch for 47.25 MHz lies 180 kHz low; 120 kHz is allowed',
    ],
    [
      'G8',
      { id: 'G8:skirt:1-2', measured: 4.1, low: null, high: 3, hz: 47.6e6, toHz: 52e6 },
      'From 47.60 MHz to 52.00 MHz the skirt reaches 4.1%, wanted 3% at most',
    ],
    [
      'G9',
      { id: 'G9:bandwidth:-3', unit: 'hz', measured: 332_000, low: 270e3, high: 320e3, hz: 10.5e6, toHz: 10.9e6 },
      'At \u22123 dB the curve is 12 kHz too wide: 332 kHz, wanted 270 to 320 kHz',
    ],
    [
      'G9',
      { id: 'G9:bandwidth:-6', unit: 'hz', measured: 200_000, low: 270e3, high: 320e3, hz: 10.5e6, toHz: 10.9e6 },
      'At \u22126 dB the curve is 70 kHz too narrow',
    ],
    [
      'G10',
      { id: 'G10:centre:-3', unit: 'hz', measured: 31_000, low: -20e3, high: 20e3, hz: 10.7e6 },
      'The middle of the curve lies 31 kHz above 10.70 MHz; 20 kHz is allowed',
    ],
    [
      'G11',
      { id: 'G11:gain:1', unit: 'db', measured: -5.2, low: -4, high: null, hz: 44e6 },
      'The gain at 44.00 MHz is 5.2 dB below the sheet; 4 dB is allowed',
    ],
  ])('%s', (rule, change, wanted) => {
    const said = sentence({ rule, ...change });
    expect(said).toContain(wanted);
    expect(said).toContain('on the tube');
    expect(said).toContain('trap F (A3)');
  });
});

/** Runs that between them make every line good and bad. */
const REPORTS: readonly (readonly [string, Report])[] = [
  ['all done', grade(strip, timed(wholeJob(strip)))],
  ['never begun', grade(strip, [])],
  ['set up only', grade(strip, timed([...safetyActs(strip), ...connectionActs(strip), ...setUpActs(strip)]))],
  ['live chassis', grade(strip, timed([{ type: 'cautionsAcknowledged' }, { type: 'powerSwitched', on: true }]))],
  ['overload and fat pips', grade(strip, timed(spoilt()))],
  ['the can', grade(canSetup(), [])],
];

function spoilt(): readonly BenchEvent[] {
  return [
    ...safetyActs(strip),
    ...connectionActs(strip),
    ...setUpActs(strip),
    { type: 'toolTaken', tool: 'steel' },
    { type: 'slugTurned', slug: 'A1', turns: 1.5 },
    { type: 'controlSet', control: 'levelDb', value: -10 },
    { type: 'controlSet', control: 'pipHeightDiv', value: 3 },
    { type: 'controlSet', control: 'yVoltsPerDiv', value: 5 },
    { type: 'controlSet', control: 'phasingDegrees', value: 20 },
    { type: 'controlSet', control: 'mirror', value: true },
    { type: 'controlSet', control: 'blanking', value: false },
    { type: 'controlSet', control: 'markerRoute', value: 'through' },
    { type: 'controlSet', control: 'spanHz', value: 3e6 },
    { type: 'controlSet', control: 'biasAVolts', value: 6 },
    { type: 'leadRemoved', lead: 'earth' },
    { type: 'slugTurned', slug: 'T1', turns: 2 },
  ];
}

describe('any line of any report', () => {
  const lines = REPORTS.flatMap(([, report]) => report.lines);

  test('has a whole sentence, fit to be read', () => {
    for (const line of lines) {
      const said = scoreLineSentence(
        en,
        line,
        line.id.includes(':1') && line.hz !== null && line.hz < 12e6 ? canSetup().receiver : receiver,
      );
      expect(said, line.id).toMatch(/^[A-Z0-9\u2212].*\.$/);
      expect(said, line.id).not.toMatch(/undefined|NaN|null|Infinity| {2}|-\d|\.\.|;;/);
      expect(said.length, said).toBeLessThan(260);
    }
  });

  test('each kind of mishap is told with its time, how often, and the slug', () => {
    const faulty = { ...strip.scenario, faults: [{ kind: 'screwedIn' } as const] };
    const say = (kind: Parameters<typeof careLines>[0][number]['kind'], rule: string): string => {
      const incidents = [61, 130].map((atSeconds) => ({ kind, atSeconds, subject: 'A3' }));
      const draft = careLines(incidents, faulty).find((line) => line.rule === rule)!;
      return scoreLineSentence(en, { ...LINE, ...draft, hz: null, cause: null } as ScoreLine, receiver);
    };
    expect(say('forcedStop', 'G31')).toBe('A slug was forced past its stop twice, first trap F (A3) at 01:01.');
    expect(say('crackedSlug', 'G32')).toBe('Trap F (A3) cracked at 01:01. The next one may be the last of its kind.');
    expect(say('steelTool', 'G30')).toContain('twice, first in trap F (A3) at 01:01');
    expect(say('wrongPowerOrder', 'G28')).toContain('twice, first at 01:01');
    expect(say('beforeEarth', 'G69')).toContain('before the earth strap, twice, first at 01:01');
    expect(say('hotTouch', 'G29')).toContain('At 01:01');
    expect(say('goodPartReplaced', 'G33')).toContain('twice, first at 01:01');
  });
});

describe('findings', () => {
  test.each(REPORTS)('%s: three to five, praise first, advice last', (_, report) => {
    const found = findings(en, report, receiver);
    expect(found.length).toBeGreaterThanOrEqual(3);
    expect(found.length).toBeLessThanOrEqual(5);
    expect(found[0]!.tone).toBe('wellDone');
    expect(found.at(-1)!.tone).toBe('next');
    expect(new Set(found.map((finding) => finding.text)).size).toBe(found.length);
  });

  test('a breach of safety comes before anything else to look at, with its time', () => {
    const [, report] = REPORTS.find(([name]) => name === 'live chassis')!;
    const look = findings(en, report, receiver).find((finding) => finding.tone === 'lookAgain')!;
    expect(look.atSeconds).toBe(1);
    expect(look.text).toContain('At 00:01 power or a lead was put on a live chassis');
    expect(look.text).toContain('40 at most');
  });

  test('a turn by a lying picture is told with its time, its slug and what lied', () => {
    const events = timed(spoilt());
    const blind = blindTurns(strip, events);
    const at = events.findIndex((event) => event.type === 'slugTurned' && event.slug === 'T1');
    const look = findings(en, grade(strip, events), receiver, blind).find((finding) => finding.atSeconds === at);
    expect(look?.tone).toBe('lookAgain');
    expect(look?.text).toContain('slug A (T1) was turned 2 turns');
  });

  test('nothing is praised that was not done', () => {
    const [, report] = REPORTS.find(([name]) => name === 'never begun')!;
    const text = findings(en, report, receiver)
      .map((finding) => finding.text)
      .join(' ');
    expect(text).not.toMatch(/proved|told the truth|with care/);
  });
});

describe('a job that nobody has certified', () => {
  // Common practice, no source: what stands for a par is told to nobody.
  const can = canSetup();
  const events = timed([{ type: 'cautionsAcknowledged' }]);
  const told = (par: Par): string => {
    const report = grade({ ...can, scenario: { ...can.scenario, par } }, events);
    const lines = report.lines.map((line) => scoreLineSentence(en, line, can.receiver));
    const known = parTold(report);
    return [
      ...lines,
      ...findings(en, report, can.receiver).map(({ text }) => text),
      en.report.turns(report.turns, known?.turns ?? null),
      en.report.time(report.seconds, known?.seconds ?? null),
    ].join('\n');
  };

  test('is told no par, in no line', () => {
    expect(told(PAR_NOT_KNOWN)).not.toMatch(/\bpar\b/);
    expect(told(PAR_NOT_KNOWN)).toMatch(/this job had no certificate when it was opened, so up to 40 cost nothing/);
    expect(told({ turns: 40, seconds: 3600 }).match(/, par /g)).toHaveLength(4);
  });
});
