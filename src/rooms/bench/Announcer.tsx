/** Tells a screen reader how a slug has changed the curve. */

import { useEffect, useState } from 'preact/hooks';
import { readCurve } from '../../describe/curve.ts';
import { curveChange } from '../../describe/curveChange.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import type { BenchPort } from '../../present/ports.ts';

/** One sentence when the hand rests, not one for each eighth of a turn. */
const REST_MS = 500;

export function Announcer({ port }: { readonly port: BenchPort }) {
  const allWords = useWords();
  // Numbered, so that the same words are said again the second time.
  const [said, setSaid] = useState({ no: 0, words: '' });
  useEffect(() => {
    const setWords = (words: string): void => setSaid(({ no }) => ({ no: no + 1, words }));
    let turns = port.state().turnsMade;
    let curve = readCurve(port.display());
    let timer: ReturnType<typeof setTimeout> | undefined;
    const rested = (): void => {
      const now = readCurve(port.display());
      const turned = port.state().turnsMade !== turns;
      if (turned) setWords(curveChange(allWords, curve, now));
      turns = port.state().turnsMade;
      curve = now;
    };
    const stop = port.subscribe(() => {
      clearTimeout(timer);
      timer = setTimeout(rested, REST_MS);
    });
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [port]);
  return (
    <div class="unseen" role="status" aria-live="polite">
      <span key={said.no}>{said.words}</span>
    </div>
  );
}
