/** Words of the rules of the set-up at sign-off. */
import type { SET_UP_RULES } from '../../grading/rules/setUpRules.ts';
import type { WordsOf } from '../ruleWords.ts';

export const setUpRuleWords: WordsOf<(typeof SET_UP_RULES)[number]> = {
  G13: {
    label: 'Phasing',
    name: 'the phasing',
    good: (s) => `The phasing is ${s.size} out: trace and retrace lie on each other.`,
    bad: (s) =>
      `The phasing was left ${s.size} out, wanted ${s.want}. With blanking off, trace and retrace do not coincide.`,
    advice: 'Blanking off, phasing until trace and retrace are one line, blanking on again.',
  },
  G14: {
    label: 'Blanking',
    name: 'the blanking',
    good: 'The retrace was blanked.',
    bad: 'Retrace blanking was off. The tube draws a second trace, and no base line.',
    advice: 'Switch the blanking on once the phasing is right.',
  },
  G15: {
    label: 'Bias',
    good: (s) => `The bias on ${s.subject} is ${s.size} off the sheet, wanted ${s.want}.`,
    bad: (s) =>
      `The bias on ${s.subject} was ${s.size} off the sheet, wanted ${s.want}. A meter on the bias line shows it.`,
    advice: 'Put the meter on the bias line and turn the bias supply until it reads what the sheet says.',
  },
  G61: {
    label: 'Clamped',
    good: (s) => `${s.subject} was clamped.`,
    bad: (s) => `${s.subject} was left to follow the signal. Change the level and the curve changes shape.`,
    advice: 'Put a lead of the bias supply on the bias line before the first turn.',
  },
  G16: {
    label: 'Not too strong',
    name: 'overload',
    good: (s) => `The level leaves every stage room: ${s.at} of compression at most.`,
    bad: (s) => `The level was too strong: ${s.at} of compression, wanted ${s.want}. Halve it and the shape changes.`,
    advice: 'Lower the level until halving it no longer changes the shape, and raise the Y gain instead.',
  },
  G17: {
    label: 'Not too weak',
    good: (s) => `The detector gives ${s.at} of the volts on the sheet.`,
    bad: (s) => `The picture was too weak: ${s.at} of the volts on the sheet, wanted ${s.want}.`,
    advice: 'Raise the level towards that of the sheet, as long as halving it leaves the shape alone.',
  },
  G18: {
    label: 'Cover',
    name: 'the width of the sweep',
    good: 'The sweep covers the band.',
    bad: 'The sweep leaves out part of the band. On the tube, a skirt runs off the side.',
    advice: 'Widen the span, or shift the centre, until both skirts end on the base line.',
  },
  G19: {
    label: 'Direction',
    name: 'the direction',
    good: 'Low frequency is on the side that the sheet says.',
    bad: 'Low frequency was on the wrong side. The numbers of the pips show it.',
    advice: 'Flip the mirror switch and read the numbers of the pips again.',
  },
  G20: {
    label: 'Markers',
    good: 'The crystals that the sheet names are in.',
    bad: (s) =>
      s.count === 1
        ? `The ${s.f} crystal was missing.`
        : `${s.count} crystals that the sheet names were missing, ${s.f} among them.`,
    advice: 'Plug every crystal that the sheet names before the first turn.',
  },
  G21: {
    label: 'Pips small',
    name: 'the pips',
    good: (s) => `The pips are ${s.at} of the trace: seen, and not in the way.`,
    bad: (s) =>
      s.tooHigh
        ? `The pips were ${s.at} of the trace, wanted ${s.want}. They distort what they mark.`
        : 'The pips were too small to be seen.',
    advice: 'Set the pips just high enough to be seen on the trace.',
  },
  G22: {
    label: 'Pips added after detection',
    name: 'the route of the markers',
    good: 'The markers were added after the detector.',
    bad: 'The markers went through the set. A pip then vanishes in a trap and distorts the curve elsewhere.',
    advice: 'Switch the markers to be added after the detector.',
  },
  G23: {
    label: 'RF point',
    good: 'The RF lead is at the sheet\u2019s point.',
    bad: 'The RF lead was not at the sheet\u2019s point, so this is a different curve.',
    advice: 'Look up the point on the sheet, and move the lead with the set off.',
  },
  G24: {
    label: 'Termination',
    good: 'The RF lead is terminated in 75 ohms.',
    bad: 'The RF lead was not terminated. On the tube, a small ripple rides on the curve.',
    advice: 'Switch the termination in; where it makes no contact, lift the lead and put it back.',
  },
  G25: {
    label: 'Y lead',
    good: 'The Y lead is at the sheet\u2019s point with the right tip.',
    bad: 'The Y lead was not at the sheet\u2019s point with the tip it asks for.',
    advice: 'Look up point and tip on the sheet, and move the lead with the set off.',
  },
  G26: {
    label: 'Earth',
    good: 'The earth strap is on.',
    bad: 'The earth strap was off. On the tube, the trace wavers with the mains.',
    advice: 'Clip the strap on first and take it off last.',
  },
  G54: {
    label: 'Source',
    good: (s) =>
      s.hasFigure
        ? `The carrier stood ${s.size} off the sheet, wanted ${s.want}.`
        : 'The source was in the mode that the sheet asks for.',
    bad: (s) =>
      s.hasFigure
        ? `The carrier stood ${s.size} off ${s.f}, wanted ${s.want}. Zero beat with a marker would have shown it.`
        : 'The source was not in the mode that the sheet asks for, so this is a different curve.',
    advice: 'Set the mode that the sheet asks for, and bring the carrier to zero beat with a marker.',
  },
  G55: {
    label: 'Coupling',
    name: 'the coupling',
    good: 'The Y input was DC coupled: the base line is zero.',
    bad: 'The Y input was AC coupled. The base line shifts with the curve, so heights from it mean nothing.',
    advice: 'Switch the Y input to DC.',
  },
  G56: {
    label: 'Speed of the Y input',
    name: 'the speed of the Y input',
    good: (s) => `The Y input follows the sweep: ${s.at} of lag.`,
    bad: (s) =>
      `The Y input lagged ${s.at} behind the sweep, wanted ${s.want}. Trace and retrace separate, and notches fill in.`,
    advice: 'Switch the smoothing off and use the tip that the sheet asks for.',
  },
  G57: {
    label: 'Hum',
    name: 'the hum',
    good: 'There was no hum to speak of on the trace.',
    bad: (s) => `Hum was ${s.at} of the trace, wanted ${s.want}. A strap that makes no contact lets it in.`,
    advice: 'Lift the strap and put it back: when the trace stops wavering, it makes contact.',
  },
  G58: {
    label: 'No steel',
    name: 'the tool in the slug',
    good: 'No steel was left in a coil.',
    bad: (s) => `A steel blade was left in ${s.slug}. The curve shifts when it comes out.`,
    advice: 'Take the tool out, and use plastic.',
  },
  G59: {
    label: 'Tunable marker',
    good: (s) => `The tunable marker was right to within ${s.size}.`,
    bad: (s) =>
      `The tunable marker was ${s.size} off, wanted ${s.want}. Zero beat against a crystal and the dial trim put it right.`,
    advice: 'Bring the marker to zero beat against a crystal with the dial trim, then read the dial.',
  },
  G60: {
    label: 'Speed of the sweep',
    name: 'the speed of the sweep',
    good: 'The sweep was slow enough for the circuits.',
    bad: (s) =>
      `The sweep was too fast: the curve lagged by ${s.at} of its width, wanted ${s.want}. A smaller span or the slow sweep cures it.`,
    advice: 'Use the slow sweep, or a smaller span, until trace and retrace lie together.',
  },
  G63: {
    label: 'Trace in sight',
    name: 'the trace',
    good: 'The whole trace stood on the graticule, bright enough to see.',
    bad: 'The trace was not all in sight: part of it was off the graticule, or it was too dark to see.',
    advice: 'Turn the brightness up, and bring the whole trace onto the graticule with gain and position.',
  },
  G67: {
    label: 'Bridge off',
    name: 'the bridge',
    good: 'No capacitor was left clipped across a part.',
    bad: (s) => `A good capacitor was left clipped across ${s.subject}. When it comes off, the curve changes.`,
    advice: 'A bridge finds a part and mends nothing: take it off, and solder a new part in.',
  },
};
