/** A refusal, said where the act was tried and to screen readers; and the region that speaks what a reader would miss. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { refusalSentence } from '../../describe/sentence.ts';
import { usePressed } from '../../kit/hooks/usePressed.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { px } from '../../kit/px.ts';
import type { BenchPort } from '../../present/ports.ts';

interface Note {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly no: number;
}

const SHOWN_MS = 4500;
const HALF_WIDTH = 150;

export function RefusalToast({ port }: { readonly port: BenchPort }) {
  const words = useWords();
  const [note, setNote] = useState<Note | null>(null);
  const count = useRef(0);
  const pressed = usePressed();
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const stop = port.onRefused((reason, event) => {
      count.current += 1;
      const { x, y } = pressed();
      const left = Math.min(innerWidth - HALF_WIDTH - 8, Math.max(HALF_WIDTH + 8, x));
      setNote({
        text: refusalSentence(words, reason, event, port.receiver),
        x: left,
        y: Math.max(64, y - 18),
        no: count.current,
      });
      clearTimeout(timer);
      timer = setTimeout(() => setNote(null), SHOWN_MS);
    });
    return () => {
      stop();
      clearTimeout(timer);
    };
  }, [port, pressed, words]);
  return (
    <>
      <div class="unseen" aria-live="assertive" role="status">
        {note === null ? '' : note.text}
      </div>
      {note === null ? null : (
        <div key={note.no} class="toast" style={{ left: px(note.x), top: px(note.y) }} aria-hidden="true">
          {note.text}
        </div>
      )}
    </>
  );
}
