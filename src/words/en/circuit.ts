/** Words of the circuit diagram. */
import type { PartRole } from '../partRole.ts';
import { format } from './numbers.ts';

interface RoleSaid {
  readonly does: string;
  readonly fails: string;
  readonly sure: string;
}

const ROLES: Readonly<Record<PartRole, RoleSaid>> = {
  seriesResistor: {
    does: 'The signal goes through it: it feeds the next circuit without loading the one before.',
    fails: 'Open, little or nothing comes past it. Of the wrong value, the height of the curve is wrong, or its width.',
    sure: 'Meter it with the set off, and think of what lies across it.',
  },
  shuntResistor: {
    does: 'It damps the circuit that it lies across: the curve is lower and broader for it.',
    fails: 'Open, the curve grows tall and narrow there, and no slug broadens it.',
    sure: 'Meter it with the set off: the coil beside it counts too.',
  },
  seriesCapacitor: {
    does: 'It carries the signal on and holds direct volts back.',
    fails: 'Open, the curve sinks or changes its shape.',
    sure: 'Bridge it with a good one. If the curve comes back, you have found it.',
  },
  shuntCapacitor: {
    does: 'Beside a coil it tunes it: more capacitance, lower frequency. Elsewhere it holds its point to the chassis at signal frequency.',
    fails:
      'Open, its hump goes far up the band, out of the reach of the slug. Drifted, the slug ends up far from the others.',
    sure: 'Bridge it with a good one of the same value and look for the hump.',
  },
  slug: {
    does: 'A coil with a core: further in, the frequency is lower.',
    fails: 'A cracked core no longer turns; a broken winding leaves no hump at all.',
    sure: 'Turn its slug an eighth and back. What does not move does not depend on it.',
  },
  coil: {
    does: 'A coil without a core. It makes a circuit with the capacitance beside it.',
    fails: 'Open, its hump is gone.',
    sure: 'Meter it with the set off: a good coil reads next to nothing.',
  },
  stage: {
    does: 'It amplifies, and keeps the circuit behind it from loading the one before.',
    fails: 'Tired, the whole curve sinks and keeps its shape. Dead, nothing comes past it.',
    sure: 'Clip the sweep behind it: if all is well from there on, it is this stage.',
  },
  detector: {
    does: 'It turns the height of the signal into the volts that the tube shows.',
    fails: 'Open or shorted, the line stays flat. Turned round, the curve stands on its head.',
    sure: 'With the set off, meter it both ways round: one way must read far more than the other.',
  },
  bypass: {
    does: 'It holds its electrode still at signal frequency, so that the stage can amplify.',
    fails: 'Open, the curve sinks and may lean; no slug brings it back.',
    sure: 'Bridge it with a good one. If the curve jumps up, you have found it.',
  },
  decoupling: {
    does: 'It keeps the signal out of the supply that the stages share.',
    fails: 'Open, stages feed each other: the curve grows a peak or leans, or the set sings.',
    sure: 'Bridge it with a good one, and see whether the curve settles.',
  },
  coupling: {
    does: 'It carries the signal on to the next stage and holds direct volts back.',
    fails: 'Open, hardly anything comes past it. Leaking, the bias of the next stage is wrong.',
    sure: 'For an open one bridge it; for a leak meter the volts at the grid behind it.',
  },
  shield: {
    does: 'It keeps the field of one coil away from the others.',
    fails: 'Left off, some of what comes out finds its way back in: the curve leans, or the set sings.',
    sure: 'Look whether it is on, and fit it.',
  },
  line: {
    does: 'It brings the bias to the stages, and with it their gain.',
    fails: 'Leaking or open, the bias is not what you set, and the shape changes with the level.',
    sure: 'Meter the line with the clamp on.',
  },
  point: {
    does: 'A place to clip a lead to.',
    fails: '',
    sure: '',
  },
  source: {
    does: 'Where the signal comes into the set.',
    fails: '',
    sure: '',
  },
};

export const circuitWords = {
  title: 'Circuit diagram',
  hint: 'Letters are slugs, as on the chassis. Point at a part, or tap it.',
  opening: 'The circuit is being drawn.',
  failed: 'The circuit could not be fetched. Close it and try again.',
  diagram: 'Circuit, from left to right',
  chassis: 'The same part on the chassis',
  /** under the small figure: the dashed line, beside the name of what has failed */
  whole: 'whole',
  /** `most`: the highest place of what is left, of the whole curve's */
  failedSpoken: (failure: string, most: number): string =>
    `${failure}, with all else right: the curve's highest place is at ${format.percent(most)} of what it was.`,
  meter: 'Meter across',
  fit: 'Fit a new one',
  fitAsk: (name: string): string => `${name}: take it out and solder in a new one? A good part replaced costs points.`,
  takeSlug: (letter: string): string => `Show slug ${letter} on the bench`,
  next: 'next part',
  print: 'Print',
  list: 'List of parts',
  /** a stage that takes several pages */
  goesOn: (stage: string, at: number, of: number): string => `${stage}, ${at} of ${of}`,
  /** a page that begins before any stage */
  input: 'Input',
  detector: 'Detector',
  own: { bypass: 'bypass', decoupling: 'decoupling', coupling: 'coupling', shield: 'screening lid' },
  hertz: format.frequency,
  coupledWith: (coil: string): string => `with ${coil}`,
  /** names of things that are not in the tray */
  named: {
    point: (name: string): string => `Test point ${name}`,
    source: (name: string): string => `${name}, where the signal comes in`,
    fixed: (name: string): string => `${name}, fixed`,
    detector: (name: string): string => `Detector ${name}`,
    line: (name: string): string => `Feed of the line ${name}`,
    slugged: (name: string, letter: string): string => `${name}, slug ${letter}`,
  },
  /** beside the name of what is pointed at: where to look on the chassis */
  at: (places: string): string => `On the chassis: ${places}.`,
  nowhere: 'Under the chassis.',
  heads: { does: 'What it does', fails: 'What you see if it fails', sure: 'How to be sure' },
  roles: ROLES,
} as const;
