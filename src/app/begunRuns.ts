/** The open runs that lie on the bench, for whoever offers them. */
import type { OpenHead } from '../services/store/keptRuns.ts';
import type { Logbook } from '../services/store/logbook.ts';

/** Runs that lie on the bench. Where only the briefing was opened and put aside nothing has begun: the course offers what it offered before. */
export function begunRuns(logbook: Pick<Logbook, 'openRuns'>): readonly OpenHead[] {
  return logbook.openRuns().filter(({ elapsedMs }) => elapsedMs > 0);
}
