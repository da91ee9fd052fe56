/** One look after the other of a drill: fetched, turned at, answered. The next one is made while this one is looked at. */
import { useCallback, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { BenchState } from '../../bench/benchState.ts';
import type { Answer, DrillId, Question } from '../../drills/drill.ts';
import { isRight } from '../../drills/marking.ts';
import { lookSeed } from '../../drills/question.ts';

export type FetchQuestion = (drill: DrillId, seed: string) => Promise<Question>;

export interface Looked {
  /** which one of the series, from 0 */
  readonly no: number;
  readonly question: Question;
  /** the bench as it has been turned */
  readonly state: BenchState;
  /** the picture is that of half the level */
  readonly halved: boolean;
  readonly hasHalved: boolean;
  readonly answer: { readonly given: Answer; readonly right: boolean } | null;
}

export interface LookActs {
  turn(state: BenchState): void;
  halve(): void;
  answer(given: Answer): void;
  next(): void;
}

export interface LookGiven {
  readonly drill: DrillId;
  readonly series: string;
  readonly fetch: FetchQuestion;
  readonly onMarked: (right: boolean) => void;
}

export function useLook({ drill, series, fetch, onMarked }: LookGiven) {
  const [no, setNo] = useState(0);
  const [looked, setLooked] = useState<Looked | 'making' | { readonly error: unknown }>('making');
  const asked = useRef(new Map<string, { readonly made: Promise<Question>; ready: Question | null }>());
  const ask = useCallback(
    (look: number) => {
      const seed = lookSeed(drill, series, look);
      const before = asked.current.get(seed);
      if (before !== undefined) return before;
      const begun: { readonly made: Promise<Question>; ready: Question | null } = {
        made: fetch(drill, seed).then((question) => {
          begun.ready = question;
          return question;
        }),
        ready: null,
      };
      asked.current.set(seed, begun);
      return begun;
    },
    [drill, series, fetch],
  );
  useLayoutEffect(() => {
    let here = true;
    const put = (question: Question): void => {
      if (!here) return;
      const { state } = question.scene;
      setLooked({ no, question, state, halved: false, hasHalved: false, answer: null });
      // Whatever is wrong with the next one is told when it is wanted.
      ask(no + 1).made.catch(() => {});
    };
    const { made, ready } = ask(no);
    if (ready !== null) put(ready);
    else {
      setLooked('making');
      made.then(put, (error: unknown) => {
        if (here) setLooked({ error });
      });
    }
    return () => {
      here = false;
    };
  }, [ask, no]);
  const change = (how: (now: Looked) => Looked): void =>
    setLooked((now) => (now === 'making' || 'error' in now ? now : how(now)));
  const acts: LookActs = {
    turn: (state) => change((now) => (now.answer === null ? { ...now, state } : now)),
    halve: () => change((now) => ({ ...now, halved: !now.halved, hasHalved: true })),
    answer(given) {
      if (looked === 'making' || 'error' in looked || looked.answer !== null) return;
      const right = isRight(looked.question, given);
      change((now) => ({ ...now, answer: { given, right } }));
      onMarked(right);
    },
    next: () => setNo((n) => n + 1),
  };
  return { looked, acts };
}
