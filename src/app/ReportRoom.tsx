/** The report room: takes a kept run from the logbook, reads it like any run file and grades it anew. */

import { useEffect, useMemo, useReducer, useState } from 'preact/hooks';
import type { BenchSetup } from '../bench/setup.ts';
import { problemSentence } from '../describe/problem.ts';
import { readRunFile } from '../files/runFileSchema.ts';
import { useWords } from '../kit/hooks/useWords.ts';
import { Slip, SlipPage } from '../kit/slips/Slip.tsx';
import { Button } from '../kit/theme/art.tsx';
import { leadsOnTo } from '../present/courseTracks.ts';
import type { ShownBeside } from '../present/ports.ts';
import { toldReport } from '../present/told.ts';
import type { NextJob } from '../rooms/report/FindingsPanel.tsx';
import { ReportPage } from '../rooms/report/ReportPage.tsx';
import { onBenchOf } from '../run/onBenchOf.ts';
import { goingOn, heldBack } from '../services/handing/examDesk.ts';
import type { GradedRun } from '../services/jobs/jobTable.ts';
import { beside } from '../services/jobs/pageJobs.ts';
import { setupWith } from '../services/library/library.ts';
import { linesOf } from '../services/store/indexEntry.ts';
import type { KeptRun } from '../services/store/keptRuns.ts';
import { createCoursePort } from './coursePort.ts';
import { download, downloadText } from './download.ts';
import { ExamFirst } from './ExamGate.tsx';
import { createReportPort } from './reportPort.ts';
import type { RoomProps } from './roomProps.ts';
import { Reading, StorageSlips } from './StorageSlips.tsx';
import { useRoomLinks } from './useRoomLinks.ts';

type ReportRoomProps = RoomProps & { readonly runId: string };

/** What the logbook has of the run: null while it is being read. */
interface Found {
  readonly kept: KeptRun | null;
  readonly text: string | null;
}

export default function ReportRoom(props: ReportRoomProps) {
  const { own: shelf, wholeLogbook, runId, go } = props;
  const { exam: say } = useWords();
  const [, redraw] = useReducer<number, void>((n) => n + 1, 0);
  useEffect(() => void Promise.all([shelf.ready, wholeLogbook.ready]).then(() => redraw()), [shelf, wholeLogbook]);
  const exam = goingOn(shelf.exams());
  if (exam !== null && heldBack(shelf.exams(), wholeLogbook.keptRuns()).has(runId))
    return <ExamFirst title={say.notTold} exam={exam.hash} go={go} />;
  return <KeptReport {...props} />;
}

function KeptReport(props: ReportRoomProps) {
  const { logbook, runId, go } = props;
  const { shell, store: words } = useWords();
  const [found, setFound] = useState<Found | null>(null);
  useEffect(() => {
    let here = true;
    void logbook.readText(runId).then((text) => {
      const kept = logbook.keptRuns().find((run) => run.runId === runId) ?? null;
      if (here) setFound({ kept, text });
    });
    return () => {
      here = false;
    };
  }, [logbook, runId]);
  if (found === null) return <Reading logbook={logbook} dismissed={props.dismissed} />;
  const { kept, text } = found;
  if (kept !== null && text !== null) return <Reported {...props} kept={kept} text={text} />;
  return (
    <SlipPage
      product={shell.product}
      title={shell.reports}
      buttons={<Button onClick={() => go({ page: 'course' })}>{words.toCourse}</Button>}
    >
      <p>{kept === null ? shell.noSuchRun : words.noText}</p>
    </SlipPage>
  );
}

