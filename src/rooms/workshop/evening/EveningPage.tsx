/** The workshop's place for the sheet of an evening: which scenarios, in which order, in how much time; then a file. */

import { useEffect, useMemo, useReducer, useState } from 'preact/hooks';
import { usePageTitle } from '../../../kit/hooks/usePageTitle.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../../kit/PlateTitle.tsx';
import { Button, Frame, type RoomLink } from '../../../kit/theme/art.tsx';
import type { ScenarioEntry } from '../../../present/scenarioEntry.ts';
import { begun, changed, type History, redone, undone } from '../../../workshop/history.ts';
import type { PlaceTabsProps } from '../PlaceTabs.tsx';
import { useUndoKeys } from '../scenario/useUndoKeys.ts';
import { UndoButtons } from '../UndoButtons.tsx';
import { WorkshopFrame } from '../WorkshopFrame.tsx';
import { AddOne, MOST } from './AddOne.tsx';
import { DealGrid } from './DealGrid.tsx';
import { EveningList } from './EveningList.tsx';
import { ExamFields } from './ExamFields.tsx';
import type { EveningDraft, EveningPort } from './eveningPort.ts';
import { LEAST_MINUTES, lackOf, MOST_MINUTES } from './lackOf.ts';
import { SeenByLearner } from './SeenByLearner.tsx';
import { SlipsField, slipsIn, USUAL_SLIPS } from './SlipsField.tsx';
import './evening.css';

export interface EveningPageProps extends Pick<PlaceTabsProps, 'onPlace'> {
  readonly port: EveningPort;
  readonly links: readonly RoomLink[];
}

/** What a sealed job takes is not told; its time limit is. */
function sealedMinutes(entry: ScenarioEntry | undefined): number {
  return entry?.sealed === true ? (entry.timeLimitSeconds ?? 0) / 60 : 0;
}

/** What is typed into one field after the other is one step. */
const TYPED: ReadonlySet<string> = new Set(['title', 'author', 'minutes', 'minutesEach', 'passMark']);

