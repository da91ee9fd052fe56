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
/** The same before anything has been said of it. */
const lookAtPip = ({ notchSide, hasCrystal, f }: Said): string => {
  if (notchSide !== null) return besidePip(notchSide);
  return `how tall the curve stands ${hasCrystal ? `at pip ${f}` : `where the tunable marker reads ${f}`}, against its top`;
};
const PEAKS = 'the two peaks show it, counted in divisions from the base line';
const LOOK_AT_PEAKS = 'how far the two peaks stand from the base line, counted in divisions';

export const sheetRuleWords: WordsOf<(typeof SHEET_RULES)[number]> = {
  G3: {
    label: 'Level at a frequency',
    good: (s) => `${s.f} stands at ${s.at}, inside ${s.want}`,
    bad: (s) => `${s.f} sits ${s.off} too ${s.tooHigh ? 'high' : 'low'}: ${s.at}, wanted ${s.want}`,
    seen: atPip,
    look: lookAtPip,
    advice: 'Turn the slug that is named a quarter turn the right way, and watch that pip alone.',
  },
  G4: {
    label: 'Ripple',
    good: (s) => `The top is even from ${stretch(s)}: ${s.at}, wanted ${s.want}`,
    bad: (s) => `The top is uneven from ${stretch(s)}: ${s.at}, wanted ${s.want}`,
    seen: 'more Y gain shows it along the top',
    look: (s) => `how even the top is from ${stretch(s)}; more Y gain helps`,
    advice: 'Rock the slug that is named an eighth either way and leave it where the top is flattest.',
  },
  G5: {
    label: 'Tilt',
    good: (s) => `Between ${s.f} and ${s.toF} the tilt is ${s.size}, wanted ${s.want}`,
    bad: (s) =>
      `The top tilts: of ${s.f} and ${s.toF}, ${s.sign > 0 ? s.f : s.toF} is higher by ${s.size}, wanted ${s.want}`,
    seen: 'a graticule line through the two points shows it',
    look: (s) => `whether both ends of the top, ${s.f} and ${s.toF}, lie on one line of the graticule`,
    advice: 'Turn the slug that is named until both ends of the top lie on one line of the graticule.',
  },
  G6: {
    label: 'Depth of a trap',
    good: (s) => `The trap takes ${s.f} down to ${s.at}, wanted ${s.want}`,
    bad: (s) => `${s.f} comes through ${s.off} too strong: ${s.at}, wanted ${s.want}`,
    seen: atPip,
    look: lookAtPip,
    advice:
      'Raise the Y gain until the foot of the notch fills the graticule, then turn the trap for the lowest trace.',
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
    look: (s) => `two clicks more Y gain lift the skirt from ${stretch(s)} off the base line`,
    advice: 'Look at the skirts with more gain after each trap, not only at the end.',
  },
  G9: {
    label: 'Width',
    good: (s) => `At ${s.level} the curve is ${s.size} wide, inside ${s.want}`,
    bad: (s) => `At ${s.level} the curve is ${s.off} too ${s.tooHigh ? 'wide' : 'narrow'}: ${s.size}, wanted ${s.want}`,
    seen: 'the tunable marker shows it, moved from flank to flank',
    look: 'how wide the hump is; the tunable marker, moved from flank to flank, measures it',
    advice: 'Move the tunable marker from flank to flank and note both readings; then turn the slug that is named.',
  },
  G10: {
    label: 'Middle',
    good: (s) => `The middle of the curve lies ${place(s)}, ${s.limit} is allowed`,
    bad: (s) => `The middle of the curve lies ${place(s)}; ${s.limit} is allowed`,
    seen: 'the flanks are at unequal distances from the middle pip',
    advice: 'Set the two flanks at equal distances from the middle pip.',
  },
  G11: {
    label: 'Gain',
    good: (s) => `The gain at ${s.f} is ${s.at} relative to the sheet, wanted ${s.want}`,
    bad: (s) => `The gain at ${s.f} is ${s.size} below the sheet; ${s.limit} is allowed`,
    seen: 'the height in divisions shows it, compared with the volts on the sheet',
    look: 'how tall the curve is, compared with the volts on the sheet',
    advice: 'Compare the height with the volts on the sheet before and after each slug.',
  },
  G48: {
    label: 'Place of the peak',
    good: (s) => `The peak, or the oscillator, stands ${place(s)}, ${s.limit} is allowed`,
    bad: (s) => `The peak, or the oscillator, stands ${place(s)}; ${s.limit} is allowed`,
    seen: 'the top, or the beat of the oscillator, is to one side of the pip',
    advice:
      'Plug the crystal and bring the top under its pip. An oscillator is brought to zero beat with it, the fine tuning half way.',
  },
  G49: {
    label: 'Zero of an S-curve',
    good: (s) => `The S-curve crosses zero ${place(s)}, ${s.limit} is allowed`,
    bad: (s) => `The S-curve crosses zero ${place(s)}; ${s.limit} is allowed`,
    seen: 'the trace crosses the base line to one side of the pip, and the meter is not at zero with the source on spot',
    advice: 'Set the source to spot, put the meter on the output, and turn the upper slug for zero.',
  },
  G50: {
    label: 'Its sense',
    good: 'The S-curve slopes the way that the sheet shows',
    bad: 'The S-curve slopes the wrong way, or has lost one of its peaks',
    seen: PEAKS,
    look: LOOK_AT_PEAKS,
    advice: 'Turn the upper slug through zero to the side where the curve rises as the sheet shows.',
  },
  G51: {
    label: 'Its peaks',
    good: (s) => `The peaks of the S-curve stand ${s.at} apart, inside ${s.want}`,
    bad: (s) => `The peaks of the S-curve stand ${s.at} apart, wanted ${s.want}`,
    seen: PEAKS,
    look: LOOK_AT_PEAKS,
    advice: 'Turn the primary for the tallest curve first; the distance between the peaks follows.',
  },
  G52: {
    label: 'Its symmetry',
    good: (s) => `The upper peak of the S-curve is ${s.at} of the lower, inside ${s.want}`,
    bad: (s) => `The upper peak of the S-curve is ${s.at} of the lower, wanted ${s.want}`,
    seen: PEAKS,
    look: LOOK_AT_PEAKS,
    advice: 'Turn the primary until both peaks are equally tall, then go back to the zero.',
  },
  G53: {
    label: 'Its straightness',
    good: (s) => `From ${stretch(s)} the S-curve bends from a straight line by ${s.at}, wanted ${s.want}`,
    bad: (s) => `From ${stretch(s)} the S-curve bends from a straight line by ${s.at}, wanted ${s.want}`,
    seen: 'a ruler along the middle of the slope shows it',
    look: 'how straight the middle of the slope is; lay a ruler along it',
    advice: 'Make the peaks even first, then set the zero: the straight part follows from both.',
  },
  G62: {
    label: 'Failed parts',
    good: (s) => `${s.subject} had failed, and you found it.`,
    bad: (s) => `${s.subject} has failed and is still in the set. A shape that no slug can make comes from a part.`,
    advice: 'Look for the response line that no slug mends, and replace what stands behind it with the set off.',
  },
};
