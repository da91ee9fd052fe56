/** How a learner meets the sheet: an exam first under its seal, then each scenario, open or waiting for the one before. A picture of the course page and the exam's, to look at only. */

import { useWords } from '../../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../../kit/PlateTitle.tsx';
import { Told } from '../../../kit/Told.tsx';
import { Frame, Ink } from '../../../kit/theme/art.tsx';
import { C } from '../../../kit/theme/ink.ts';
import { CARD_BOX, type CardCurve } from '../../../present/cardCurve.ts';
import { clockTime } from '../../../present/clockTime.ts';
import type { ScenarioEntry } from '../../../present/scenarioEntry.ts';
import type { EveningDraft } from './eveningPort.ts';
import './seen.css';

export interface SeenByLearnerProps {
  readonly draft: EveningDraft;
  readonly entries: ReadonlyMap<string, ScenarioEntry>;
}

export function SeenByLearner({ draft, entries }: SeenByLearnerProps) {
  const { workshop, course, exam: told } = useWords();
  const { seen: say } = workshop.evening;
  const { evening } = course.own;
  const { exam, minutes, passMark, scenarios } = draft;
  const title = draft.title.trim() === '' ? say.noTitle : draft.title.trim();
  const author = draft.author.trim();
  const all = scenarios.length;
  const codeOf = (id: string): string => entries.get(id)?.code ?? id;
  return (
    <section class="evening-seen" aria-labelledby="evening-seen">
      <PlateTitle id="evening-seen" no={4}>
        {say.title}
      </PlateTitle>
      {exam === null ? null : (
        <>
          <div class="paper seen-seal">
            <Frame kind="card" seed={3} />
            <Ink svg={LOCK} width={26} height={30} />
            <p>
              <b>
                <bdi>{title}</bdi>
              </b>{' '}
              <small>{told.sealed(all, minutes)}</small>
            </p>
            <p class="seen-fields" aria-hidden="true">
              <span>{exam.candidates === 'numbers' ? told.number : told.name}</span>
              <span>{told.phrase}</span>
              <b>{told.open}</b>
            </p>
          </div>
          <p class="seen-then">{say.opened}</p>
        </>
      )}
      <div class="paper seen-sheet">
        <Frame kind="sheet" seed={4} />
        <div class="seen-head">
          <p class="l">{exam === null ? evening.eyebrow : told.eyebrow}</p>
          {exam === null ? null : <p class="l">{told.candidate(exam.candidates === 'numbers' ? '7' : say.someName)}</p>}
        </div>
        <h3>
          <bdi>{title}</bdi>
        </h3>
        {all === 0 ? null : (
          <p class="seen-facts">
            {exam === null ? <bdi>{evening.facts(author === '' ? null : author, minutes)}</bdi> : null}{' '}
            <b>{`${exam === null ? evening.done(0, all) : told.handedInCount(0, all)}.`}</b>{' '}
            {passMark === null ? null : exam === null ? evening.toPass(passMark, all) : told.toPass(passMark, all)}
          </p>
        )}
        {exam === null ? null : (
          <p class="seen-facts">
            {exam.attempts === 'several' ? told.several : told.once} {exam.results === 'atEnd' ? told.atEnd : ''}
          </p>
        )}
        {exam === null || minutes === null ? null : (
          <p class="seen-clock">
            {told.left} <b class="m">{clockTime(minutes * 60_000)}</b>
          </p>
        )}
        {all === 0 ? <p class="evening-none">{say.empty}</p> : null}
        <ol class="seen-cards">
          {scenarios.map((id, i) => {
            const entry = entries.get(id);
            const after = draft.order === 'any' || i === 0 ? null : codeOf(scenarios[i - 1]!);
            const given = draft.minutesEach[id];
            return (
              <li key={id} class={after === null ? '' : 'waits'}>
                {after !== null || entry === undefined ? null : <SeenCurve curve={entry.curve} />}
                <p>
                  <span class="m">{codeOf(id)}</span>{' '}
                  <b>{entry === undefined ? id : <Told of={entry}>{entry.title}</Told>}</b>
                </p>
                <p class="s">
                  {after === null ? told.states.open : told.waits(after)}
                  {given === undefined ? '' : `, ${told.minutes(given)}`}
                </p>
              </li>
            );
          })}
        </ol>
      </div>
    </section>
  );
}

function SeenCurve({ curve: { found, zero } }: { readonly curve: CardCurve }) {
  return (
    <svg
      class="seen-curve"
      viewBox={`0 0 ${CARD_BOX} ${CARD_BOX}`}
      preserveAspectRatio="none"
      aria-hidden="true"
      focusable="false"
    >
      <path d={`M0 ${zero}H${CARD_BOX}`} />
      <path class="found" d={found} />
    </svg>
  );
}

const LOCK = `<path d="M7 14V9a6 6 0 0 1 12 0v5" fill="none" stroke="${C.ink}" stroke-width="2.4"/><rect x="3" y="13" width="20" height="15" fill="${C.brass}" stroke="${C.ink}" stroke-width="1.6"/><circle cx="13" cy="19" r="2.2" fill="${C.ink}"/><path d="M13 20v4" stroke="${C.ink}" stroke-width="1.8"/>`;
