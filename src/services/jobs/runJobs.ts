/** The jobs that grade a run: all they need is in their order, so that a page without workers can do them itself. */
import { blindTurns } from '../../grading/blindTurns.ts';
import { grade } from '../../grading/grade.ts';
import type { JobTable } from './jobTable.ts';

type RunJob = 'grade' | 'report';

export const RUN_JOBS: { readonly [N in RunJob]: (order: JobTable[N]['order']) => JobTable[N]['outcome'] } = {
  grade: ({ setup, events }) => grade(setup, events),
  report: ({ setup, events }) => ({ report: grade(setup, events), blind: blindTurns(setup, events) }),
};
