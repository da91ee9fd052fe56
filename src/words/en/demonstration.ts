/** Words of the demonstration: what the technician sees and why he turns, and the buttons beside him. */
import type { ProofId } from '../../scenario/proofId.ts';
import { format } from './numbers.ts';

const { list } = format;

export const demonstrationWords = {
  watch: 'Watch it done',
  name: 'The technician at work',
  making: 'The technician is doing the scenario',
  makingBody: 'He works from the tube and the sheet, as you do. On a set with a failed part that takes a while.',
  made: 'Acts done so far',
  callOff: 'Back to your bench',
  sealed: 'A sealed scenario is done alone: nobody shows it.',
  failed: 'The demonstration could not be shown here.',
  said: (at: number, all: number): string => `The technician, ${at} of ${all}`,
  play: 'Play',
  pause: 'Pause',
  step: 'Next',
  back: 'Back',
  speed: 'Speed',
  speeds: { slow: 'slow', plain: 'as he works', quick: 'quick' },
  takeOver: 'Take over here',
  fromStart: 'Do it yourself',
  noMark: 'Without a mark: part of it is the technician\u2019s work.',
  taken:
    'You took over here. This is practice without a mark: part of it is the technician\u2019s work, so it earns no points and no pass, and it is not kept.',
  signed: 'Signed, without a mark',
  signedBody:
    'Part of this run is the technician\u2019s work, so it earns no points and no pass, and it is not kept. Done from the start, the run is yours.',
  toCourse: 'To the course',
  beside: {
    title: 'The technician at the same scenario',
    what: 'What he did at the same set, beside what you did: which slug first, how far, and how long it took.',
    short: 'He did not get every line inside here either.',
    lay: 'Show his run beside yours',
    callOff: 'Stop waiting',
    yours: 'Your run',
    his: 'The technician',
    figure: 'Turns made over the minutes, your run and the technician\u2019s',
    whole: (turns: string, time: string): string => `${turns}, ${time}`,
    acts: {
      safe: 'made safe',
      connect: 'leads clipped',
      setUp: 'source, markers and picture set up',
      asFound: 'lines recorded as found',
      proof: 'proofs written down',
      diagnosis: 'said what was wrong',
      hint: 'took a hint',
      helper: 'had it set up by a helper',
      signed: 'signed off',
    },
    slug: (slug: string, turns: string, inwards: boolean, made: string | null): string =>
      `${slug}, ${turns} ${inwards ? 'in' : 'out'}${made === null ? '' : ` (${made} in all, there and back)`}`,
    back: (slug: string, made: string): string => `${slug} tried and put back (${made} in all)`,
    part: (part: string): string => `${part} replaced`,
  },
  remarks: {
    safe: (mains: boolean): string =>
      mains
        ? 'The cautions first. Then the set goes on the isolating transformer, before a hand goes near the chassis.'
        : 'The cautions first. This board has no mains side.',
    clips:
      'Somebody else has put these clips on. Each comes off and goes on again: one that makes no contact looks like a fault in the set.',
    leads: (at: string): string => `The leads go where the sheet says. The sweep goes in at ${at}.`,
    source: 'Sweep source, bias and crystals as the sheet says, whatever they were left at.',
    fills: 'Y gain up until the whole trace fills the face. A small picture hides small faults.',
    faint: 'The curve hardly rises out of the noise. The level goes up until it can be phased.',
    phasing:
      'Retrace blanking off, and the phasing is swept from end to end, to find where trace and retrace lie on each other.',
    phased: 'Trace and retrace lie on each other. Blanking on again.',
    mirror: 'The pips show low frequency on the wrong side. The mirror switch turns the picture round.',
    watches: 'Hands off for a while: does the curve stand still?',
    creeps: 'It creeps: the set is still warming up. It gets ten minutes, and nothing is touched.',
    bias: (at: string, volts: string): string =>
      `Bias at ${at}: the knob is turned until the meter says ${volts}, whatever the knob\u2019s own scale says.`,
    reads: {
      outside: (line: string): string => `${line}. That is outside.`,
      close: (line: string): string => `${line}. Inside, but only just.`,
      inside: (line: string): string => `Even the worst line now reads well inside. ${line}.`,
    },
    turn: (slug: string, turns: string, inwards: boolean): string => `${slug} ${turns} ${inwards ? 'in' : 'out'}`,
    turns: (turns: readonly string[]): string => `By the notebook this should mend it: ${list(turns)}.`,
    back: (turns: readonly string[]): string => `It stood better before. Back: ${list(turns)}.`,
    tries:
      'The notebook does not fit this set as it stands. Each slug is tried a quarter turn, and stays there only where that helped.',
    stage: (at: string): string =>
      `Too much is out of place for one curve to tell which slug it is. The sweep goes in at ${at}, so that one stage shows alone.`,
    notchSought: (slug: string, hz: string): string => `Level up, and ${slug} is rocked for the lowest trace at ${hz}.`,
    notchSeen: (slug: string, hz: string, seen: string): string =>
      `The notch lies near ${seen}, and the sheet wants it at ${hz}. That is ${slug}.`,
    beat: (slug: string, off: string, above: boolean): string =>
      `The beat stands ${off} ${above ? 'above' : 'below'} the crystal. ${slug} brings it in.`,
    follows: (slugs: readonly string[]): string =>
      `The next step of the sheet: ${list(slugs)}, until the curve lies on the printed one.`,
    touchesUp: 'All slugs together once more, until the curve lies on the printed one.',
    fromStops:
      'Every core stands at its stop: somebody has screwed them all home. Half way first, where coils are wound for.',
    throughCoil: (slug: string): string =>
      `${slug} stands beyond the middle of its coil, on the wrong one of two peaks. It comes back through.`,
    line: (at: string, volts: string, wanted: string): string =>
      `The line at ${at} gives ${volts} by itself, and the sheet says ${wanted}. Something drags on it.`,
    part: (part: string): string =>
      `What shows points to ${part}. It is replaced, and the picture says whether that was it.`,
    checks: 'As near as it comes. Before anything is proved, the whole set-up is checked once more.',
    pips: 'Pips just tall enough to be seen. Tall ones bend the curve.',
    proves: {
      halveLevel:
        'Proof: level down by half, and back. Where the whole curve shrinks and keeps its shape, no stage is overloaded.',
      markersOffOn: 'Proof: pips off, and on again. Only the pips may go.',
      touchEarth:
        'Proof: the earth strap off, and on again. The hum that comes shows that the strap was doing its work.',
      swingPhase:
        'Proof: the phasing away, and back. The trace slides, and comes back to the same place: the phasing was right.',
      skirts: 'Proof: more gain, to see what the skirts do far from the middle.',
      bias: 'Proof: the meter on the bias line. The knob says what it likes; the needle says what the set gets.',
      liftCrystal: 'Proof: one crystal out, and in again. The pip that goes is that crystal\u2019s.',
      pipDown: 'Proof: more gain, to read how far down the curve is at a pip.',
    } satisfies Readonly<Record<ProofId, string>> as Readonly<Record<ProofId, string>>,
    saw: (answer: string, figure: string): string => `Written down: ${answer} ${figure}.`,
    sawOnly: (answer: string): string => `Written down: ${answer}`,
    sawNothing: 'Written down: nothing. It could not be seen.',
    diagnosis: 'Now what was wrong with the set as it was found is written down.',
    signs: 'Every line is inside and the picture is proved. Here he signs. Now it is your turn.',
    signsShort: 'He would sign here, but not every line is inside: this set got the better of him.',
  },
} as const;
