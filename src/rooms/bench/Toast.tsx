/** A refusal, or what the bench answers to an act: shown where the act was tried, and told to screen readers in one sentence after another. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { partCalled } from '../../describe/partCalled.ts';
import { refusalSentence } from '../../describe/sentence.ts';
import { usePressed } from '../../kit/hooks/usePressed.ts';
import { useSpoken } from '../../kit/hooks/useSpoken.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { px } from '../../kit/px.ts';
import { type Answer, createAnswers, soundOf } from '../../present/answers.ts';
import type { BenchPort } from '../../present/ports.ts';
import type { Words } from '../../words/words.ts';
import type { BenchSounds } from './AtHand.tsx';

interface Note {
  /** `misfit`: an answer of the bench that is no praise */
  readonly kind: 'refusal' | 'answer' | 'misfit';
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly no: number;
}

const SHOWN_MS: Readonly<Record<Note['kind'], number>> = { refusal: 4500, answer: 2500, misfit: 4500 };
/** A knob that is turned through the right place has not yet done its step. */
const REST_MS = 300;
const HALF_WIDTH = 150;
/** px of a note of three lines */
const MOST_HIGH = 80;

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
      const { x, y } = pressed();
      const place = clearOfTube(Math.min(innerWidth - HALF_WIDTH - 8, Math.max(HALF_WIDTH + 8, x)), y - 18, x);
      // Why something did not go is read to its end.
      if (kind !== 'answer') readUntil.current = Date.now() + SHOWN_MS[kind];
      else if (Date.now() < readUntil.current) return;
      setNote({ kind, text, x: place.x, y: Math.max(64, place.y), no: count.current });
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
        if (one.kind !== 'phases') show(one.kind === 'spent' ? 'misfit' : 'answer', text);
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
  return (
    <>
      <div class="unseen" aria-live="assertive" role="status">
        {note?.kind === 'refusal' ? note.text : ''}
      </div>
      <div class="unseen" aria-live="polite" role="status">
        <span key={spoken.no}>{spoken.text}</span>
      </div>
      {note === null ? null : (
        <div
          key={note.no}
          class={note.kind === 'answer' ? 'toast answer' : 'toast'}
          style={{ left: px(note.x), top: px(note.y) }}
          aria-hidden="true"
        >
          {note.text}
        </div>
      )}
    </>
  );
}

/** What is told lies over no curve: beside the tube where `pressed` is right of it, else below. */
function clearOfTube(x: number, y: number, pressed: number): { readonly x: number; readonly y: number } {
  const tube = document.querySelector('.bench-tube')?.getBoundingClientRect();
  const clear =
    tube === undefined ||
    x + HALF_WIDTH <= tube.left ||
    x - HALF_WIDTH >= tube.right ||
    y <= tube.top ||
    y - MOST_HIGH >= tube.bottom;
  if (clear) return { x, y };
  const right = tube.right + HALF_WIDTH + 4;
  if (pressed > tube.right && right <= innerWidth - HALF_WIDTH - 8) return { x: right, y };
  return { x, y: Math.min(tube.bottom + MOST_HIGH, innerHeight - 8) };
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
    case 'phases':
      return say.phases(answer.phases.map((phase) => words.phases[phase]));
  }
}
