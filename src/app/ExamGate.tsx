/** Before a bench: whether an exam that is going on lets this scenario be done now, and what it then demands of the run. */
import type { ComponentChildren } from 'preact';
import { useEffect, useReducer, useState } from 'preact/hooks';
import { useWords } from '../kit/hooks/useWords.ts';
import { SlipPage } from '../kit/slips/Slip.tsx';
import { Button } from '../kit/theme/art.tsx';
import { clockTime } from '../present/clockTime.ts';
import { attemptIn } from '../services/handing/examDeal.ts';
import { gateOf, goingOn, timeOnBench } from '../services/handing/examDesk.ts';
import type { RoomProps } from './roomProps.ts';

/** What an exam demands of a run. */
export interface ExamDemands {
  readonly hash: string;
  readonly candidate: string;
  /** the number that the set is dealt from; null: as it lies in the sheet */
  readonly attempt: number | null;
  /** the day's clock; null: no limit */
  readonly endsAtMs: number | null;
  /** on the bench's own clock; null: no time is stated for this scenario */
  readonly onBenchMs: number | null;
  /** what the run was worth is told when the exam is handed in */
  readonly heldBack: boolean;
}

interface ExamGateProps extends RoomProps {
  readonly scenarioId: string;
  /** null: no exam has to do with this scenario */
  readonly children: (exam: ExamDemands | null) => ComponentChildren;
}

export function ExamGate({ own: shelf, wholeLogbook: logbook, scenarioId, go, children }: ExamGateProps) {
  const { exam: say } = useWords();
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
    const onBenchMs = timeOnBench(exam, scenarioId);
    return { hash, candidate: opened.candidate, attempt, endsAtMs, onBenchMs, heldBack: opened.results === 'atEnd' };
  };
  if (demands === undefined) return <main aria-busy="true" />;
  if (typeof demands === 'string') return <ExamFirst title={say.notNow} exam={demands} go={go} />;
  return <>{children(demands)}</>;
}

interface ExamFirstProps {
  readonly title: string;
  /** hash of the exam */
  readonly exam: string;
  readonly go: RoomProps['go'];
}

/** In the place of what the exam does not allow now. */
export function ExamFirst({ title, exam, go }: ExamFirstProps) {
  const { shell, store, exam: say } = useWords();
  return (
    <SlipPage
      product={shell.product}
      title={title}
      buttons={
        <>
          <Button primary onClick={() => go({ page: 'exam', exam: exam.slice(0, 16) })}>
            {say.toExam}
          </Button>
          <Button onClick={() => go({ page: 'course' })}>{store.toCourse}</Button>
        </>
      }
    />
  );
}

interface ExamShutProps extends Pick<RoomProps, 'own' | 'go'> {
  readonly title: string;
  /** shut for this scenario alone; null: for as long as any exam is going on */
  readonly scenarioId: string | null;
  readonly children: ComponentChildren;
}

/** Round a room that shows how a scenario stands or is done. */
export function ExamShut({ own: shelf, go, title, scenarioId, children }: ExamShutProps) {
  const [read, setRead] = useState(false);
  const [, redraw] = useReducer<number, void>((n) => n + 1, 0);
  useEffect(() => {
    void shelf.ready.then(() => setRead(true));
    return shelf.subscribe(() => redraw());
  }, [shelf]);
  if (!read) return <main aria-busy="true" />;
  const exam = goingOn(shelf.exams());
  const shut = exam !== null && (scenarioId === null || exam.opened.scenarios.includes(scenarioId));
  return shut ? <ExamFirst title={title} exam={exam.hash} go={go} /> : children;
}

interface ExamClockProps {
  /** the day's clock; null: no limit */
  readonly endsAtMs: number | null;
  /** milliseconds left for the run on this bench; null: no time is stated for it */
  readonly leftOnBench: (() => number) | null;
  /** called once, when nothing is left */
  readonly over: () => void;
}

/** At the bench's lower edge, where nothing of it stands. */
export function ExamClock({ endsAtMs, leftOnBench, over }: ExamClockProps) {
  const { exam: say } = useWords();
  const [, tick] = useReducer<number, void>((n) => n + 1, 0);
  useEffect(() => {
    const timer = setInterval(() => {
      tick();
      if (Date.now() < (endsAtMs ?? Number.POSITIVE_INFINITY) && (leftOnBench?.() ?? 1) > 0) return;
      clearInterval(timer);
      over();
    }, 500);
    return () => clearInterval(timer);
  }, [endsAtMs, leftOnBench]);
  return (
    <div class="exam-clock" role="timer">
      {leftOnBench === null ? null : <p>{say.clockOnBench(clockTime(leftOnBench()))}</p>}
      {endsAtMs === null ? null : <p>{say.clock(clockTime(endsAtMs - Date.now()))}</p>}
    </div>
  );
}
