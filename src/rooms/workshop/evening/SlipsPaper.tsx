/** Slips to cut apart, one for each candidate: what the sheet is called, which file to open, how long it takes, and the number, or a line for the name. On paper alone. */
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Mark } from '../../../kit/theme/art.tsx';
import './slips.css';

export interface SlipsPaperProps {
  readonly title: string;
  readonly author: string;
  readonly file: string;
  /** where the page is; null: no other machine can open it */
  readonly address: string | null;
  readonly minutes: number | null;
  readonly scenarios: number;
  /** null: no mark */
  readonly passMark: number | null;
  /** for each scenario in order, null where none is stated */
  readonly minutesEach: readonly (number | null)[];
  /** null: no exam */
  readonly candidates: 'numbers' | 'names' | null;
  readonly count: number;
}

export function SlipsPaper({ count, ...of }: SlipsPaperProps) {
  return (
    <div class="slips-paper">
      {Array.from({ length: count }, (_, i) => (
        <Slip key={i} {...of} no={i + 1} />
      ))}
    </div>
  );
}

interface SlipProps extends Omit<SlipsPaperProps, 'count'> {
  readonly no: number;
}

function Slip({ title, author, file, address, minutes, scenarios, passMark, minutesEach, candidates, no }: SlipProps) {
  const { shell, workshop } = useWords();
  const { slips: say } = workshop.evening;
  return (
    <section class="hand-slip">
      <p class="slip-mark">
        <Mark /> <span>{shell.product}</span>
        {candidates === 'numbers' ? <b class="slip-no">{say.number(no)}</b> : null}
      </p>
      <h2>
        <bdi>{title}</bdi>
      </h2>
      <p>
        {say.facts(scenarios, minutes)} {passMark === null ? null : say.mark(passMark, scenarios)} <bdi>{author}</bdi>
      </p>
      {minutesEach.every((one) => one === null) ? null : <p>{say.times(minutesEach)}</p>}
      <dl>
        <dt>{say.page}</dt>
        <dd>{address === null ? say.fromStick : <bdi class="slip-address">{address}</bdi>}</dd>
        <dt>{say.file}</dt>
        <dd>
          <bdi class="slip-address">{file}</bdi>
        </dd>
        {candidates === 'numbers' ? null : (
          <>
            <dt>{say.name}</dt>
            <dd class="slip-line" />
          </>
        )}
      </dl>
      <p>{candidates === null ? say.how : say.howSealed}</p>
    </section>
  );
}
