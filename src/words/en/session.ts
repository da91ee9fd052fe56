/** What is still missing, with the way to mend it, for the step strip and for the question before signing. */
import type { MissingCode } from '../../session/missing.ts';
import type { MissingSaid } from '../missingSaid.ts';
import { format } from './numbers.ts';

const { frequency, list, plural, width, written } = format;

export const missingSentences: Readonly<Record<MissingCode, string>> = {
  cautionsNotRead: 'Read the cautions and tick that you will work by them.',
  notIsolated: 'The isolating transformer is not in. Switch it on, on the panel Make safe, before anything else.',
  rfNotConnected: 'The RF lead is in the tray. Clip it to the point that the sheet names.',
  rfWrongPoint: 'The RF lead is not at the sheet\u2019s point, so the curve is that of another part of the set.',
  rfNotTerminated:
    'The RF lead is not terminated, and that puts ripple on the curve. Switch the 75 \u03a9 termination on, on the panel Lead ends.',
  rfNoCapacitor:
    'The RF lead has no capacitor to keep direct volts out of it. Switch the RF capacitor on, on the panel Lead ends.',
  yWrongPoint: 'The Y lead is not at the sheet\u2019s point. Put it there to see the whole curve.',
  yWrongTip: 'The Y lead does not have the tip that the sheet asks for. The tip is part of the circuit.',
  xNotConnected: 'The X lead is off. Connect it to the tube, or the trace has no width.',
  notEarthed: 'The earth strap is off. Without it hum and ripple get into the trace.',
  biasNotConnected:
    'There is no bias lead on the bias line, so the set makes its own bias and the curve changes with the level.',
  powerOff: 'The set is off. Once every lead is in place, switch it on, on the panel Make safe.',
  notSweeping: 'The source is on a single frequency. Set its mode to sweep and widen the span.',
  sweepTooNarrow: 'The sweep leaves out part of the band. Widen the span, or move the centre.',
  sweepTooWide: 'The sweep is far wider than the sheet asks, and the curve too narrow to be judged. Lower the span.',
  phaseOff:
    'Trace and retrace do not coincide. With blanking off, turn the phasing until they do; if they move apart, turn it the other way.',
  blankingOff: 'The retrace is not blanked. Once the phase is right, blanking gives you the base line.',
  biasOff: 'The bias is not what the sheet asks for. Set it, and check it with the meter.',
  overloaded: 'A stage is overloaded, which flattens the top. Lower the level until the shape stops changing.',
  tooWeak: 'The curve is faint. Raise the level while the shape stays the same.',
  markersMissing: 'A crystal that the sheet asks for is not in the rack.',
  markersThroughSet: 'The markers go through the set and distort the curve. Add them after the detector.',
  pipsTooHigh: 'The pips are so high that they distort the curve. Turn the pip height down.',
  sourceNotAsSheet: 'The source is not in the mode that the sheet asks for here.',
  carrierOff: 'The carrier is not where the sheet says. Set its knob, and check it against a crystal.',
  sweepTooFast:
    'The sweep is too fast for these circuits: the curve lags behind it. Take less span, or the slow sweep.',
  slowSweepOff: 'The sheet asks for the slow sweep. Switch it on, and look at the phasing again.',
  dialOff: 'The tunable marker is off. Bring it to zero beat with a crystal and trim it there.',
  acCoupled: 'The Y input is AC coupled, so the base line shifts with the curve. Switch it to DC.',
  verticalLag: 'The Y input is too slow: trace and retrace separate whatever the phasing. Switch the smoothing off.',
  steelInSlug: 'A steel blade is in a coil and detunes it. Take it out.',
  bridgeOn: 'A good capacitor is clipped across a part, so the curve is not that of the set. Take it off.',
  pipsTooLow: 'The pips cannot be seen. Turn the pip height up a little.',
  xReversed: 'Low frequency is on the wrong side. Flip the mirror switch.',
  traceOffScreen: 'Part of the trace is off the graticule. Bring it back with the position knobs, or turn Y gain down.',
  traceDark: 'The trace is too dim to see. Turn up the brightness.',
  traceTooLow: 'The trace is too low to judge. Turn up the Y gain until it fills the graticule.',
  nothingOnTube: 'There is no curve on the tube. Check the power and the leads first, then level and Y gain.',
  slugTurning: 'A slug has only just moved. Let the picture settle before you judge it.',
  linesOutside: 'The curve is not inside the limits of the sheet.',
  levelNotHalved: 'Turn the level down by 6 dB, look, and turn it back: the shape must not change.',
  markersNotSwitched: 'Turn the pip height down to nothing and back up: the curve must not move.',
  earthNotTouched:
    'Lift the earth strap, see what comes onto the trace, and put the strap back: the curve itself must not move.',
  phaseNotSwung: 'Swing the phasing away by 15\u00b0 and back: the trace must come back to its place.',
  skirtsNotSeen: 'Turn Y gain up by two clicks, look at the skirts, and turn it back.',
  biasNotMetered: 'Put the meter on the bias line, read the needle, and take the meter off.',
  crystalNotLifted: 'Pull one crystal and plug it in again: one pip must go, and no more than that.',
  pipNotRead: 'Turn Y gain up by two clicks, look at the low pips, and turn it back.',
  levelNotSaid: 'Say what you saw: how tall the trace stood with the level down, and whether its shape held.',
  markersNotSaid:
    'Say what you saw: what went with the pips, and how tall the curve stands at the pip that is asked about.',
  earthNotSaid: 'Say what you saw: what came with the strap off, and how tall it was.',
  phaseNotSaid: 'Say what you saw: how far the two traces separated, or how far the trace slid.',
  biasNotSaid: 'Say what you saw: how many volts the needle showed, and how that compares with the sheet.',
  crystalNotSaid: 'Say what you saw: which pip went, and how tall the curve stands where it was.',
  pipNotSaid: 'Say what you saw: how far down the curve is at the pip that is asked about.',
  skirtsNotSaid: 'Say what you saw: which skirt stood higher, and how tall the left one was.',
};

