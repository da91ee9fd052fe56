/** Handbook: FM detectors and S-curves. */
import type { HandbookPage } from '../../handbook.ts';

export const sCurve: HandbookPage = {
  id: 's-curve',
  group: 'The trade',
  title: 'The S-curve',
  lead: 'An FM [detector](detector) answers to where you are and not to how loud. Two [slugs](slug), two jobs: one sets the zero, the other makes the halves alike.',
  figures: [
    {
      kind: 'sCurve',
      title: 'Two slugs of a discriminator',
      caption: 'Take the primary off, then the secondary. The red dot is the zero: see which of the two moves it.',
      controls: { primary: 'Primary off by', secondary: 'Secondary off by' },
      readings: { crossing: 'Zero at', apart: 'Peaks apart', heights: 'Taller half, over the other' },
    },
  ],
  blocks: [
    {
      p: 'Two circuits are [coupled](coupling), and two diodes see their voltages added one way and the other. At the middle frequency both get the same and the difference is nothing. To one side the first gets more, to the other the second. Plotted against frequency it is an S lying on its side.',
    },
    { h: 'What has to be right' },
    {
      list: [
        'The zero stands on the [marker](marker). That is the *secondary*.',
        'The two peaks are alike, and so are the bends towards them. That is the *primary*, mostly.',
        'Between them it is straight for as far as the station swings: {fmSwing} to either side for broadcasting. In the figure’s pair the peaks stand {sApart} apart.',
      ],
    },
    {
      p: 'With the primary off by {sOff} the zero does not move at all, but one half comes out taller by {sPrimaryHeights}. With the secondary off by the same the zero goes along by {sSecondaryShift}. So set the secondary for the zero, the primary until the halves are alike, and look at the zero again.',
    },
    { h: 'Setting the zero' },
    {
      p: 'On the [swept](sweep) picture the zero is where a straight line crosses another, so even a good eye misses by some kilohertz. Set it with a steady signal at the middle frequency and a meter or the tube on DC: turn the secondary through zero, from plus to minus, and back to nothing. If it will not go through zero but only comes near and turns back, that is a peak of something else.',
    },
    { h: 'Discriminator or ratio detector' },
    {
      p: 'A [discriminator](discriminator) also answers to loudness: twice the signal, twice the S. It needs a [limiter](limiter) before it, and you must drive that limiter as the [sheet](sheet) says, or the S has the shape of the [IF](if) in front of it. A [ratio detector](ratio) has a large capacitor across both diodes that holds their sum, so it ignores quick changes by itself. To your sweep it is slow: the picture needs a moment to settle after each change of level. Wait for it.',
    },
    {
      p: 'For that reason some sheets have you disconnect the capacitor, or hold it with a battery of a given voltage. Do as they say, and put it back.',
    },
  ],
};
