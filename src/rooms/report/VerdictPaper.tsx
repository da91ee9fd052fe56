/** The report on paper: the four verdicts with their reasons, what was found and left, proofs and findings, every line of the score. Drawn only while the page is printed. */
import { adviceFor } from '../../describe/advice.ts';
import type { Finding } from '../../describe/findings.ts';
import { scoreLineSentence } from '../../describe/scoreLine.ts';
import { HELPER_SECONDS } from '../../grading/limits.ts';
import { BLOCKS, lineIsMet, parTold, VERDICT_IDS } from '../../grading/report.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Told } from '../../kit/Told.tsx';
import { Mark } from '../../kit/theme/art.tsx';
import type { ReportPort } from '../../present/ports.ts';
import { responseById } from '../../receiver/responses.ts';
import { reasonsOf } from './verdictReasons.ts';
import './print.css';

interface VerdictPaperProps {
  readonly port: ReportPort;
  readonly findings: readonly Finding[];
}

export function VerdictPaper({ port, findings }: VerdictPaperProps) {
  const words = useWords();
  const { papers: say, report: reportWords, shell, grading, blocks, asFound } = words;
  const { report, run, receiver } = port;
  const { scenario } = run;
  const par = parTold(report);
  const readings = port.readings ?? [];
  return (
    <article class="verdict-paper" aria-label={say.verdicts}>
      <header>
        <p class="paper-mark">
          <Mark />
          <span>{shell.product}</span>
        </p>
        <p>
          <b>{say.verdicts}</b>
          <br />
          {say.subs.verdicts}
        </p>
      </header>
      <h1>
        <Told of={scenario}>{say.runOf(scenario.title, scenario.code)}</Told>
      </h1>
      <p class="who">
        <span>
          {say.blanks.learner} {run.learner === null ? <i /> : <b>{run.learner}</b>}
        </span>
        <span>
          {say.day} {run.day === null ? <i /> : <b>{run.day}</b>}
        </span>
        <span>
          <Told of={receiver}>{receiver.setName}</Told>
        </span>
      </p>
      <p class="whole">
        <b>{report.passed ? say.passed : say.noPass}</b> {say.points(report.total)}.{' '}
        {reportWords.turns(report.turns, par?.turns ?? null)}; {reportWords.time(report.seconds, par?.seconds ?? null)}.
        {report.helped === true ? ` ${reportWords.helped(HELPER_SECONDS / 60)}` : ''}
      </p>
      <ul class="four">
        {VERDICT_IDS.map((id) => (
          <li key={id}>
            <span class="box" aria-hidden="true">
              {report.verdicts[id].stands ? '\u2713' : '\u2717'}
            </span>
            <div>
              <b>
                {reportWords.stamps[id].name}: {report.verdicts[id].stands ? say.stands : say.lacks}
              </b>
              {report.verdicts[id].stands ? (
                <p>{reportWords.stamps[id].stands}</p>
              ) : (
                reasonsOf(words, report, receiver, id).map(({ text }) => <p key={text}>{text}</p>)
              )}
            </div>
          </li>
        ))}
      </ul>
      {readings.map(({ response, found, left }) => (
        <table key={response}>
          <caption>
            {asFound.report.title}: <Told of={receiver}>{responseById(receiver, response).title}</Told>
          </caption>
          <thead>
            <tr>
              <th scope="col">{asFound.report.columns.hz}</th>
              <th scope="col">{asFound.report.columns.found}</th>
              <th scope="col">{asFound.report.columns.left}</th>
            </tr>
          </thead>
          <tbody>
            {found.map(({ hz, percent }) => (
              <tr key={hz}>
                <th scope="row">{reportWords.frequency(hz)}</th>
                <td>{asFound.report.percent(percent)}</td>
                <td>{asFound.report.percent(left?.find((one) => one.hz === hz)?.percent ?? null)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
      <h2>{reportWords.findings}</h2>
      <ul class="plain">
        {findings.map(({ tone, text }) => (
          <li key={text}>
            <b>{grading.findings.tones[tone]}</b> {text}
          </li>
        ))}
      </ul>
      <h2>{reportWords.lines(report.lines.length)}</h2>
      <table class="score-lines">
        <thead>
          <tr>
            <th scope="col">{reportWords.rule}</th>
            <th scope="col">{reportWords.reason}</th>
            <th scope="col">{reportWords.points}</th>
          </tr>
        </thead>
        {BLOCKS.map((block) => {
          const lines = report.lines.filter((one) => one.block === block);
          return lines.length === 0 ? null : (
            <tbody key={block}>
              <tr>
                <th scope="rowgroup" colSpan={2}>
                  {blocks[block]}
                </th>
                <td>{reportWords.blockPoints(report.blocks[block].points, report.blocks[block].max)}</td>
              </tr>
              {lines.map((line) => (
                <tr key={line.id}>
                  <td>{line.rule}</td>
                  <td>
                    {scoreLineSentence(words, line, receiver)} {lineIsMet(line) ? '' : adviceFor(words, line)}
                  </td>
                  <td>{reportWords.linePoints(line.points, line.max)}</td>
                </tr>
              ))}
            </tbody>
          );
        })}
      </table>
    </article>
  );
}
