/** Handbook: traps. */
import type { HandbookPage } from '../../handbook.ts';

export const traps: HandbookPage = {
  id: 'traps',
  group: 'Circuits',
  title: 'Traps',
  lead: 'A [trap](trap) takes out one frequency that has no business there. Set it first: it pulls on everything near it.',
  figures: [
    {
      kind: 'trap',
      title: 'A trap beside a coil',
      caption: 'Dotted: the coil without the trap. Where the trap bites, the rest of the curve gives way too.',
      controls: { tuned: 'Trap tuned to', coupling: 'Coupling' },
      readings: { depth: 'Taken out at its frequency', peak: 'Peak of the curve' },
    },
    {
      kind: 'bridgedT',
      title: 'A bridged trap, in decibels',
      caption: 'From the top of the glass to the foot are sixty decibels. Dashed: balanced.',
      controls: { resistor: 'Resistor, of the right one', tuned: 'Core tuned to' },
      readings: { depth: 'What is left of {soundIf}' },
    },
  ],
  blocks: [
    {
      p: 'A station takes more room than the picture alone. In a set with the [vision carrier](carrier) at {visionIf}, its own sound comes out at {soundIf} and must be held down so that it does not draw bars in the picture. The sound of the [adjacent channel](adjacent) below lands at {adjacentSound}, the picture of the one above at {adjacentVision}. Each gets a trap.',
    },
    { h: 'The coil beside the coil' },
    {
      p: 'The simplest trap is a [tuned circuit](tuned) near a coil of the strip. At its own frequency it takes the energy for itself. The one in the figure takes out {absorberDepth}. More [coupling](coupling) takes out more, and also moves the coil it feeds on: the trap is a neighbour, not an eraser. So traps are set before the [slugs](slug) round them, and looked at again at the end.',
    },
    { h: 'The bridged trap' },
    {
      p: 'The other kind leads the signal two ways round and lets them meet again, equal and opposite. There a resistor counts as much as the core. The core says where the notch is, the resistor how deep. With the right resistor the null has no bottom; with one {tenPercent} off it is {bridgedTenPercent} deep, and with none at all {bridgedNone}. If a trap refuses to go deep although it stands in the right place, the core is not to blame.',
    },
    { h: 'How to set one' },
    {
      steps: [
        'Mark its frequency with an added [pip](pip). A [marker](marker) through the set is gone just where you need it.',
        'Turn up the Y gain, or the source, until the floor fills the tube. At the bottom of a trap there is little to see, and what looks deep at low gain is not.',
        'Turn for least height at the pip, not for the deepest point of the curve somewhere near it.',
        'Better still, take a [spot frequency with tone](#spot) and turn for the least ripple.',
      ],
    },
    {
      p: 'A trap that has wandered into the band looks like a bite in the top, and no other slug mends it. Find it by touch: the bite moves with one slug only.',
    },
  ],
};