/** The same with places and figures, where the step to do says what is missing of it. */
export const missingAt = {
  nothingOnTube: ({ faint, besideBand, halfBand, heating, oscillator, levelDb, centreHz, spanHz }: MissingSaid) => {
    if (heating) return 'The heaters are still coming up. Wait half a minute: the curve comes by itself.';
    if (oscillator)
      return `There is no beat on the tube. Sweep ${frequency(centreHz)} with a span of ${width(spanHz)}; if none shows, see to the power and the leads, then to level and Y gain.`;
    if (faint) return `There is hardly a curve on the tube. Raise the level, to about ${written(levelDb, 0)} dB.`;
    if (besideBand) {
      const ghost =
        'A curve that shows about half that frequency is the set\u2019s answer to the second harmonic of the source.';
      const sweep = `The sweep leaves out part of the band: centre ${frequency(centreHz)}, span ${width(spanHz)}.`;
      return halfBand ? `${sweep} ${ghost}` : sweep;
    }
    return missingSentences.nothingOnTube;
  },
  rfNotConnected: ({ rf }: MissingSaid) => `Clip the RF lead to ${rf} on the chassis.`,
  rfWrongPoint: ({ rf }: MissingSaid) => `Move the RF lead to ${rf} on the chassis.`,
  yWrongPoint: ({ y }: MissingSaid) => `Clip the Y lead to ${y} on the chassis.`,
  yWrongTip: ({ probe }: MissingSaid) => `Set the Y tip to ${probe ? 'probe' : '10 k\u03a9'}, on the panel Lead ends.`,
  xNotConnected: (_: MissingSaid) => 'Clip the X lead to the X input of the tube.',
  notEarthed: ({ earth }: MissingSaid) => `Clip the earth strap to ${earth} on the chassis.`,
  biasNotConnected: ({ biases }: MissingSaid) =>
    `Clip ${list(biases.map(({ output, at }) => `the lead of bias ${output} to ${at}`))} on the chassis.`,
  biasOff: ({ biases }: MissingSaid) =>
    biases.every(({ knobSays }) => knobSays)
      ? `The knob says more than it gives, or less. Put the meter on the line and ${list(biases.map(({ output, at, volts }) => `turn bias ${output} until the needle shows ${written(volts, 1)} V on ${at}`))}.`
      : `Set ${list(biases.map(({ output, volts }) => `bias ${output} to ${written(volts, 1)} V`))}, and check it with the meter.`,
  sweepTooNarrow: ({ centreHz, spanHz }: MissingSaid) =>
    `The sweep leaves out part of the band: centre ${frequency(centreHz)}, span ${width(spanHz)}.`,
  sweepTooWide: ({ spanHz }: MissingSaid) =>
    `Turn the span down to ${width(spanHz)}: swept so wide, the curve is too narrow to be judged.`,
  sourceNotAsSheet: ({ video }: MissingSaid) =>
    `Set the mode of the sweep source to ${video ? 'video' : 'sweep'} for this curve.`,
  carrierOff: ({ carrierHz }: MissingSaid) => `Set the carrier to ${frequency(carrierHz ?? 0)}.`,
  overloaded: ({ levelDb }: MissingSaid) =>
    `A stage is overloaded, which flattens the top. Lower the level, to about ${written(levelDb, 0)} dB, until the shape stops changing.`,
  tooWeak: ({ faint, heating, levelDb }: MissingSaid) =>
    heating
      ? 'The heaters are still coming up. Wait half a minute before you judge how tall the curve is.'
      : faint
        ? `The curve is faint. Raise the level, to about ${written(levelDb, 0)} dB, while the shape stays the same.`
        : 'The curve is faint at the sheet\u2019s own level: some slug stands far off. Go on to the slugs, or raise the level a little.',
  markersMissing: ({ crystalsHz }: MissingSaid) =>
    `Plug in the ${list(crystalsHz.map(frequency))} ${plural(crystalsHz.length, { one: 'crystal', other: 'crystals' })}.`,
} satisfies Partial<Readonly<Record<MissingCode, (said: MissingSaid) => string>>>;

/** Of a line of the sheet that is missed, in practice: where to look, and which slug to turn which way. */
export const lineAdvice = {
  look: (seen: string): string => `Look at the tube: ${seen}.`,
  turn: (slug: string, inwards: boolean): string => `Turn ${slug} ${inwards ? 'in' : 'out'}.`,
  noSlug: 'No slug mends this by itself. Look for what else is wrong: the set-up, or a part.',
  more: 'Tell me more',
} as const;
