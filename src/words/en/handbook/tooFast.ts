/** Handbook: sweeping too fast. */
import type { HandbookPage } from '../../handbook.ts';

export const tooFast: HandbookPage = {
  id: 'too-fast',
  group: 'The bench',
  title: 'A sweep that is too fast',
  lead: 'A [tuned circuit](tuned) takes time to build up and time to die away. Rush past it and you see how slow it is, not how it is tuned.',
  figures: [
    {
      kind: 'fastSweep',
      title: 'Faster than the circuit',
      caption:
        'A circuit for {amIf}, [swept](sweep) upwards at mains rate. Dotted: the same circuit, given all the time it wants.',
      controls: { span: 'Span' },
      readings: { peak: 'Height of the peak', late: 'Peak too high by', width: 'Width as drawn' },
    },
  ],
  blocks: [
    {
      p: 'The narrower a circuit, the longer it rings. A vision [IF](if) is some megahertz wide and follows any sweep at mains rate. An AM IF is a few kilohertz wide, and the same hurry that did no harm up there spoils the picture completely.',
    },
    { h: 'What you see' },
    {
      list: [
        'The peak is low, and it is late: shifted in the direction in which the sweep runs. In the figure a circuit {amWidth} wide, with a [span](span) of {fastSpan}, peaks {fastLate} too high and reaches only {fastPeak} of its height.',
        'The curve is wider than it is, and its far side falls more slowly than its near side.',
        'Trace and [retrace](retrace) part, as [mirror](mirror) images. No [phasing](phasing) brings them together.',
        'Behind a very narrow circuit there may be a ripple on the far side, where the circuit rings against the sweep that has gone on.',
      ],
    },
    {
      p: 'For one circuit and a gentle hurry the rule is short: divide two by pi times the [bandwidth](bandwidth) in hertz, and you have how late the peak comes, in seconds. Multiply by the speed of the sweep in hertz a second and you have the shift. It goes with the span and with the rate, and the other way round with the bandwidth.',
    },
    { h: 'What to do' },
    {
      steps: [
        'Take the span down until it is only a few times the width of the curve.',
        'If the source has a slow sweep, use it: the tube then flickers, but it tells the truth.',
        'Compare trace and retrace with the [blanking](blanking) off. When they lie on each other, the sweep is slow enough. That test is free and never lies.',
      ],
    },
    {
      p: 'Do not turn [slugs](slug) to bring a late peak back to its [marker](marker). You would tune the set to the wrong place by just as much, and the mistake only shows when a station has to be received.',
    },
    {
      p: 'Wide circuits are spared. A [stage](stage) {wideWidth} wide with a span of {spanExample} is late by no more than {wideLate} at mains rate, which nobody will ever see.',
    },
  ],
};
