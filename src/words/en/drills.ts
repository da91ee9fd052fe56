/** What the drills room says: of each drill its name, its question, its answers, and why an answer is right. */
import type { Choice, DrillId, Landmark, LookFacts, ToldFault } from '../../drills/drill.ts';
import { format } from './numbers.ts';

const { frequency, knob, written } = format;
const { percent, decibels } = format.score;

const LANDMARK_NAMES: Readonly<Record<Landmark, string>> = {
  adjacentVision: 'The vision carrier of the channel above',
  sound: 'The sound carrier',
  colour: 'The colour carrier',
  middle: 'The middle of the band',
  vision: 'The vision carrier',
  adjacentSound: 'The sound carrier of the channel below',
};

const LANDMARK_REASONS: Readonly<Record<Landmark, string>> = {
  adjacentVision:
    'It lies beyond the sound, down where the curve has all but gone. Another station sends there, and a trap keeps it out.',
  sound: 'It lies at the foot of the low side, in the notch or on the little shelf that the sound trap leaves for it.',
  colour:
    'It lies on the slope of the low side, a little above the sound: high enough for colour, on the way down to the trap.',
  middle: 'It lies on the flat of the top. Nothing is sent there that needs a name; it is where the strip gives most.',
  vision:
    'It lies half way down the high side. At half height one side band and the rest of the other add up to an even picture.',
  adjacentSound:
    'It lies just above the vision slope, at its foot. Another station sends its sound there, and a trap keeps it out.',
};

/** What it takes away when it belongs to a trap. */
const TRAP_WITHOUT_CAPACITOR =
  'A trap that has lost its capacitor takes nothing out any more: its notch is gone, and the curve is back where it was cut away.';

const FAULT_REASONS: Readonly<Record<ToldFault, string>> = {
  openResistor:
    'A damping resistor that has gone open leaves its circuit undamped: it peaks sharply where it is tuned.',
  openCoupling:
    'A coil that is no longer coupled takes no part: what it gave to the curve, or took out of it, is missing.',
  weakStage:
    'A tired stage gives less all over, and loads the circuit before it less: a lower curve, and a little sharper.',
  leakyCoupling:
    'A coupling capacitor that leaks drags the grid towards the supply. The stage runs into grid current, damps its circuit and gives less.',
  openBypass:
    'Without its bypass a stage works against its own resistor: it gives less all over, and the shape hardly changes.',
  openWinding: 'No current goes through a winding with a broken end: its circuit is gone from the curve altogether.',
  openCapacitor:
    'What tuned the coil is gone. Valve and wiring alone tune it far too high, and its circuit has left the band.',
  driftedCapacitor:
    'The trap\u2019s capacitor has drifted and its notch with it, further than the slug can bring it back.',
  shortedTrap:
    'Turns that touch are a shorted winding on the core: the trap is tuned away, and no notch is left where it belongs.',
  reversedDiode: 'A diode the wrong way round gives the same volts with the other sign: the curve hangs down.',
  shortedDiode: 'A diode that is a piece of wire rectifies nothing: the curve is all but gone.',
};

interface WhyNames {
  /** `slug B (T1)`, `trap C (A2)`; at the beginning of a sentence with a capital */
  readonly slug: string;
  readonly other: string;
  readonly part: string;
  /** the part belongs to a trap */
  readonly ofTrap: boolean;
}

interface Why {
  readonly head: string;
  readonly reason: string;
}

