/** Handbook: overload. */
import type { HandbookPage } from '../../handbook.ts';

export const overload: HandbookPage = {
  id: 'overload',
  group: 'The trade',
  title: 'Too much sweep',
  lead: 'The best-looking curve on the bench is often an [overloaded](overload) one: flat on top, steep at the sides, and not there.',
  figures: [
    {
      kind: 'overload',
      title: 'A stage that gives out',
      caption:
        'Dotted: the same [stage](stage) with a small signal. Both are drawn to the same height, as you would with the Y gain.',
      controls: { drive: 'Peak, over what the stage can take' },
      readings: { compression: 'Held back at the top', width: 'Width as drawn' },
    },
  ],
  blocks: [
    {
      p: 'A stage can only deliver so much. Drive it harder and the peaks are held back while the skirts still grow. The curve fills out from below: the top goes flat, the dip between two humps disappears, the sides get steep. All that you have been trying to reach with the [slugs](slug) arrives at once, free of charge.',
    },
    {
      p: 'In the figure a peak {overDrive} over what the stage can take is held back by {overHeld}, and a circuit that is {wideTrue} wide is drawn {overWide} wide.',
    },
    { h: 'The one test' },
    {
      p: 'Turn the source down by {sixDb} and turn the Y gain up by two. In a healthy set the top stays as it was; only the foot of the curve sinks, by up to a tenth of the height, for a weak diode draws [a square](#detectors). In an overloaded one the top changes: it rounds off, the dip comes back. Then go down again until nothing changes any more, and one step further. Do this at the start, and again at the end, for a set that has come into line has more gain than the one you began with.',
    },
    { h: 'Where it happens' },
    {
      list: [
        'In the last stage, as a rule, since it has the largest signal. Then the [detector](detector) still looks well fed.',
        'In the first, if you inject at the antenna with a source meant for the last coil.',
        'In a [limiter](limiter), on purpose. Look at the [S-curve](sCurve) behind a limiter with the limiter working, and at the [IF](if) before it with the limiter starved.',
        'In your own [marker](marker), sent through the set with too much zeal.',
        'In the Y amplifier of the tube: the curve is cut off straight at one height, wherever you shift it.',
      ],
    },
    {
      p: 'An [AGC line](agc) left free hides an overload well, for it keeps the height steady while the shape goes. [Clamp](clamp) first, then test.',
    },
    { h: 'The opposite' },
    {
      p: 'Too little is not safe either. A starved diode draws [a square](#detectors), and hum and noise sit on the trace. There is a range of levels in which nothing changes but the size. Find its two ends, stay in the middle, and write the level down: next time you start there.',
    },
  ],
};
