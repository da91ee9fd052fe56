/** Words of a graded run: what each line measured and wanted, where it could have been seen, and what to do next. */

import type { IncidentKind } from '../../bench/benchState.ts';
import type { ToldSymptom } from '../../receiver/faults/fault.ts';
import type { ProofId } from '../../scenario/proofId.ts';

/** Response lines, without the full stop: the slug to blame may follow. `off` is how far outside, `at` the figure, `want` the limits. */
export const responseWords = {
  levelInside: (f: string, at: string, want: string): string => `${f} stands at ${at}, inside ${want}`,
  levelHigh: (f: string, off: string, at: string, want: string): string =>
    `${f} sits ${off} too high: ${at}, wanted ${want}`,
  levelLow: (f: string, off: string, at: string, want: string): string =>
    `${f} sits ${off} too low: ${at}, wanted ${want}`,
  rippleInside: (f: string, at: string, want: string): string => `The top is even from ${f}: ${at}, wanted ${want}`,
  ripple: (f: string, at: string, want: string): string => `The top is uneven from ${f}: ${at}, wanted ${want}`,
  tiltInside: (f: string, at: string, want: string): string => `Between ${f} the tilt is ${at}, wanted ${want}`,
  tilt: (f: string, at: string, higher: string, want: string): string =>
    `The top leans: of ${f}, ${higher} is higher by ${at}, wanted ${want}`,
  trapInside: (f: string, at: string, want: string): string => `The trap takes ${f} down to ${at}, wanted ${want}`,
  trap: (f: string, off: string, at: string, want: string): string =>
    `${f} comes through ${off} too strong: ${at}, wanted ${want}`,
  notchInside: (f: string, off: string, side: string, want: string): string =>
    `The notch for ${f} lies ${off} ${side}, ${want} is allowed`,
  notch: (f: string, off: string, side: string, want: string): string =>
    `The notch for ${f} lies ${off} ${side}; ${want} is allowed`,
  skirtInside: (f: string, at: string, want: string): string => `From ${f} the skirt stays under ${at}, wanted ${want}`,
  skirt: (f: string, at: string, want: string): string => `From ${f} the skirt reaches ${at}, wanted ${want}`,
  widthInside: (level: string, at: string, want: string): string =>
    `At ${level} the curve is ${at} wide, inside ${want}`,
  widthOff: (level: string, off: string, how: string, at: string, want: string): string =>
    `At ${level} the curve is ${off} too ${how}: ${at}, wanted ${want}`,
  wide: 'wide',
  narrow: 'narrow',
  centreInside: (f: string, off: string, side: string, want: string): string =>
    `The middle of the curve lies ${off} ${side} ${f}, ${want} is allowed`,
  centre: (f: string, off: string, side: string, want: string): string =>
    `The middle of the curve lies ${off} ${side} ${f}; ${want} is allowed`,
  gainInside: (f: string, at: string, want: string): string =>
    `The gain at ${f} is ${at} against the sheet, wanted ${want}`,
  gain: (f: string, off: string, want: string): string =>
    `The gain at ${f} is ${off} under the sheet; ${want} is allowed`,
  peakInside: (f: string, off: string, side: string, want: string): string =>
    `The peak lies ${off} ${side} ${f}, ${want} is allowed`,
  peak: (f: string, off: string, side: string, want: string): string =>
    `The peak lies ${off} ${side} ${f}; ${want} is allowed`,
  zeroInside: (f: string, off: string, side: string, want: string): string =>
    `The S-curve crosses zero ${off} ${side} ${f}, ${want} is allowed`,
  zero: (f: string, off: string, side: string, want: string): string =>
    `The S-curve crosses zero ${off} ${side} ${f}; ${want} is allowed`,
  polarityInside: 'The S-curve runs the way that the sheet says',
  polarity: 'The S-curve runs the wrong way, or has lost one of its peaks',
  separationInside: (at: string, want: string): string => `The peaks of the S-curve stand ${at} apart, inside ${want}`,
  separation: (at: string, want: string): string => `The peaks of the S-curve stand ${at} apart, wanted ${want}`,
  symmetryInside: (at: string, want: string): string =>
    `The upper peak of the S-curve is ${at} of the lower, inside ${want}`,
  symmetry: (at: string, want: string): string => `The upper peak of the S-curve is ${at} of the lower, wanted ${want}`,
  linearityInside: (f: string, at: string, want: string): string =>
    `From ${f} the S-curve bends from a straight line by ${at}, wanted ${want}`,
  linearity: (f: string, at: string, want: string): string =>
    `From ${f} the S-curve bends from a straight line by ${at}, wanted ${want}`,
  exactly: 'nothing',
  low: 'low',
  high: 'high',
  below: 'below',
  above: 'above',
} as const;

