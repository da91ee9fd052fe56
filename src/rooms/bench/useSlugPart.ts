/** What the chosen slug moves, worked out when the hand rests: not thirty times a second while it turns. Null where nobody may be told, or no slug is chosen. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { BenchState } from '../../bench/benchState.ts';
import { createRest } from '../../kit/rest.ts';
import type { BenchPort } from '../../present/ports.ts';
import { createSlugParts, type SlugPart } from '../../present/slugPart.ts';
import type { Receiver } from '../../receiver/receiver.ts';
import { responseById } from '../../receiver/responses.ts';
import { slugLetters } from '../../receiver/slugLetters.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { aidsWithin } from '../../session/session.ts';
import type { Words } from '../../words/words.ts';

export interface PartShown {
  readonly slug: string;
  /** null: a turn moves no part of this curve */
  readonly part: SlugPart | null;
  /** the slugs that it was worked out for */
  readonly slugs: BenchState['slugs'];
}

const REST_MS = 300;

/** It is help, and goes with the others: never in a sealed job. */
export function tellsPart(scenario: Scenario): boolean {
  const { hints, toleranceMarks } = aidsWithin(scenario);
  return hints || toleranceMarks;
}

/** Of the panel that shows it. */
export function slugPartTitle({ slugPart: say }: Words, receiver: Receiver, slug: string | null): string {
  return slug === null ? say.untitled : say.title(slugLetters(receiver).get(slug)!);
}

export function useSlugPart(port: BenchPort, slug: string | null): PartShown | null {
  const told = useMemo(() => tellsPart(port.scenario), [port]);
  const parts = useMemo(() => createSlugParts(port.setup), [port]);
  const [shown, setShown] = useState<PartShown | null>(null);
  const chosen = told ? slug : null;
  useEffect(() => {
    if (chosen === null) return setShown(null);
    let seen: readonly unknown[] = [];
    const rest = createRest(REST_MS, () => {
      const part = parts(port.state(), chosen, responseById(port.receiver, port.facts().response));
      setShown({ slug: chosen, part, slugs: port.state().slugs });
    });
    // Heard of here and not as state: the whole bench page would be drawn anew at each turn.
    const look = (): void => {
      const { slugs, replaced } = port.state();
      const now = [slugs, replaced, port.facts().response];
      if (now.every((one, i) => Object.is(one, seen[i]))) return;
      seen = now;
      rest.stir();
    };
    look();
    const stop = port.subscribe(look);
    return () => {
      stop();
      rest.stop();
    };
  }, [port, parts, chosen]);
  return shown?.slug === chosen ? shown : null;
}
