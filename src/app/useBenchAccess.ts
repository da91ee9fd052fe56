/** Whether this tab may work at the bench of a scenario, and what lies open there. */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { type BenchClaim, type ClaimGiven, claimBench } from '../services/store/benchClaims.ts';
import type { Logbook } from '../services/store/logbook.ts';
import type { ReadOpen } from '../services/store/records.ts';

export interface BenchHere {
  readonly kind: 'here';
  readonly open: ReadOpen | null;
  /** counts how often the bench came to this tab: each time the run is read anew */
  readonly turn: number;
  /** another tab has taken it over since */
  readonly lost: boolean;
  /** the browser cannot tell whether another tab works here too */
  readonly unguarded: boolean;
}

export type BenchAccess = { readonly kind: 'waiting' } | { readonly kind: 'elsewhere' } | BenchHere;

/** What is done before the bench goes to another tab. */
export type HandOver = { current: () => Promise<void> };

export interface BenchDoor {
  readonly access: BenchAccess;
  readonly handOver: HandOver;
  /** the other tab has been asked */
  readonly asking: boolean;
  takeOver(): void;
}

export function useBenchAccess(logbook: Logbook, claims: ClaimGiven, scenarioId: string): BenchDoor {
  const handOver = useRef<() => Promise<void>>(async () => {});
  const [access, setAccess] = useState<BenchAccess>({ kind: 'waiting' });
  const [asking, setAsking] = useState(false);
  const claim = useRef<BenchClaim | null>(null);

  // Laid out at once and not after the paint: what is claimed here must be let go however soon the room is left.
  useLayoutEffect(() => {
    const mine = claimBench(claims, scenarioId, () => handOver.current());
    let turn = 0;
    let here = true;
    const follow = async (): Promise<void> => {
      const state = mine.state();
      setAsking(state === 'asking');
      if (state === 'elsewhere') setAccess({ kind: 'elsewhere' });
      if (state === 'lost') setAccess((old) => (old.kind === 'here' ? { ...old, lost: true } : { kind: 'elsewhere' }));
      if (state !== 'held' && state !== 'unguarded') return;
      const now = ++turn;
      const open = await logbook.readOpen(scenarioId);
      if (!here || now !== turn || mine.state() !== state) return;
      setAccess({ kind: 'here', open, turn, lost: false, unguarded: state === 'unguarded' });
    };
    const stop = mine.subscribe(() => void follow());
    claim.current = mine;
    void follow();
    return () => {
      here = false;
      stop();
      // The next tab shall find the run as it was left.
      void handOver.current().finally(() => mine.release());
    };
  }, []);

  return { access, handOver, asking, takeOver: () => claim.current?.takeOver() };
}
