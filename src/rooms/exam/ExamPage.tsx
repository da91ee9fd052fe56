/** An exam: opened by the phrase that is said aloud, done in its order and its time, handed in as one file. */

import { useEffect, useReducer, useState } from 'preact/hooks';
import { usePageTitle } from '../../kit/hooks/usePageTitle.ts';
import { usePrinting } from '../../kit/hooks/usePrinting.ts';
import { useUnsealing } from '../../kit/hooks/useUnsealing.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { PhraseField } from '../../kit/PhraseField.tsx';
import { Button, Frame, Header } from '../../kit/theme/art.tsx';
import { clockTime } from '../../present/clockTime.ts';
import { ExamPaper } from './ExamPaper.tsx';
import type { ExamItem, ExamPort } from './examPort.ts';
import { WholeReport } from './WholeReport.tsx';
import './exam.css';

export function ExamPage({ port }: { readonly port: ExamPort }) {
  const { shell, exam: say } = useWords();
  const { title, author, minutes, count, sitting } = port;
  usePageTitle(title, shell.product);
  const printing = usePrinting();
  return (
    <div class="room-exam">
      <Header
        product={shell.product}
        onHome={port.toCourse}
        right={sitting === null ? undefined : <span>{say.candidate(sitting.candidate)}</span>}
      />
      <main class="exam-main">
        <section class="paper" aria-labelledby="exam-title">
          <Frame kind="sheet" />
          <p class="l">{say.eyebrow}</p>
          <h1 id="exam-title">
            <bdi>{title}</bdi>
          </h1>
          <p>
            {say.sealed(count, minutes)} {author === null ? null : <bdi>{say.by(author)}</bdi>}
          </p>
          {sitting === null ? <OpenForm port={port} /> : <Sitting port={port} sitting={sitting} />}
        </section>
      </main>
      {printing ? <ExamPaper port={port} /> : null}
    </div>
  );
}

function OpenForm({ port }: { readonly port: ExamPort }) {
  const { exam: say } = useWords();
  const [candidate, setCandidate] = useState('');
  const sealed = useUnsealing((phrase) => port.open(candidate, phrase));
  if (!port.canOpen) return <p role="alert">{say.noCrypto}</p>;
  if (port.another) return <p role="alert">{say.notGoingOn}</p>;
  const numbers = port.candidates === 'numbers';
  const open = (): void => {
    if (numbers && !/^[1-9]\d{0,2}$/.test(candidate.trim())) sealed.setProblems([say.badNumber]);
    else if (candidate.trim() !== '') sealed.open();
  };
  return (
    <form
      class="exam-open"
      onSubmit={(event) => {
        event.preventDefault();
        open();
      }}
    >
      <label>
        <span class="l">{numbers ? say.number : say.name}</span>
        <input
          class="written"
          type="text"
          inputMode={numbers ? 'numeric' : 'text'}
          maxLength={numbers ? 3 : 80}
          autocomplete="off"
          value={candidate}
          onInput={({ currentTarget }) => setCandidate(currentTarget.value)}
        />
      </label>
      <PhraseField label={say.phrase} value={sealed.phrase} onWrite={sealed.write} class="wide" />
      <Button primary disabled={!sealed.ready || candidate.trim() === ''} onClick={open}>
        {sealed.busy ? say.opening : say.open}
      </Button>
      {/* Without it the enter key does nothing in a form of two fields. */}
      <button type="submit" hidden>
        {say.open}
      </button>
      <p class="s">{say.openNote}</p>
      {sealed.problems.length === 0 ? null : (
        <ul class="exam-problems" role="alert">
          {sealed.problems.map((problem) => (
            <li key={problem}>{problem}</li>
          ))}
        </ul>
      )}
    </form>
  );
}

interface SittingProps {
  readonly port: ExamPort;
  readonly sitting: NonNullable<ExamPort['sitting']>;
}

function Sitting({ port, sitting }: SittingProps) {
  const { exam: say } = useWords();
  const [asked, setAsked] = useState(false);
  const [, tick] = useReducer<number, void>((n) => n + 1, 0);
  useEffect(() => {
    const timer = setInterval(() => tick(), 1000);
    return () => clearInterval(timer);
  }, []);
  const { items, signed, several, handedIn, heldBack, passMark } = sitting;
  const { whole } = port;
  const left = sitting.leftMs();
  return (
    <>
      <div class="exam-state">
        <p>
          <b>{`${say.handedInCount(signed, items.length)}.`}</b> {several ? say.several : say.once}
          {passMark === null ? null : ` ${say.toPass(passMark, items.length)}`}
          {heldBack && !handedIn ? ` ${say.atEnd}` : ''}
        </p>
        {handedIn ? null : (
          <p role="timer">
            {left === null ? (
              say.noLimit
            ) : (
              <>
                {say.left} <b class="m">{clockTime(left)}</b>
              </>
            )}
          </p>
        )}
      </div>
      {handedIn && whole !== null ? null : (
        <ol class="exam-items" aria-label={say.items}>
          {items.map((item) => (
            <Item key={item.id} item={item} toBench={() => port.toBench(item.id)} />
          ))}
        </ol>
      )}
      {whole === 'working' ? <p role="status">{say.whole.working}</p> : null}
      {whole === null || whole === 'working' ? null : (
        <WholeReport whole={whole} items={items} openReport={port.openReport} />
      )}
      {handedIn ? (
        <div class="exam-end" role="status">
          <p>{say.done}</p>
          <Button disabled={whole === null || whole === 'working'} onClick={() => print()}>
            {say.whole.print}
          </Button>
          <Button onClick={() => void port.save()}>{say.saveAgain}</Button>
        </div>
      ) : asked ? (
        <div class="exam-end" role="alert">
          <p>{say.sure(signed, items.length)}</p>
          <Button
            primary
            onClick={() => {
              void port.handIn();
            }}
          >
            {say.yes}
          </Button>
          <Button onClick={() => setAsked(false)}>{say.no}</Button>
        </div>
      ) : (
        <div class="exam-end">
          <p>{say.handInNote}</p>
          <Button primary onClick={() => setAsked(true)}>
            {say.handIn}
          </Button>
        </div>
      )}
    </>
  );
}

function Item({ item, toBench }: { readonly item: ExamItem; readonly toBench: () => void }) {
  const { exam: say } = useWords();
  const { code, title, state, after, minutes } = item;
  const open = state === 'open' || state === 'onBench';
  return (
    <li class={state}>
      <p>
        <span class="m">{code}</span> <b>{title}</b>
      </p>
      <p class="s">
        {state === 'waits' ? say.waits(after) : say.states[state]}
        {minutes === null ? null : `, ${say.minutes(minutes)}`}
      </p>
      {open ? (
        <Button label={say.toBenchNamed(title)} onClick={toBench}>
          {say.toBench}
        </Button>
      ) : null}
    </li>
  );
}
