/** The four verdicts as stamps, each with what keeps it from standing. */
import { type Report, VERDICT_IDS, type VerdictId } from '../../grading/report.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Frac, Frame } from '../../kit/theme/art.tsx';
import type { Receiver } from '../../receiver/receiver.ts';
import { MomentLink } from './FindingsPanel.tsx';
import { reasonsOf } from './verdictReasons.ts';
import './verdicts.css';

export interface VerdictPanelProps {
  readonly report: Report;
  readonly receiver: Receiver;
  readonly goTo: (seconds: number) => void;
}

/** So many reasons stand beside a stamp; the list of lines has them all. */
const MOST_REASONS = 2;

export function VerdictPanel({ report, receiver, goTo }: VerdictPanelProps) {
  const { report: say } = useWords();
  return (
    <section class="paper verdicts" aria-labelledby="verdicts-title">
      <Frame kind="sheet" />
      <h2 id="verdicts-title">{say.verdicts}</h2>
      <ul>
        {VERDICT_IDS.map((id) => (
          <li key={id} class={report.verdicts[id].stands ? 'stands' : 'lacks'}>
            <span class="stamp">
              <span aria-hidden="true">{say.stamps[id].name}</span>
              <span class="spoken">{say.stamp(say.stamps[id].name, report.verdicts[id].stands)}</span>
            </span>
            <Reasons id={id} report={report} receiver={receiver} goTo={goTo} />
          </li>
        ))}
      </ul>
      <p class="si">{say.verdictsNote}</p>
    </section>
  );
}

function Reasons({ id, report, receiver, goTo }: VerdictPanelProps & { readonly id: VerdictId }) {
  const words = useWords();
  const { report: say } = words;
  if (report.verdicts[id].stands) return <p>{say.stamps[id].stands}</p>;
  const reasons = reasonsOf(words, report, receiver, id);
  const shown = reasons.slice(0, MOST_REASONS);
  return (
    <div>
      {shown.map(({ text, at }) => (
        <p key={text}>
          <Frac>{text}</Frac> {at === null ? null : <MomentLink seconds={at} goTo={goTo} />}
        </p>
      ))}
      {reasons.length > shown.length ? <p class="si">{say.moreLacks(reasons.length - shown.length)}</p> : null}
    </div>
  );
}
