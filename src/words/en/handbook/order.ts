/** Handbook: order of work. */
import type { HandbookPage } from '../../handbook.ts';

export const order: HandbookPage = {
  id: 'order',
  group: 'The job',
  title: 'The order of work',
  lead: 'Make safe, connect, set up, align, prove. Most bad alignments were good work done in the wrong order.',
  figures: [
    {
      kind: 'stagger',
      title: 'Why single stages come first',
      caption:
        'Pull the [stages](stage) apart or push them together: there is always some curve. Only one of them is that of the [sheet](sheet).',
      controls: { spread: 'Stagger, of the recipe', middle: 'Middle stage off by' },
      readings: { width: 'Width', gain: 'Height against the recipe', lean: 'High shoulder over the low' },
    },
  ],
  blocks: [
    { h: 'Make safe' },
    {
      p: 'Read the cautions. Isolate, discharge, meter. Then look before you switch on: a burnt resistor or a cracked [core](slug) saves an hour at the tube. Let the set warm through, for circuits drift while it does.',
    },
    { h: 'Connect' },
    {
      p: 'Earth first. The source where the sheet injects, the tube at the [test point](testPoint) where it looks, the [bias](bias) on its line. Terminate the lead. Keep input and output apart.',
    },
    { h: 'Set up' },
    {
      steps: [
        'Centre and [span](span), so that the whole curve is on the glass.',
        '[Phasing](phasing) with the [retrace](retrace) on, then [blanking](blanking).',
        'Bias at the sheet’s voltage, and metered.',
        'Level: down until only the size changes.',
        '[Markers](marker), small, and the dial checked against a [crystal](crystal).',
      ],
    },
    {
      p: 'Now look, and touch nothing. Compare with the sheet. Write down what you see. If it is right, you are done, and you have lost nothing. If it is wrong, ask whether it is [alignment at all](#when-not).',
    },
    { h: 'Align' },
    {
      p: '[Traps](trap) first, for they pull. Then from the [detector](detector) backwards, stage by stage, or in whatever order the sheet has: it knows which circuits pull which. Then the whole, with small turns. Go round twice. The second round shows how much the last slug has moved the first.',
    },
    {
      p: 'One slug at a time, a small turn, look. If it got worse, go back exactly as far. Never move two before you know what the first one did. Keep count: a total of a few turns is a touch-up, twenty are an alignment, and fifty mean that you are lost. There is no shame in putting everything back where it was and starting again.',
    },
    { h: 'Prove' },
    {
      p: 'Every [proof](proof) has the same form: change something that should not change the shape. Half the level. The [pips](pip) off and on. The [earth strap](earth) lifted and clipped back. The phasing swung away and back. The [probe](probe) off and on. The [clamp](clamp) off. More gain, to see the skirts. If the curve stands through all of them, it is the set’s. Look at every marker once more, the traps too, and only then sign.',
    },
    {
      p: 'The service sheet has the last word. Where it asks for another order, it has a reason.',
    },
  ],
};
