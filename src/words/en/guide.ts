/** What the guide through a first bench says: for each step its name, what to do, and why. */
import type { GuideSaid, GuideStepId } from '../guideSaid.ts';
import { format } from './numbers.ts';

const { frequency, width, written } = format;

interface StepWords {
  readonly title: string;
  readonly what: (said: GuideSaid) => string;
  readonly why: string;
}

const upOrDown = (up: boolean): string => (up ? 'up' : 'down');

export const guideWords = {
  name: 'Guide',
  stepOf: (at: number, all: number): string => `Guide, step ${at} of ${all}`,
  why: 'Why',
  showMe: 'Show me',
  goThere: 'Take me there',
  skip: 'Skip the guide',
  /** of the same, where there is no room: its beginning */
  skipShort: 'Skip',
  seesItself: 'The guide moves on by itself. The key . goes to what is lit.',
  /** how the part that is lit is taken hold of */
  how: {
    lead: 'Drag its clip to the lit point, or press the clip and then the point.',
    knob: 'Drag the knob up or down, turn the wheel over it, or press its figure and type.',
    /** of a knob without a figure under it */
    plainKnob: 'Drag the knob up or down, or turn the wheel over it.',
    crystal: 'Press the lit crystal.',
    switch: 'Press the lit switch.',
    choice: 'Press the position itself, on the lit switch.',
  },
  openFirst: (tab: string): string => `Press ${tab}, the tab that is lit.`,
  wanted: 'The curve that is wanted',
  wait: 'Let the picture settle.',
  /** `chosen`: its buttons are in sight */
  turn: (slug: string, inwards: boolean, chosen: boolean): string => {
    const way = inwards ? 'in' : 'out';
    return chosen
      ? `Turn slug ${slug} ${way} by eighths: the lit button, or the key ${inwards ? ']' : '['}.`
      : `Press slug ${slug} on the chassis. It needs to go ${way}, by eighths of a turn.`;
  },
  steps: {
    earth: {
      title: 'Earth first',
      what: ({ point }) => `Clip the earth strap to ${point} on the chassis.`,
      why: 'Set and instruments must share one zero. Without it mains hum rides on the trace.',
    },
    rf: {
      title: 'The sweep goes in',
      what: ({ point }) => `Clip the RF lead to ${point}.`,
      why: 'The sweep source runs its frequency up and down past the set\u2019s own. This lead brings that sweep to the input.',
    },
    pad: {
      title: 'End the cable',
      what: () => 'Switch the 75 \u03a9 termination on. It screws to the end of the RF lead.',
      why: 'A cable that does not end in its own resistance sends part of the sweep back. That puts ripple on the curve.',
    },
    capacitor: {
      title: 'Keep direct volts out',
      what: () => 'Switch the RF capacitor on, behind the termination.',
      why: 'The capacitor lets the sweep through and holds direct volts back. On a live set it saves source and set from each other.',
    },
    probe: {
      title: 'The answer comes out',
      what: ({ point }) => `Put the Y lead on ${point}.`,
      why: 'What the set makes of each frequency is taken off here. It goes to the tube and moves the spot up.',
    },
    tip: {
      title: 'A probe that detects',
      what: () => 'Set the Y tip to probe.',
      why: 'There is no detector in this can, so the probe has one. It turns the height of the signal into volts for the tube.',
    },
    x: {
      title: 'Across the tube',
      what: () => 'Plug the X lead into the X input of the tube.',
      why: 'The same swing that moves the frequency now moves the spot sideways. So left to right on the tube is low to high.',
    },
    sweep: {
      title: 'How wide to sweep',
      what: ({ control, up, centreHz, spanHz }) =>
        control === 'centreHz'
          ? `Turn the centre ${upOrDown(up)} to ${frequency(centreHz)}.`
          : `Turn the span ${upOrDown(up)} to ${width(spanHz)}.`,
      why: 'The hump is a few hundred kilohertz wide. Swept too wide it is a spike on which nothing can be judged.',
    },
    level: {
      title: 'Loud enough',
      what: ({ up, levelDb }) => `Turn the level ${upOrDown(up)} to ${written(levelDb, 0)} dB.`,
      why: 'Too little and the curve drowns; too much and it is flattened. The sheet\u2019s level lies between.',
    },
    height: {
      title: 'Use the whole face',
      what: ({ control, up }) =>
        control === 'yVoltsPerDiv'
          ? 'Turn Y gain to fewer volts per division, until the trace is at least three divisions tall.'
          : `Turn Y position ${upOrDown(up)} until the whole trace is on the face, with a division to spare at the top: it may still grow.`,
      why: 'Heights are compared by eye. The taller the trace, the smaller the error.',
    },
    phasing: {
      title: 'Lay one trace on the other',
      what: ({ up }) => `Turn the phasing ${upOrDown(up)} until the two humps lie on each other.`,
      why: 'The sweep lags behind the beam, so the way out and the way back draw two curves. Neither is true until they lie on each other.',
    },
    blanking: {
      title: 'Dark on the way back',
      what: () => 'Switch the retrace blanking on.',
      why: 'With the way back dark, the beam draws the line for no signal instead. Heights are measured from that base line.',
    },
    crystals: {
      title: 'Pips tell the frequency',
      what: ({ hz }) => `Plug in the ${frequency(hz)} crystal.`,
      why: 'A crystal puts a small pip on the curve at its own frequency. The tube has no other scale that can be trusted.',
    },
    pips: {
      title: 'A crumb, not a fence post',
      what: ({ up, pipDiv }) =>
        `Turn the pip height ${upOrDown(up)} to about ${written(pipDiv, 1)} div: small, but plain to see.`,
      why: 'A big pip bends the line that it should only mark.',
    },
    tool: {
      title: 'The tool that fits',
      what: () => 'Take the plastic hexagon: press it, or the key 1.',
      why: 'A can holds two coils. In each a slug, a core on a thread, sets its frequency; its hexagon wants a tool that is not metal.',
    },
    slug: {
      title: 'Bring the hump home',
      what: ({ turn }) => turn,
      why: 'A core further in lowers its coil\u2019s frequency. Watch the tube, not the slug: the hump belongs on the middle pip, even on both shoulders.',
    },
    halveLevel: {
      title: 'Proof: halve the level',
      what: () => 'Lower the level by 6 dB, read how tall the trace is, and turn it back to where it stood.',
      why: 'If the shape stays as it shrinks, no stage was overloaded and the curve is true. That is what a proof is for.',
    },
    swingPhase: {
      title: 'Proof: swing the phasing',
      what: () => 'Turn the phasing about 15\u00b0 away, see how far the middle pip slides, and turn it back.',
      why: 'If it comes back to the same place, the phase was right and not merely lucky.',
    },
    finding: {
      title: 'Say what you saw',
      what: () => 'Answer the card: what happened, and the figure you read.',
      why: 'The bench saw the act, but only you can have looked. Nobody answers this one for you.',
    },
    sign: {
      title: 'Sign off',
      what: () => 'Press Sign off, or go over the sheet once more first.',
      why: 'A signature says: I looked, and it stands. The report shows what each act was worth.',
    },
  } satisfies Readonly<Record<GuideStepId, StepWords>> as Readonly<Record<GuideStepId, StepWords>>,
} as const;
