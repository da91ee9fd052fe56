/** The list of runs: sorted by any column, sifted by learner and scenario, fifty rows at a time; any row opens. */

import { memo } from 'preact/compat';
import { useEffect, useMemo, useState } from 'preact/hooks';
import { VERDICT_IDS } from '../../grading/report.ts';
import { type ClassRow, inOrder, type Order, ofPar, type Sieve, type SortKey } from '../../judge/classList.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../kit/PlateTitle.tsx';
import { Short } from '../../kit/Short.tsx';
import { Button, Frame } from '../../kit/theme/art.tsx';
import type { ClassPort } from './classPort.ts';
import { SameActs, State, VerdictDisc } from './Glyphs.tsx';
import { OpenedRow } from './OpenedRow.tsx';
import { useInPortions } from './portions.ts';
import { SieveBar } from './SieveBar.tsx';

/** So many stand on one page of the list: a table of thousands would hold the browser up. */
const ROWS_SHOWN = 50;

interface RunsTableProps {
  readonly port: ClassPort;
  /** those that went through the sieve */
  readonly rows: readonly ClassRow[];
  readonly sieve: Sieve;
  readonly onSieve: (sieve: Sieve) => void;
}

export function RunsTable({ port, rows, sieve, onSieve }: RunsTableProps) {
  const { classroom: say, language } = useWords();
  const [order, setOrder] = useState<Order>({ by: 'no', down: false });
  const [open, setOpen] = useState<number | null>(null);
  const [page, setPage] = useState(0);
  const sorted = useMemo(() => inOrder(rows, order, language), [rows, order, language]);
  const last = Math.max(0, Math.ceil(sorted.length / ROWS_SHOWN) - 1);
  const at = Math.min(page, last);
  useEffect(() => setPage(0), [order, sieve]);
  const wanted = useMemo(() => sorted.slice(at * ROWS_SHOWN, (at + 1) * ROWS_SHOWN), [sorted, at]);
  const shown = useInPortions(wanted);
  const sort = (by: SortKey): void =>
    setOrder({ by, down: order.by === by ? !order.down : by === 'points' || VERDICT_IDS.some((id) => id === by) });
  const head = (by: SortKey, name: string, cls: string) => (
    <th
      scope="col"
      class={cls}
      {...(order.by === by ? { 'aria-sort': order.down ? ('descending' as const) : ('ascending' as const) } : {})}
    >
      <button type="button" onClick={() => sort(by)}>
        {name}
        {order.by === by ? <span aria-hidden="true">{order.down ? ' \u25be' : ' \u25b4'}</span> : null}
      </button>
    </th>
  );
  // It lists every learner, and whoever sorts or opens a row changes none of it.
  const bar = useMemo(() => <SieveBar rows={port.rows} sieve={sieve} onSieve={onSieve} />, [port.rows, sieve, onSieve]);
  return (
    <section class="plate class-runs" aria-labelledby="class-runs-title">
      <Frame kind="card" seed={2} />
      <div class="runs-head">
        <PlateTitle id="class-runs-title" no={2}>
          {say.runs}
        </PlateTitle>
        {bar}
        <p class="runs-count">{say.shown(rows.length, port.rows.length)}</p>
      </div>
      {port.rows.length === 0 ? (
        <p class="runs-none">{say.none}</p>
      ) : (
        <table>
          <thead>
            <tr>
              {head('no', say.columns.no, 'no')}
              {head('learner', say.columns.learner, 'learner')}
              {head('scenario', say.columns.scenario, 'scenario')}
              {VERDICT_IDS.map((id) => head(id, say.verdicts[id], 'verdict'))}
              {head('points', say.columns.points, 'points')}
              {head('turns', say.columns.turns, 'turns')}
              {head('time', say.columns.time, 'time')}
              {head('state', say.columns.state, 'state')}
              <th scope="col" class="note">
                {say.columns.note}
              </th>
            </tr>
          </thead>
          {shown.map((row) => (
            <tbody key={row.no} class={open === row.no ? 'open' : ''}>
              <RunRow
                row={row}
                note={port.notes.of(row)}
                open={open === row.no}
                onOpen={() => setOpen(open === row.no ? null : row.no)}
              />
              {open === row.no ? (
                <tr class="opened">
                  <td colSpan={12}>
                    <OpenedRow row={row} port={port} />
                  </td>
                </tr>
              ) : null}
            </tbody>
          ))}
        </table>
      )}
      {last === 0 ? null : (
        <div class="runs-pages">
          <Button disabled={at === 0} onClick={() => setPage(at - 1)}>
            {say.earlier}
          </Button>
          <span>
            {say.rowsFrom(at * ROWS_SHOWN + 1, Math.min(sorted.length, (at + 1) * ROWS_SHOWN), sorted.length)}
          </span>
          <Button disabled={at === last} onClick={() => setPage(at + 1)}>
            {say.later}
          </Button>
        </div>
      )}
    </section>
  );
}

interface RunRowProps {
  readonly row: ClassRow;
  readonly note: string;
  readonly open: boolean;
  readonly onOpen: () => void;
}

function RunRowBase({ row, note, open, onOpen }: RunRowProps) {
  const { classroom: say } = useWords();
  const { no, learner, title, marks, points } = row;
  const of = marks === null ? null : ofPar(marks);
  const name = learner ?? say.nobody;
  return (
    <tr class="run" data-verdict={row.verdict}>
      <td class="no m">{no}</td>
      <th scope="row" class="learner">
        <button type="button" aria-expanded={open} aria-label={say.open(name, no)} onClick={onOpen}>
          <bdi class={learner === null ? 'nobody' : ''}>{name}</bdi>
        </button>
        <Job row={row} />
      </th>
      <td class="scenario">{title === null ? <bdi class="m">{row.file}</bdi> : <Job row={row} />}</td>
      {VERDICT_IDS.map((id) => (
        <td key={id} class="verdict">
          <VerdictDisc marks={marks} id={id} />
        </td>
      ))}
      <td class="points">{points ?? '\u2013'}</td>
      <td class="turns m">{of === null ? '' : say.ofPar(of)}</td>
      <td class="time m">{marks === null ? '' : say.clock(marks.seconds)}</td>
      <td class="state">
        <State outcome={row.verdict} />
        {row.sameNo === null ? null : <SameActs words={say.sameAs(row.sameNo)} />}
      </td>
      <td class="note">{note === '' ? null : <Short>{note}</Short>}</td>
    </tr>
  );
}

/** Whoever types a note changes one row and not fifty. */
const RunRow = memo(RunRowBase, (a, b) => a.row === b.row && a.note === b.note && a.open === b.open);

function Job({ row: { title, file } }: { readonly row: ClassRow }) {
  if (title === null) return <span class="job m">{file}</span>;
  return (
    <span class="job">
      <bdi class="m">{title.code}</bdi> <bdi>{title.title}</bdi>
    </span>
  );
}
