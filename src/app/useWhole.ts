/** The report of an exam that has been handed in: each of its runs judged once more from its acts, by the same call as in a class. */

import { useEffect, useState } from 'preact/hooks';
import type { SheetTerms } from '../files/eveningTerms.ts';
import { classRows } from '../judge/classList.ts';
import { type Whole, wholeOf } from '../judge/whole.ts';
import { useFailure } from '../kit/hooks/useFailure.ts';
import { runsOf } from '../services/handing/examDesk.ts';
import { pageJobs } from '../services/jobs/pageJobs.ts';
import type { Logbook } from '../services/store/logbook.ts';
import type { OpenedExam, OwnExam } from '../services/store/ownExam.ts';
import type { Words } from '../words/words.ts';

export function termsOf({ scenarios, minutesEach, passMark }: OpenedExam): SheetTerms {
  return {
    scenarios: [...scenarios],
    ...(minutesEach === null ? {} : { minutesEach: [...minutesEach] }),
    ...(passMark === null ? {} : { passMark }),
  };
}

/** null: nothing has been handed in */
export function useWhole(exam: OwnExam | null, logbook: Logbook, words: Words): Whole | 'working' | null {
  const [whole, setWhole] = useState<Whole | 'working' | null>(null);
  const fail = useFailure();
  const handedIn = exam?.opened?.handedIn === true ? exam.hash : null;
  useEffect(() => {
    if (exam?.opened == null || handedIn === null) return;
    const { opened } = exam;
    const calledOff = new AbortController();
    const { signal } = calledOff;
    setWhole('working');
    const judge = async (): Promise<Whole> => {
      const files = [];
      for (const [i, { runId }] of runsOf({ ...exam, opened }, logbook.keptRuns()).entries()) {
        const text = await logbook.readText(runId);
        if (text === null) continue;
        const file = `${i + 1}.json`;
        const judged = await pageJobs().run('judge', { text, file }, { signal });
        files.push({ no: i + 1, file, judged });
      }
      return wholeOf(
        termsOf(opened),
        classRows(words, files).map((row) => ({ ...row, shared: false })),
      );
    };
    judge().then(
      (made) => {
        if (!signal.aborted) setWhole(made);
      },
      (error: unknown) => {
        if (!signal.aborted) fail(error);
      },
    );
    return () => calledOff.abort();
  }, [handedIn]);
  return whole;
}
