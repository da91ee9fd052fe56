/** Handbook: what a slug does. */
import type { HandbookPage } from '../../handbook.ts';

export const slug: HandbookPage = {
  id: 'slug',
  group: 'Circuits',
  title: 'One coil, one slug',
  lead: 'Everything on the bench is made of this: a coil, some capacitance, and a [core](slug) on a thread. In goes the core, down goes the frequency.',
  figures: [
    {
      kind: 'slug',
      title: 'Turn the core',
      caption: 'Dotted: the circuit with the core where it belongs. The height hardly changes; the place does.',
      controls: { turns: 'Core, turns in' },
      readings: { peak: 'Peak', moved: 'Moved by' },
    },
  ],
  blocks: [
    {
      p: 'A [tuned circuit](tuned) answers best where coil and capacitor are equally stubborn, one about rising frequency, the other about falling. The core of powdered iron makes the coil larger, so that place moves down. Screw it out and it moves up. That is true of every slug on every chassis, and it is worth saying to yourself before each turn: *in is down*.',
    },
    { h: 'How far it goes' },
    {
      p: 'The frequency goes with the square root. A core that raises the inductance by {coilMore} takes the frequency down by {hzDown}; one that lowers it by as much takes it up by {hzUp}. A core does most in the middle of the winding. Where it only just meets the coil, or has all but left it, a whole turn hardly moves anything, and near the middle an eighth is plenty. In the figure the first turn in from the middle moves the peak by {firstTurn}.',
    },
    {
      p: '[Q](q) says how sharp the circuit is: its frequency divided by its [bandwidth](bandwidth). A circuit at {exampleHz} that is {wideWidth} wide has a Q of about {exampleQ}. Anything that takes energy out of it, a resistor, a diode, your [probe](probe), makes it wider and lower.',
    },
    { h: 'How to turn one' },
    {
      steps: [
        'Take the tool that fits: a hexagon for a hexagon, a blade for a slot, and plastic. A steel blade is a core of its own. It moves the circuit while it is in, and back when it comes out.',
        'Turn a little and look. If nothing moves, stop: it may be the wrong slug, or the wrong tool.',
        'Go past the place and come back, so that you know where it is. Come to rest always from the same side, and the slack in the thread does not matter.',
        'When it binds, stop. A core is brittle and cracks, and then it is stuck for good.',
      ],
    },
    { h: 'The wrong peak' },
    {
      p: 'In some coils the core can go right through. Then there are two places where the circuit is in tune, one on either side of the middle. In [a can](can) only the outer one is right: from the inner one the core reaches over to its neighbour and changes the [coupling](coupling). If a can can be peaked but never comes out in the right shape, look how deep the cores stand.',
    },
    {
      p: 'Count your turns. A slug that has gone two turns from where the factory left it, without a reason you can name, is usually the wrong slug.',
    },
  ],
};
