/** The tube of a look for those who do not see it: its heights as a table, and after a turn what an eye would follow, in one sentence. It says what stands there, never what it means. */
import { useEffect, useState } from 'preact/hooks';
import type { DrillId } from '../../drills/drill.ts';
import type { Trace } from '../../drills/trace.ts';
import { useWords } from '../../kit/hooks/useWords.ts';

export interface TraceTableProps {
  readonly drill: DrillId;
  readonly trace: Trace;
  /** of the curve in wax; null: there is none */
  readonly wax: Trace | null;
}

/** Words follow once the hand rests. */
const REST_MS = 350;

export function TraceTable({ drill, trace, wax }: TraceTableProps) {
  const { drills: words } = useWords();
  const shown = useRested(trace);
  const [turned, setTurned] = useState(false);
  // What stands there at first is in the table; it is told of itself when it has been turned.
  useEffect(() => {
    if (shown !== trace) setTurned(true);
  }, [shown, trace]);
  const height = (div: number | null | undefined): string =>
    div === null || div === undefined ? '' : words.height(div);
  const [pip] = shown.pips;
  const told =
    drill === 'phase-it' && shown.apartDiv !== null
      ? words.apart(shown.apartDiv)
      : drill === 'zero' && pip?.height != null
        ? words.atPip(pip.height)
        : '';
  return (
    <>
      <table class="unseen" tabIndex={-1}>
        <caption>{words.table}</caption>
        <thead>
          <tr>
            <th scope="col">{words.columns.place}</th>
            <th scope="col">{words.columns.out}</th>
            {shown.apartDiv === null ? null : <th scope="col">{words.columns.back}</th>}
            {wax === null ? null : <th scope="col">{words.columns.wax}</th>}
          </tr>
        </thead>
        <tbody>
          {shown.rows.map(({ xDiv, out, back }, i) => (
            <tr key={xDiv}>
              <th scope="row">{words.place(xDiv)}</th>
              <td>{height(out)}</td>
              {shown.apartDiv === null ? null : <td>{height(back)}</td>}
              {wax === null ? null : <td>{height(wax.rows[i]?.out)}</td>}
            </tr>
          ))}
          {shown.pips.map((one, i) => (
            <tr key={`pip ${one.number ?? i}`}>
              <th scope="row">{words.pipPlace(one.number ?? i + 1, words.place(one.xDiv))}</th>
              <td>{height(one.height)}</td>
              {shown.apartDiv === null ? null : <td />}
              {wax === null ? null : <td>{height(wax.pips[i]?.height)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
      <p class="unseen" role="status">
        {turned ? told : ''}
      </p>
    </>
  );
}

function useRested(trace: Trace): Trace {
  const [rested, setRested] = useState(trace);
  useEffect(() => {
    if (trace === rested) return;
    const timer = setTimeout(() => setRested(trace), REST_MS);
    return () => clearTimeout(timer);
  }, [trace, rested]);
  return rested;
}
