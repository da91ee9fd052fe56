/** The words of the rules of the score, as types: a row of grading/rules/ without its words, and words without their row, do not compile. */
import type { Rule } from '../grading/rules/rule.ts';
import type { ShippedRule } from '../grading/rules/rules.ts';

/** What there is to be said of a line of the score: figures as they are written, things as they are called. Each sentence takes what it needs. */
export interface Said {
  /** the figure with its unit and its sign */
  readonly at: string;
  /** the same without its sign */
  readonly size: string;
  /** the figure's sign */
  readonly sign: -1 | 0 | 1;
  /** whether there is a figure at all, or only a yes or no */
  readonly hasFigure: boolean;
  /** how many times, or how many */
  readonly count: number;
  /** what was wanted: `3.5 to 6.5%` */
  readonly want: string;
  /** the limit by itself, without its sign; of turns without the word */
  readonly limit: string;
  /** how far beyond the limit; of a level in decibels */
  readonly off: string;
  /** the high limit was passed, not the low one */
  readonly tooHigh: boolean;
  /** the frequency that it is about, and the other end of a stretch or a pair */
  readonly f: string;
  readonly toF: string;
  /** the level at which a width is taken */
  readonly level: string;
  /** the part, line or proof concerned, by its own name */
  readonly subject: string;
  /** the slug concerned */
  readonly slug: string;
  /** when it happened */
  readonly when: string;
  /** the box holds a crystal for that frequency */
  readonly hasCrystal: boolean;
  /** false: `limit` only stands in the place of par */
  readonly parKnown: boolean;
  /** on which side of its mark the tube shows it */
  readonly tubeSide: 'left' | 'right';
  /** the same for the notch of the trap that is to blame; null = it is no trap of that frequency */
  readonly notchSide: 'left' | 'right' | null;
}

export type RuleSentence = string | ((said: Said) => string);

export interface LineWords {
  /** the rule's title, as in docs/grading.md */
  readonly label: string;
  /** whole sentences: inside the limits, and outside with where it could have been seen */
  readonly good: RuleSentence;
  readonly bad: RuleSentence;
  /** what to try next time */
  readonly advice: string;
}

/** Of a demand of the sheet: without the full stop, for the slug or the part to blame may follow. */
export interface DemandWords extends LineWords {
  /** where it could have been seen; it goes on from "on the tube" */
  readonly seen: RuleSentence;
  /** what to look at, before anything is said of it, where `seen` would speak of what is not named yet; it goes on from "Look at the tube:" */
  readonly look?: RuleSentence;
}

export interface PictureWords extends LineWords {
  /** what could not be judged without a picture, inside a sentence */
  readonly name: string;
}

export interface CapWords {
  readonly label: string;
  /** the breach, inside a sentence */
  readonly name: string;
  readonly capped: (limit: number, at: string) => string;
}

type WordsFor<R extends Rule> = R extends { readonly breach: unknown }
  ? CapWords
  : R extends { readonly about: 'demand' }
    ? DemandWords
    : R extends { readonly needsPicture: true }
      ? PictureWords
      : LineWords;

/** The words of these rows, by their numbers. */
export type WordsOf<Rules extends Rule> = { readonly [R in Rules as R['number']]: WordsFor<R> };

export type RuleWords = WordsOf<ShippedRule>;
