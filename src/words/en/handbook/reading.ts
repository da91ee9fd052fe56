/** Handbook: reading a curve. */
import type { HandbookPage } from '../../handbook.ts';

export const reading: HandbookPage = {
  id: 'reading',
  group: 'The job',
  title: 'Reading a curve',
  lead: 'A vision curve is not symmetrical and is not meant to be. Four places on it matter; between them it may look as it likes.',
  figures: [
    {
      kind: 'slope',
      title: 'Where the carrier stands',
      caption:
        'Move the [carrier](carrier) along the [slope](slope). Half way up, the two [sidebands](sideband) together make a whole. Dashed: half height.',
      controls: { carrier: 'Vision carrier' },
      readings: { level: 'Carrier at', low: 'Coarse parts of the picture' },
    },
  ],
  blocks: [
    {
      p: 'Old hands call it a [haystack](haystack): a broad top, steep sides, a floor. Read it in this order.',
    },
    { h: 'The carrier on its slope' },
    {
      p: 'A vision transmitter sends the coarse parts of the picture twice, once on either side of the carrier, and the fine parts only once. The receiver makes up for that. Its slope runs through the carrier at half height, so that what is missing on one side is there on the other and the two make one. Half height is {halfDb}.',
    },
    {
      p: 'Set the carrier at {carrierHigh} of the top instead, and the coarse parts come out {carrierHighDb} too strong: smeary, with little edge. At {carrierLow} they are {carrierLowDb} down: thin and hard, with weak blacks, and the set loses lock easily. Both look like a tired picture tube, and no control on the front mends them.',
    },
    { h: 'The far end' },
    {
      p: 'The fine parts lie at the other side of the top, and the colour too, on a set that has it. How far down that edge may be, the [sheet](sheet) says. It is also where the sound stands, low down, on a shelf or in a [trap](trap).',
    },
    { h: 'The top' },
    {
      p: 'Flat enough is what the sheet calls flat. A slight dip or lean does no harm by itself. Steps and sharp corners do, since they ring in the picture. Better a smooth top with a slight lean than a level one with a notch.',
    },
    { h: 'The floor' },
    {
      p: 'The traps, and what comes up beyond them. Turn up the gain and look at the floor by itself. A floor that is not on the [base line](baseLine) means that something gets round the strip.',
    },
    { h: 'Other curves' },
    {
      list: [
        'AM: one smooth hump, even about its middle, as narrow as the sheet says. The [sweep](sweep) must be slow.',
        'FM [IF](if): even about the middle and wide enough for the swing, with its phase in mind rather than its looks. A double hump here is a poor bargain.',
        '[S-curve](sCurve): the zero, equal halves, a straight middle, in that order.',
        'Front end: wide and flat, with the double hump square about both carriers, on every channel a little different. Take the best for all, not the best for one.',
      ],
    },
  ],
};
