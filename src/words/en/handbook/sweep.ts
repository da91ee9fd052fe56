/** Handbook: what is swept and why. */
import type { HandbookPage } from '../../handbook.ts';

export const sweep: HandbookPage = {
  id: 'sweep',
  group: 'The bench',
  title: 'What is swept, and why',
  lead: 'A receiver answers to a whole band of frequencies. A meter shows you one of them. A [sweep](sweep) shows them all at once, while your hand is still on the [slug](slug).',
  figures: [
    {
      kind: 'spot',
      title: 'One sweep, slowed down',
      caption:
        'Take the spot along the sweep. It draws what the circuit gives at the frequency of that moment, and nothing else. The dotted line is what it will have drawn at the end.',
      controls: { moment: 'Since the sweep began' },
      readings: { frequency: 'Frequency now', level: 'Height' },
    },
  ],
  blocks: [
    {
      p: 'Take a signal generator, set it to one frequency, read the output, write it down, go on to the next. Fifty readings later you have a [response](response). Turn a slug by half a turn and all fifty are out of date. People did align sets like that, and it took an afternoon.',
    },
    {
      p: 'The sweep source does the same walk by itself. Its frequency runs from the bottom of the band to the top and back again in step with the mains, {mains} times a second, so the way up takes {forward}. The spot on the tube is driven across by the same motion. Wherever the spot stands, the source is at the frequency that belongs there, and the height of the spot is what the set makes of it. Your eye joins the dots.',
    },
    { h: 'What you are looking at' },
    {
      p: 'The curve is level against frequency: low frequencies on one side, high on the other. It is not a picture of the signal, and there is no time in it, although the spot needs time to draw it. If you slow the sweep to a crawl, as the figure does, the curve stays the same. When it does not, the sweep is [too fast for the circuit](#too-fast).',
    },
    {
      p: 'The motion is a sine, because that is what the mains gives away free of charge. So the spot hurries through the middle and lingers at the ends: the middle half of the [span](span) gets only {centralTime} of the time. The tube is driven by the same sine, so the frequencies stand evenly across the glass all the same.',
    },
    { h: 'What it is good for' },
    {
      list: [
        'Circuits that are wide: an [IF strip](if) of a television, a tuner, a chroma amplifier. There is no single peak to aim at, only a shape.',
        'Circuits that pull each other. You turn one slug and see at once what it did to the hump that belongs to another.',
        'Faults. A set that has lost a [damping resistor](damping) shows it in one glance.',
      ],
    },
    {
      p: 'What it is not good for is anything that has to stand at an exact frequency: a [trap](trap), an [oscillator](oscillator), a zero crossing. There the sweep shows you the neighbourhood, and a [spot frequency](#spot) or a [marker](marker) gives you the address.',
    },
    {
      p: 'And one warning before you start. The tube draws whatever reaches its input. A bad lead, a [stage](stage) driven too hard, a [bias](bias) line that moves: each of them gives you a clean, steady, convincing curve of something else. Half of this handbook is about telling the two apart.',
    },
  ],
};
