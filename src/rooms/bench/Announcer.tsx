/** Tells a screen reader how a slug has changed the curve. */

import { useEffect } from 'preact/hooks';
import { readCurve } from '../../describe/curve.ts';
import { curveChange } from '../../describe/curveChange.ts';
import { useSpoken } from '../../kit/hooks/useSpoken.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { createRest } from '../../kit/rest.ts';
import type { BenchPort } from '../../present/ports.ts';

/** One sentence when the hand rests, not one for each eighth of a turn. */
const REST_MS = 500;

export function Announcer({ port }: { readonly port: BenchPort }) {
  const allWords = useWords();
  const [said, say] = useSpoken();
  useEffect(() => {
    let turns = port.state().turnsMade;
    let curve = readCurve(port.display());
    const rest = createRest(REST_MS, () => {
      const now = readCurve(port.display());
      const turned = port.state().turnsMade !== turns;
      if (turned) say(curveChange(allWords, curve, now));
      turns = port.state().turnsMade;
      curve = now;
    });
    const stop = port.subscribe(rest.stir);
    return () => {
      rest.stop();
      stop();
    };
  }, [port]);
  return (
    <div class="unseen" role="status" aria-live="polite">
      <span key={said.no}>{said.text}</span>
    </div>
  );
}