export function EveningPage({ port, links, onPlace }: EveningPageProps) {
  const { shell, workshop } = useWords();
  const say = workshop.evening;
  usePageTitle(say.tab, shell.workshop);
  const [history, setHistory] = useState(() => begun(port.draft()));
  const draft = history.now;
  const [phrase, setPhrase] = useState('');
  const [slips, setSlips] = useState(`${USUAL_SLIPS}`);
  const [saving, setSaving] = useState(false);
  const [kept, setKept] = useState(true);
  const [told, setTold] = useState<{ readonly saved: boolean; readonly problems: readonly string[] } | null>(null);
  const [changes, redraw] = useReducer<number, void>((n) => n + 1, 0);
  useEffect(() => port.subscribe(() => redraw()), [port]);
  const offered = useMemo(() => port.offered(), [port, changes]);
  const entries = useMemo(() => new Map(offered.map((entry) => [entry.id, entry])), [offered]);
  const write = (change: Partial<EveningDraft>): void => {
    const [key, ...others] = Object.keys(change);
    turnTo(changed(history, { ...draft, ...change }, others.length === 0 && TYPED.has(key!) ? key! : null));
  };
  const turnTo = (next: History<EveningDraft>): void => {
    setHistory(next);
    setKept(port.write(next.now));
    setTold(null);
  };
  const undo = (): void => turnTo(undone(history));
  const redo = (): void => turnTo(redone(history));
  useUndoKeys({ undo, redo });
  const lacks = lackOf(draft, phrase, (id) => (entries.get(id)?.timeLimitSeconds ?? 14_400) / 60);
  const certified = draft.scenarios.flatMap((id) => entries.get(id) ?? []).filter((entry) => !entry.uncertified);
  const parMinutes = certified.reduce((sum, { par }) => sum + (par?.seconds ?? 0) / 60, 0);
  const limitMinutes = draft.scenarios.reduce((sum, id) => sum + sealedMinutes(entries.get(id)), 0);
  const save = (): void => {
    if (saving) return; // not disabled meanwhile: it would lose the focus
    const exam = draft.exam === null ? null : { terms: draft.exam, phrase };
    setSaving(true);
    void port.save(draft, exam).then((problems) => {
      setSaving(false);
      setTold({ saved: problems.length === 0, problems });
    });
  };
  return (
    <WorkshopFrame
      current="evening"
      onPlace={onPlace}
      links={links}
      title={say.title}
      right={
        <>
          <span class="desk-open">
            {kept ? <span class="l2">{workshop.kept}</span> : null}
            <b>
              <bdi>{draft.title === '' ? workshop.untitled : draft.title}</bdi>
            </b>
          </span>
          <UndoButtons
            of="evening"
            now={draft}
            undoSteps={history.past.length}
            redoSteps={history.future.length}
            {...{ undo, redo }}
          />
        </>
      }
    >
      <div class="evening-desk">
        <section class="paper evening-sheet" aria-labelledby="evening-title">
          <Frame kind="sheet" />
          <PlateTitle id="evening-title" no={1}>
            {say.tab}
          </PlateTitle>
          <div class="evening-fields">
            <label class="wide">
              <span class="l">{say.name}</span>
              <input
                class="written"
                type="text"
                maxLength={60}
                value={draft.title}
                onInput={({ currentTarget }) => write({ title: currentTarget.value })}
              />
            </label>
            <label>
              <span class="l">{say.author}</span>
              <input
                class="written"
                type="text"
                maxLength={80}
                value={draft.author}
                onInput={({ currentTarget }) => write({ author: currentTarget.value })}
              />
            </label>
            <label>
              <span class="l">{say.minutes}</span>
              <input
                class="written"
                type="number"
                min={LEAST_MINUTES}
                max={MOST_MINUTES}
                value={draft.minutes ?? ''}
                aria-describedby="evening-minutes-note"
                onInput={({ currentTarget }) =>
                  write({ minutes: currentTarget.value === '' ? null : Number(currentTarget.value) })
                }
              />
            </label>
          </div>
          <p class="evening-note" id="evening-minutes-note">
            {say.minutesNote(Math.round(parMinutes), Math.round(limitMinutes))}
          </p>
          <h3 class="l">{say.inOrder}</h3>
          {draft.scenarios.length === 0 ? (
            <p class="evening-none">{say.none}</p>
          ) : (
            <EveningList
              ids={draft.scenarios}
              entries={entries}
              minutesEach={draft.minutesEach}
              change={(scenarios) => write({ scenarios })}
              changeMinutes={(id, minutes) => {
                const { [id]: _, ...others } = draft.minutesEach;
                write({ minutesEach: minutes === null ? others : { ...others, [id]: minutes } });
              }}
            />
          )}
          <AddOne
            offered={offered.filter(({ id }) => !draft.scenarios.includes(id))}
            full={draft.scenarios.length >= MOST}
            add={(id) => write({ scenarios: [...draft.scenarios, id] })}
          />
        </section>
        <div class="evening-side">
          <fieldset class="paper evening-order">
            <Frame kind="card" />
            <legend class="l">{say.order}</legend>
            {(['listed', 'any'] as const).map((order) => (
              <label key={order}>
                <input
                  type="radio"
                  name="evening-order"
                  checked={draft.order === order}
                  onChange={() => write({ order })}
                />
                <span>
                  <b>{say.orders[order]}</b> <small>{say.orderNotes[order]}</small>
                </span>
              </label>
            ))}
          </fieldset>
          <section class="paper evening-mark">
            <Frame kind="card" />
            <label>
              <span class="l">{say.passMark}</span>
              <input
                class="written"
                type="number"
                min={1}
                max={Math.max(1, draft.scenarios.length)}
                value={draft.passMark ?? ''}
                aria-describedby="evening-mark-note"
                onInput={({ currentTarget: { value } }) => write({ passMark: value === '' ? null : Number(value) })}
              />
            </label>
            <p class="evening-note" id="evening-mark-note">
              {say.passMarkNote(draft.scenarios.length)}
            </p>
          </section>
          <ExamFields
            terms={draft.exam}
            phrase={phrase}
            sealed={draft.scenarios.filter((id) => entries.get(id)?.sealed === true).length}
            all={draft.scenarios.length}
            change={(exam) => write({ exam })}
            changePhrase={(typed) => {
              setPhrase(typed);
              setTold(null);
            }}
          />
          <section class="paper evening-out" aria-labelledby="evening-out">
            <Frame kind="card" />
            <PlateTitle id="evening-out" no={3}>
              {say.handOut}
            </PlateTitle>
            <p>{say.handOutNote}</p>
            {lacks.length === 0 ? null : (
              <ul class="evening-lacks">
                {lacks.map((lack) => (
                  <li key={lack}>{say.lacks[lack]}</li>
                ))}
              </ul>
            )}
            <Button primary disabled={lacks.length > 0} onClick={save}>
              {draft.exam === null ? say.save : say.exam.save}
            </Button>
            <SlipsField
              typed={slips}
              type={setSlips}
              {...{ title: draft.title.trim(), author: draft.author.trim(), minutes: draft.minutes }}
              file={port.fileName(draft)}
              address={port.address}
              scenarios={draft.scenarios.length}
              passMark={draft.passMark}
              minutesEach={draft.scenarios.map((id) => draft.minutesEach[id] ?? null)}
              candidates={draft.exam?.candidates ?? null}
              disabled={lacks.some((lack) => lack !== 'phrase')}
            />
            <div role="status">
              {told?.saved ? <p>{say.saved}</p> : null}
              {kept ? null : <p>{say.notKept}</p>}
              {told === null || told.problems.length === 0 ? null : (
                <ul class="evening-lacks">
                  {told.problems.map((problem) => (
                    <li key={problem}>{problem}</li>
                  ))}
                </ul>
              )}
            </div>
          </section>
        </div>
        <SeenByLearner draft={draft} entries={entries} />
        {draft.exam === null ? null : (
          <DealGrid
            {...{ port, draft }}
            terms={draft.exam}
            codes={draft.scenarios.map((id) => entries.get(id)?.code ?? id)}
            candidates={slipsIn(slips) ?? USUAL_SLIPS}
            complete={lacks.every((lack) => lack === 'phrase')}
          />
        )}
      </div>
    </WorkshopFrame>
  );
}