function why(told: LookFacts, { slug, other, part, ofTrap }: WhyNames): Why {
  switch (told.drill) {
    case 'phase-it':
      return {
        head: `The traces meet at ${knob.degrees(-told.lagDegrees)}.`,
        reason:
          'This bench lags by that much. Out of step, the way out and the way back draw the same curve in two places, and neither is the true one.',
      };
    case 'which-way':
      if (told.way === 'notThis')
        return {
          head: `It is not ${slug}.`,
          reason: `No turn of it brings the curve under the wax: the stretch that is wrong belongs to ${other}. Leave a slug alone that is not to blame.`,
        };
      return told.way === 'in'
        ? {
            head: 'Core in lowers the frequency.',
            reason: `The curve leans to the high side, so ${slug} is tuned too high. Turning its core in brings it down under the wax.`,
          }
        : {
            head: 'Core out raises the frequency.',
            reason: `The curve leans to the low side, so ${slug} is tuned too low. Turning its core out brings it up under the wax.`,
          };
    case 'per-cent':
      return {
        head: `${percent(told.percent)} of the top.`,
        reason: `The pip stands ${written(told.heightDiv, 1)} divisions over the base line, and the top ${written(told.peakDiv, 1)}. Count from the base line, never from the bottom of the glass.`,
      };
    case 'find-the-trap':
      return {
        head: `Pip ${told.pip} stands in the notch.`,
        reason: `A trap takes one narrow stretch out of the curve: here ${slug} bites into the band. It belongs at ${frequency(told.meantHz)}, outside.`,
      };
    case 'overload':
      return told.overloaded
        ? {
            head: 'Overloaded: the shape changed.',
            reason: `A stage was compressing by ${decibels(told.compressionDb)}, most where the signal is strongest. Halve the level, and what it had flattened comes back.`,
          }
        : {
            head: 'Not overloaded: the shape stayed.',
            reason:
              'At half the level everything is half as tall; brought back to the same height, it is the same curve. What looks odd about it is the tuning, and that is real.',
          };
    case 'zero':
      return {
        head: `The zero belongs at ${frequency(told.centreHz)}.`,
        reason: `${slug} moves the zero and hardly anything else. Where the line crosses the base line on the pip, the detector gives no volts for a carrier that is in tune.`,
      };
    case 'which-part': {
      const size = decibels(Math.abs(told.peakDb));
      const height =
        Math.abs(told.peakDb) < 1
          ? ''
          : told.peakDb < 0
            ? ` Here the top is ${size} lower.`
            : ` Here the top is ${size} higher.`;
      const reason = told.fault === 'openCapacitor' && ofTrap ? TRAP_WITHOUT_CAPACITOR : FAULT_REASONS[told.fault];
      return { head: `It is ${part}.`, reason: `${reason}${height}` };
    }
    case 'what-lies-here':
      return {
        head: `${LANDMARK_NAMES[told.landmark]}, ${frequency(told.hz)}.`,
        reason: LANDMARK_REASONS[told.landmark],
      };
  }
}

const NAMES: Readonly<Record<DrillId, string>> = {
  'phase-it': 'Phase it',
  'which-way': 'Which way is this slug off?',
  'per-cent': 'Read the per cent',
  'find-the-trap': 'Find the trap',
  overload: 'Is this overload?',
  zero: 'Zero the S-curve',
  'which-part': 'Which part has failed?',
  'what-lies-here': 'What lies here?',
};

const QUESTIONS: Readonly<Record<DrillId, (slug: string) => string>> = {
  'phase-it': () => 'Turn the phasing until the two traces lie on one another.',
  'which-way': (slug) => `You have the tool in ${slug}. The wax shows the curve that is wanted.`,
  'per-cent': () => 'The top of the curve is 100%, the base line nothing. How high does the pip stand?',
  'find-the-trap': () => 'A trap has been turned into the band. Four pips stand on the curve.',
  overload: () =>
    'Halve the level; the picture is brought back to the same height, and the wax keeps what you saw before.',
  zero: (slug) => `Turn ${slug} until the line crosses the base line on the pip.`,
  'which-part': () => 'One part has failed. The wax shows the curve of the sound set, at the same gain.',
  'what-lies-here': () => 'One pip stands on a vision curve, low frequencies at the left.',
};

