/** Three to five findings for the top of a report: what went well, what to look at again (with the time to jump to), what to do next. */
import type { BlindTurn } from '../grading/blindTurns.ts';
import { BLOCKS, type Block, type Cap, lineIsMet, type Report, type ScoreLine } from '../grading/report.ts';
import { FAILED_PART } from '../grading/rules/sheetRules.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { Words } from '../words/words.ts';
import { adviceFor } from './advice.ts';
import { capWords } from './ruleWords.ts';
import { scoreLineSentence } from './scoreLine.ts';
import { slugName } from './slugName.ts';

export interface Finding {
  readonly tone: 'wellDone' | 'lookAgain' | 'next';
  readonly text: string;
  /** a moment of the run to jump to; null = none */
  readonly atSeconds: number | null;
}

const MOST_LOOKS = 2;
const MOSTLY = 0.75;

export function findings(
  words: Words,
  report: Report,
  receiver: Receiver,
  blind: readonly BlindTurn[] = [],
): readonly Finding[] {
  const praise = praises(words, report).slice(0, 2);
  const looks = [
    ...report.caps.map((cap) => capFinding(words, cap)),
    ...worstBlind(words, report, receiver, blind),
    ...worstLines(words, report, receiver),
  ].slice(0, MOST_LOOKS);
  return [...praise, ...looks, nextFinding(words, report)];
}

function praises({ grading, format }: Words, report: Report): readonly Finding[] {
  const say = grading.findings;
  const well = (text: string): Finding => ({ tone: 'wellDone', text, atSeconds: null });
  const full = (block: Block): boolean => report.blocks[block].max > 0 && linesOf(report, block).every(lineIsMet);
  const response = linesOf(report, 'response');
  const met = response.filter(lineIsMet).length;
  const found: Finding[] = [];
  if (response.length > 0 && met === response.length) found.push(well(say.everyLine));
  else if (2 * met > response.length) found.push(well(say.mostLines(met, response.length)));
  const { truth } = report.blocks;
  if (full('truth') && !linesOf(report, 'truth').some((line) => line.held)) found.push(well(say.setUpTrue));
  else if (truth.max > 0 && truth.points >= MOSTLY * truth.max) found.push(well(say.mostlyTrue));
  if (full('proofs')) found.push(well(say.allProofs));
  if (full('care') && report.turns > 0) found.push(well(say.allCare));
  if (report.parUnknown !== true && report.turns > 0 && report.turns <= report.parTurns && report.passed) {
    found.push(well(say.underPar(format.turnsLong(report.turns), format.turns(report.parTurns))));
  }
  return found.length === 0 ? [well(say.began)] : found;
}

function capFinding(words: Words, { rule, limit, atSeconds }: Cap): Finding {
  const text = capWords(words, rule).capped(limit, words.format.clock(atSeconds));
  return { tone: 'lookAgain', text, atSeconds };
}

/** The longest turn by a lying picture, where the curve suffered for it. */
function worstBlind(words: Words, report: Report, receiver: Receiver, blind: readonly BlindTurn[]): readonly Finding[] {
  if (linesOf(report, 'response').every(lineIsMet)) return [];
  const worst = [...blind].sort((a, b) => Math.abs(b.turns) - Math.abs(a.turns))[0];
  if (worst === undefined) return [];
  const { clock, turnsLong } = words.format;
  const say = words.grading.findings.blind[worst.lie];
  const text = say(clock(worst.atSeconds), slugName(words, receiver, worst.slug), turnsLong(worst.turns));
  return [{ tone: 'lookAgain', text, atSeconds: worst.atSeconds }];
}

/** The lines that lost most, one for each block so that they do not all say the same. */
function worstLines(words: Words, report: Report, receiver: Receiver): readonly Finding[] {
  const seen = new Set<Block>();
  const lost = [...report.lines]
    .filter((line) => !lineIsMet(line) || line.held === 'noPicture')
    .sort((a, b) => b.max - b.points - (a.max - a.points));
  const found: Finding[] = [];
  for (const line of lost) {
    if (seen.has(line.block)) continue;
    seen.add(line.block);
    const text = `${scoreLineSentence(words, line, receiver)} ${adviceFor(words, line)}`;
    found.push({ tone: 'lookAgain', text, atSeconds: line.atSeconds });
  }
  return found;
}

function nextFinding({ grading }: Words, report: Report): Finding {
  const { next } = grading.findings;
  // Nobody is told to do better what a helper did.
  const loss = (block: Block): number =>
    report.helped === true && block === 'truth' ? 0 : report.blocks[block].max - report.blocks[block].points;
  const worst = [...BLOCKS].sort((a, b) => loss(b) - loss(a))[0]!;
  const advice = (): string => {
    if (loss(worst) < 1) return next.perfect;
    // No slug makes up for it, in whatever order they are taken.
    if (linesOf(report, 'response').some((line) => line.rule === FAILED_PART && !lineIsMet(line))) return next.part;
    if (worst !== 'economy') return next[worst];
    // Few turns cost nothing: what they leave undone does.
    const lost = linesOf(report, worst).filter((line) => line.points < line.max);
    if (report.turns > report.parTurns) return next.economy;
    if (!lost.every((line) => line.held === 'workLeft')) return next.time;
    return linesOf(report, 'response').every(lineIsMet) ? next.closer : next.response;
  };
  return { tone: 'next', text: advice(), atSeconds: null };
}

function linesOf(report: Report, block: Block): readonly ScoreLine[] {
  return report.lines.filter((line) => line.block === block);
}
