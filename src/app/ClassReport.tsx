/** The report and replay of a run of the class. It stays out of the learner's own logbook unless it is asked for. */

import { useEffect, useMemo, useState } from 'preact/hooks';
import { useFailure } from '../kit/hooks/useFailure.ts';
import { useWords } from '../kit/hooks/useWords.ts';
import { Slip, SlipPage } from '../kit/slips/Slip.tsx';
import { Button } from '../kit/theme/art.tsx';
import { toldReport } from '../present/told.ts';
import { ReportPage } from '../rooms/report/ReportPage.tsx';
import type { DeskFile } from '../services/classroom/classDesk.ts';
import { freshId } from '../services/store/freshId.ts';
import { entryOfReport } from '../services/store/indexEntry.ts';
import { type ClassRun, readClassRun } from './classRun.ts';
import { download, downloadText } from './download.ts';
import { createReportPort } from './reportPort.ts';
import type { RoomProps } from './roomProps.ts';
import { useRoomLinks } from './useRoomLinks.ts';

type ClassReportProps = RoomProps & { readonly file: DeskFile | null };

export function ClassReport(props: ClassReportProps) {
  const { library, logbook, file, go } = props;
  const words = useWords();
  const { shell, classroom: say } = words;
  const links = useRoomLinks('class', { logbook, go });
  const back = (): void => go({ page: 'class', fileNo: null });
  // A sentence: why there is no report.
  const [read, setRead] = useState<ClassRun | string | null>(file === null ? say.gone : null);
  const fail = useFailure();
  const [kept, setKept] = useState(false);
  useEffect(() => {
    if (file === null) return;
    const off = new AbortController();
    const { signal } = off;
    readClassRun(words, library, file, signal).then(
      (found) => {
        if (!signal.aborted) setRead(found);
      },
      (error: unknown) => {
        if (!signal.aborted) fail(error);
      },
    );
    return () => off.abort();
  }, [file]);
  const port = useMemo(() => {
    if (read === null || typeof read === 'string') return null;
    const { run, setup, graded, text } = read;
    return toldReport(
      words,
      createReportPort(setup, run, graded, null, {
        exportRun: () => download(file!.name.split('/').at(-1)!, text),
        save: (kind, text) =>
          downloadText(
            file!.name
              .split('/')
              .at(-1)!
              .replace(/\.json$/, ''),
            kind,
            text,
          ),
        again: () => go({ page: 'bench', scenarioId: run.scenario.id }),
        toCourse: () => go({ page: 'course' }),
      }),
    );
  }, [read]);
  if (typeof read === 'string')
    return (
      <SlipPage
        product={shell.product}
        title={say.title}
        buttons={
          <Button primary onClick={back}>
            {say.backToClass}
          </Button>
        }
      >
        <p class="slip-said">{read}</p>
      </SlipPage>
    );
  if (read === null || port === null) return <SlipPage product={shell.product} title={shell.grading} busy />;
  const keep = async (): Promise<void> => {
    const runId = read.run.runId ?? freshId();
    await logbook.keep(entryOfReport(runId, read.run, read.graded.report, null), read.text);
    setKept(true);
  };
  return (
    <ReportPage
      port={port}
      links={links}
      notices={
        <Slip
          buttons={
            <>
              <Button onClick={back}>{say.backToClass}</Button>
              {file?.judged?.outcome !== 'verified' || kept ? null : (
                <Button onClick={() => void keep()}>{say.keepRun}</Button>
              )}
            </>
          }
        >
          <p>{kept ? say.kept : say.reportOf(file!.name)}</p>
          {file?.judged?.outcome === 'unfinished' ? <p>{say.neverSigned}</p> : null}
        </Slip>
      }
    />
  );
}
