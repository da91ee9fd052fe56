/**
 * The cautions that must be read before a set is touched: those that hold for every set on the mains, in the words of the page, and what its file says besides.
 * A file that says one of the standing cautions itself says it in the sentence below; such a sentence is known and not said twice. Pure.
 */
import type { Receiver } from '../receiver/receiver.ts';
import type { Words } from '../words/words.ts';
import { langOf } from './langOf.ts';

type Mains = NonNullable<Receiver['mains']>;
type Standing = keyof Words['dialogs']['standingCautions'];

interface StandingRow {
  /** the sentence that receiver files have for it; part of their fingerprint, so it never changes */
  readonly inFile: (mains: Mains) => string;
  readonly needed: (mains: Mains) => boolean;
}

const ROWS: Readonly<Record<Standing, StandingRow>> = {
  isolate: {
    inFile: () =>
      'The chassis may be live: one side of the mains can reach it. Work only from the isolating transformer.',
    needed: ({ hotChassis }) => hotChassis,
  },
  discharge: {
    inFile: ({ highTensionVolts }) =>
      `The fenced corner holds ${highTensionVolts} V and stays charged after switching off. Discharge the capacitors, then check with a meter.`,
    needed: () => true,
  },
  pictureTube: {
    inFile: () =>
      'The picture tube and its supply keep a lethal charge, and the tube can implode. High-voltage regulators can give off X-rays.',
    needed: ({ pictureTube }) => pictureTube,
  },
  oneHand: {
    inFile: () => 'One hand, insulated tools, no jewellery, somebody within call.',
    needed: () => true,
  },
  practice: {
    inFile: () =>
      'This bench is for practice. Work on real sets follows local codes, by or with people qualified to do it.',
    needed: () => true,
  },
};

export function isStandingCaution({ mains }: Receiver, caution: string): boolean {
  return mains !== null && Object.values(ROWS).some(({ inFile }) => inFile(mains) === caution);
}

export interface Caution {
  readonly text: string;
  /** undefined: that of the page */
  readonly lang: string | undefined;
}

/** The standing cautions first, then what the receiver's file adds. */
export function cautionsOf(words: Words, receiver: Receiver): readonly Caution[] {
  const { mains, cautions } = receiver;
  const lang = langOf(words, receiver);
  const own = cautions.filter((line) => !isStandingCaution(receiver, line)).map((text) => ({ text, lang }));
  if (mains === null) return own;
  const codes = Object.keys(ROWS) as Standing[];
  const standing = codes.filter((code) => ROWS[code].needed(mains) || cautions.includes(ROWS[code].inFile(mains)));
  const say = words.dialogs.standingCautions;
  return [...standing.map((code) => ({ text: say[code](mains.highTensionVolts), lang: undefined })), ...own];
}
