/** A line of the score as one sentence: the figure, what was wanted, the slug to blame, and where it could have been seen. */

import type { ScoreLine } from '../grading/report.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { mainResponse } from '../receiver/responses.ts';
import type { ProofId } from '../scenario/proofId.ts';
import type { Words } from '../words/words.ts';
import { slugName, slugNameFirst } from './slugName.ts';
import { symptomSentence } from './symptomSentence.ts';

export function scoreLineSentence(words: Words, line: ScoreLine, receiver: Receiver): string {
  const { grading, format } = words;
  switch (line.block) {
    case 'response':
      return responseSentence(words, line, receiver);
    case 'truth':
      return truthSentence(words, line, receiver);
    case 'proofs': {
      const proof = grading.proofs[line.subject as ProofId];
      return line.measured === 1 ? proof.done(format.clock(line.atSeconds ?? 0)) : proof.open;
    }
    case 'care':
      return withHeld(words, line, careSentence(words, line, receiver));
    case 'economy':
      return withHeld(
        words,
        line,
        line.unit === 'turns'
          ? grading.economy.turns(format.turnsLong(line.measured), format.turns(line.high ?? 0))
          : grading.economy.time(format.clock(line.measured), format.clock(line.high ?? 0)),
      );
  }
}

/** Earned in full, as far as its own figure goes. */
export function lineIsMet(line: ScoreLine): boolean {
  return (line.low === null || line.measured >= line.low) && (line.high === null || line.measured <= line.high);
}

function responseSentence(words: Words, line: ScoreLine, receiver: Receiver): string {
  const { faults, causes } = words.grading;
  const { turns, turnsLong } = words.format;
  if (line.rule === 'G62') {
    const said = (lineIsMet(line) ? faults.cured : faults.open)(line.subject ?? '');
    const first = said.charAt(0).toUpperCase() + said.slice(1);
    return line.symptom === undefined ? first : `${first} ${symptomSentence(words, line.symptom, receiver)}`;
  }
  const { what, seen } = responseParts(words, line, receiver);
  if (lineIsMet(line)) return `${what}.`;
  if (line.part !== undefined) return causes.part(what, line.part, seen);
  if (line.cause === null) return causes.unknown(what, seen);
  const name = slugName(words, receiver, line.cause.slug);
  const size = turns(line.cause.turns) === '0' ? causes.hair : turnsLong(line.cause.turns);
  return causes.whole(what, name, size, line.cause.turns > 0 ? 'in' : 'out', seen);
}

interface Parts {
  readonly what: string;
  readonly seen: string;
}

function responseParts(words: Words, line: ScoreLine, receiver: Receiver): Parts {
  const { response: R, seen: seenAt } = words.grading;
  const { decibels, figure, offset } = words.format.score;
  const met = lineIsMet(line);
  const f = words.format.frequency(line.hz ?? 0);
  const at = figure(line.measured, line.unit);
  const want = wanted(words, line);
  switch (line.rule) {
    case 'G4':
      return { what: (met ? R.rippleInside : R.ripple)(stretch(words, line), at, want), seen: seenAt.ripple };
    case 'G5':
      return { what: tilt(words, line, met, want), seen: seenAt.tilt };
    case 'G6': {
      const off = decibels(line.measured - (line.high ?? 0));
      return {
        what: met ? R.trapInside(f, at, want) : R.trap(f, off, at, want),
        seen: beside(words, line, receiver) ?? marked(words, line, receiver),
      };
    }
    case 'G7':
      return { what: notch(words, line, met, f), seen: seenAt.notchBeside(sideOf(line.measured < 0, receiver)) };
    case 'G8':
      return { what: (met ? R.skirtInside : R.skirt)(stretch(words, line), at, want), seen: seenAt.skirt };
    case 'G9':
      return { what: width(words, line, met, want), seen: seenAt.width };
    case 'G10': {
      const side = line.measured < 0 ? R.below : R.above;
      const size = offset(line.measured);
      return { what: (met ? R.centreInside : R.centre)(f, size, side, offset(line.high ?? 0)), seen: seenAt.centre };
    }
    case 'G11': {
      const what = met ? R.gainInside(f, at, want) : R.gain(f, decibels(-line.measured), decibels(-(line.low ?? 0)));
      return { what, seen: seenAt.gain };
    }
    case 'G48':
      return { what: placed(words, line, met, f, R.peakInside, R.peak), seen: seenAt.peak };
    case 'G49':
      return { what: placed(words, line, met, f, R.zeroInside, R.zero), seen: seenAt.zero };
    case 'G50':
      return { what: met ? R.polarityInside : R.polarity, seen: seenAt.peaks };
    case 'G51':
      return { what: (met ? R.separationInside : R.separation)(at, want), seen: seenAt.peaks };
    case 'G52':
      return { what: (met ? R.symmetryInside : R.symmetry)(at, want), seen: seenAt.peaks };
    case 'G53':
      return { what: (met ? R.linearityInside : R.linearity)(stretch(words, line), at, want), seen: seenAt.straight };
    default:
      return {
        what: level(words, line, met, f, at, want),
        seen: beside(words, line, receiver) ?? marked(words, line, receiver),
      };
  }
}

