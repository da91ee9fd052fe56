/** Handbook: leads and probes. */
import type { HandbookPage } from '../../handbook.ts';

export const leads: HandbookPage = {
  id: 'leads',
  group: 'The trade',
  title: 'Leads and probes',
  lead: 'Whatever touches the circuit belongs to the circuit. A lead is a capacitor, an aerial and sometimes a second [tuned circuit](tuned), and none of them is on the [sheet](sheet).',
  figures: [
    {
      kind: 'probe',
      title: 'A probe on a coil',
      caption: 'The coil has {probedFarads} of its own. Dotted: without the [probe](probe).',
      controls: { farads: 'Put across it' },
      readings: { peak: 'Peak', moved: 'Moved by' },
    },
    {
      kind: 'lead',
      title: 'The level at the end of the lead',
      caption: 'What comes out of the RF lead, drawn to its average. Dashed: what ought to come out.',
      controls: { end: ['End of the lead', 'terminated', 'open'], earth: ['Earth strap', 'on', 'off'] },
      readings: { tilt: 'From lowest to highest' },
    },
  ],
  blocks: [
    { h: 'What a probe adds' },
    {
      p: 'A coil at {probedHz} with {probedFarads} across it moves down by {probeHalf} for {halfPicofarad}. A screened lead has {leadFarads} to the metre. Clip one straight onto a coil and you do not measure the circuit, you abolish it. Align a [stage](stage) with a probe on it, take the probe away, and the stage is off by as much the other way.',
    },
    {
      list: [
        'Look where the signal has already been detected. There a lead does nothing to the tuning.',
        'Use the [isolating resistor](isolatingResistor): a few thousand ohms in the tip keep the lead’s capacitance off, and cost little at the speed of a [sweep](sweep).',
        'If you must look at a live coil, do it one stage further on, or with a loop held near, and never align what you are touching.',
        'Prove it: put the probe on and take it off, watching a later point. If that curve moves, so did the coil.',
      ],
    },
    { h: 'What a lead does to the level' },
    {
      p: 'The RF lead is a cable, and a cable wants a resistor of its own kind at the end: {leadOhms}. Without it the signal runs back to the source and out again, and adds to itself at some frequencies and takes away at others. On this bench an open end gives about {openRise} more level, and a ripple of {openRipple} from top to bottom along the band. Over one receiver that is not a ripple but a tilt, and it looks exactly like a [slug](slug) that is off.',
    },
    {
      p: 'Switch the [termination](termination) in and out and watch. A curve that changes height and nothing else was all right. A curve that leans the other way was leaning because of you.',
    },
    { h: 'Where to inject' },
    {
      p: 'Where the sheet says, through what the sheet says. A capacitor in the tip keeps the source from shorting the [bias](bias) of the stage. A source of {leadOhms} straight across a tuned circuit is no longer a source, it is a short. And keep the RF lead away from the [detector](detector): at high gain a few centimetres of bare wire go round the whole strip.',
    },
  ],
};
