/** The report room: takes a kept run from the logbook, reads it like any run file and grades it anew. */
import { useMemo } from 'preact/hooks';
import { problemLine } from '../base/result.ts';
import { readRunFile } from '../files/runFileSchema.ts';
import { ReportPage } from '../rooms/report/ReportPage.tsx';
import { setupFor } from '../services/library/shippedLibrary.ts';
import { shellWords } from '../words/en/shell.ts';
import { download } from './download.ts';
import { createReportPort } from './reportPort.ts';
import type { RoomProps } from './roomProps.ts';

export default function ReportRoom({ library, logbook, go, runId }: RoomProps & { readonly runId: string }) {
  const found = useMemo(() => {
    const runs = logbook.keptRuns();
    const kept = runs.find((run) => run.runId === runId);
    if (kept === undefined) return { problem: shellWords.noSuchRun };
    const read = readRunFile(kept.text, `${kept.runId}.json`);
    if (!read.ok) return { problem: read.problems.map(problemLine).join('\n') };
    const setup = setupFor(library, read.value.scenario);
    if (setup === null) return { problem: shellWords.noSuchReceiver };
    const earlier = runs.filter((run) => run.scenarioId === kept.scenarioId && run.serial < kept.serial);
    const previousBest = earlier.length === 0 ? null : Math.max(...earlier.map((run) => run.total));
    const port = createReportPort(setup, read.value, previousBest, {
      exportRun: () => download(`haystack-${kept.scenarioId}-${kept.serial}.json`, kept.text),
      again: () => go({ page: 'bench', scenarioId: kept.scenarioId }),
      toCourse: () => go({ page: 'course' }),
    });
    return { port };
  }, [library, logbook, runId]);
  if (found.port === undefined) {
    return (
      <main class="notice">
        <p>{found.problem}</p>
        <a href="#/course">{shellWords.home}</a>
      </main>
    );
  }
  const open = logbook.openRuns()[0];
  return (
    <ReportPage
      port={found.port}
      onBench={open === undefined ? null : () => go({ page: 'bench', scenarioId: open.scenarioId })}
    />
  );
}
