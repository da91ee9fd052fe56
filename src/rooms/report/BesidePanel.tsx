/** The technician's run of the same job beside the learner's: turns over time as two lines, and what each did, in its order. Made when it is asked for. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { partCalled } from '../../describe/partCalled.ts';
import { slugName } from '../../describe/slugName.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Button, Fit, Frac, Frame } from '../../kit/theme/art.tsx';
import type { ReportPort, ShownBeside, ShownRunBeside } from '../../present/ports.ts';
import { type OutlineAct, runOutline, turnsOverTime } from '../../present/runOutline.ts';
import type { Receiver } from '../../receiver/receiver.ts';
import type { Words } from '../../words/words.ts';
import { besideFigure } from './besideFigure.ts';
import './beside.css';

interface BesidePanelProps {
  readonly port: ReportPort;
  readonly beside: ShownBeside;
}

type Made = { readonly kind: 'none' | 'making' | 'failed' } | ({ readonly kind: 'made' } & ShownRunBeside);

export function BesidePanel({ port, beside }: BesidePanelProps) {
  const words = useWords();
  const { demonstration: say } = words;
  const { run, receiver } = port;
  const [made, setMade] = useState<Made>({ kind: 'none' });
  const inHand = useRef<ReturnType<ShownBeside['make']> | null>(null);
  useEffect(() => () => inHand.current?.callOff(), []);
  const ask = (): void => {
    setMade({ kind: 'making' });
    const making = beside.make();
    inHand.current = making;
    making.outcome.then(
      (shown) => setMade(shown === null ? { kind: 'none' } : { kind: 'made', ...shown }),
      () => setMade({ kind: 'failed' }),
    );
  };
  return (
    <section class="paper beside" aria-labelledby="beside-title">
      <Frame kind="sheet" />
      <h2 id="beside-title">{say.beside.title}</h2>
      <p role="status">
        {made.kind === 'making'
          ? say.making
          : made.kind === 'failed'
            ? say.failed
            : made.kind === 'made' && !made.passed
              ? say.beside.short
              : say.beside.what}
      </p>
      <p class="beside-acts">
        {made.kind === 'made' ? null : made.kind === 'making' ? (
          <Button onClick={() => inHand.current?.callOff()}>{say.beside.callOff}</Button>
        ) : (
          <Button onClick={ask}>{say.beside.lay}</Button>
        )}
        <Button onClick={() => beside.watch()}>{say.watch}</Button>
      </p>
      {made.kind !== 'made' ? null : (
        <>
          <Fit
            class="beside-figure"
            of={made}
            label={say.beside.figure}
            draw={(w, h) =>
              besideFigure(w, h, turnsOverTime(run.events), turnsOverTime(made.events), {
                mine: say.beside.yours,
                his: say.beside.his,
                clock: words.report.clock,
                turns: words.format.turnsLong,
              })
            }
          />
          <div class="beside-columns">
            <Column name={say.beside.yours} events={run.events} receiver={receiver} />
            <Column name={say.beside.his} events={made.events} receiver={receiver} />
          </div>
        </>
      )}
    </section>
  );
}

function Column({
  name,
  events,
  receiver,
}: {
  readonly name: string;
  readonly events: ShownRunBeside['events'];
  readonly receiver: Receiver;
}) {
  const words = useWords();
  const { demonstration: say, report } = words;
  const turns = turnsOverTime(events).at(-1)!.turns;
  const seconds = (events.at(-1)?.atMs ?? 0) / 1000;
  return (
    <table>
      <caption>
        {name}: <Frac>{say.beside.whole(words.format.turnsLong(turns), report.clock(seconds))}</Frac>
      </caption>
      <tbody>
        {runOutline(events).map(({ act, fromSeconds }, i) => (
          <tr key={i}>
            <th scope="row" class="m">
              {report.clock(fromSeconds)}
            </th>
            <td>
              <Frac>{actSaid(words, receiver, act)}</Frac>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function actSaid(words: Words, receiver: Receiver, act: OutlineAct): string {
  const { acts, slug, back, part } = words.demonstration.beside;
  const { turnsLong } = words.format;
  if (act.kind === 'part') return part(partCalled(words, receiver, act.part));
  if (act.kind !== 'slug') return acts[act.kind];
  const name = slugName(words, receiver, act.slug);
  // Back where it was: what was tried and taken back.
  if (Math.abs(act.turns) < 1 / 64) return back(name, turnsLong(act.made));
  return slug(
    name,
    turnsLong(act.turns),
    act.turns > 0,
    act.made - Math.abs(act.turns) > 1 / 16 ? turnsLong(act.made) : null,
  );
}