export const faultWords = {
  cured: (part: string): string => `${part} had failed, and you found it.`,
  open: (part: string): string =>
    `${part} has failed and is still in the set. A shape that no slug can make is a part, not a slug.`,
  /** `response` is empty where the sheet has but one */
  curve: (response: string, changes: string): string =>
    `By itself, with every slug in its place, it leaves ${response === '' ? 'the curve' : `the curve \u201c${response}\u201d`} ${changes}.`,
  higher: (db: string): string => `${db} higher`,
  lower: (db: string): string => `${db} lower`,
  wider: (percent: string): string => `${percent} wider`,
  narrower: (percent: string): string => `${percent} narrower`,
  topMoved: (off: string, up: boolean): string => `with its top ${off} ${up ? 'up' : 'down'} in frequency`,
  worst: (db: string, up: boolean, f: string): string => `${db} too ${up ? 'high' : 'low'} at ${f}`,
  hardly: 'hardly changed',
  zero: (off: string, up: boolean): string => `crossing zero ${off} ${up ? 'high' : 'low'}`,
  noZero: 'without a zero',
  reversed: 'By it the picture stands upside down.',
  leaky: (percent: string): string => `By it the detector gives ${percent} of its volts.`,
  line: (volts: string, sound: string): string =>
    `By it the line, left to itself, stands at ${volts} instead of ${sound}.`,
  /** where nothing can be measured, by the key that the fault's row gives */
  told: {
    core: 'Its screw turns and the curve stands still.',
  } satisfies Readonly<Record<ToldSymptom, string>>,
  /** how to find a part whose symptom is no change of the curve's shape: in place of the advice of G62 */
  tries: {
    line: 'Before the bias supply is clipped on, put the meter on each bias line: one that stands well below the sheet leaks, and its parts are replaced with the set off.',
    diode:
      'Look at the height and the side of the whole curve: where every slug is right and they are not, it is the diode, and it is replaced with the set off.',
    core: 'Where a screw turns and nothing moves on the tube, the core no longer turns with it: replace that coil with the set off.',
  } satisfies Readonly<Record<'line' | 'diode' | ToldSymptom, string>>,
} as const;

