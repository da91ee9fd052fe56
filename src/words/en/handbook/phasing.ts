/** Handbook: phasing and blanking. */
import type { HandbookPage } from '../../handbook.ts';

export const phasing: HandbookPage = {
  id: 'phasing',
  group: 'The bench',
  title: 'Phasing and blanking',
  lead: 'The [sweep](sweep) goes up and comes back. If the tube does not keep step, there are two curves, and neither of them stands where it should.',
  figures: [
    {
      kind: 'phasing',
      title: 'Out of step',
      caption:
        'Bring the two curves together with the [phasing](phasing), then blank the way back. Blank it first, and see how sure you still are.',
      controls: { phase: 'Phase error', blanking: ['Retrace', 'drawn', 'blanked'] },
      readings: { apart: 'Peaks apart' },
    },
  ],
  blocks: [
    {
      p: 'Frequency and sideways motion come from the same mains, but by different roads. A transformer here, a capacitor there, and the spot arrives in the middle of the glass a little before or after the source is in the middle of its band. On the way up everything is shifted to one side, on the way back to the other.',
    },
    {
      p: 'It takes very little. With a [span](span) of {spanExample}, an error of {smallPhase} puts the two traces {splitExample} apart in the middle. That is no small part of the whole width of an [IF strip](if).',
    },
    { h: 'How to set it' },
    {
      steps: [
        'Leave the [retrace](retrace) on. You need both curves to see that they differ.',
        'Look at the steep parts, not at the top: a flat top hides the error.',
        'Turn the phasing knob until the [slopes](slope) lie on each other, then a little past it and back, to be sure of the place.',
        'Only now switch the [blanking](blanking) on.',
      ],
    },
    {
      p: 'The order matters. Blanked, an unphased picture looks just as tidy as a phased one. The [pips](pip) have moved along with it, so the [markers](marker) still tell the truth; the divisions of the glass no longer do.',
    },
    { h: 'What blanking is for' },
    {
      p: 'With the retrace blanked the source is silent on the way back, and the spot draws a straight line: the [base line](baseLine). From there levels are counted. Without it you guess where zero is, and half of an unknown height is an unknown height.',
    },
    {
      p: 'Do not confuse blanking with a cure. If the two curves refuse to fall on each other whatever the knob does, they are different curves. Then the sweep is [too fast for a narrow circuit](#too-fast), which rings on after the signal has passed, and late is to the right on the way up and to the left on the way back. Less span or a slower sweep brings them together; the phasing knob cannot.',
    },
  ],
};
