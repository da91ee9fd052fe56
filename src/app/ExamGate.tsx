/** Before a bench: whether an exam that is going on lets this scenario be done now, and what it then demands of the run. */
import type { ComponentChildren } from 'preact';
import { useEffect, useReducer, useState } from 'preact/hooks';
import { useWords } from '../kit/hooks/useWords.ts';
import { SlipPage } from '../kit/slips/Slip.tsx';
import { Button } from '../kit/theme/art.tsx';
import { clockTime } from '../present/clockTime.ts';
import { attemptIn, gateOf, goingOn } from '../services/handing/examDesk.ts';
import type { RoomProps } from './roomProps.ts';

/** What an exam demands of a run. */
export interface ExamDemands {
  readonly hash: string;
  readonly candidate: string;
  /** the number that the set is dealt from; null: as it lies in the sheet */
  readonly attempt: number | null;
  /** the day's clock; null: no limit */
  readonly endsAtMs: number | null;
}

interface ExamGateProps extends RoomProps {
  readonly scenarioId: string;
  /** null: no exam has to do with this scenario */
  readonly children: (exam: ExamDemands | null) => ComponentChildren;
}

export function ExamGate({ own: shelf, logbook, scenarioId, go, children }: ExamGateProps) {
  const { shell, store, exam: say } = useWords();
  // What is demanded stays as it was when the bench was entered: the run that is signed here must not change it.
  const [demands, setDemands] = useState<ExamDemands | string | null | undefined>(undefined);
  useEffect(() => {
    let here = true;
    void Promise.all([shelf.ready, logbook.ready]).then(() => {
      if (here) setDemands(demanded());
    });
    return () => {
      here = false;
    };
  }, []);
  const demanded = (): ExamDemands | string | null => {
    const exam = goingOn(shelf.exams());
    if (exam === null || !exam.opened.scenarios.includes(scenarioId)) return null;
    const { hash, minutes, opened } = exam;
    const kept = logbook.keptRuns();
    const gate = gateOf(exam, scenarioId, kept, Date.now());
    const lies = logbook.openRuns().some((run) => run.scenarioId === scenarioId);
    // What lies on the bench when the time is up is graded as it stands.
    if (gate.kind !== 'open' && !(gate.kind === 'timeUp' && lies)) return hash;
    const attempt = attemptIn(exam, scenarioId, kept);
    const endsAtMs = minutes === null ? null : opened.openedAtMs + minutes * 60_000;
    return { hash, candidate: opened.candidate, attempt, endsAtMs };
  };
  if (demands === undefined) return <main aria-busy="true" />;
  if (typeof demands === 'string')
    return (
      <SlipPage
        product={shell.product}
        title={say.notNow}
        buttons={
          <>
            <Button primary onClick={() => go({ page: 'exam', exam: demands.slice(0, 16) })}>
              {say.toExam}
            </Button>
            <Button onClick={() => go({ page: 'course' })}>{store.toCourse}</Button>
          </>
        }
      />
    );
  return <>{children(demands)}</>;
}

interface ExamClockProps {
  readonly endsAtMs: number;
  /** called once, when nothing is left */
  readonly over: () => void;
}

/** At the bench's lower edge, where nothing of it stands. */
export function ExamClock({ endsAtMs, over }: ExamClockProps) {
  const { exam: say } = useWords();
  const [, tick] = useReducer<number, void>((n) => n + 1, 0);
  useEffect(() => {
    const timer = setInterval(() => {
      tick();
      if (Date.now() < endsAtMs) return;
      clearInterval(timer);
      over();
    }, 500);
    return () => clearInterval(timer);
  }, [endsAtMs]);
  return (
    <div class="exam-clock" role="timer">
      {say.clock(clockTime(endsAtMs - Date.now()))}
    </div>
  );
}
