/** The report of a whole exam on paper, with who, which sheet, and a line to sign. Drawn only while the page is printed. */
import { useWords } from '../../kit/hooks/useWords.ts';
import { Mark } from '../../kit/theme/art.tsx';
import type { ExamPort } from './examPort.ts';
import { WholeReport } from './WholeReport.tsx';
import './print.css';

export function ExamPaper({ port }: { readonly port: ExamPort }) {
  const { shell, exam: say, papers } = useWords();
  const { title, author, sitting, whole } = port;
  if (sitting === null || whole === null || whole === 'working') return null;
  return (
    <article class="exam-on-paper">
      <p class="paper-mark">
        <Mark /> <span>{shell.product}</span>
      </p>
      <h1>
        <bdi>{title}</bdi>
      </h1>
      <p>
        <b>{say.candidate(sitting.candidate)}</b> {author === null ? null : <bdi>{say.by(author)}</bdi>} {papers.day}{' '}
        {sitting.day}
      </p>
      <WholeReport whole={whole} items={sitting.items} openReport={null} />
      <p>{say.whole.paperNote}</p>
      <p class="exam-sign">{say.whole.sign}</p>
    </article>
  );
}
