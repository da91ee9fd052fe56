/** Handbook: spot frequency and tone. */
import type { HandbookPage } from '../../handbook.ts';

export const spot: HandbookPage = {
  id: 'spot',
  group: 'Circuits',
  title: 'A spot frequency, with tone',
  lead: 'What has to stand at an exact frequency is set at that frequency: one steady signal, an audio note on it, and your ear or the tube to say when it is gone.',
  figures: [
    {
      kind: 'bridgedT',
      title: 'How sharp the null is',
      caption:
        'Move the [core](slug). The frequency to be stopped stays where it is; a tenth of a megahertz is the difference between gone and not nearly gone.',
      controls: { resistor: 'Resistor, of the right one', tuned: 'Core tuned to' },
      readings: { depth: 'What is left of {soundIf}' },
    },
  ],
  blocks: [
    {
      p: 'On a [swept](sweep) curve a good [trap](trap) is a hairline. The spot passes it in no time, the [detector](detector) has its own floor, and the eye puts the lowest point where it would like to have it. For a trap, for the zero of an [S-curve](sCurve) and for an [oscillator](oscillator) the sweep is the wrong tool. Stop it.',
    },
    { h: 'The set-up' },
    {
      steps: [
        'Set the source to the frequency of the trap, with no sweep. A [crystal](crystal) beside it tells you that it is there.',
        'Put the [tone](tone) on: {toneHz} at a depth of {toneDepth}, as every test generator has it.',
        'Look at the detector on the tube. The note stands there as a ripple, as high as the [carrier](carrier) that gets through.',
        'Turn the trap for the least ripple. As it falls, turn up the gain of the tube and go on.',
      ],
    },
    {
      p: 'Why the tone? Because a steady carrier only gives a steady voltage, and near the bottom that drowns in hum, drift and the detector’s own offset. A note can be told from all of them, and it can be heard: on a sound receiver simply listen, and turn until it is quiet.',
    },
    { h: 'What goes wrong' },
    {
      list: [
        'There are two quiet places. Then one of them is the trap, and the other is a [stage](stage) that has been tuned away. The trap is the sharp one.',
        'The note never goes away. The signal gets round the trap: through a lead too near the detector, or because the source is so strong that it comes in everywhere. Turn it down.',
        'The quiet place moves when you take the tool out. That is the tool, not the trap. Use plastic.',
        'The set has [AGC](agc), and it turns itself up as you turn the signal down. [Clamp](clamp) the line, or the ripple stays the same while the trap works perfectly well.',
      ],
    },
    {
      p: 'For a trap there is one more trick. Detune the source by a little to either side and listen: the note must come back equally on both. That finds the middle of a notch whose bottom is too wide and too quiet to hear.',
    },
    {
      p: 'Afterwards go back to the sweep and look at the whole curve. A trap that has moved has moved its neighbours.',
    },
  ],
};
