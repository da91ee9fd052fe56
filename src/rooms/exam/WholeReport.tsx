/** The report of a whole exam: each scenario with its verdicts, points and time, how many are passed, and whether that meets the sheet's mark. The same on the page and on paper. */
import { VERDICT_IDS } from '../../grading/report.ts';
import type { Whole, WholeItem } from '../../judge/whole.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import type { ExamItem } from './examPort.ts';

export interface WholeReportProps {
  readonly whole: Whole;
  readonly items: readonly ExamItem[];
  /** null: on paper, where nothing opens */
  readonly openReport: ((runId: string) => void) | null;
}

export function WholeReport({ whole, items, openReport }: WholeReportProps) {
  const { exam: say, classroom } = useWords();
  const { whole: words } = say;
  const names = new Map(items.map((item) => [item.id, item]));
  return (
    <section class="exam-whole" aria-labelledby="exam-whole">
      <h2 id="exam-whole">{words.title}</h2>
      <p class={`exam-standing ${whole.standing}`}>
        <b>{words.standing[whole.standing]}</b> {words.passedOf(whole.passed, whole.items.length)}{' '}
        {whole.mark === null ? null : words.mark(whole.mark)}
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.scenario}</th>
            {VERDICT_IDS.map((id) => (
              <th scope="col" key={id}>
                {classroom.verdicts[id]}
              </th>
            ))}
            <th scope="col">{words.points}</th>
            <th scope="col">{words.time}</th>
            <th scope="col">{words.result}</th>
          </tr>
        </thead>
        <tbody>
          {whole.items.map((item) => (
            <Row key={item.id} item={item} name={names.get(item.id)} openReport={openReport} />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={1 + VERDICT_IDS.length}>
              {words.all}
            </th>
            <td>{words.mean(whole.points)}</td>
            <td>{classroom.clock(whole.seconds)}</td>
            <td>{words.passedShort(whole.passed, whole.items.length)}</td>
          </tr>
        </tfoot>
      </table>
    </section>
  );
}

interface RowProps {
  readonly item: WholeItem;
  readonly name: ExamItem | undefined;
  readonly openReport: WholeReportProps['openReport'];
}

function Row({ item, name, openReport }: RowProps) {
  const { exam: say, classroom } = useWords();
  const { whole: words } = say;
  const { run, minutes, tries, doubted } = item;
  const title = (
    <>
      <span class="m">{name?.code}</span> <bdi>{name?.title ?? item.id}</bdi>
    </>
  );
  return (
    <tr class={item.passed ? 'passed' : ''}>
      <th scope="row">
        {title}
        {run?.runId == null || openReport === null ? null : (
          <button
            type="button"
            class="link"
            aria-label={words.reportOf(name?.title ?? item.id)}
            onClick={() => openReport(run.runId!)}
          >
            {words.report}
          </button>
        )}
      </th>
      {VERDICT_IDS.map((id) => (
        <td key={id}>{run?.marks == null ? '\u2013' : run.marks.stands[id] ? classroom.yes : classroom.no}</td>
      ))}
      <td>{run?.points ?? '\u2013'}</td>
      <td>
        {run?.marks == null ? '\u2013' : classroom.clock(run.marks.seconds)}
        {minutes === null ? null : <small> {words.given(minutes)}</small>}
      </td>
      <td>
        <b>
          {item.passed ? words.passed : run === null ? words.missing(tries) : item.late ? words.late : words.notPassed}
        </b>
        {tries < 2 ? null : <small> {words.tries(tries)}</small>}
        {doubted === 0 || run === null ? null : <small> {words.doubted(doubted)}</small>}
      </td>
    </tr>
  );
}
