/** The user's own shelf: scenarios that were opened from files, by a button or dropped anywhere on the page. */

import { useEffect, useReducer, useRef, useState } from 'preact/hooks';
import { FilesField } from '../../kit/FilesField.tsx';
import { useFileDrop } from '../../kit/hooks/useFileDrop.ts';
import { useFirstWords } from '../../kit/hooks/useWords.ts';
import { Disc } from '../../kit/PlateTitle.tsx';
import { Button } from '../../kit/theme/art.tsx';
import type { CourseCard, CoursePort } from '../../present/ports.ts';
import { EveningPlace } from './EveningPlace.tsx';
import { JobCard } from './JobCard.tsx';
import type { OwnPort, RefusedFile } from './ownPort.ts';
import './own.css';

export interface OwnPlaceProps {
  readonly port: OwnPort;
  readonly columns: number;
  /** false while the runs are being read */
  readonly runsRead: boolean;
  readonly drawn: boolean;
  readonly open: (scenarioId: string) => void;
  readonly approach: CoursePort['approach'];
  /** something is being put on the shelf or taken off it here */
  readonly onHand: () => void;
}

interface ShelfNews {
  readonly news: string;
  readonly refused: readonly RefusedFile[];
  readonly putBack: (() => Promise<void>) | null;
  /** shown to be copied by hand */
  readonly address?: string;
}

const NOTHING: ShelfNews = { news: '', refused: [], putBack: null };
const NO_CODES: ReadonlyMap<string, string> = new Map();

export function OwnPlace({ port, columns, runsRead, drawn, open, approach, onHand }: OwnPlaceProps) {
  const { own: words } = useFirstWords().course;
  const [, redraw] = useReducer<number, void>((n) => n + 1, 0);
  useEffect(() => port.subscribe(() => redraw()), [port]);
  const [told, setTold] = useState(NOTHING);
  const [busy, setBusy] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const section = useRef<HTMLElement>(null);
  // A file may have been dropped while the shelf was out of sight.
  useEffect(() => {
    if (told !== NOTHING) section.current?.scrollIntoView({ block: 'nearest' });
  }, [told]);
  const bring = (files: readonly File[]): void => {
    if (files.length === 0) return;
    onHand();
    setBusy(true);
    setTold({ ...NOTHING, news: words.reading });
    void port.bring(files).then(({ taken, refused }) => {
      setBusy(false);
      setTold({ news: taken.length === 0 ? '' : words.taken(taken), refused, putBack: null });
    });
  };
  const over = useFileDrop(({ files }) => bring([...files]));
  const cards = port.cards();
  const remove = ({ scenario }: CourseCard): void => {
    onHand();
    void port.remove(scenario.id).then((putBack) => {
      setTold({ ...NOTHING, news: words.removed(scenario.title), putBack });
      button.current?.focus();
    });
  };
  const copyLink = async ({ scenario: { id, title } }: CourseCard): Promise<void> => {
    const link = await port.link(id);
    if (link === null) return;
    const { address, long } = link;
    const more = long ? ` ${words.linkLong(address.length)}` : '';
    try {
      await navigator.clipboard.writeText(address);
      setTold({ ...NOTHING, news: words.linkCopied(title) + more });
    } catch {
      setTold({ ...NOTHING, news: words.linkShown + more, address });
    }
  };
  return (
    <section ref={section} class={over ? 'own-place over' : 'own-place'} aria-labelledby="track-own" aria-busy={busy}>
      <div class="track-head">
        <Disc class="large">{words.letter}</Disc>
        <h2 id="track-own" tabIndex={-1}>
          {words.title}
        </h2>
        <Button innerRef={button} disabled={busy} onClick={() => input.current?.click()}>
          {words.open}
        </Button>
        <p>{words.blurb}</p>
      </div>
      <FilesField innerRef={input} multiple accept=".json,application/json" picks="own" onFiles={bring} />
      <p class="own-news" role="status">
        {told.news}
        {told.putBack === null ? null : (
          <button
            type="button"
            class="link"
            onClick={() => {
              void told.putBack?.().then(() => setTold(NOTHING));
            }}
          >
            {words.putBack}
          </button>
        )}
      </p>
      {told.address === undefined ? null : (
        <input
          class="written own-address"
          type="text"
          readOnly
          aria-label={words.link.name}
          value={told.address}
          onFocus={({ currentTarget }) => currentTarget.select()}
        />
      )}
      {told.refused.length === 0 ? null : (
        <div class="own-refused" role="alert">
          {told.refused.map(({ file, reasons }) => (
            <div key={file}>
              <p>
                <b>{words.refused(file)}</b>
              </p>
              <ul>
                {reasons.map((reason) => (
                  <li key={reason}>{reason}</li>
                ))}
              </ul>
            </div>
          ))}
          <button type="button" class="link" onClick={() => setTold(NOTHING)}>
            {words.dismiss}
          </button>
        </div>
      )}
      {port.exams().map(({ hash, title, minutes, count, state }) => (
        <div key={hash} class="exam-paper">
          <p>
            <span class="l">{words.exam.eyebrow}</span> <b>{title}</b> <span>{words.exam.facts(count, minutes)}</span>
          </p>
          <Button label={words.exam.goNamed(title)} onClick={() => port.toExam(hash)}>
            {words.exam.go[state]}
          </Button>
          {state === 'goingOn' ? null : (
            <button
              type="button"
              class="link"
              aria-label={words.removeNamed(title)}
              onClick={() => {
                onHand();
                void port.removeExam(hash).then((putBack) => {
                  setTold({ ...NOTHING, news: words.removed(title), putBack });
                  button.current?.focus();
                });
              }}
            >
              {words.remove}
            </button>
          )}
        </div>
      ))}
      {port.evenings().map((group) => (
        <EveningPlace
          key={group.hash}
          {...{ group, columns, runsRead, drawn, open, approach }}
          remove={() => {
            onHand();
            void port.removeEvening(group.hash).then((putBack) => {
              setTold({ ...NOTHING, news: words.removed(group.title), putBack });
              button.current?.focus();
            });
          }}
        />
      ))}
      {port.isEmpty() || port.isStored() ? null : <p class="own-news">{words.notStored}</p>}
      {cards.length === 0 ? null : (
        <ul
          class={columns === 2 ? 'cards two' : 'cards'}
          aria-label={words.cards}
          style={{ gridTemplateColumns: `repeat(${Math.min(columns, cards.length)}, minmax(0, 1fr))` }}
        >
          {cards.map((card) => (
            <JobCard
              key={card.scenario.id}
              {...{ card, runsRead, drawn }}
              codes={NO_CODES}
              open={() => open(card.scenario.id)}
              approach={approach(card.scenario.id)}
            >
              <div class="own-acts">
                <span class={`own-mark ${card.scenario.own}`}>{words.marks[card.scenario.own ?? 'notTried']}</span>
                {card.scenario.ownReceiver ? (
                  <span class="own-mark">
                    <bdi>{words.ownReceiver(card.scenario.receiverName)}</bdi>
                  </span>
                ) : null}
                <button
                  type="button"
                  class="link"
                  aria-label={words.copyLinkNamed(card.scenario.title)}
                  onClick={() => void copyLink(card)}
                >
                  {words.copyLink}
                </button>
                <button
                  type="button"
                  class="link"
                  aria-label={words.removeNamed(card.scenario.title)}
                  onClick={() => remove(card)}
                >
                  {words.remove}
                </button>
              </div>
            </JobCard>
          ))}
        </ul>
      )}
    </section>
  );
}
