/** What was said at signing to have been wrong, and what was. */
import { diagnosisTold } from '../../describe/diagnosis.ts';
import type { JudgedDiagnosis } from '../../grading/judgedDiagnosis.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Frac, Frame } from '../../kit/theme/art.tsx';
import type { Receiver } from '../../receiver/receiver.ts';
import './diagnosis.css';

export interface DiagnosisPanelProps {
  readonly judged: JudgedDiagnosis;
  readonly receiver: Receiver;
}

export function DiagnosisPanel({ judged, receiver }: DiagnosisPanelProps) {
  const words = useWords();
  const { report: say } = words.diagnosis;
  const { said, was, differs } = diagnosisTold(words, judged, receiver);
  return (
    <section class="paper was-wrong" aria-labelledby="diagnosis-title">
      <Frame kind="sheet" />
      <h2 id="diagnosis-title">{say.title}</h2>
      <dl>
        <dt>{say.said}</dt>
        <dd>
          <Frac>{said}</Frac>
        </dd>
        <dt>{say.was}</dt>
        <dd>
          <Frac>{was}</Frac>
        </dd>
      </dl>
      {judged.stated !== null && differs.length === 0 ? <p class="knew">{say.right}</p> : null}
      {differs.map((text) => (
        <p key={text} class="differs">
          {text}
        </p>
      ))}
    </section>
  );
}
