/** A refusal, or what the bench answers to an act: shown where the act was tried, and told to screen readers in one sentence after another. */
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { partCalled } from '../../describe/partCalled.ts';
import { refusalSentence } from '../../describe/sentence.ts';
import { usePressed } from '../../kit/hooks/usePressed.ts';
import { useSpoken } from '../../kit/hooks/useSpoken.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { px, type Rect } from '../../kit/px.ts';
import { type Answer, createAnswers, soundOf } from '../../present/answers.ts';
import type { BenchPort } from '../../present/ports.ts';
import type { Words } from '../../words/words.ts';
import type { BenchSounds } from './AtHand.tsx';
import { notePlace } from './notePlace.ts';

interface Note {
  /** `misfit`: an answer of the bench that is no praise */
  readonly kind: 'refusal' | 'answer' | 'misfit';
  readonly text: string;
  /** of what the hand was on when it was done */
  readonly hand: Rect;
  readonly no: number;
}

const SHOWN_MS: Readonly<Record<Note['kind'], number>> = { refusal: 4500, answer: 2500, misfit: 4500 };
/** A knob that is turned through the right place has not yet done its step. */
const REST_MS = 300;
/** px of a hand that is on nothing known */
const HAND = 36;
/** px from the rim of the window */
const RIM = 8;
/** px that the header has for itself */
const HEADER = 56;

interface ToastProps {
  readonly port: BenchPort;
  readonly sound: BenchSounds | null;
  /** what is answered beside the phases: the guide answers a step by going on to the next, and what the technician does is no act of the learner's */
  readonly telling: 'all' | 'notSteps' | 'nothing';
}

export function Toast({ port, sound, telling }: ToastProps) {
  const words = useWords();
  const [note, setNote] = useState<Note | null>(null);
  const [spoken, say] = useSpoken();
  const count = useRef(0);
  const readUntil = useRef(0);
  const pressed = usePressed();
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const show = (kind: Note['kind'], text: string): void => {
      count.current += 1;
      // Why something did not go is read to its end.
      if (kind !== 'answer') readUntil.current = Date.now() + SHOWN_MS[kind];
      else if (Date.now() < readUntil.current) return;
      setNote({ kind, text, hand: underHand(pressed()), no: count.current });
      clearTimeout(timer);
      timer = setTimeout(() => setNote(null), SHOWN_MS[kind]);
    };
    const answers = createAnswers(port);
    let asked: ReturnType<typeof setTimeout> | undefined;
    const answer = (): void => {
      asked = undefined;
      const told: string[] = [];
      for (const one of answers()) {
        if (telling === 'nothing' && one.kind !== 'phases') continue;
        const name = soundOf(one);
        if (name !== null) sound?.answer(name);
        if (telling !== 'all' && one.kind === 'steps') continue;
        const text = sentenceOf(words, port, one);
        told.push(text);
        if (one.kind !== 'phases') show(one.kind === 'spent' || one.kind === 'care' ? 'misfit' : 'answer', text);
      }
      if (told.length > 0) say(told.join(' '));
    };
    const stops = [
      port.onRefused((reason, event) => show('refusal', refusalSentence(words, reason, event, port.receiver))),
      port.subscribe(() => {
        asked ??= setTimeout(answer, REST_MS);
      }),
    ];
    return () => {
      for (const stop of stops) stop();
      clearTimeout(timer);
      clearTimeout(asked);
    };
  }, [port, pressed, words, sound, telling]);
  const paper = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (note !== null && paper.current !== null) setDown(paper.current, note.hand);
  }, [note]);
  return (
    <>
      <div class="unseen" aria-live="assertive" role="status">
        {note?.kind === 'refusal' ? note.text : ''}
      </div>
      <div class="unseen" aria-live="polite" role="status">
        <span key={spoken.no}>{spoken.text}</span>
      </div>
      {note === null ? null : (
        <div key={note.no} class={note.kind === 'answer' ? 'toast answer' : 'toast'} ref={paper} aria-hidden="true">
          {note.text}
        </div>
      )}
    </>
  );
}

/** The knob, switch, plug or button at a point of the window; of the slug's own panel all that turns it. */
function underHand({ x, y }: { readonly x: number; readonly y: number }): Rect {
  const part = document.elementFromPoint(x, y)?.closest(PARTS);
  if (part != null) return rectOf(part);
  return { x: x - HAND / 2, y: y - HAND / 2, width: HAND, height: HAND };
}

const PARTS = '.knob, .switch, .position-row, .slug-inset, button, a, summary, label, select, input';

/** Over no curve, over no part that is lit, and never over what the hand is on. */
function setDown(paper: HTMLElement, hand: Rect): void {
  const clear = [...document.querySelectorAll('.bench-tube, .guide-light')].map(rectOf);
  const note = { width: paper.offsetWidth, height: paper.offsetHeight };
  const room = { x: RIM, y: HEADER, width: innerWidth - 2 * RIM, height: innerHeight - HEADER - RIM };
  const { x, y } = notePlace({ hand, clear, note, room });
  paper.style.left = px(x);
  paper.style.top = px(y);
}

function rectOf(part: Element): Rect {
  const { left, top, width, height } = part.getBoundingClientRect();
  return { x: left, y: top, width, height };
}

function sentenceOf(words: Words, { receiver }: BenchPort, answer: Answer): string {
  const { answers: say } = words;
  switch (answer.kind) {
    case 'steps':
      return say.steps(answer.steps.map((step) => step + 1));
    case 'lines':
      return say.lines(answer.came, answer.outside);
    case 'finding':
      return say.finding;
    case 'spent':
      return say.spent;
    case 'part':
      return say.part(partCalled(words, receiver, answer.part));
    case 'care':
      return answer.incidents.map((kind) => say.care[kind]).join(' ');
    case 'phases':
      return say.phases(answer.phases.map((phase) => words.phases[phase]));
  }
}
