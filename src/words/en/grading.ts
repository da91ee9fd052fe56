/** Words of a graded run that belong to no single rule: limits, causes, what a failed part does, what the findings say. */
import type { ToldSymptom } from '../../receiver/faults/fault.ts';

export const faultWords = {
  /** `response` is empty where the sheet has but one */
  curve: (response: string, changes: string): string =>
    `By itself, with every slug in its place, it leaves ${response === '' ? 'the curve' : `the curve \u201c${response}\u201d`} ${changes}.`,
  higher: (db: string): string => `${db} higher`,
  lower: (db: string): string => `${db} lower`,
  wider: (percent: string): string => `${percent} wider`,
  narrower: (percent: string): string => `${percent} narrower`,
  topMoved: (off: string, up: boolean): string => `with its top ${off} ${up ? 'up' : 'down'} in frequency`,
  worst: (db: string, up: boolean, f: string): string => `${db} too ${up ? 'high' : 'low'} at ${f}`,
  hardly: 'almost unchanged',
  zero: (off: string, up: boolean): string => `crossing zero ${off} ${up ? 'high' : 'low'}`,
  noZero: 'without a zero',
  reversed: 'It turns the picture upside down.',
  leaky: (percent: string): string => `It leaves the detector ${percent} of its volts.`,
  line: (volts: string, sound: string): string =>
    `It leaves the bias line, with nothing clamping it, at ${volts} instead of ${sound}.`,
  /** where nothing can be measured, by the key that the fault's row gives */
  told: {
    core: 'Its screw turns and the curve does not move.',
  } satisfies Readonly<Record<ToldSymptom, string>>,
  /** how to find a part whose symptom is no change of the curve's shape: in place of the advice of G62 */
  tries: {
    line: 'Before you clip the bias supply on, put the meter on each bias line: one that reads well below the sheet leaks. Replace its parts with the set off.',
    diode:
      'Look at the height of the whole curve, and which way up it is: where every slug is right and they are not, it is the diode. Replace it with the set off.',
    core: 'Where a screw turns and nothing moves on the tube, the core no longer turns with it: replace that coil with the set off.',
  } satisfies Readonly<Record<'line' | 'diode' | ToldSymptom, string>>,
} as const;

export const limitWords = {
  between: (low: string, high: string): string => `${low} to ${high}`,
  atMost: (high: string): string => `${high} at most`,
  atLeast: (low: string): string => `${low} at least`,
  within: (limit: string): string => `within ${limit}`,
  /** outside by less than is written */
  hairOver: (limit: string): string => `a hair over ${limit}`,
  hairUnder: (limit: string): string => `a hair under ${limit}`,
} as const;

export const causeWords = {
  /** the whole sentence: what is off, which slug, where it could have been seen */
  whole: (what: string, name: string, turns: string, way: 'in' | 'out', seen: string): string =>
    `${what}; ${name} is ${turns} too far ${way}, and on the tube ${seen}.`,
  part: (what: string, part: string, seen: string): string =>
    `${what}; no slug makes up for ${part}, which has failed; on the tube ${seen}.`,
  unknown: (what: string, seen: string): string => `${what}; on the tube ${seen}.`,
  hair: 'a hair',
} as const;

/** Why less is paid than the measurement would earn. */
export const heldWords = {
  noPicture: (what: string): string => `There was no picture on the tube at sign-off, so ${what} could not be judged.`,
  whole: 'No points for this while the work was still to be done.',
  inPart: 'Only some of the points, since some of the work was still to be done.',
  helper: 'A helper set this up, so it earns no points.',
} as const;

