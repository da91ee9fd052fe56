/** Every remark of the technician has its sentence, in plain words and in made-up ones: tried on jobs that make him say them all. From memory: that he has reason to on those jobs. */
import { describe, expect, it } from 'vitest';
import { remarkSentence } from '../../src/describe/remark.ts';
import { demonstration } from '../../src/technician/atBench.ts';
import type { Remark } from '../../src/technician/person/remark.ts';
import { en } from '../../src/words/en/index.ts';
import { pseudoWords } from '../../src/words/pseudo.ts';
import { setupOf } from '../technician/oneScenario.ts';

const setup = setupOf('first-curve');
const { receiver } = setup;
const reads = demonstration(setup).said.find(({ remark }) => remark.kind === 'reads')!.remark;

const SAID: readonly (readonly [Remark, RegExp])[] = [
  [{ kind: 'safe', mains: true }, /isolating transformer/],
  [{ kind: 'safe', mains: false }, /no mains/],
  [{ kind: 'clips' }, /no contact/],
  [{ kind: 'leads', at: 'TP0' }, /in at TP0/],
  [{ kind: 'stage', at: 'TP0' }, /in at TP0/],
  [{ kind: 'bias', at: 'AGC', volts: -4.5 }, /AGC.*\u22124\.5 V/],
  [reads, /wanted/],
  [{ kind: 'turns', turns: [{ slug: 'T1B', turns: -0.25 }] }, /slug A \(T1B\) 1\/4 turn out/],
  [{ kind: 'back', turns: [{ slug: 'T1B', turns: 2 }] }, /Back: slug A \(T1B\) 2 turns in/],
  [{ kind: 'notch', slug: 'T1B', hz: 41.25e6, seenHz: 41.5e6 }, /near 41\.50 MHz.*at 41\.25 MHz/],
  [{ kind: 'notch', slug: 'T1B', hz: 41.25e6, seenHz: null }, /lowest trace at 41\.25 MHz/],
  [{ kind: 'beat', slug: 'T1B', offHz: -12_500 }, /12\.5 kHz below.*Slug A/],
  [{ kind: 'follows', slugs: ['T1T', 'T1B'] }, /slug B \(T1T\) and slug A \(T1B\)/],
  [{ kind: 'throughCoil', slug: 'T1T' }, /^Slug B/],
  [{ kind: 'line', at: 'AGC', volts: 1, wantedVolts: 2.5 }, /1 V.*2\.5 V/],
  [{ kind: 'part', part: 'R1' }, /R1/],
  [{ kind: 'proves', proof: 'halveLevel' }, /level down by half/],
  [{ kind: 'saw', proof: 'swingPhase', answer: 'slid', figure: 1.25 }, /slid sideways.*1\.25 div/],
  [{ kind: 'saw', proof: 'skirts', answer: 'offFace', figure: null }, /off the face/],
  [{ kind: 'saw', proof: 'skirts', answer: 'notLooked', figure: null }, /could not be seen/],
  ...(
    [
      'source',
      'fills',
      'faint',
      'phasing',
      'phased',
      'mirror',
      'watches',
      'creeps',
      'tries',
      'touchesUp',
      'fromStops',
      'checks',
      'pips',
      'diagnosis',
    ] as const
  ).map((kind) => [{ kind }, /[a-z]{3}/] as const),
];

describe('a remark', () => {
  it.each(SAID)('says %o', (remark, pattern) => {
    const text = remarkSentence(en, receiver, remark, true);
    expect(text).toMatch(pattern);
    expect(text).toMatch(/^[A-Z].*[.?]$/);
    expect(remarkSentence(pseudoWords(en), receiver, remark, true)).toContain('\u27e6');
  });

  it('does not say that all is well where it is not', () => {
    expect(remarkSentence(en, receiver, { kind: 'signs' }, true)).not.toBe(
      remarkSentence(en, receiver, { kind: 'signs' }, false),
    );
    expect(remarkSentence(en, receiver, { kind: 'signs' }, false)).toMatch(/not every line/);
  });
});