type PlaceWords = (f: string, off: string, side: string, want: string) => string;

/** How far above or below its frequency something lies. */
function placed(
  { grading, format }: Words,
  line: ScoreLine,
  met: boolean,
  f: string,
  inside: PlaceWords,
  outside: PlaceWords,
): string {
  const R = grading.response;
  const { offset } = format.score;
  const side = line.measured < 0 ? R.below : R.above;
  const off = line.measured === 0 ? R.exactly : offset(line.measured);
  return (met ? inside : outside)(f, off, side, offset(line.high ?? 0));
}

function level({ grading, format }: Words, line: ScoreLine, met: boolean, f: string, at: string, want: string): string {
  const R = grading.response;
  const { decibels, percent } = format.score;
  if (met) return R.levelInside(f, at, want);
  const tooHigh = line.high !== null && line.measured > line.high;
  const limit = tooHigh ? line.high : (line.low ?? 0);
  // Nothing at all has no decibels.
  const off =
    line.measured > 0 && limit > 0 ? decibels(Math.abs(20 * Math.log10(line.measured / limit))) : percent(limit);
  const size = off === decibels(0) ? grading.causes.hair : off;
  return tooHigh ? R.levelHigh(f, size, at, want) : R.levelLow(f, size, at, want);
}

function tilt({ grading, format }: Words, line: ScoreLine, met: boolean, want: string): string {
  const R = grading.response;
  const { frequency } = format;
  const pair = grading.limits.pair(frequency(line.hz ?? 0), frequency(line.toHz ?? 0));
  const size = format.score.decibels(Math.abs(line.measured));
  const higher = frequency((line.measured > 0 ? line.hz : line.toHz) ?? 0);
  return met ? R.tiltInside(pair, size, want) : R.tilt(pair, size, higher, want);
}

function notch({ grading, format }: Words, line: ScoreLine, met: boolean, f: string): string {
  const R = grading.response;
  const { offset } = format.score;
  const side = line.measured === 0 ? '' : line.measured < 0 ? R.low : R.high;
  const size = line.measured === 0 ? R.exactly : offset(line.measured);
  return (met ? R.notchInside : R.notch)(f, size, side, offset(line.high ?? 0));
}

function width({ grading, format }: Words, line: ScoreLine, met: boolean, want: string): string {
  const R = grading.response;
  const { decibels, offset } = format.score;
  const levelDb = decibels(Number(line.id.slice(line.id.lastIndexOf(':') + 1)));
  const at = offset(line.measured);
  if (met) return R.widthInside(levelDb, at, want);
  const wide = line.high !== null && line.measured > line.high;
  const off = offset(line.measured - (wide ? (line.high ?? 0) : (line.low ?? 0)));
  return R.widthOff(levelDb, off, wide ? R.wide : R.narrow, at, want);
}

/** Where the notch of a wrongly set trap stands beside its pip; null when the line is not about that trap. */
function beside({ grading }: Words, line: ScoreLine, receiver: Receiver): string | null {
  const trap = receiver.adjusters.find((adjuster) => adjuster.id === line.cause?.slug);
  if (line.cause === null || trap?.trapHz === undefined || trap.trapHz === null || trap.trapHz !== line.hz) return null;
  // Core in: more inductance, lower notch.
  return grading.seen.notchBeside(sideOf(line.cause.turns > 0, receiver));
}

/** By the pip of a crystal where the box holds one for that frequency, else by the tunable marker. */
function marked({ grading, format }: Words, { hz }: ScoreLine, receiver: Receiver): string {
  const { pip, tunable } = grading.seen;
  const f = format.frequency(hz ?? 0);
  return receiver.crystalsHz.some((crystal) => crystal === hz) ? pip(f) : tunable(f);
}

function sideOf(lower: boolean, receiver: Receiver): 'left' | 'right' {
  return lower === mainResponse(receiver).setUp.lowFrequencyAtLeft ? 'left' : 'right';
}

function stretch({ grading, format: { frequency } }: Words, line: ScoreLine): string {
  return grading.limits.stretch(frequency(line.hz ?? 0), frequency(line.toHz ?? 0));
}

function wanted({ grading, format }: Words, line: ScoreLine): string {
  const { limits } = grading;
  const { figure } = format.score;
  const { low, high, unit } = line;
  if (low !== null && high !== null) {
    if (low === -high) return limits.within(figure(high, unit));
    return limits.between(withoutUnit(figure(low, unit), figure(high, unit)), figure(high, unit));
  }
  if (high !== null) return limits.atMost(figure(high, unit));
  return limits.atLeast(figure(low ?? 0, unit));
}

