/** The report of a run: what was found and left, the score with its reasons, the run to look at again. */

import type { ComponentChildren } from 'preact';
import { useMemo, useRef, useState } from 'preact/hooks';
import { findings } from '../../describe/findings.ts';
import { scoreLineSentence } from '../../describe/scoreLine.ts';
import { lineIsMet } from '../../grading/report.ts';
import { usePageTitle } from '../../kit/hooks/usePageTitle.ts';
import { usePrinting } from '../../kit/hooks/usePrinting.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Disc } from '../../kit/PlateTitle.tsx';
import { Told } from '../../kit/Told.tsx';
import { Button, Fit, Frame, Header, type RoomLink, Rooms } from '../../kit/theme/art.tsx';
import type { ReportPort } from '../../present/ports.ts';
import { reportCsv } from '../../present/reportTable.ts';
import { responseById } from '../../receiver/responses.ts';
import { widenSpecification } from '../../receiver/specification.ts';
import { BesidePanel } from './BesidePanel.tsx';
import { DiagnosisPanel } from './DiagnosisPanel.tsx';
import { FindingsPanel, type NextJob } from './FindingsPanel.tsx';
import { LinesTable } from './LinesTable.tsx';
import { ReadingsPanel } from './ReadingsPanel.tsx';
import { ReplayPanel } from './ReplayPanel.tsx';
import { figureFile, responseFigure, sheetPoints } from './responseFigure.ts';
import { ScorePanel } from './ScorePanel.tsx';
import { usePlayback } from './usePlayback.ts';
import { VerdictPanel } from './VerdictPanel.tsx';
import { VerdictPaper } from './VerdictPaper.tsx';
import './report.css';
import '../../kit/tabs/tabs.css';

export interface ReportPageProps {
  readonly port: ReportPort;
  readonly links: readonly RoomLink[];
  /** what the course offers next; null or left out: nothing */
  readonly next?: NextJob | null;
  /** what is told above the figure */
  readonly notices?: ComponentChildren;
}

export function ReportPage({ port, links, next = null, notices }: ReportPageProps) {
  const words = useWords();
  const { report: say, shell: shellWords } = words;
  const { report, run, receiver } = port;
  const { scenario } = run;
  usePageTitle(scenario.title, shellWords.reports);
  const lengthSeconds = Math.max(1, Math.ceil(report.seconds), Math.ceil((run.events.at(-1)?.atMs ?? 0) / 1000));
  const playback = usePlayback(lengthSeconds, lengthSeconds);
  const replay = useRef<HTMLDivElement>(null);
  const lines = useRef<HTMLDetailsElement>(null);
  const [shown, setShown] = useState(0);
  const printing = usePrinting();
  const set = report.curves[Math.min(shown, report.curves.length - 1)]!;
  const sheet = useMemo(
    () => widenSpecification(responseById(receiver, set.response).specification, scenario.toleranceFactor),
    [receiver, scenario, set],
  );
  const told = useMemo(() => sheetPoints(report, set.response).filter((p) => p.no !== null), [report, set]);
  const found = useMemo(() => findings(words, report, receiver, port.blind ?? []), [words, port, report, receiver]);
  const proofs = useMemo(
    () =>
      report.lines
        .filter(({ block }) => block === 'proofs')
        .map((line) => ({ text: scoreLineSentence(words, line, receiver), met: lineIsMet(line) })),
    [words, report, receiver],
  );
  const goTo = (seconds: number): void => {
    playback.seek(seconds);
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
    replay.current?.scrollIntoView({ block: 'nearest', behavior: still ? 'auto' : 'smooth' });
  };
  const showLines = (): void => {
    if (lines.current === null) return;
    lines.current.open = true;
    lines.current.querySelector('summary')?.focus();
    lines.current.scrollIntoView({ block: 'start' });
  };
  return (
    <div class="room-report">
      <Header
        product={shellWords.product}
        right={
          <>
            <Button onClick={() => print()}>{words.papers.print}</Button>
            <Button onClick={() => port.exportRun()}>{say.exportRun}</Button>
            <Button
              primary={!report.passed}
              onClick={() => port.again()}
              {...(port.againApproach === undefined ? {} : { approach: port.againApproach })}
            >
              {say.again}
            </Button>
            <Button primary={report.passed && next === null} onClick={() => port.toCourse()}>
              {say.toCourse}
            </Button>
          </>
        }
      >
        <Rooms name={shellWords.rooms} links={links} />
      </Header>
      <main class="report">
        <div class="report-notices">{notices}</div>
        <section class="paper report-figure" aria-labelledby="report-title">
          <Frame kind="sheet" />
          <p class="l eyebrow">
            {[
              say.page(scenario.code, receiver.setName),
              ...(run.learner === null ? [] : [say.learner(run.learner)]),
            ].join(', ')}
          </p>
          <h1 id="report-title">
            <Told of={scenario}>{scenario.title}</Told>
          </h1>
          <p class="si">{say.room}</p>
          {report.curves.length < 2 ? null : (
            <fieldset class="tabs" aria-label={say.curves}>
              {report.curves.map(({ response }, i) => (
                <button
                  key={response}
                  type="button"
                  aria-pressed={set.response === response}
                  onClick={() => setShown(i)}
                >
                  <Told of={receiver}>{responseById(receiver, response).title}</Told>
                </button>
              ))}
            </fieldset>
          )}
          <Fit
            class="figure-place"
            of={set}
            label={say.figure(scenario.title)}
            draw={(w, h) => responseFigure(w, h, report, set, sheet, say)}
          />
          <ol class="figure-points" aria-label={say.figurePoints}>
            {told.map(({ no, hz, line, met }) => (
              <li key={line.id}>
                <Disc class="rust">{no}</Disc>
                <span class="m">{say.frequency(hz)}</span> <span>{say.wants(line)}</span>{' '}
                <b class={met ? 'met' : 'missed'}>{met ? say.met : say.missed}</b>
              </li>
            ))}
          </ol>
        </section>
        <div class="report-side">
          <VerdictPanel report={report} receiver={receiver} goTo={goTo} />
          <ScorePanel report={report} previousBest={port.previousBest} showLines={showLines} />
          {report.diagnosis === undefined ? null : <DiagnosisPanel judged={report.diagnosis} receiver={receiver} />}
          {port.readings === undefined || port.readings.length === 0 ? null : (
            <ReadingsPanel readings={port.readings} receiver={receiver} />
          )}
          <FindingsPanel findings={found} proofs={proofs} goTo={goTo} next={next} leads={report.passed} />
        </div>
        <div class="report-replay" ref={replay}>
          <ReplayPanel port={port} playback={playback} lengthSeconds={lengthSeconds} />
        </div>
        {port.beside === undefined ? null : <BesidePanel port={port} beside={port.beside} />}
        <LinesTable
          report={report}
          sentence={(line) => scoreLineSentence(words, line, receiver)}
          goTo={goTo}
          innerRef={lines}
        />
        <p class="report-saves">
          <Button
            onClick={() =>
              port.save(
                'csv',
                reportCsv(report, (line) => scoreLineSentence(words, line, receiver)),
              )
            }
          >
            {say.saveLines}
          </Button>
          <Button onClick={() => port.save('svg', figureFile(report, set, sheet, say))}>{say.saveFigure}</Button>
        </p>
      </main>
      {printing ? <VerdictPaper port={port} findings={found} /> : null}
    </div>
  );
}
