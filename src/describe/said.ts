/** What there is to be said of a line of the score, written and named; the words of its rule take from it what they need. */
import { excessOver, limitPassed } from '../base/limits.ts';
import type { ScoreLine } from '../grading/report.ts';
import { FAILED_PART } from '../grading/rules/sheetRules.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { mainResponse } from '../receiver/responses.ts';
import type { Said } from '../words/ruleWords.ts';
import type { Words } from '../words/words.ts';
import { partCalled } from './partCalled.ts';
import { slugName } from './slugName.ts';

export function saidOf(words: Words, line: ScoreLine, receiver: Receiver): Said {
  const { frequency, clock, turns, score } = words.format;
  const { measured, unit, subject } = line;
  const limit = Math.abs(line.high ?? line.low ?? 0);
  const off = beyond(words, line);
  return {
    // A level says by how much it is off: a hair is said once.
    at:
      unit === 'percent' && off === words.grading.causes.hair
        ? score.figure(measured, unit)
        : apart(words, line, (value) => score.figure(value, unit)),
    size: apart(words, line, (value) => score.figure(Math.abs(value), unit)),
    sign: measured > 0 ? 1 : measured < 0 ? -1 : 0,
    hasFigure: unit !== 'yes',
    count: measured,
    want: wanted(words, line),
    limit: unit === 'turns' ? turns(limit) : score.figure(limit, unit),
    off,
    tooHigh: limitPassed(line, measured) === 'high',
    f: frequency(line.hz ?? 0),
    toF: frequency(line.toHz ?? 0),
    level: levelOf(words, line),
    subject:
      line.rule === FAILED_PART || line.rule === 'G67' ? partCalled(words, receiver, subject ?? '') : (subject ?? ''),
    slug: subject === null ? '' : slugName(words, receiver, subject),
    when: clock(line.atSeconds ?? 0),
    hasCrystal: receiver.crystalsHz.some((crystal) => crystal === line.hz),
    parKnown: line.parUnknown !== true,
    tubeSide: sideOf(measured < 0, receiver),
    notchSide: notchSide(line, receiver),
  };
}

/** What is outside is never written like its own limit. */
function apart({ grading }: Words, line: ScoreLine, written: (value: number) => string): string {
  const { measured, low, high } = line;
  const text = written(measured);
  const passed = limitPassed(line, measured);
  const limit = passed === 'low' ? low : high;
  if (passed === null || limit === null || text !== written(limit)) return text;
  return Math.abs(measured) > Math.abs(limit) ? grading.limits.hairOver(text) : grading.limits.hairUnder(text);
}

function wanted({ grading, format }: Words, { low, high, unit }: ScoreLine): string {
  const { limits } = grading;
  const { figure } = format.score;
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

/** A level in decibels against the limit; too little to be written is a hair. */
function beyond({ grading, format }: Words, line: ScoreLine): string {
  const { decibels, percent, figure } = format.score;
  const { measured, unit, low, high } = line;
  if (unit !== 'percent') {
    const excess = Math.max(excessOver(line, measured), 0);
    return figure(excess, unit) === figure(0, unit) ? grading.causes.hair : figure(excess, unit);
  }
  const limit = (limitPassed(line, measured) === 'high' ? high : low) ?? 0;
  // Nothing at all has no decibels.
  if (measured <= 0 || limit <= 0) return percent(limit);
  const off = decibels(Math.abs(20 * Math.log10(measured / limit)));
  return off === decibels(0) ? grading.causes.hair : off;
}

/** The demand of a width ends with its level. */
function levelOf({ format }: Words, { id }: ScoreLine): string {
  const levelDb = Number(id.slice(id.lastIndexOf(':') + 1));
  return Number.isFinite(levelDb) ? format.score.decibels(levelDb) : '';
}

/** Where the notch of a wrongly set trap stands beside its pip. */
function notchSide({ cause, hz }: ScoreLine, receiver: Receiver): 'left' | 'right' | null {
  const trap = receiver.adjusters.find((adjuster) => adjuster.id === cause?.slug);
  if (cause === null || trap?.trapHz === undefined || trap.trapHz === null || trap.trapHz !== hz) return null;
  // Core in: more inductance, lower notch.
  return sideOf(cause.turns > 0, receiver);
}

function sideOf(lower: boolean, receiver: Receiver): 'left' | 'right' {
  return lower === mainResponse(receiver).setUp.lowFrequencyAtLeft ? 'left' : 'right';
}