/** `44` before `56%`, `270` before `320 kHz`; left whole where the units differ. */
function withoutUnit(low: string, high: string): string {
  const unit = /[^\d.,/]+$/.exec(high)?.[0] ?? '';
  return unit !== '' && low.endsWith(unit) ? low.slice(0, -unit.length) : low;
}

function truthSentence(words: Words, line: ScoreLine, receiver: Receiver): string {
  const T = words.grading.truth;
  const { frequency } = words.format;
  const { decibels, degrees, offset, percent, volts } = words.format.score;
  const met = lineIsMet(line);
  const want = wanted(words, line);
  const judged = (about: { readonly name: string }, sentence: string): string =>
    line.held === 'noPicture' ? T.noPicture(about.name) : sentence;
  switch (line.rule) {
    case 'G13': {
      const at = degrees(Math.abs(line.measured));
      return judged(T.phasing, met ? T.phasing.good(at) : T.phasing.bad(at, want));
    }
    case 'G14':
      return judged(T.blanking, met ? T.blanking.good : T.blanking.bad);
    case 'G15': {
      const at = volts(Math.abs(line.measured));
      return (met ? T.bias.good : T.bias.bad)(line.subject ?? '', at, want);
    }
    case 'G16': {
      const at = decibels(line.measured);
      return judged(T.strong, met ? T.strong.good(at) : T.strong.bad(at, want));
    }
    case 'G17':
      return met ? T.weak.good(percent(line.measured)) : T.weak.bad(percent(line.measured), want);
    case 'G18':
      return judged(T.cover, met ? T.cover.good : T.cover.bad);
    case 'G19':
      return judged(T.direction, met ? T.direction.good : T.direction.bad);
    case 'G20':
      return met ? T.markers.good : T.markers.bad(line.measured, frequency(line.hz ?? 0));
    case 'G21': {
      const at = percent(line.measured);
      return judged(
        T.pips,
        met ? T.pips.good(at) : line.measured < (line.low ?? 0) ? T.pips.low : T.pips.high(at, want),
      );
    }
    case 'G22':
      return judged(T.added, met ? T.added.good : T.added.bad);
    case 'G23':
      return met ? T.rf.good : T.rf.bad;
    case 'G24':
      return met ? T.termination.good : T.termination.bad;
    case 'G25':
      return met ? T.y.good : T.y.bad;
    case 'G26':
      return met ? T.earth.good : T.earth.bad;
    case 'G54': {
      if (line.unit === 'yes') return met ? T.source.good : T.source.bad;
      const at = offset(line.measured);
      return met ? T.source.carrierGood(at, want) : T.source.carrierBad(frequency(line.hz ?? 0), at, want);
    }
    case 'G55':
      return judged(T.coupling, met ? T.coupling.good : T.coupling.bad);
    case 'G56': {
      const at = degrees(line.measured);
      return judged(T.lag, met ? T.lag.good(at) : T.lag.bad(at, want));
    }
    case 'G57':
      return judged(T.hum, met ? T.hum.good : T.hum.bad(percent(line.measured), want));
    case 'G58':
      return judged(T.steel, met ? T.steel.good : T.steel.bad(slugName(words, receiver, line.subject ?? '')));
    case 'G59':
      return met ? T.dial.good(offset(line.measured)) : T.dial.bad(offset(line.measured), want);
    case 'G60':
      return judged(T.speed, met ? T.speed.good : T.speed.bad(percent(line.measured), want));
    case 'G61':
      return (met ? T.clamp.good : T.clamp.bad)(line.subject ?? '');
    default:
      throw new Error(`no words for the rule ${line.rule}`);
  }
}

const CARE_OF_RULE = {
  G28: 'order',
  G29: 'live',
  G30: 'tools',
  G31: 'stops',
  G32: 'cracked',
  G33: 'parts',
} as const;

function careSentence(words: Words, line: ScoreLine, receiver: Receiver): string {
  const { care } = words.grading;
  const { clock } = words.format;
  const kind = CARE_OF_RULE[line.rule as keyof typeof CARE_OF_RULE];
  if (kind === undefined) throw new Error(`no words for the rule ${line.rule}`);
  const say = care[kind];
  if (line.measured === 0) return say.good;
  const subject = line.subject === null ? '' : slugName(words, receiver, line.subject);
  const sentence = say.bad(care.times(line.measured), clock(line.atSeconds ?? 0), subject);
  return line.rule === 'G32' && line.subject !== null
    ? say.bad('', clock(line.atSeconds ?? 0), slugNameFirst(words, receiver, line.subject))
    : sentence;
}

function withHeld({ grading }: Words, line: ScoreLine, sentence: string): string {
  if (line.held !== 'workLeft') return sentence;
  return `${sentence} ${line.points === 0 ? grading.economy.held : grading.economy.heldInPart}`;
}
