/** Handbook: one can of two circuits. */
import type { HandbookPage } from '../../handbook.ts';

export const oneCan: HandbookPage = {
  id: 'one-can',
  group: 'Circuits',
  title: 'One can, two circuits',
  lead: '[A can](can) holds two [tuned circuits](tuned) that meet only through their fields. The [slugs](slug) set where each one rings. How near they stand sets what shape they draw together.',
  figures: [
    {
      kind: 'oneCan',
      title: 'Coupling and loading',
      caption:
        'Both circuits stand at {canHz}. Dotted: the same circuits at [critical coupling](critical), one divided by [Q](q).',
      controls: { coupling: 'Coupling', q: 'Q of each circuit' },
      readings: { apart: 'Humps apart', dip: 'Dip between them', width: 'Width', height: 'Of the best there is' },
    },
  ],
  blocks: [
    { h: 'Under' },
    {
      p: 'Too far apart, the second circuit hears little of the first. There is one hump, low and narrow, and each slug peaks it by itself. With half of the critical coupling the can gives {underHeight} of what it could.',
    },
    { h: 'Critical' },
    {
      p: 'Bring them nearer and there comes a point where all that the first can give, the second takes. One hump, as tall as it will ever be, with a flat crown. For two equal circuits that is where the [coupling](coupling) is one divided by Q: with a Q of {canQ} it is {criticalK}. Its [bandwidth](bandwidth) is then that of one circuit alone times the square root of two: {criticalWidth} instead of {singleWidth}.',
    },
    { h: 'Over' },
    {
      p: 'Nearer still, they trade the signal back and forth. Two humps, with a dip between, wider and no taller. At a coupling of {overK} the humps of this can stand {canApart} apart and the dip is {canDip}. At {dipThreeTimes} times the critical coupling the dip has reached {threeDb}.',
    },
    {
      p: 'So a dip in the middle is no fault. Level humps, even about the [marker](marker), mean that both slugs are home. A pair that leans means that one of them is not.',
    },
    { h: 'Loading' },
    {
      p: 'A [damping resistor](damping) across either circuit lowers its Q. The same coupling is then less than critical, and the two humps melt into one. That is the old trick for aligning an overcoupled can: damp one circuit with a resistor, peak the other by itself, change over, take the resistor away, and the double hump stands level by its own doing. The [sheet](sheet) says where and how much.',
    },
    {
      p: 'The two circuits are seldom equal: one feeds a grid, the other a diode. With a Q of {unevenA} and {unevenB} the can is at its best at a coupling of {unevenCritical}, but it does not part into two humps before {unevenSplit}. Between the two it is tall and single, and that is where many designers put it.',
    },
    { h: 'How to tell who is who' },
    {
      p: 'Turn one slug by an eighth and watch both humps. In an overcoupled can each slug moves both, the nearer hump more than the other. Aim at two things, level and place: turn both slugs the same way to shift the pair, and against each other to level it.',
    },
  ],
};
