/** Words of the rules of the response: each demand of a sheet, and parts that have failed. */
import type { SHEET_RULES } from '../../grading/rules/sheetRules.ts';
import type { Said, WordsOf } from '../ruleWords.ts';

const stretch = ({ f, toF }: Said): string => `${f} to ${toF}`;
/** `31 kHz above 10.70 MHz` */
const place = ({ sign, size, f }: Said): string =>
  sign === 0 ? `on ${f}` : `${size} ${sign < 0 ? 'below' : 'above'} ${f}`;
const notchPlace = ({ sign, size }: Said): string =>
  sign === 0 ? 'in its place' : `${size} ${sign < 0 ? 'low' : 'high'}`;

const besidePip = (side: 'left' | 'right'): string => `its notch lies ${side} of the pip`;
/** By the notch where its trap is to blame; else by the pip of a crystal, or the tunable marker where the box holds none. */
const atPip = ({ notchSide, hasCrystal, f }: Said): string => {
  if (notchSide !== null) return besidePip(notchSide);
  return `${hasCrystal ? `pip ${f}` : `the tunable marker at ${f}`} shows it against the top of the curve`;
};
const PEAKS = 'the two peaks show it, counted in divisions from the base line';

export const sheetRuleWords: WordsOf<(typeof SHEET_RULES)[number]> = {
  G3: {
    label: 'Level at a frequency',
    good: (s) => `${s.f} stands at ${s.at}, inside ${s.want}`,
    bad: (s) => `${s.f} sits ${s.off} too ${s.tooHigh ? 'high' : 'low'}: ${s.at}, wanted ${s.want}`,
    seen: atPip,
    advice: 'Put the slug that is named a quarter turn towards its place, and watch that pip alone.',
  },
  G4: {
    label: 'Ripple',
    good: (s) => `The top is even from ${stretch(s)}: ${s.at}, wanted ${s.want}`,
    bad: (s) => `The top is uneven from ${stretch(s)}: ${s.at}, wanted ${s.want}`,
    seen: 'more Y gain shows it along the top',
    advice: 'Rock the slug that is named an eighth either way and leave it where the top lies flattest.',
  },
  G5: {
    label: 'Tilt',
    good: (s) => `Between ${s.f} and ${s.toF} the tilt is ${s.size}, wanted ${s.want}`,
    bad: (s) =>
      `The top leans: of ${s.f} and ${s.toF}, ${s.sign > 0 ? s.f : s.toF} is higher by ${s.size}, wanted ${s.want}`,
    seen: 'a graticule line laid through the two places shows it',
    advice: 'Turn the slug that is named until both ends of the top stand on one line of the graticule.',
  },
  G6: {
    label: 'Depth of a trap',
    good: (s) => `The trap takes ${s.f} down to ${s.at}, wanted ${s.want}`,
    bad: (s) => `${s.f} comes through ${s.off} too strong: ${s.at}, wanted ${s.want}`,
    seen: atPip,
    advice: 'Raise the Y gain until the foot of the notch fills the face, then turn the trap for the lowest line.',
  },
  G7: {
    label: 'Place of a notch',
    good: (s) => `The notch for ${s.f} lies ${notchPlace(s)}, ${s.limit} is allowed`,
    bad: (s) => `The notch for ${s.f} lies ${notchPlace(s)}; ${s.limit} is allowed`,
    seen: (s) => besidePip(s.tubeSide),
    advice: 'Plug the crystal of the trap and bring the notch under its pip.',
  },
  G8: {
    label: 'Skirts',
    good: (s) => `From ${stretch(s)} the skirt stays under ${s.at}, wanted ${s.want}`,
    bad: (s) => `From ${stretch(s)} the skirt reaches ${s.at}, wanted ${s.want}`,
    seen: 'two clicks more Y gain lift that skirt off the base line',
    advice: 'Look at the skirts with more gain after each trap, not only at the end.',
  },
  G9: {
    label: 'Width',
    good: (s) => `At ${s.level} the curve is ${s.size} wide, inside ${s.want}`,
    bad: (s) => `At ${s.level} the curve is ${s.off} too ${s.tooHigh ? 'wide' : 'narrow'}: ${s.size}, wanted ${s.want}`,
    seen: 'the tunable marker shows it, walked from flank to flank',
    advice: 'Walk the tunable marker from flank to flank and count; then turn the slug that is named.',
  },
  G10: {
    label: 'Middle',
    good: (s) => `The middle of the curve lies ${place(s)}, ${s.limit} is allowed`,
    bad: (s) => `The middle of the curve lies ${place(s)}; ${s.limit} is allowed`,
    seen: 'the flanks stand at unlike distances from the middle pip',
    advice: 'Set the two flanks at like distances from the middle pip.',
  },
  G11: {
    label: 'Gain',
    good: (s) => `The gain at ${s.f} is ${s.at} against the sheet, wanted ${s.want}`,
    bad: (s) => `The gain at ${s.f} is ${s.size} under the sheet; ${s.limit} is allowed`,
    seen: 'the height in divisions shows it beside the volts of the sheet',
    advice: 'Compare the height with the volts of the sheet before and after each slug.',
  },
  G48: {
    label: 'Place of the peak',
    good: (s) => `The peak lies ${place(s)}, ${s.limit} is allowed`,
    bad: (s) => `The peak lies ${place(s)}; ${s.limit} is allowed`,
    seen: 'the top stands beside the pip',
    advice: 'Plug the crystal and bring the top under its pip.',
  },
  G49: {
    label: 'Zero of an S-curve',
    good: (s) => `The S-curve crosses zero ${place(s)}, ${s.limit} is allowed`,
    bad: (s) => `The S-curve crosses zero ${place(s)}; ${s.limit} is allowed`,
    seen: 'the line crosses the base line beside the pip, and the meter does not stand at zero with the source on the spot',
    advice: 'Put the source on the spot, the meter on the output, and turn the upper slug for zero.',
  },
  G50: {
    label: 'Its sense',
    good: 'The S-curve runs the way that the sheet says',
    bad: 'The S-curve runs the wrong way, or has lost one of its peaks',
    seen: PEAKS,
    advice: 'Turn the upper slug through zero to the side where the curve rises as the sheet shows.',
  },
  G51: {
    label: 'Its peaks',
    good: (s) => `The peaks of the S-curve stand ${s.at} apart, inside ${s.want}`,
    bad: (s) => `The peaks of the S-curve stand ${s.at} apart, wanted ${s.want}`,
    seen: PEAKS,
    advice: 'Turn the primary for the tallest curve first; the distance of the peaks follows.',
  },
  G52: {
    label: 'Its symmetry',
    good: (s) => `The upper peak of the S-curve is ${s.at} of the lower, inside ${s.want}`,
    bad: (s) => `The upper peak of the S-curve is ${s.at} of the lower, wanted ${s.want}`,
    seen: PEAKS,
    advice: 'Turn the primary until both peaks are as tall as each other, then go back to the zero.',
  },
  G53: {
    label: 'Its straightness',
    good: (s) => `From ${stretch(s)} the S-curve bends from a straight line by ${s.at}, wanted ${s.want}`,
    bad: (s) => `From ${stretch(s)} the S-curve bends from a straight line by ${s.at}, wanted ${s.want}`,
    seen: 'a ruler laid along the middle of the slope shows it',
    advice: 'Even peaks first, then the zero: the straight part follows both.',
  },
  G62: {
    label: 'Failed parts',
    good: (s) => `${s.subject} had failed, and you found it.`,
    bad: (s) => `${s.subject} has failed and is still in the set. A shape that no slug can make is a part, not a slug.`,
    advice: 'Look for the response line that no slug mends, and replace what stands behind it with the set off.',
  },
};
