/** The scenarios of an evening in their order: dragged by a handle, or moved with the arrow keys on it. */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Told } from '../../../kit/Told.tsx';
import { Frac } from '../../../kit/theme/art.tsx';
import { movedTo, nearestRow } from '../../../present/inOrder.ts';
import type { ScenarioEntry } from '../../../present/scenarioEntry.ts';

export interface EveningListProps {
  readonly ids: readonly string[];
  readonly entries: ReadonlyMap<string, ScenarioEntry>;
  readonly minutesEach: Readonly<Record<string, number>>;
  readonly change: (ids: readonly string[]) => void;
  readonly changeMinutes: (id: string, minutes: number | null) => void;
}

export function EveningList({ ids, entries, minutesEach, change, changeMinutes }: EveningListProps) {
  const { workshop, course } = useWords();
  const say = workshop.evening;
  const list = useRef<HTMLOListElement>(null);
  const [held, setHeld] = useState<string | null>(null);
  const [said, setSaid] = useState('');
  const focus = useRef<string | null>(null);
  // A row that was moved is another element: the handle keeps the focus.
  useLayoutEffect(() => {
    if (focus.current === null) return;
    list.current?.querySelector<HTMLElement>(`[data-handle="${focus.current}"]`)?.focus();
    focus.current = null;
  }, [ids]);
  const titleOf = (id: string): string => entries.get(id)?.title ?? id;
  const move = (id: string, to: number): void => {
    const next = movedTo(ids, ids.indexOf(id), to);
    const at = next.indexOf(id);
    if (at === ids.indexOf(id)) return;
    focus.current = id;
    setSaid(say.moved(titleOf(id), at + 1, next.length));
    change(next);
  };
  const drag = (y: number): void => {
    const rows = [...(list.current?.children ?? [])].map((row) => row.getBoundingClientRect());
    if (held !== null && rows.length > 1) move(held, nearestRow(rows, y));
  };
  return (
    <>
      <ol class="evening-list" ref={list} aria-label={say.inOrder}>
        {ids.map((id, i) => {
          const entry = entries.get(id);
          return (
            <li key={id} class={held === id ? 'held' : ''}>
              <button
                type="button"
                class="evening-handle"
                data-handle={id}
                aria-label={say.handle(titleOf(id), i + 1, ids.length)}
                onPointerDown={(event) => {
                  event.currentTarget.setPointerCapture(event.pointerId);
                  setHeld(id);
                }}
                onPointerMove={(event) => drag(event.clientY)}
                onPointerUp={() => setHeld(null)}
                onPointerCancel={() => setHeld(null)}
                onKeyDown={(event) => {
                  const step = { ArrowUp: -1, ArrowDown: 1 }[event.key];
                  if (step === undefined) return;
                  event.preventDefault();
                  move(id, i + step);
                }}
              >
                <span aria-hidden="true">{'\u2630'}</span>
              </button>
              <span class="evening-no">{i + 1}</span>
              <div class="evening-item">
                <p>
                  <span class="card-code">{entry?.code}</span>{' '}
                  <b>{entry === undefined ? say.gone(id) : <Told of={entry}>{entry.title}</Told>}</b>
                </p>
                {entry === undefined ? null : (
                  <p class="evening-par">
                    <Frac>
                      {entry.own !== undefined
                        ? `${course.own.marks[entry.own]}${entry.ownReceiver ? `. ${course.own.ownReceiver(entry.receiverName)}` : ''}`
                        : entry.par === null
                          ? course.sealed
                          : course.par(course.turns(entry.par.turns), course.minutes(entry.par.seconds))}
                    </Frac>
                  </p>
                )}
              </div>
              <label class="evening-each">
                <input
                  class="written"
                  type="number"
                  min={1}
                  max={240}
                  aria-label={say.minutesOf(titleOf(id))}
                  value={minutesEach[id] ?? ''}
                  onInput={({ currentTarget: { value } }) => changeMinutes(id, value === '' ? null : Number(value))}
                />{' '}
                <span aria-hidden="true">{say.minutesShort}</span>
              </label>
              <button
                type="button"
                class="link"
                aria-label={say.takeOutNamed(titleOf(id))}
                onClick={() => change(ids.filter((one) => one !== id))}
              >
                {say.takeOut}
              </button>
            </li>
          );
        })}
      </ol>
      <p class="unseen" role="status">
        {said}
      </p>
    </>
  );
}
