/** Words of the card that asks what was seen during a proof. */
import type { Unreadable } from '../../bench/readable.ts';
import type { SeenAnswer } from '../../scenario/findingAnswer.ts';
import type { ProofId } from '../../scenario/proofId.ts';

interface Asked {
  /** which one, counted from the left */
  readonly pip: number | null;
  /** divisions from the middle, negative to its left; null where no place is asked about */
  readonly place: number | null;
}

interface AskedWords {
  readonly act: string;
  readonly figure: (asked: Asked) => string;
  /** of the figure, and how near it has to be */
  readonly unit: 'div' | 'dB' | 'V';
  readonly howNear: string;
}

type UnreadableOf = Readonly<Partial<Record<ProofId, Readonly<Partial<Record<Unreadable, string>>>>>>;

const ON_THE_TUBE = {
  unit: 'div',
  howNear: 'Read it off the tube: a quarter of a division is near enough.',
} as const;

/** In figures: the graticule is counted. */
function whereOn(place: number): string {
  if (place === 0) return 'at the middle line';
  const size = Math.abs(place);
  return `${size} ${size === 1 ? 'division' : 'divisions'} ${place < 0 ? 'left' : 'right'} of the middle`;
}

export const findingCardWords = {
  eyebrow: 'After the proof',
  title: 'What did you see?',
  proofs: {
    halveLevel: {
      ...ON_THE_TUBE,
      act: 'Level down by half, and back again. The bench saw the act; it did not look for you.',
      figure: ({ place }) =>
        place === null
          ? 'How tall the trace stood with the level down'
          : `How tall the trace stood above the base line with the level down, ${whereOn(place)}. Look once more if you need to`,
    },
    markersOffOn: {
      ...ON_THE_TUBE,
      act: 'The pips went off and came back. The bench saw the act; it did not look for you.',
      figure: ({ pip }) =>
        pip === null
          ? 'No pip stands on the trace: write 0'
          : `How tall the curve stands above the base line at pip ${pip}, counted from the left`,
    },
    touchEarth: {
      ...ON_THE_TUBE,
      act: 'The earth strap came off and went back. The bench saw the act; it did not look for you.',
      figure: () => 'How tall the hum was from edge to edge, strap off; 8 where it ran off the face',
    },
    swingPhase: {
      ...ON_THE_TUBE,
      act: 'The phasing was swung away and back. The bench saw the act; it did not look for you.',
      figure: () => 'How far the pip nearest to the middle slid, or stood from its twin on the retrace',
    },
    skirts: {
      ...ON_THE_TUBE,
      act: 'The picture was made larger, and put back. The bench saw the act; it did not look for you.',
      figure: ({ place }) =>
        place === null || place + 4 === 0
          ? 'How tall the large trace stood above the base line, four divisions left of the middle'
          : `How tall the large trace stood above the base line, ${whereOn(place)}. Look once more if you need to`,
    },
    bias: {
      act: 'The meter was on the bias line and came off. The bench saw the act; it did not look for you.',
      figure: () => 'How many volts the needle showed, whichever way it went',
      unit: 'V',
      howNear: 'Read it off the needle, on the finest range that holds it: half of a small division is near enough.',
    },
    liftCrystal: {
      ...ON_THE_TUBE,
      act: 'One crystal came out and went back in. The bench saw the act; it did not look for you.',
      figure: () => 'How tall the curve stands above the base line where the pip went; 0 where none did',
    },
    pipDown: {
      act: 'The picture was made larger, and put back. The bench saw the act; it did not look for you.',
      figure: ({ pip }) =>
        pip === null
          ? 'No pip stands where it could be read: write 0'
          : `How far down the curve is at pip ${pip}, counted from the left, under its top`,
      unit: 'dB',
      howNear:
        'From two heights: 20 dB for ten times, 6 dB for twice, and what the gain was turned by. As near as the heights can be read.',
    },
  } satisfies Readonly<Record<ProofId, AskedWords>> as Readonly<Record<ProofId, AskedWords>>,
  answers: {
    shrankWhole: 'The whole curve shrank.',
    topFlat: 'The top shrank less than the rest: it had been flattened.',
    hardly: 'The height hardly changed.',
    movedAlong: 'The hump moved along the scale.',
    parted: 'Trace and retrace parted, and met again.',
    slid: 'The trace slid sideways, and came back.',
    together: 'Nothing moved.',
    shrank: 'The trace shrank, and grew again.',
    pipsOnly: 'Only the pips went; the curve stayed.',
    curveBent: 'The curve itself changed its shape.',
    noPips: 'There were no pips to be seen.',
    curveShrank: 'The curve shrank.',
    humCame: 'Hum came onto the trace, and went again.',
    nothing: 'Nothing changed.',
    curveMoved: 'The curve moved along the scale.',
    leftHigher: 'The left skirt stood higher.',
    rightHigher: 'The right skirt stood higher.',
    alike: 'The two skirts stood alike.',
    offFace: 'It was off the face of the tube.',
    asSheet: 'The needle stood where the sheet has it.',
    under: 'It showed less than the sheet has.',
    over: 'It showed more than the sheet has.',
    otherSide: 'It went the other way.',
    pipLeft: 'One pip went, left of the middle line.',
    pipRight: 'One pip went, right of the middle line.',
    noPipWent: 'No pip went.',
    onTop: 'The pip stands near the top of the curve.',
    onSlope: 'It stands on the slope, less than 20 dB down.',
    atFoot: 'It stands at the foot, 20 dB down or more.',
  } satisfies Readonly<Record<SeenAnswer, string>>,
  asksAgain: 'That does not fit the picture. Do the act again if you need to, look, and answer once more.',
  nothingToRead: 'There was nothing to read',
  unreadable: {
    offTube: 'The whole trace has to stand on the face before the act. Bring it there, and do the act again.',
    small:
      'The trace was too small to read. Make it at least three divisions tall with the Y gain, and do the act again.',
    narrow: 'The sweep does not cover the band. Set it as the sheet has it, and do the act again.',
    turnedDown: 'The level went down by much more than half. Take it down by half, 6 dB.',
    tooLarge: 'It ran off the face because the picture was made so large. Two clicks of the Y gain will do.',
    noPip:
      'No pip on the trace to read by. Plug a crystal whose pip stands on the trace, give it height, and do the act again.',
    humOff: 'The hum ran off the face. Turn the Y gain down, and lift the strap again.',
    humSmall: 'The hum was too small to read. Turn the Y gain up, and lift the strap again.',
  } satisfies Readonly<Record<Unreadable, string>> as Readonly<Record<Unreadable, string>>,
  /** of one proof, where the general reason would not say what to do */
  unreadableOf: {
    markersOffOn: {
      noPip:
        'The act was over when the first pip came back, and not every crystal of the sheet was in then. Plug them all, turn Pip height to 0, look, and turn it back.',
    },
    liftCrystal: { noPip: 'No pip went from the trace. Lift a crystal whose pip stands on it, and plug it again.' },
  } satisfies UnreadableOf as UnreadableOf,
  humCounts:
    'It counts where the hum stands two divisions tall or more and inside the face. Set the Y gain for that, and do the act again. With the level right down the hum stands alone, and both its edges can be seen.',
  write: 'Write it down',
  again: 'Do the act again',
  notLooked: 'I did not look',
  fold: 'Put aside',
  unfold: (act: string): string => `What did you see? ${act}`,
} as const;
