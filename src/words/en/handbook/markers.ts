/** Handbook: markers added, and through the set. */
import type { HandbookPage } from '../../handbook.ts';

export const markers: HandbookPage = {
  id: 'markers',
  group: 'The bench',
  title: 'Markers: added, or through the set',
  lead: 'The curve has no numbers on it. A [marker](marker) puts one there. How it gets onto the curve decides what you can believe of it.',
  figures: [
    {
      kind: 'markers',
      title: 'The same marker, two ways',
      caption:
        'Take the marker down into the [trap](trap) on the left. Added, its [pip](pip) is as tall there as anywhere. Sent through the set, it goes where the signal goes.',
      controls: { marker: 'Marker', way: ['Way of the marker', 'added', 'through the set'] },
      readings: { pip: 'Pip, of its full height', base: 'Base line lifted by' },
    },
  ],
  blocks: [
    {
      p: 'A marker is a second signal of a frequency that you know: a [crystal](crystal), or the [tunable marker](tunable) with its dial. Where the [sweep](sweep) passes it, the two beat against each other. The beat is quick at first, slows to nothing as the sweep goes through, and quickens again. Filtered and laid on the curve it is a little burst: the pip. Its middle is the frequency.',
    },
    { h: 'Added' },
    {
      p: 'The good way is to make the beat outside the set, from a taste of the sweep, and to add the pip to the picture behind the [detector](detector). The set never hears of it. The pip has the same size everywhere, on the top, on the [slopes](slope), and at the bottom of a trap, which is where you need it most. It cannot change the curve.',
    },
    { h: 'Through the set' },
    {
      p: 'The old way is to send the marker in at the same place as the sweep, loosely [coupled](coupling). Then the set amplifies it like any other signal. On the slopes the pip is smaller, in a trap it is gone, and that is precisely the place you wanted to mark.',
    },
    {
      p: 'Worse, the marker is a [carrier](carrier), and a strong one fills the curve. The [base line](baseLine) lifts, the skirts are drawn too high, and a [stage](stage) may be driven into [overload](overload) by a signal that has nothing to do with the sweep. On this bench a pip height of one division stands for {throughShare} of the sweep’s own level. If you must use it, keep it so small that you can only just find it, and take it away to see whether the curve moves.',
    },
    { h: 'Reading a pip' },
    {
      list: [
        'Read its middle, not its edge. A tall pip hides the curve under it: make it smaller until it only just shows.',
        'A crystal is right, a dial is nearly right. Check the tunable marker against the two crystals on either side of it before you trust it in between.',
        'A pip says where, not how high. The height is that of the curve beside the pip.',
        'A pip that belongs to no crystal and does not follow the dial is not yours: something in the set is oscillating.',
      ],
    },
  ],
};
