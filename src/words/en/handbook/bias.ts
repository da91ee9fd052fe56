/** Handbook: bias and AGC. */
import type { HandbookPage } from '../../handbook.ts';

export const bias: HandbookPage = {
  id: 'bias',
  group: 'The trade',
  title: 'Bias and AGC',
  lead: 'A line in the set turns its [stages](stage) up and down by itself. While you align, somebody has to hold it still, and that is you.',
  figures: [
    {
      kind: 'bias',
      title: 'One stage, its grid and the coil before it',
      caption: 'Dotted: the stage nearly open. More [bias](bias), less gain, and the coil is no longer where it was.',
      controls: { bias: 'Bias' },
      readings: { gain: 'Gain, against the least bias', moved: 'The coil moved by' },
    },
  ],
  blocks: [
    {
      p: 'A controlled valve loses gain steadily with bias: the one in the figure about {dbPerVolt} for every volt. In the set the [detector](detector)’s own output makes that bias, so that a strong station and a weak one come out equally loud. Good for listening, bad for looking. Turn a [slug](slug) so that the curve grows, and the line takes the gain away again. The curve seems not to care. You can walk straight past the peak and see nothing but a change of shape.',
    },
    { h: 'Clamping' },
    {
      steps: [
        'Find the point that the [sheet](sheet) names for the bias supply, and the polarity. Valves want it negative; transistors may want either.',
        'Set the voltage of the sheet before you clip it on, not after.',
        'Meter the line. It must read what the supply reads. If it does not, something else is feeding it.',
        'Change the level of the source: the curve must now grow and shrink in step.',
      ],
    },
    {
      p: 'With the wrong sign a valve’s grid draws current. The curve sinks, spreads out and looks heavily damped, and all of that is your supply.',
    },
    { h: 'Why it must be the right voltage' },
    {
      p: 'A grid has an [input capacitance](miller), and it is larger the harder the stage works. It lies across the coil before it. So the bias tunes, a little: the figure’s coil moves by {biasShift} between {biasLow} and {biasHigh}. If the set has been aligned at one bias and is used at another, the curve tilts. The sheet’s voltage is a compromise for signals of ordinary strength. Take it.',
    },
    {
      p: 'This is also why a receiver may be right with a strong station and lean with a weak one. There is no slug for that.',
    },
    { h: 'And afterwards' },
    {
      p: 'Take the supply off and look again with the line free. Some change of height is right. A change of shape means that a stage was [overloaded](overload) or that the line carries the [sweep](sweep): a slow sweep gets into the [AGC](agc), which then fights it up and down the curve. Below a certain rate a swept AGC set cannot be looked at without a [clamp](clamp).',
    },
  ],
};