export const findingWords = {
  tones: { wellDone: 'Well done.', lookAgain: 'Look again.', next: 'Next.' },
  everyLine: 'Every line of the sheet is met.',
  mostLines: (good: number, all: number): string => `${good} of ${all} lines of the sheet are met.`,
  mostlyTrue: 'Most of the set-up was right.',
  setUpTrue: 'The set-up was right: what the tube showed is what the set does.',
  allProofs: 'You proved the picture after the last turn.',
  allCare: 'The set was handled with care from the first clip to the last turn.',
  underPar: (turns: string, par: string): string => `You took ${turns}; par is ${par}.`,
  began: 'You came to the bench: every stack begins on bare ground.',
  blind: {
    overloaded: (at: string, slug: string, turns: string): string =>
      `At ${at} the level was too strong, which flattened the top; ${slug} was turned ${turns} to suit a false shape.`,
    phaseOff: (at: string, slug: string, turns: string): string =>
      `At ${at} trace and retrace did not coincide; ${slug} was turned ${turns} to suit a trace that was not where it seemed.`,
    biasOff: (at: string, slug: string, turns: string): string =>
      `At ${at} the bias was not that of the sheet; ${slug} was turned ${turns} to suit the wrong bias.`,
    noPicture: (at: string, slug: string, turns: string): string =>
      `At ${at} ${slug} was turned ${turns} with no picture on the tube.`,
    wrongPoint: (at: string, slug: string, turns: string): string =>
      `At ${at} the Y lead was not at the sheet\u2019s point; ${slug} was turned ${turns} to suit the curve of something else.`,
    tooFast: (at: string, slug: string, turns: string): string =>
      `At ${at} the sweep was too fast for the circuits; ${slug} was turned ${turns} to suit a curve that lagged.`,
    agcFree: (at: string, slug: string, turns: string): string =>
      `At ${at} the bias line was not clamped; ${slug} was turned ${turns} while the set changed its own gain.`,
    probeLoads: (at: string, slug: string, turns: string): string =>
      `At ${at} the probe or the bare lead loaded the circuit; ${slug} was turned ${turns} to make up for it.`,
    steelIn: (at: string, slug: string, turns: string): string =>
      `At ${at} there was steel in the coil; ${slug} was turned ${turns} to suit a curve that changes when the blade comes out.`,
    bridged: (at: string, slug: string, turns: string): string =>
      `At ${at} a capacitor was clipped across a part; ${slug} was turned ${turns} to suit a curve that changes when it comes off.`,
    notEarthed: (at: string, slug: string, turns: string): string =>
      `At ${at} the earth strap was off; ${slug} was turned ${turns} to suit a curve that the leads made.`,
    hum: (at: string, slug: string, turns: string): string =>
      `At ${at} the trace wavered with the mains; ${slug} was turned ${turns} to suit it.`,
    unterminated: (at: string, slug: string, turns: string): string =>
      `At ${at} the RF lead was not terminated; ${slug} was turned ${turns} against a tilt that the lead made.`,
    markersThrough: (at: string, slug: string, turns: string): string =>
      `At ${at} the markers went through the set; ${slug} was turned ${turns} to suit a curve that they distorted.`,
    pipsTooHigh: (at: string, slug: string, turns: string): string =>
      `At ${at} the pips were too high; ${slug} was turned ${turns} to suit a curve that they distorted.`,
    acCoupled: (at: string, slug: string, turns: string): string =>
      `At ${at} the Y input was AC coupled; ${slug} was turned ${turns} to suit heights above a base line that shifts.`,
    verticalLag: (at: string, slug: string, turns: string): string =>
      `At ${at} the Y input lagged; ${slug} was turned ${turns} to suit a curve that was shifted and rounded.`,
    retraceShown: (at: string, slug: string, turns: string): string =>
      `At ${at} the retrace was not blanked, so there was no base line; ${slug} was turned ${turns}.`,
    xReversed: (at: string, slug: string, turns: string): string =>
      `At ${at} left and right were swapped; ${slug} was turned ${turns}.`,
    dialOff: (at: string, slug: string, turns: string): string =>
      `At ${at} the tunable marker was off and not trimmed; ${slug} was turned ${turns} to suit it.`,
  },
  next: {
    part: 'First the part: find on the circuit diagram what could make such a shape, and replace it with the set off. Then the slugs.',
    response: 'Take the slugs in the order of the sheet, then touch up; look at each pip after each turn.',
    truth: 'Before the first turn, make the picture true: phasing, bias, level, pips.',
    proofs:
      'After the last turn, prove the picture: halve the level, pips off and on, lift the strap, swing the phasing.',
    care: 'Slow down with tools and leads. A slug that binds has reached its stop.',
    economy: 'Take the next scenario, or do this one again with a look after each small turn.',
    time: 'The turns were few; only the time was long. Quickness comes with practice: take the next scenario.',
    closer:
      'Every line is inside, some only just. Bring the curve nearer to the middle of its limits: that earns the turns and the time as well.',
    perfect: 'Take the next scenario, or try this one in fewer turns.',
  },
} as const;
