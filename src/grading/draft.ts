/** A line of the score before the block's points are shared out: its weight in the block, and how much of it was earned. */
import type { Block, ScoreLine } from './report.ts';

export interface DraftLine {
  readonly id: string;
  readonly rule: string;
  readonly block: Block;
  readonly response?: string;
  /** weight among the lines of the block */
  readonly weight: number;
  /** 0 to 1 */
  readonly earned: number;
  readonly measured: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: ScoreLine['unit'];
  readonly hz?: number | null;
  readonly toHz?: number | null;
  readonly subject?: string | null;
  readonly atSeconds?: number | null;
  readonly cause?: ScoreLine['cause'];
  readonly part?: string;
  readonly parUnknown?: true;
  readonly pointsOnly?: true;
  readonly symptom?: ScoreLine['symptom'];
  /** why less than `measured` would earn is paid: see ScoreLine.held */
  readonly held?: ScoreLine['held'];
}
