/** Words of the card that asks what was seen during a proof. */
import type { SeenAnswer } from '../../scenario/findingAnswer.ts';
import type { ProofId } from '../../scenario/proofId.ts';

interface AskedWords {
  readonly act: string;
  /** `pip`: which one, counted from the left */
  readonly figure: (pip: number | null) => string;
}

export const findingCardWords = {
  eyebrow: 'After the proof',
  title: 'What did you see?',
  proofs: {
    halveLevel: {
      act: 'Level down by half, and back again. The bench saw the act; it did not look for you.',
      figure: () => 'How tall the trace stood with the level down',
    },
    markersOffOn: {
      act: 'The pips went off and came back. The bench saw the act; it did not look for you.',
      figure: (pip) =>
        pip === null
          ? 'No pip stands on the trace: write 0'
          : `How tall the curve stands above the base line at pip ${pip}, counted from the left`,
    },
    touchEarth: {
      act: 'The earth strap came off and went back. The bench saw the act; it did not look for you.',
      figure: () => 'How tall the hum was from edge to edge, strap off; 8 where it ran off the face',
    },
    swingPhase: {
      act: 'The phasing was swung away and back. The bench saw the act; it did not look for you.',
      figure: () => 'How far the pip nearest to the middle slid, or stood from its twin on the retrace',
    },
    skirts: {
      act: 'The picture was made larger, and put back. The bench saw the act; it did not look for you.',
      figure: () => 'How tall the large trace stood above the base line, four divisions left of the middle',
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
    curveBent: 'The curve changed its shape with them.',
    noPips: 'There were no pips to be seen.',
    curveShrank: 'The curve shrank.',
    humCame: 'Hum came onto the trace, and went again.',
    nothing: 'Nothing changed.',
    curveMoved: 'The curve moved along the scale.',
    leftHigher: 'The left skirt stood higher.',
    rightHigher: 'The right skirt stood higher.',
    alike: 'The two skirts stood alike.',
    offFace: 'A skirt was off the face of the tube.',
  } satisfies Readonly<Record<SeenAnswer, string>>,
  unit: 'div',
  howNear: 'Read it off the tube: a quarter of a division is near enough.',
  asksAgain: 'That does not fit the picture. Make the act again if you need to, look, and answer once more.',
  write: 'Write it down',
  again: 'Do the act again',
  notLooked: 'I did not look',
  fold: 'Put aside',
  unfold: (act: string): string => `What did you see? ${act.split('.')[0]}.`,
} as const;
