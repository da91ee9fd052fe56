/** Handbook: stagger and links. */
import type { HandbookPage } from '../../handbook.ts';

export const stagger: HandbookPage = {
  id: 'stagger',
  group: 'Circuits',
  title: 'Stagger, and links',
  lead: 'Tune every [stage](stage) to the middle and the strip is tall and narrow. Pull the stages apart on purpose, and three small hills make one plateau.',
  figures: [
    {
      kind: 'stagger',
      title: 'Three stages pulled apart',
      caption:
        'With the [stagger](stagger) at one the stages stand where the recipe has them. Dashed: the flat top that they are meant to give, drawn to the same height.',
      controls: { spread: 'Stagger, of the recipe', middle: 'Middle stage off by' },
      readings: { width: 'Width', gain: 'Height against the recipe', lean: 'High shoulder over the low' },
    },
  ],
  blocks: [
    {
      p: 'Stages in a row multiply. Four equal single circuits keep only {fourKeep} of the [bandwidth](bandwidth) of one, for each of them cuts the edges that the others have left. Two [cans](can) at [critical coupling](critical) do better and keep {twoCansKeep}. A vision strip needs width and gain at once, so the stages are not made equal.',
    },
    { h: 'The recipe for three' },
    {
      p: 'For a band {stripWidth} wide round {stripHz}: one stage in the middle, as wide as the whole band; one below and one above, at {stageLow} and {stageHigh}, each half as wide. Together they give a flat top from {edgeLow} to {edgeHigh}. Three stages all in the middle, damped until they are as wide together, would give {staggerGain} less. That is the whole point of it: width that costs no gain.',
    },
    {
      p: 'Real circuits are even in ratio and not in megahertz, so the top of such a strip leans by part of a decibel. That is not yours to correct.',
    },
    { h: 'Aligning it' },
    {
      steps: [
        'Peak each stage at its own frequency first, one at a time, as the [sheet](sheet) lists them. The narrow ones, at the edges, are the ones that count.',
        'Then look at the whole curve. The stage below carries the low shoulder, the stage above the high one, and the wide one in the middle only tilts and fills.',
        'To widen, move the outer two. To level, move the middle one. Do not chase a dip with the nearest [slug](slug) before you know whose it is.',
      ],
    },
    {
      p: 'A pulled-apart strip is sensitive. Take the middle stage of the figure {stageOff} too high, and the high shoulder stands {stageLean} over the low one, against {stageRest} when all is right. It comes back as easily, if you move the same one.',
    },
    { h: 'Links' },
    {
      p: 'Tuner and strip are often two boxes with a cable between. A few turns round the last coil of the one, a few round the first of the other: that is a can in two halves, and it behaves like one, with two slugs, a [coupling](coupling) and a double hump. Its two slugs belong together. Never judge one of them with the other end of the cable hanging free, and never with your own lead in place of the cable: the sheet says where to inject so that both halves are in the picture.',
    },
  ],
};