function Reported(props: ReportRoomProps & { readonly kept: KeptRun; readonly text: string }) {
  const { library, logbook, ahead, go, kept, text, dismissed } = props;
  const all = useWords();
  const { shell, store: words } = all;
  const links = useRoomLinks('report', { logbook, go });
  const save = (): void => download(`haystack-${kept.scenarioId}-${kept.serial}.json`, text);
  const read = useMemo(() => readRunFile(text, `${kept.runId}.json`), [text]);
  // null while the receiver is being fetched
  const [setup, setSetup] = useState<BenchSetup | 'notHere' | null>(null);
  const [graded, setGraded] = useState<GradedRun | { readonly error: unknown } | null>(null);
  useEffect(() => {
    if (!read.ok) return;
    const calledOff = new AbortController();
    const { signal } = calledOff;
    const { scenario, receiverHash, events, rules, engine } = read.value;
    const grade = async (): Promise<GradedRun | null> => {
      const today = await setupWith(library, scenario, receiverHash);
      if (signal.aborted) return null;
      const fetched = today === null ? null : onBenchOf(engine, today);
      setSetup(fetched ?? 'notHere');
      return fetched === null ? null : beside('report', { setup: fetched, events, rules }, { signal });
    };
    grade().then(setGraded, (error: unknown) => {
      if (!signal.aborted) setGraded({ error });
    });
    return () => calledOff.abort();
  }, [read]);
  // Thrown where the room's boundary hears it.
  if (graded !== null && 'error' in graded) throw graded.error;
  const port = useMemo(() => {
    if (graded === null || setup === null || setup === 'notHere' || !read.ok) return null;
    const earlier = logbook.keptRuns().filter((run) => run.scenarioId === kept.scenarioId && run.serial < kept.serial);
    const previousBest = earlier.length === 0 ? null : Math.max(...earlier.map((run) => run.total));
    const made = createReportPort(setup, read.value, graded, previousBest, {
      exportRun: save,
      save: (kind, text) => downloadText(`haystack-${kept.scenarioId}-${kept.serial}`, kind, text),
      ...(setup.scenario.sealed ? {} : { beside: besideOf(setup, kept.scenarioId, go) }),
      again: () => go({ page: 'bench', scenarioId: kept.scenarioId }),
      againApproach: ahead.approach(kept.scenarioId),
      toCourse: () => go({ page: 'course' }),
    });
    return toldReport(all, made);
  }, [graded]);
  useEffect(() => {
    if (port !== null) void logbook.fillLines(kept.runId, linesOf(port.report));
  }, [port]);
  if (!read.ok || setup === 'notHere') {
    const problem = read.ok ? null : read.problems.map((one) => problemSentence(all, one)).join('\n');
    return (
      <SlipPage
        product={shell.product}
        title={shell.reports}
        buttons={
          <>
            <Button primary onClick={save}>
              {words.report.save}
            </Button>
            <Button onClick={() => go({ page: 'course' })}>{words.toCourse}</Button>
          </>
        }
      >
        <p>{read.ok ? shell.noSuchReceiver : words.badText}</p>
        {problem === null ? null : <p class="slip-said">{problem}</p>}
      </SlipPage>
    );
  }
  if (port === null) return <SlipPage product={shell.product} title={shell.grading} busy />;
  const nextJob = nextOnCourse(
    library,
    logbook,
    all.language,
    { scenarioId: kept.scenarioId, passed: port.report.passed },
    { go, ahead },
  );
  return (
    <ReportPage
      port={port}
      links={links}
      next={nextJob}
      notices={<ReportNotices {...{ logbook, dismissed, kept, save }} />}
    />
  );
}

/** The technician at the set of the run, by the scenario that the run names. */
const besideOf = (setup: BenchSetup, scenarioId: string, go: RoomProps['go']): ShownBeside => ({
  make() {
    const calledOff = new AbortController();
    const { signal } = calledOff;
    const outcome = beside('demonstrate', { setup }, { signal }).catch((error: unknown) => {
      if (signal.aborted) return null;
      throw error;
    });
    return { outcome, callOff: () => calledOff.abort() };
  },
  watch: () => go({ page: 'shown', scenarioId }),
});

function nextOnCourse(
  library: RoomProps['library'],
  logbook: RoomProps['logbook'],
  language: string,
  done: { readonly scenarioId: string; readonly passed: boolean },
  { go, ahead }: Pick<RoomProps, 'go' | 'ahead'>,
): NextJob | null {
  const course = createCoursePort(
    library,
    logbook,
    language,
    (scenarioId) => go({ page: 'bench', scenarioId }),
    ahead.approach,
  );
  const next = leadsOnTo(course.cards(), done.scenarioId, done.passed);
  if (next === null) return null;
  const { id, code, title, language: told } = next.scenario;
  return {
    code,
    title,
    ...(told === undefined ? {} : { language: told }),
    open: () => course.open(id),
    approach: course.approach(id),
  };
}

interface ReportNoticesProps extends Pick<ReportRoomProps, 'logbook' | 'dismissed'> {
  readonly kept: KeptRun;
  readonly save: () => void;
}

/** That the run is not stored stays as long as it is true. */
function ReportNotices({ logbook, dismissed, kept, save }: ReportNoticesProps) {
  const { runId, scenarioId } = kept;
  const words = useWords().store;
  const [, redraw] = useReducer<number, void>((n) => n + 1, 0);
  useEffect(() => logbook.subscribe(() => redraw()), [logbook]);
  const stored = logbook.isStored(runId);
  return (
    <>
      {stored ? null : (
        <Slip
          urgent
          buttons={
            <>
              <Button onClick={save}>{words.report.save}</Button>
              <Button onClick={() => void logbook.storeAgain()}>{words.tryAgain}</Button>
            </>
          }
        >
          <p>{words.report.notStored}</p>
        </Slip>
      )}
      <StorageSlips {...{ logbook, dismissed, scenarioId }} saidAlready={!stored} />
    </>
  );
}
