/** What a person says while at work: what is seen on the tube, and why a hand goes where it goes. Data without words; nothing of the set stands in it that has not been seen. */
import type { BenchEvent } from '../../bench/benchEvent.ts';
import type { JudgedDemand } from './sheet.ts';

type Finding = Extract<BenchEvent, { type: 'findingStated' }>;

/** Turns that are about to be made, positive = core in. */
export interface MeantTurn {
  readonly slug: string;
  readonly turns: number;
}

export type Remark =
  | { readonly kind: 'safe'; readonly mains: boolean }
  /** a clip that somebody else put on is put on afresh */
  | { readonly kind: 'clips' }
  | { readonly kind: 'leads'; readonly at: string }
  | { readonly kind: 'source' }
  | { readonly kind: 'fills' }
  | { readonly kind: 'faint' }
  | { readonly kind: 'phasing' }
  | { readonly kind: 'phased' }
  | { readonly kind: 'mirror' }
  | { readonly kind: 'watches' }
  | { readonly kind: 'creeps' }
  | { readonly kind: 'bias'; readonly at: string; readonly volts: number }
  /** what a demand of the sheet reads, the one that is farthest off */
  | { readonly kind: 'reads'; readonly demand: JudgedDemand; readonly standing: 'outside' | 'close' | 'inside' }
  /** which turns the notebook asks for */
  | { readonly kind: 'turns'; readonly turns: readonly MeantTurn[] }
  /** what was turned last did no good */
  | { readonly kind: 'back'; readonly turns: readonly MeantTurn[] }
  /** the notebook does not hold: each slug is tried a little */
  | { readonly kind: 'tries' }
  | { readonly kind: 'stage'; readonly at: string }
  | { readonly kind: 'notch'; readonly slug: string; readonly hz: number; readonly seenHz: number | null }
  | { readonly kind: 'beat'; readonly slug: string; readonly offHz: number }
  | { readonly kind: 'follows'; readonly slugs: readonly string[] }
  | { readonly kind: 'touchesUp' }
  | { readonly kind: 'fromStops' }
  | { readonly kind: 'throughCoil'; readonly slug: string }
  | { readonly kind: 'line'; readonly at: string; readonly volts: number; readonly wantedVolts: number }
  | { readonly kind: 'part'; readonly part: string }
  | { readonly kind: 'checks' }
  | { readonly kind: 'pips' }
  | { readonly kind: 'proves'; readonly proof: Finding['proof'] }
  | {
      readonly kind: 'saw';
      readonly proof: Finding['proof'];
      readonly answer: Finding['answer'];
      readonly figure: number | null;
    }
  | { readonly kind: 'diagnosis' }
  | { readonly kind: 'signs' };
