/** The class on paper: drawn only while the page is being printed. Black on white, one line a run. */
import { VERDICT_IDS } from '../../grading/report.ts';
import type { ClassRow } from '../../judge/classList.ts';
import type { ClassSummary } from '../../judge/classSummary.ts';
import type { SittingRow } from '../../judge/sittings.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import type { NotesPort } from './classPort.ts';
import { ExamsTable } from './ExamsPanel.tsx';
import { lineName } from './OpenedRow.tsx';

interface PaperListProps {
  readonly rows: readonly ClassRow[];
  readonly sittings: readonly SittingRow[];
  readonly figures: ClassSummary;
  readonly notes: NotesPort;
}

export function PaperList({ rows, sittings, figures, notes }: PaperListProps) {
  const words = useWords();
  const { classroom: say } = words;
  return (
    <div class="paper-list">
      <h1>{say.paperTitle}</h1>
      <p>{say.handedIn(rows.length, figures.learners)}</p>
      {sittings.length === 0 ? null : <ExamsTable sittings={sittings} />}
      <table class="paper-runs">
        <thead>
          <tr>
            {[say.columns.no, say.columns.learner, say.columns.scenario].map((name) => (
              <th scope="col" key={name}>
                {name}
              </th>
            ))}
            {VERDICT_IDS.map((id) => (
              <th scope="col" key={id}>
                {say.verdicts[id]}
              </th>
            ))}
            {[say.passed, say.columns.points, say.columns.state, say.columns.note].map((name) => (
              <th scope="col" key={name}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.no}>
              <td>{row.no}</td>
              <td>{row.learner ?? say.nobody}</td>
              <td>{row.title === null ? row.file : `${row.title.code} ${row.title.title}`}</td>
              {VERDICT_IDS.map((id) => (
                <td key={id}>{row.marks === null ? '\u2013' : row.marks.stands[id] ? say.yes : say.no}</td>
              ))}
              <td>{row.passed === null ? '\u2013' : row.passed ? say.yes : say.no}</td>
              <td>{row.points ?? '\u2013'}</td>
              <td>
                {say.outcomes[row.verdict]}
                {row.sameNo === null ? '' : `, ${say.sameAs(row.sameNo)}`}
              </td>
              <td>{notes.of(row)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {figures.skills.length === 0 ? null : (
        <p>
          <b>{say.skills}</b>{' '}
          {figures.skills.map(({ skill, share }) => `${say.skillNames[skill]} ${say.share(share)}`).join('; ')}
        </p>
      )}
      {figures.lost.length === 0 ? null : (
        <p>
          <b>{say.commonest}</b>{' '}
          {figures.lost.map((line) => `${lineName(words, line)} ${say.lostOf(line.runs, line.of)}`).join('; ')}
        </p>
      )}
      <p class="paper-note">{notes.of(null)}</p>
    </div>
  );
}
