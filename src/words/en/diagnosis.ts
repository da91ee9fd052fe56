/** Words of the diagnosis: what the learner says was wrong, asked at signing and told in the report. */
import type { SetUpMatter } from '../../scenario/diagnosis.ts';

export const diagnosisWords = {
  title: 'What was wrong with this set as you found it?',
  intro: 'Say what you found, not what you did: every slug that was far out, every part that had failed.',
  slugs: 'Slugs that were far out',
  parts: 'Parts that had failed',
  setUp: 'The bench and its leads',
  matters: {
    earth: 'Earth strap: bad contact',
    rf: 'RF lead: bad contact or wrong place',
    y: 'Y lead: wrong place or tip',
    bias: 'Bias: not as the sheet has it',
    level: 'Level: too high or too low',
    sweep: 'Sweep: wrong middle or width',
    phasing: 'Phasing: trace and retrace apart',
    markers: 'Markers: in the way, or missing',
  } satisfies Readonly<Record<SetUpMatter, string>>,
  nothing: 'Nothing in the set: leave it alone',
  unsaid: 'You have not yet said what was wrong. A run that is signed like this is not proved.',
  /** above the choices that are made */
  chosen: (count: number): string =>
    count === 1 ? 'One thing is named as wrong.' : `${count} things are named as wrong.`,
  report: {
    title: 'What was wrong',
    said: 'You said',
    saidNothing: 'You did not say.',
    leftAlone: 'Nothing in the set was wrong.',
    was: 'It was',
    good: 'Nothing: the set was good, and was to be left alone.',
    part: (part: string): string => `${part} had failed`,
    contact: { earth: 'the earth strap made no contact', rf: 'the RF lead made no contact' },
    slug: (slug: string, turns: string, way: 'in' | 'out'): string => `${slug} stood ${turns} too far ${way}`,
    right: 'You knew why.',
    unnamed: (what: string): string => `Not named: ${what}.`,
    blamed: (what: string): string => `Named, though it was good: ${what}.`,
  },
} as const;
