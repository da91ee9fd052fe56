/** The sheet of an evening on the course: its scenarios in their order, what is signed, and what opens next. */
import { useFirstWords } from '../../kit/hooks/useWords.ts';
import type { CoursePort } from '../../present/ports.ts';
import { JobCard } from './JobCard.tsx';
import type { EveningGroup } from './ownPort.ts';

export interface EveningPlaceProps {
  readonly group: EveningGroup;
  readonly columns: number;
  readonly runsRead: boolean;
  readonly drawn: boolean;
  readonly open: (scenarioId: string) => void;
  readonly approach: CoursePort['approach'];
  readonly remove: () => void;
}

const NO_CODES: ReadonlyMap<string, string> = new Map();

export function EveningPlace({ group, columns, runsRead, drawn, open, approach, remove }: EveningPlaceProps) {
  const { evening: words, ownReceiver } = useFirstWords().course.own;
  const { hash, title, author, minutes, passMark, items } = group;
  const heading = `evening-${hash.slice(0, 12)}`;
  const done = items.filter((item) => item.done).length;
  return (
    <section class="evening-place" aria-labelledby={heading}>
      <div class="evening-head">
        <h3 id={heading}>
          <span class="l">{words.eyebrow}</span> <bdi>{title}</bdi>
        </h3>
        <p>
          <bdi>{words.facts(author, minutes)}</bdi> <b>{words.done(done, items.length)}</b>
          {passMark === null ? null : ` ${words.toPass(passMark, items.length)}`}
        </p>
        <button type="button" class="link" aria-label={words.removeNamed(title)} onClick={remove}>
          {words.remove}
        </button>
      </div>
      <ol
        class={columns === 2 ? 'cards two' : 'cards'}
        aria-label={words.cards(title)}
        style={{ gridTemplateColumns: `repeat(${Math.min(columns, items.length)}, minmax(0, 1fr))` }}
      >
        {items.map(({ card, done: signed, after, minutes: given }) =>
          after === null || signed ? (
            <JobCard
              key={card.scenario.id}
              {...{ card, runsRead, drawn }}
              codes={NO_CODES}
              open={() => open(card.scenario.id)}
              approach={approach(card.scenario.id)}
            >
              <div class="own-acts">
                <span class={signed ? 'own-mark certified' : 'own-mark'}>{signed ? words.signed : words.lies}</span>
                {given === null ? null : <span class="own-mark">{words.given(given)}</span>}
                {card.scenario.ownReceiver ? (
                  <span class="own-mark">
                    <bdi>{ownReceiver(card.scenario.receiverName)}</bdi>
                  </span>
                ) : null}
              </div>
            </JobCard>
          ) : (
            <li key={card.scenario.id} class="evening-waits">
              <span class="card-code">{card.scenario.code}</span> {words.opensAfter(after)}
            </li>
          ),
        )}
      </ol>
    </section>
  );
}