const ASKS: Readonly<Record<DrillId, string>> = {
  'phase-it': 'Phasing',
  'which-way': 'Which way do you turn it?',
  'per-cent': 'At how much does it stand?',
  'find-the-trap': 'Which pip stands in the notch?',
  overload: 'Was a stage overloaded?',
  zero: 'Core',
  'which-part': 'Which one was it?',
  'what-lies-here': 'What stands there?',
};

/** `part`: its name where the choice is one. */
function choice(one: Choice, slug: string, part: string): string {
  switch (one.kind) {
    case 'way':
      return one.way === 'in' ? 'Core in' : one.way === 'out' ? 'Core out' : `It is not ${slug}`;
    case 'percent':
      return percent(one.percent);
    case 'pip':
      return `Pip ${one.number}`;
    case 'overloaded':
      return one.overloaded ? 'Yes: the shape changes' : 'No: the same shape';
    case 'part':
      return part;
    case 'landmark':
      return LANDMARK_NAMES[one.landmark];
  }
}

export const drillsWords = {
  intro: 'A minute each: one look, one question, the answer and why.',
  kept: 'The last ten of each are kept here. The key T plays the curve.',
  list: 'Drills',
  names: NAMES,
  questions: QUESTIONS,
  asks: ASKS,
  choice,
  why,
  /** where a resistor or a capacitor sits; `slug`: `slug D (A2)` */
  atCoil: (slug: string): string => `at the coil of ${slug}`,
  eyebrow: (no: number, all: number, set: string): string => `Drill ${no} of ${all}, ${set}`,
  sure: (count: number, all: number): string => `${count} of ${all} mastered`,
  oneSkill: 'One skill at a time',
  open: 'Open',
  notTried: 'not tried',
  tally: (right: number, all: number): string => `${right} of ${all}`,
  tenInARow: 'ten in a row',
  /** of the last looks, the oldest first */
  lastLooks: (right: number, all: number): string =>
    all === 0 ? 'No look yet.' : `Of the last ${all}, ${right} right.`,
  /** to a screen reader: what there is to see is the question, so no sentence says what it means */
  tube: 'The tube. T plays what stands on it, then the wax; V goes to it as a table.',
  table: 'What stands on the tube, in divisions over the base line',
  columns: { place: 'Place', out: 'Trace', back: 'Retrace', wax: 'Wax' },
  /** divisions from the middle line */
  place: (div: number): string => {
    const far = written(Math.abs(div), 1);
    return far === '0.0' ? 'middle' : `${far} ${div < 0 ? 'left' : 'right'}`;
  },
  pipPlace: (number: number, place: string): string => `Pip ${number}, ${place}`,
  height: (div: number): string => written(Math.round(10 * div) / 10 + 0, 1),
  apart: (div: number): string => `Trace and retrace stand ${written(div, 1)} divisions apart where they differ most.`,
  atPip: (div: number): string => {
    const far = written(Math.abs(div), 1);
    if (far === '0.0') return 'At the pip the trace lies on the base line.';
    return `At the pip the trace stands ${far} divisions ${div < 0 ? 'below' : 'above'} the base line.`;
  },
  figure: 'The curves as they were and as they are wanted',
  making: 'Setting up the next look…',
  failed: 'This look could not be set up.',
  halve: 'Halve the level',
  wholeAgain: 'Back to the full level',
  halveFirst: 'Halve the level once before you answer.',
  done: 'That is it',
  next: 'Next look',
  nextKey: 'Return',
  halveKey: 'H',
  right: 'Right.',
  wrong: 'Wrong.',
  yours: 'your answer',
  /** turns of a core from where it was found */
  turned: (turns: number): string => {
    if (turns === 0) return 'as found';
    return turns > 0 ? `${format.turns(turns)} in` : `${format.turns(-turns)} out`;
  },
  looks: { was: 'as it was', half: 'half way', wanted: 'wanted' },
  halvedLook: 'at half the level, same height',
  handbook: (title: string): string => `Handbook: ${title}`,
} as const;
