/** Words of the report page: names and short notes. The sentences of reasons and findings are in the files of the rules. */
import type { IncidentKind } from '../../bench/benchState.ts';
import type { Block, Report, ResultWord, ScoreLine, VerdictId } from '../../grading/report.ts';
import { format } from './numbers.ts';

const { clock, counted, frequency, turns: turnsOf, turnsLong, written } = format;

export const blockNames: Readonly<Record<Block, string>> = {
  response: 'Response',
  truth: 'Set-up',
  proofs: 'Findings',
  care: 'Care',
  economy: 'Economy',
};

/** Our ladder, from bare straw to a full stack. */
const resultWords: Readonly<Record<ResultWord, string>> = {
  stubble: 'Stubble',
  swath: 'Swath',
  windrow: 'Windrow',
  haycock: 'Haycock',
  haystack: 'Haystack',
};

export const incidentNames: Readonly<Record<IncidentKind, string>> = {
  hotChassis: 'live chassis without the isolating transformer',
  wrongPowerOrder: 'lead, part or isolating transformer handled with the set on',
  beforeEarth: 'lead clipped on before the earth strap',
  steelTool: 'steel tool in a slug',
  wrongHead: 'wrong tool for the slug',
  forcedStop: 'slug forced past its stop',
  crackedSlug: 'slug cracked',
  hotTouch: 'lead on the high tension',
  goodPartReplaced: 'good part replaced',
};

/** As the lines of the score write it: one decimal where it matters; of per cent only under ten. */
const brief = (value: number, unit: ScoreLine['unit']): string =>
  written(value, (unit === 'percent' && Math.abs(value) >= 9.95) || Math.abs(value - Math.round(value)) < 0.05 ? 0 : 1);

const tenths = (value: number): string => written(value, Math.abs(value - Math.round(value)) < 0.05 ? 0 : 1);

/** "52 to 68", "8 or less", "at least 90": limits without their unit. */
function limits({ low, high, unit }: Pick<ScoreLine, 'low' | 'high' | 'unit'>): string {
  if (low !== null && high !== null) return `${brief(low, unit)} to ${brief(high, unit)}`;
  if (high !== null) return `${brief(high, unit)} or less`;
  return low === null ? 'anything' : `${brief(low, unit)} or more`;
}

export const reportWords = {
  /** for those who see the room for the first time */
  room: 'What the run was worth, line by line, and why. The figure shows the curve as found and as left; the replay plays the run again.',
  curves: 'Curves of the report',
  page: (code: string, set: string): string => `${code}, ${set}`,
  learner: (name: string): string => `run by ${name}`,
  exportRun: 'Export run file',
  again: 'Try again',
  toCourse: 'To the course',
  nextJob: 'Next on the course',
  asFound: 'as found',
  asLeft: 'as left',
  tolerance: 'tolerance',
  frequency,
  wants: (line: ScoreLine): string =>
    line.unit === 'db'
      ? `${written(line.measured, 1)} dB, wanted ${limits(line)}`
      : `${brief(line.measured, line.unit)}%, wanted ${limits(line)}`,
  met: 'met',
  missed: 'missed',
  figure: (title: string): string => `${title}: the response as found and as left, with the tolerance on the sheet`,
  figurePoints: 'Points of the sheet',
  score: 'Score',
  of100: 'of 100',
  verdicts: 'Four verdicts',
  verdictsNote: 'A set is signed off when all four stand. The points say how well it was done.',
  stamps: {
    aligned: { name: 'Aligned', stands: 'Every line of the sheet is inside its limits on the true response.' },
    true: { name: 'True', stands: 'Nothing on the bench made the picture lie.' },
    proved: {
      name: 'Proved',
      stands: 'Every proof was done after the last turn, and what was seen was written down correctly.',
    },
    safe: { name: 'Safe', stands: 'No breach of safety.' },
  } satisfies Record<VerdictId, { readonly name: string; readonly stands: string }>,
  stamp: (name: string, stands: boolean): string => `${name}: ${stands ? 'stands' : 'does not stand yet'}`,
  moreLacks: (count: number): string =>
    count === 1 ? 'One more line, in the list below.' : `${count} more lines, in the list below.`,
  wanting: {
    proof:
      'Enough points to pass, but nothing was proved after the last turn: a curve that is not proved does not pass.',
    part: 'Enough points to pass, but a failed part is still in the set.',
    work: 'Enough points to pass, but too little of what was wrong has been put right.',
  } satisfies Record<Report['wanting'][number], string>,
  verdict: ({ passed, word }: Pick<Report, 'passed' | 'word'>): string =>
    `${passed ? 'Passed' : 'Not passed yet'}: ${resultWords[word].toLowerCase()}`,
  against: (total: number, before: number | null): string | null =>
    before === null
      ? null
      : total > before
        ? `best so far, up ${total - before}`
        : total === before
          ? 'as good as your best'
          : `your best is ${before}`,
  /** par null: nobody has certified the job */
  turns: (turns: number, par: number | null): string =>
    `${turnsLong(turns)}${par === null ? '' : `, par ${turnsOf(par)}`}`,
  time: (seconds: number, par: number | null): string =>
    `${clock(seconds)} on the bench${par === null ? '' : `, par ${clock(par)}`}`,
  capped: (limit: number, kind: string, at: string): string => `Limited to ${limit}: ${kind}, at ${at}`,
  helped: (minutes: number): string =>
    `A helper set this bench up: no points for the set-up, and ${counted(minutes, { one: 'minute', other: 'minutes' })} added to the time.`,
  blockPoints: (points: number, max: number): string => `${tenths(points)}/${tenths(max)}`,
  stack: (word: ResultWord): string => `The stack so far: ${resultWords[word]}`,
  findings: 'Findings',
  proofsAndFindings: 'Findings and proofs',
  saveLines: 'Save the lines as CSV',
  saveFigure: 'Save the figure as SVG',
  goTo: (seconds: number): string => `Show ${clock(seconds)} in the replay`,
  clock,
  replay: 'The run, replayed',
  replayTube: (at: string, seen: string): string => `The tube at ${at}. ${seen}`,
  play: 'Play',
  pause: 'Pause',
  back: 'Previous action',
  forward: 'Next action',
  speed: 'Speed',
  times: (n: number): string => `\u00d7${n}`,
  scrub: 'Time in the run',
  scrubValue: (at: string, phase: string): string => `${at}, ${phase}`,
  spell: (letter: string, turns: number, at: string): string =>
    `${at}, slug ${letter}, ${turnsOf(turns) === '0' ? 'tried and put back' : `${turnsLong(Math.abs(turns))} ${turns < 0 ? 'out' : 'in'}`}`,
  incident: (kind: IncidentKind, at: string): string => `${at}, ${incidentNames[kind]}`,
  acts: 'Turns and mishaps in order',
  turnsMark: (turns: number): string =>
    turnsOf(turns) === '0' ? '' : `${turns > 0 ? '+' : '\u2212'}${turnsOf(turns)}`,
  allLines: (count: number): string => `All ${count} lines`,
  lines: (count: number): string => `Every line of the score: ${count}`,
  rule: 'Rule',
  reason: 'Reason',
  points: 'Points',
  linePoints: (points: number, max: number): string => `${written(points, 1)} / ${written(max, 1)}`,
} as const;
