/**
 * What the desk shows of a draft. A slug is followed at once; what makes the bench anew (a fault, a flaw, another curve) when it has rested for a moment, and so are the
 * lines of the sheet. A draft that no bench can hold shows nothing.
 */
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { BenchDisplay } from '../../../bench/display.ts';
import type { BenchSetup } from '../../../bench/setup.ts';
import type { Standing } from '../../../certify/demands.ts';
import { useTurns } from '../../../kit/hooks/useTurns.ts';
import { createLooks } from '../../../workshop/looks.ts';
import { usePressed } from './usePressed.ts';
import type { WorkshopPort } from './workshopPort.ts';

export interface DraftLook {
  readonly display: BenchDisplay;
  readonly wanted: BenchDisplay;
  /** null: being worked out */
  readonly lines: readonly Standing[] | null;
}

export interface Looking {
  /** null: a draft that no bench can hold */
  readonly look: DraftLook | null;
  /** what is shown is not yet that of the draft as it stands: it is still being worked out */
  readonly behind: boolean;
}

const REST_MS = 120;
/** Problems at these places leave a bench that can be shown. */
const HARMLESS =
  /^\/(id|code|title|track|order|words|hints|aids|weights|proofs|timeLimitSeconds|recommendedAfter|difficulty|sealed|start\/(slugs|randomTurns))/;

export function useLook(port: WorkshopPort, set: Omit<BenchSetup, 'scenario'>, response: string): Looking {
  const { draft, problems } = port;
  const looks = useMemo(() => createLooks(), []);
  const { bench, faults, life, seed, start, toleranceFactor } = draft;
  const made = [set, response, bench, faults, life, seed, start.steelIn, toleranceFactor, draft.responses];
  const rested = useSettled(made);
  const possible = problems.every(({ place }) => HARMLESS.test(place));
  const last = useRef<Omit<DraftLook, 'lines'> | null>(null);
  const [lined, setLined] = useState<{ readonly of: object; readonly lines: readonly Standing[] } | null>(null);
  const pressed = usePressed();
  // The first look comes piece by piece, and then what is shown.
  const { pieces } = looks;
  const done = useTurns(pieces.length, rested && possible);
  const shown = useMemo(() => {
    if (!rested) return last.current;
    if (!possible) return null;
    const setup = { ...set, scenario: draft };
    if (done < pieces.length) {
      pieces[done]!(setup, response);
      return last.current;
    }
    return { wanted: looks.wanted(setup, response), display: looks.handedOut(setup, response) };
  }, [rested, possible, done, ...made, start.slugs, start.randomTurns]);
  last.current = shown;
  useEffect(() => {
    if (!rested || shown === null) return;
    let timer: ReturnType<typeof setTimeout>;
    const work = (): void => {
      // Another list is another height, and a button below it is being pressed.
      if (pressed.current) timer = setTimeout(work, REST_MS / 2);
      else setLined({ of: shown, lines: looks.lines({ ...set, scenario: draft }) });
    };
    timer = setTimeout(work, REST_MS / 2);
    return () => clearTimeout(timer);
  }, [shown]);
  return {
    look: shown === null ? null : { ...shown, lines: lined?.lines ?? null },
    behind: !rested || (possible && done < pieces.length) || (shown !== null && lined?.of !== shown),
  };
}

/** False from when one of the values has changed until none has for a moment. */
function useSettled(values: readonly unknown[]): boolean {
  const [settled, setSettled] = useState<readonly unknown[] | null>(null);
  const same = settled?.every((one, i) => Object.is(one, values[i])) ?? false;
  useEffect(() => {
    if (same) return;
    const timer = setTimeout(() => setSettled(values), settled === null ? 0 : REST_MS);
    return () => clearTimeout(timer);
  }, values);
  return same;
}
