/** The deck line by line; a line that cannot be read is marked, with the reason and what may be done below it. */

import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Problem } from '../../../base/result.ts';
import { saidPhrase } from '../../../describe/problem.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { PlateTitle } from '../../../kit/PlateTitle.tsx';
import { Button, Frame } from '../../../kit/theme/art.tsx';
import { type Repair, repairsOf } from '../../../making/deckFile.ts';
import { deckName, type Making, type Standing } from '../../../making/standing.ts';
import { FilesButton } from './BeginPanel.tsx';
import { Refused } from './Refused.tsx';
import type { ReceiverPort } from './receiverPort.ts';

export interface DeskProps {
  readonly port: ReceiverPort;
  readonly making: Making;
  readonly standing: Standing;
}

const LINES_SHOWN = 300;

export function DeckPanel({ port, making, standing }: DeskProps) {
  const { ownReceiver: say } = useWords();
  const [typed, setTyped] = useState<string | null>(null);
  const text = useRef<HTMLTextAreaElement>(null);
  // Who asks to change the deck writes next.
  useLayoutEffect(() => text.current?.focus(), [typed === null]);
  const lines = making.deckText.replace(/\s*$/, '').split(/\r\n|\n|\r/);
  const inDeck = (standing.deck.ok ? (port.left ?? []) : standing.deck.problems).filter(
    (p) => p.file === deckName(making),
  );
  const wrong = new Set(inDeck.flatMap(({ at }) => (at === undefined ? [] : [at.line])));
  return (
    <section class="paper made-deck" aria-labelledby="made-deck">
      <Frame kind="sheet" />
      <PlateTitle id="made-deck" no={1}>
        {say.deck.title}
      </PlateTitle>
      <p class="made-file">
        <span class="m">{deckName(making)}</span>{' '}
        <span class="l2">{say.deck.understood(lines.length - wrong.size, lines.length)}</span>
      </p>
      {inDeck.some(({ at }) => at === undefined) ? (
        <ul class="made-wrong">
          {inDeck
            .filter(({ at }) => at === undefined)
            .map((problem) => (
              <li key={JSON.stringify(problem.found)}>
                <Fix port={port} making={making} problem={problem} />
              </li>
            ))}
        </ul>
      ) : null}
      {typed === null ? (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls can be scrolled by key
        <section class="made-lines-place" aria-label={say.deck.list} tabIndex={0}>
          <ol class="made-lines">
            {lines.slice(0, LINES_SHOWN).map((line, i) => (
              <li key={i} class={wrong.has(i + 1) ? 'wrong' : undefined}>
                <span class="made-no" aria-hidden="true">
                  {i + 1}
                </span>
                <code dir="ltr" class={/^\s*[*.]/.test(line) || i === 0 ? 'aside' : undefined}>
                  {line}
                </code>
                {inDeck
                  .filter(({ at }) => at?.line === i + 1)
                  .map((problem) => (
                    <Fix
                      key={JSON.stringify([problem.at, problem.found])}
                      port={port}
                      making={making}
                      problem={problem}
                    />
                  ))}
              </li>
            ))}
          </ol>
          {lines.length > LINES_SHOWN ? <p class="l2">{say.deck.more(lines.length - LINES_SHOWN)}</p> : null}
        </section>
      ) : (
        <textarea
          ref={text}
          class="made-text"
          dir="ltr"
          spellcheck={false}
          aria-label={say.deck.text}
          value={typed}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      )}
      <div class="made-row made-foot">
        {typed === null ? (
          <>
            <Button onClick={() => setTyped(making.deckText)}>{say.deck.edit}</Button>
            <Button onClick={port.clear}>{say.begin.another}</Button>
            <FilesButton port={port} />
          </>
        ) : (
          <>
            <Button
              onClick={() => {
                port.deckText(typed);
                setTyped(null);
              }}
            >
              {say.deck.take}
            </Button>
            <Button onClick={() => setTyped(null)}>{say.deck.leave}</Button>
          </>
        )}
      </div>
      <Refused lines={port.refused} />
    </section>
  );
}

function Fix({
  port,
  making,
  problem,
}: {
  readonly port: ReceiverPort;
  readonly making: Making;
  readonly problem: Problem;
}) {
  const words = useWords();
  const { deck: say } = words.ownReceiver;
  const called = (repair: Repair): string =>
    repair.kind === 'put' ? say.put(repair.name) : repair.kind === 'end' ? say.putEnd : say.leaveOut(repair.name);
  return (
    <div class="made-fix">
      <p>
        {problem.at === undefined ? null : <b>{say.line(problem.at.line)} </b>}
        {say.found(saidPhrase(words, problem.found), saidPhrase(words, problem.wanted))}
      </p>
      <div class="made-row">
        {repairsOf(problem, making.deckText).map((repair) => (
          <Button key={repair.kind} onClick={() => port.deckText(repair.deckText)}>
            {called(repair)}
          </Button>
        ))}
      </div>
    </div>
  );
}
