/** While the course page stands and nobody does anything, attempts at its sealed jobs are dealt ahead. */
import { useEffect } from 'preact/hooks';
import { sealedInTurn } from '../present/courseTracks.ts';
import type { CoursePort } from '../present/ports.ts';
import type { DealsAhead } from '../services/library/dealsAhead.ts';

const SIGNS_OF_SOMEBODY = ['pointermove', 'pointerdown', 'keydown', 'wheel'] as const;

export function useDealingAhead(
  { standBy, stirred }: Pick<DealsAhead, 'standBy' | 'stirred'>,
  port: Pick<CoursePort, 'cards' | 'own'>,
): void {
  useEffect(() => {
    for (const sign of SIGNS_OF_SOMEBODY) addEventListener(sign, stirred, { passive: true });
    const stop = standBy(() => [...sealedInTurn(port.cards()), ...sealedInTurn(port.own())]);
    return () => {
      for (const sign of SIGNS_OF_SOMEBODY) removeEventListener(sign, stirred);
      stop();
    };
  }, [port]);
}
