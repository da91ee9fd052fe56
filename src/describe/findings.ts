/** Three to five findings for the top of a report: what went well, what to look at again (with the time to jump to), what to do next. */
import type { IncidentKind } from '../bench/benchState.ts';
import type { BlindTurn } from '../grading/blindTurns.ts';
import { BLOCKS, type Block, type Cap, type Report, type ScoreLine } from '../grading/report.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { capWords, findingWords as F } from '../words/en/grading.ts';
import { clock, turns, turnsLong } from '../words/en/numbers.ts';
import { adviceFor } from './advice.ts';
import { lineIsMet, scoreLineSentence } from './scoreLine.ts';
import { slugName } from './slugName.ts';

export interface Finding {
  readonly tone: 'wellDone' | 'lookAgain' | 'next';
  readonly text: string;
  /** a moment of the run to jump to; null = none */
  readonly atSeconds: number | null;
}

const MOST_LOOKS = 2;
const MOSTLY = 0.75;

export function findings(report: Report, receiver: Receiver, blind: readonly BlindTurn[] = []): readonly Finding[] {
  const praise = praises(report).slice(0, 2);
  const looks = [
    ...report.caps.map(capFinding),
    ...worstBlind(report, receiver, blind),
    ...worstLines(report, receiver),
  ].slice(0, MOST_LOOKS);
  return [...praise, ...looks, nextFinding(report)];
}

function praises(report: Report): readonly Finding[] {
  const well = (text: string): Finding => ({ tone: 'wellDone', text, atSeconds: null });
  const full = (block: Block): boolean => report.blocks[block].max > 0 && linesOf(report, block).every(lineIsMet);
  const response = linesOf(report, 'response');
  const met = response.filter(lineIsMet).length;
  const found: Finding[] = [];
  if (response.length > 0 && met === response.length) found.push(well(F.everyLine));
  else if (2 * met > response.length) found.push(well(F.mostLines(met, response.length)));
  const { truth } = report.blocks;
  if (full('truth') && !linesOf(report, 'truth').some((line) => line.held)) found.push(well(F.setUpTrue));
  else if (truth.max > 0 && truth.points >= MOSTLY * truth.max) found.push(well(F.mostlyTrue));
  if (full('proofs')) found.push(well(F.allProofs));
  if (full('care') && report.turns > 0) found.push(well(F.allCare));
  if (report.turns > 0 && report.turns <= report.parTurns && report.passed) {
    found.push(well(F.underPar(turnsLong(report.turns), turns(report.parTurns))));
  }
  return found.length === 0 ? [well(F.began)] : found;
}

function capFinding(cap: Cap): Finding {
  const kind: IncidentKind = cap.rule === 'G38' ? 'hotChassis' : 'hotTouch';
  const words = capWords[kind];
  if (words === undefined) throw new Error(`no words for the cap ${cap.rule}`);
  return { tone: 'lookAgain', text: words(cap.limit, clock(cap.atSeconds)), atSeconds: cap.atSeconds };
}

/** The longest turn by a lying picture, where the curve suffered for it. */
function worstBlind(report: Report, receiver: Receiver, blind: readonly BlindTurn[]): readonly Finding[] {
  if (linesOf(report, 'response').every(lineIsMet)) return [];
  const worst = [...blind].sort((a, b) => Math.abs(b.turns) - Math.abs(a.turns))[0];
  if (worst === undefined) return [];
  const text = F.blind[worst.lie](clock(worst.atSeconds), slugName(receiver, worst.slug), turnsLong(worst.turns));
  return [{ tone: 'lookAgain', text, atSeconds: worst.atSeconds }];
}

/** The lines that lost most, one for each block so that they do not all say the same. */
function worstLines(report: Report, receiver: Receiver): readonly Finding[] {
  const seen = new Set<Block>();
  const lost = [...report.lines]
    .filter((line) => !lineIsMet(line) || line.held === 'noPicture')
    .sort((a, b) => b.max - b.points - (a.max - a.points));
  const found: Finding[] = [];
  for (const line of lost) {
    if (seen.has(line.block)) continue;
    seen.add(line.block);
    const text = `${scoreLineSentence(line, receiver)} ${adviceFor(line)}`;
    found.push({ tone: 'lookAgain', text, atSeconds: line.atSeconds });
  }
  return found;
}

function nextFinding(report: Report): Finding {
  const loss = (block: Block): number => report.blocks[block].max - report.blocks[block].points;
  const worst = [...BLOCKS].sort((a, b) => loss(b) - loss(a))[0]!;
  return { tone: 'next', text: loss(worst) < 1 ? F.next.perfect : F.next[worst], atSeconds: null };
}

function linesOf(report: Report, block: Block): readonly ScoreLine[] {
  return report.lines.filter((line) => line.block === block);
}
