/** Handbook: detectors. */
import type { HandbookPage } from '../../handbook.ts';

export const detectors: HandbookPage = {
  id: 'detectors',
  group: 'The trade',
  title: 'The diode you look through',
  lead: 'You never see the circuit. You see what a diode makes of it, and a diode with too little to do tells tall stories about the top and keeps quiet about the skirts.',
  figures: [
    {
      kind: 'detector',
      title: 'The same curve, more or less driven',
      caption:
        'Dotted: the [carrier](carrier)’s real height. Height at the top of the curve in decibels below one volt.',
      controls: { drive: 'Carrier at the diode' },
      readings: { output: 'Out of the diode', half: 'Half height is drawn at' },
    },
  ],
  blocks: [
    {
      p: 'A diode needs the best part of a volt before it is a proper switch. Given that, its output follows the height of the carrier, and half is half. Below, the current rises with the square: half of the height gives a quarter of the output. The curve on the tube looks narrower and steeper than the set is, its floor looks cleaner, and the carrier that ought to stand half way up the [slope](slope) is drawn at a quarter.',
    },
    {
      p: 'With {weakVolts} at the diode, half height is drawn at {weakHalf}. With {strongVolts} it is drawn at {strongHalf}. Anybody who sets the {halfWay} point on the first of those sets it too high by {squareError}.',
    },
    { h: 'How to know' },
    {
      p: 'Take the source down by half, that is {sixDb}. If the curve comes down to half, the diode is in its straight part. If it comes down to a quarter, it is in its [square law](squareLaw). Anything between is a bit of both. Do it whenever you look through a [probe](probe) at an early [stage](stage), where signals are small.',
    },
    {
      p: 'Then give the diode more, as long as no stage [gives out](#overload) before it. There is a window between too little and too much, and the level belongs in it. On the last [detector](detector) of a set it is wide. On a probe behind the first stage it may be narrow, and then the output that the [sheet](sheet) gives is worth having.',
    },
    { h: 'What the diode does to the circuit' },
    {
      p: 'It is a load. Each time it conducts it takes a bite, so the coil before it is broader with a diode on it than without. With strong signals a diode and its load resistor look, to the coil, like a resistor of about half that value. A weak signal meets a higher one. The set’s own diode belongs to the set and was counted in. Your probe was not.',
    },
    { h: 'Polarity' },
    {
      p: 'A diode the other way round draws the curve upside down. That is harmless, and sheets differ. But if half of an [S-curve](sCurve) or half of a video signal is missing, it is not polarity: one diode is dead.',
    },
  ],
};
