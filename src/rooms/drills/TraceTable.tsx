/** The tube of a look for those who do not see it: its heights as a table, and after a turn what an eye would follow, in one sentence. It says what stands there, never what it means. */
import { useEffect, useState } from 'preact/hooks';
import type { DrillId, Scene } from '../../drills/drill.ts';
import { displayOf } from '../../drills/picture.ts';
import { readTrace, type Trace } from '../../drills/trace.ts';
import { useWords } from '../../kit/hooks/useWords.ts';

export interface TraceTableProps {
  readonly drill: DrillId;
  readonly scene: Scene;
  /** of the curve in wax; null: there is none */
  readonly wax: Trace | null;
}

/** Words follow once the hand rests. */
const REST_MS = 350;

export function TraceTable({ drill, scene, wax }: TraceTableProps) {
  const { drills: words } = useWords();
  const { trace: shown, turned } = useRestedTrace(scene);
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

/** Read when the hand rests, not in each frame of a turn. `turned`: what stands there at first is in the table; it is told of itself when it has been turned. */
function useRestedTrace(scene: Scene): { readonly trace: Trace; readonly turned: boolean } {
  const [rested, setRested] = useState(() => ({ scene, trace: traceOf(scene), turned: false }));
  useEffect(() => {
    if (scene === rested.scene) return;
    const timer = setTimeout(() => setRested({ scene, trace: traceOf(scene), turned: true }), REST_MS);
    return () => clearTimeout(timer);
  }, [scene, rested]);
  return rested;
}

const traceOf = (scene: Scene): Trace => readTrace(displayOf(scene), scene.state.controls.blanking);
