/** The exams of a class: what each candidate's runs come to as a whole. Only where files of an exam were brought. */
import type { SittingRow } from '../../judge/sittings.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Frame } from '../../kit/theme/art.tsx';
import './exams.css';

export function ExamsPanel({ sittings }: { readonly sittings: readonly SittingRow[] }) {
  const { classroom: say } = useWords();
  if (sittings.length === 0) return null;
  return (
    <section class="plate class-exams" aria-labelledby="class-exams-title">
      <Frame kind="card" seed={6} />
      <h2 class="plate-title" id="class-exams-title">
        {say.exams.title}
      </h2>
      <ExamsTable sittings={sittings} />
      {sittings.some(({ by }) => by === 'file') ? <p class="class-note">{say.exams.byFileNote}</p> : null}
    </section>
  );
}

export function ExamsTable({ sittings }: { readonly sittings: readonly SittingRow[] }) {
  const { classroom: say, exam } = useWords();
  const { columns, byFile } = say.exams;
  return (
    <table>
      <thead>
        <tr>
          {[columns.candidate, columns.exam, columns.passed, columns.mark, columns.whole, columns.points].map(
            (name) => (
              <th scope="col" key={name}>
                {name}
              </th>
            ),
          )}
          <th scope="col">{say.columns.time}</th>
        </tr>
      </thead>
      <tbody>
        {sittings.map(({ folder, candidate, title, whole, by }) => (
          <tr key={`${folder} ${candidate}`} data-standing={whole?.standing ?? 'unknown'}>
            <th scope="row">
              <bdi>{candidate}</bdi>
            </th>
            <td>
              <bdi>{title}</bdi>
            </td>
            {whole === null ? (
              <td colSpan={5}>{say.exams.noTerms}</td>
            ) : (
              <>
                <td>{exam.whole.passedShort(whole.passed, whole.items.length)}</td>
                <td>
                  {whole.mark ?? '\u2013'}
                  {by === 'file' && whole.mark !== null ? <small> {byFile}</small> : null}
                </td>
                <td>
                  <b>{say.exams.standing[whole.standing]}</b>
                  {whole.items.some(({ late }) => late) ? <small> {say.exams.late}</small> : null}
                </td>
                <td>{exam.whole.mean(whole.points)}</td>
                <td>{say.clock(whole.seconds)}</td>
              </>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
