/** Handbook: the tube. */
import type { HandbookPage } from '../../handbook.ts';

export const tube: HandbookPage = {
  id: 'tube',
  group: 'The bench',
  title: 'The tube, and what its scales mean',
  lead: 'The same circuit can look like a needle or like a hill. Before you judge a shape, know how much of it you are looking at.',
  figures: [
    {
      kind: 'scale',
      title: 'One circuit, many pictures',
      caption: 'Turn both. The circuit is never touched: its width in megahertz stays what it is.',
      controls: { span: 'Span', gain: 'Y gain' },
      readings: { division: 'Across, each division', width: 'Width of the circuit', height: 'Height in divisions' },
    },
  ],
  blocks: [
    {
      p: 'The [graticule](graticule) has {across} divisions across and {down} down. Across is frequency: with a [span](span) of {spanExample} each division is {divisionExample}. Upwards is voltage, as the Y gain has it. Neither says anything until you have read both knobs.',
    },
    { h: 'Span first' },
    {
      p: 'Set the span so that the whole curve is there with some floor on both sides. A curve whose skirts run off the glass cannot be judged: you do not know where its base is, nor whether a second hump waits outside. Then leave the span alone. A curve that has been stretched sideways looks flatter on top and gentler on its [slopes](slope), and every eye falls for it.',
    },
    {
      p: 'Too wide a span has its price as well. The [sweep](sweep) runs through the circuit faster, and a narrow circuit [cannot keep up](#too-fast).',
    },
    { h: 'Height, and where it is counted from' },
    {
      p: 'Levels are counted from the [base line](baseLine), not from the bottom of the glass. Put the base line on a ruled line where you can see it, and bring the top to another one a whole number of divisions higher. Then half way up is a place on the glass, and so are the seven tenths at which the width of a curve is usually taken.',
    },
    {
      p: 'Use the Y gain for the height, and the level of the source for the set. They are not the same thing. If the curve is too small, turn up the tube. Turn up the source only until the [detector](detector) works properly, and never so far that [a stage gives out](#overload). When you are not sure, turn the source down by half: the curve must shrink and keep its shape.',
    },
    { h: 'DC, AC and mirror' },
    {
      p: 'With the input on DC the tube shows levels as they are. On AC it loses the average, and the base line sinks as the curve grows: handy for a small ripple on a large voltage, misleading for everything else. An [S-curve](sCurve) must be looked at on DC, or its zero is not a zero.',
    },
    {
      p: 'Some sheets have the high frequencies on the left. The [mirror switch](mirror) turns the picture about. It changes nothing in the set, but it changes what you believe you are doing, so settle it before the first [slug](slug).',
    },
  ],
};
