/** From which number an exam deals a candidate's set: as the file says that the runs are handed in by. */
import { examAttempt } from '../../files/runsFile.ts';
import type { KeptRun } from '../store/keptRuns.ts';
import { type Opened, runsOf } from './examDesk.ts';

/** The number that this candidate's set of a scenario is dealt from; null: all candidates have the set that lies in the sheet. */
export function attemptIn(exam: Opened, id: string, kept: readonly KeptRun[]): number | null {
  const { sheet, candidate, ownDeal } = exam.opened;
  const turn = runsOf(exam, kept).filter(({ scenarioId }) => scenarioId === id).length;
  return ownDeal ? examAttempt(sheet, candidate, id, turn) : null;
}