export const limitWords = {
  between: (low: string, high: string): string => `${low} to ${high}`,
  atMost: (high: string): string => `${high} at most`,
  atLeast: (low: string): string => `${low} at least`,
  within: (limit: string): string => `within ${limit}`,
  pair: (from: string, to: string): string => `${from} and ${to}`,
  stretch: (from: string, to: string): string => `${from} to ${to}`,
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

/** Where it could have been seen; each goes on from "on the tube". */
export const seenWords = {
  pip: (f: string): string => `pip ${f} shows it against the top of the curve`,
  tunable: (f: string): string => `the tunable marker at ${f} shows it against the top of the curve`,
  notchBeside: (side: 'left' | 'right'): string => `its notch lies ${side} of the pip`,
  ripple: 'more Y gain shows it along the top',
  tilt: 'a graticule line laid through the two places shows it',
  skirt: 'two clicks more Y gain lift that skirt off the base line',
  width: 'the tunable marker shows it, walked from flank to flank',
  centre: 'the flanks stand at unlike distances from the middle pip',
  gain: 'the height in divisions shows it beside the volts of the sheet',
  peak: 'the top stands beside the pip',
  zero: 'the line crosses the base line beside the pip, and the meter does not stand at zero with the source on the spot',
  peaks: 'the two peaks show it, counted in divisions from the base line',
  straight: 'a ruler laid along the middle of the slope shows it',
} as const;

export const truthWords = {
  noPicture: (what: string): string => `There was no picture on the tube at sign-off, so ${what} could not be judged.`,
  phasing: {
    name: 'the phasing',
    good: (at: string): string => `The phasing is ${at} out: trace and retrace lie on each other.`,
    bad: (at: string, want: string): string =>
      `The phasing was left ${at} out, wanted ${want}. With blanking off, trace and retrace lie apart.`,
  },
  blanking: {
    name: 'the blanking',
    good: 'The retrace was blanked.',
    bad: 'Retrace blanking was off. The tube draws a second line, and no base line.',
  },
  bias: {
    good: (line: string, at: string, want: string): string =>
      `The bias on ${line} is ${at} off the sheet, wanted ${want}.`,
    bad: (line: string, at: string, want: string): string =>
      `The bias on ${line} was ${at} off the sheet, wanted ${want}. The meter on the line shows it.`,
  },
  clamp: {
    good: (line: string): string => `${line} was clamped.`,
    bad: (line: string): string =>
      `${line} was left to follow the signal. Change the level and the curve changes its shape.`,
  },
  source: {
    good: 'The source ran in the mode that the sheet asks for.',
    bad: 'The source ran in another mode than the sheet asks for: the curve is another one.',
    carrierGood: (at: string, want: string): string => `The carrier stood ${at} off the sheet, wanted ${want}.`,
    carrierBad: (f: string, at: string, want: string): string =>
      `The carrier stood ${at} off ${f}, wanted ${want}. A marker in zero beat with it would have told.`,
  },
  coupling: {
    name: 'the coupling',
    good: 'The tube was coupled for direct volts: the base line is zero.',
    bad: 'The tube was AC coupled. The base line slides with the curve, so heights from it mean nothing.',
  },
  lag: {
    name: 'the speed of the Y input',
    good: (at: string): string => `The Y input follows the sweep: ${at} of lag.`,
    bad: (at: string, want: string): string =>
      `The Y input lagged ${at} behind the sweep, wanted ${want}. Trace and retrace part, and notches fill up.`,
  },
  hum: {
    name: 'the hum',
    good: 'No hum worth the name was on the trace.',
    bad: (at: string, want: string): string =>
      `Hum was ${at} of the trace, wanted ${want}. Lift the strap and put it back: it should not matter.`,
  },
  steel: {
    name: 'the tool in the slug',
    good: 'No steel was left in a coil.',
    bad: (slug: string): string => `A steel blade was left in ${slug}. The curve moves when it comes out.`,
  },
  dial: {
    good: (at: string): string => `The tunable marker told the truth to ${at}.`,
    bad: (at: string, want: string): string =>
      `The tunable marker was ${at} off, wanted ${want}. Zero beat against a crystal, and the trim, put it right.`,
  },
  speed: {
    name: 'the speed of the sweep',
    good: 'The sweep was slow enough for the circuits.',
    bad: (at: string, want: string): string =>
      `The sweep was too fast: the curve came late by ${at} of its width, wanted ${want}. A smaller span or the slow sweep mends it.`,
  },
  strong: {
    name: 'overload',
    good: (at: string): string => `The level leaves every stage room: ${at} of compression at most.`,
    bad: (at: string, want: string): string =>
      `The level was too strong: ${at} of compression, wanted ${want}. Halve it and the shape changes.`,
  },
  weak: {
    good: (at: string): string => `The detector gives ${at} of the sheet\u2019s volts.`,
    bad: (at: string, want: string): string =>
      `The picture was too weak: ${at} of the sheet\u2019s volts, wanted ${want}.`,
  },
  cover: {
    name: 'the cover of the sweep',
    good: 'The sweep covers the band.',
    bad: 'The sweep leaves out part of the band. On the tube, a skirt runs off the side.',
  },
  direction: {
    name: 'the direction',
    good: 'Low frequency stands at the side that the sheet says.',
    bad: 'Low frequency stood at the wrong side. The numbers of the pips show it.',
  },
  markers: {
    good: 'The crystals of the sheet are in.',
    bad: (count: number, first: string): string =>
      count === 1
        ? `The ${first} crystal was missing.`
        : `${count} crystals of the sheet were missing, ${first} among them.`,
  },
  pips: {
    name: 'the pips',
    good: (at: string): string => `The pips are ${at} of the trace: seen, and not in the way.`,
    high: (at: string, want: string): string =>
      `The pips were ${at} of the trace, wanted ${want}. They bend what they mark.`,
    low: 'The pips were too small to be seen.',
  },
  added: {
    name: 'the way of the markers',
    good: 'The markers were added after the detector.',
    bad: 'The markers went through the set. A pip then vanishes in a trap and bends the curve elsewhere.',
  },
  rf: {
    good: 'The RF lead is at the sheet\u2019s point.',
    bad: 'The RF lead was not at the sheet\u2019s point: the curve is another one.',
  },
  termination: {
    good: 'The RF lead ends in 75 ohm.',
    bad: 'The RF lead was not terminated. On the tube, small waves ride on the curve.',
  },
  y: {
    good: 'The Y lead is at the sheet\u2019s point with the right tip.',
    bad: 'The Y lead was not at the sheet\u2019s point with the tip it asks for.',
  },
  earth: {
    good: 'The earth strap is on.',
    bad: 'The earth strap was off. On the tube, the line breathes with the mains.',
  },
} as const;

export const proofWords: Readonly<Record<ProofId, { readonly done: (at: string) => string; readonly open: string }>> = {
  halveLevel: {
    done: (at) => `Level halved and put back at ${at}: the shape is the set\u2019s own.`,
    open: 'The level was not halved and put back after the last turn. Overload would have hidden.',
  },
  markersOffOn: {
    done: (at) => `Pips off and on at ${at}: the markers do not bend the curve.`,
    open: 'The pips were not taken off and brought back after the last turn. A bent curve would have hidden.',
  },
  touchEarth: {
    done: (at) => `Earth strap lifted and put back at ${at}: the curve is not in the leads.`,
    open: 'The earth strap was not lifted and put back after the last turn.',
  },
  swingPhase: {
    done: (at) => `Phasing swung and put back at ${at}: one line covers the other.`,
    open: 'The phasing was not swung and put back after the last turn.',
  },
  skirts: {
    done: (at) => `Skirts looked at with more gain at ${at}.`,
    open: 'The skirts were not looked at with more gain after the last turn.',
  },
};

export const careWords = {
  order: {
    good: 'Leads and isolation were handled with the set off.',
    bad: (times: string, at: string): string => `Leads or isolation handled with the set on, ${times}, first at ${at}.`,
  },
  live: {
    good: 'Nothing live was touched.',
    bad: (_times: string, at: string): string => `At ${at} something live was touched. On a real set this can kill.`,
  },
  tools: {
    good: 'Every slug got the tool that fits.',
    bad: (times: string, at: string, slug: string): string =>
      `A tool that does not fit, or steel in the coil, ${times}, first in ${slug} at ${at}.`,
  },
  stops: {
    good: 'No slug was forced.',
    bad: (times: string, at: string, slug: string): string => `Forced past a stop ${times}, first ${slug} at ${at}.`,
  },
  cracked: {
    good: 'No slug was cracked.',
    bad: (_times: string, at: string, slug: string): string =>
      `${slug} cracked at ${at}. The next one may be the last of its kind.`,
  },
  parts: {
    good: 'No good part was replaced.',
    bad: (times: string, at: string): string => `A good part was replaced ${times}, first at ${at}.`,
  },
  times: (count: number): string => (count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`),
} as const;

export const economyWords = {
  turns: (made: string, par: string): string => `${made}, par ${par}.`,
  time: (spent: string, par: string): string => `${spent} on the bench, par ${par}.`,
  heldInPart: 'Held back in part: some of the job was still to do.',
  held: 'Held back: the job was still to do.',
} as const;

export const capWords: Readonly<Partial<Record<IncidentKind, (limit: number, at: string) => string>>> = {
  hotChassis: (limit, at) =>
    `At ${at} a live chassis met power or a lead with no isolating transformer. Such a run is worth ${limit} at most.`,
  hotTouch: (limit, at) => `At ${at} a lead touched the high-tension corner. Such a run is worth ${limit} at most.`,
};

export const findingWords = {
  tones: { wellDone: 'Well done.', lookAgain: 'Look again.', next: 'Next.' },
  everyLine: 'Every line of the sheet is met.',
  mostLines: (good: number, all: number): string => `${good} of ${all} lines of the sheet are met.`,
  mostlyTrue: 'Most of the set-up told the truth.',
  setUpTrue: 'The set-up told the truth: what stood on the tube is what the set does.',
  allProofs: 'You proved the picture after the last turn.',
  allCare: 'The set was handled with care from the first clip to the last turn.',
  underPar: (turns: string, par: string): string => `You came in with ${turns}, par ${par}.`,
  began: 'You came to the bench: every stack begins on bare ground.',
  blind: {
    overloaded: (at: string, slug: string, turns: string): string =>
      `At ${at} the sweep was too strong and the top was flat for that reason; ${slug} was turned ${turns} against a false shape.`,
    phaseOff: (at: string, slug: string, turns: string): string =>
      `At ${at} trace and retrace lay apart; ${slug} was turned ${turns} by a line that was not where it seemed.`,
    biasOff: (at: string, slug: string, turns: string): string =>
      `At ${at} the bias was off the sheet; ${slug} was turned ${turns} for a set that nobody will meet.`,
    noPicture: (at: string, slug: string, turns: string): string =>
      `At ${at} ${slug} was turned ${turns} with no picture on the tube.`,
    wrongPoint: (at: string, slug: string, turns: string): string =>
      `At ${at} the Y lead was at another point than the sheet\u2019s; ${slug} was turned ${turns} for a curve of something else.`,
    tooFast: (at: string, slug: string, turns: string): string =>
      `At ${at} the sweep was too fast for the circuits; ${slug} was turned ${turns} by a curve that came late.`,
    agcFree: (at: string, slug: string, turns: string): string =>
      `At ${at} the bias line was free; ${slug} was turned ${turns} while the set turned its own gain.`,
    probeLoads: (at: string, slug: string, turns: string): string =>
      `At ${at} the probe or the bare lead loaded the circuit; ${slug} was turned ${turns} to make up for it.`,
    steelIn: (at: string, slug: string, turns: string): string =>
      `At ${at} steel stood in the coil; ${slug} was turned ${turns} for a curve that goes when the blade does.`,
    notEarthed: (at: string, slug: string, turns: string): string =>
      `At ${at} the earth strap was off; ${slug} was turned ${turns} by a curve that the leads made.`,
    hum: (at: string, slug: string, turns: string): string =>
      `At ${at} the line breathed with the mains; ${slug} was turned ${turns} by it.`,
    unterminated: (at: string, slug: string, turns: string): string =>
      `At ${at} the RF lead was open at its end; ${slug} was turned ${turns} against a tilt of the lead\u2019s own.`,
    markersThrough: (at: string, slug: string, turns: string): string =>
      `At ${at} the markers went through the set; ${slug} was turned ${turns} by a curve that they bent.`,
    pipsTooHigh: (at: string, slug: string, turns: string): string =>
      `At ${at} the pips were too high; ${slug} was turned ${turns} by a line that they bent.`,
    acCoupled: (at: string, slug: string, turns: string): string =>
      `At ${at} the tube was AC coupled; ${slug} was turned ${turns} by heights from a base line that slides.`,
    verticalLag: (at: string, slug: string, turns: string): string =>
      `At ${at} the Y input lagged; ${slug} was turned ${turns} by a curve that had moved and gone round.`,
    retraceShown: (at: string, slug: string, turns: string): string =>
      `At ${at} the retrace was not blanked, so there was no base line; ${slug} was turned ${turns}.`,
    xReversed: (at: string, slug: string, turns: string): string =>
      `At ${at} left and right were changed about; ${slug} was turned ${turns}.`,
    dialOff: (at: string, slug: string, turns: string): string =>
      `At ${at} the tunable marker was off and not trimmed; ${slug} was turned ${turns} to suit it.`,
  },
  next: {
    response: 'Take the traps first, then the stages, then touch up; look at each pip after each turn.',
    truth: 'Before the first turn, make the picture true: phase, bias, level, pips.',
    proofs:
      'After the last turn, prove the picture: halve the level, pips off and on, lift the strap, swing the phase.',
    care: 'Slow down with tools and leads. A slug that binds has come to its stop.',
    economy: 'Turn once, look, and turn back less. The traps first save the most turns.',
    perfect: 'Take the next card, or try this one in fewer turns.',
  },
} as const;
