/**
 * Attempts at sealed jobs dealt ahead, in the memory of this page alone: a number chosen by chance and the set-up that it makes, for whoever opens the job next. Each is handed out once. A hand that
 * reaches for a job has it dealt at once, with all the workers that the page has; while nobody does anything the others are dealt one after the other, by one worker. Nothing here tells what was dealt.
 */
import type { Approach } from '../../present/ports.ts';
import type { Order, Outcome } from '../jobs/jobTable.ts';
import type { Deal, FetchOptions, Library } from './library.ts';

/** What only a page that deals has to fetch. */
export interface DealingTools {
  /** beside the page, or not at all; `hurry`: in as many lanes as there are */
  ahead(order: Order<'attempt'>, options: AheadOptions): Promise<Outcome<'attempt'>>;
  /** in any case, as a job is dealt of which nothing was dealt ahead */
  readonly beside: Deal;
}

export interface AheadOptions {
  readonly signal: AbortSignal;
  readonly hurry: boolean;
}

export interface DealsAheadGiven {
  readonly setup: Library['setup'];
  /** null: this page has nothing that could deal beside it */
  readonly tools: (() => Promise<DealingTools>) | null;
  /** has the workers stand by, if there are any */
  readonly wake: () => void;
  /** whether both are about the same scenario on the same receiver */
  readonly isSame: (one: Order<'attempt'>, other: Order<'attempt'>) => Promise<boolean>;
  /** the number of a new attempt: chance is the page's own business */
  readonly freshNumber: () => number;
  /** as far as is known at once */
  readonly isSealed: (id: string) => boolean;
  /** whether opening it now begins a new attempt by whatever number: none lies open, and no exam has it */
  readonly isFree: (id: string) => Promise<boolean>;
  /** fetches all that shows a bench */
  readonly fetchRoom: () => void;
  /** false: nobody can see the page */
  readonly isVisible: () => boolean;
  /** returns what stops it */
  readonly after: (milliseconds: number, callback: () => void) => () => void;
}

/** How a new attempt is asked of the library: under its number and, where it was dealt ahead, with the way to what was dealt. */
export type NewAttempt = Pick<FetchOptions, 'deal'> & { readonly attempt: number };

export interface DealsAhead {
  /** of the ways into this job */
  approach(id: string): Approach;
  /** the page goes on to the bench of this job, or elsewhere: nothing else is dealt for now */
  headFor(id: string | null): void;
  /** From now on, and for as long as nobody does anything, deals what `inTurn` names; each at most once. Returns what stops it. */
  standBy(inTurn: () => readonly string[]): () => void;
  /** somebody is at the page, and does something */
  stirred(): void;
  /** for opening a job; `signal`: when it is called off */
  take(id: string, signal: AbortSignal): NewAttempt;
}

/** ms; a pointer that is on its way elsewhere crosses a card in less */
export const NEAR_MS = 50;
/** ms; the page has its cards and their frames long before */
export const FIRST_MS = 3000;
/** ms in which nobody has done anything */
export const QUIET_MS = 1500;
/** ms between two that are dealt while nobody does anything */
export const REST_MS = 250;

interface Held {
  readonly id: string;
  readonly attempt: number;
  readonly calledOff: AbortController;
  /** somebody has reached for it */
  wanted: boolean;
  over: boolean;
  /** what it is dealt from, and what came of it; null: it never came to that */
  readonly dealt: Promise<{ readonly order: Order<'attempt'>; readonly outcome: Promise<Outcome<'attempt'>> } | null>;
}

export function createDealsAhead(given: DealsAheadGiven): DealsAhead {
  const { freshNumber, after } = given;
  const holds = new Map<string, Held>();
  let tools = given.tools;
  let running: Held | null = null;
  /** the last one that a pointer came near to, where that has to wait for what is running */
  let next: string | null = null;
  let nearest: string | null = null;
  let standing: { readonly inTurn: () => readonly string[]; readonly tried: Set<string> } | null = null;
  let stopTimer: (() => void) | null = null;
  let somebody = false;
  let quiet = false;

  const callOff = (held: Held): void => {
    if (holds.get(held.id) === held) holds.delete(held.id);
    if (running === held) running = null;
    held.calledOff.abort();
  };

  const begin = (id: string, fetchTools: () => Promise<DealingTools>, wanted: boolean): void => {
    const calledOff = new AbortController();
    const { signal } = calledOff;
    const attempt = freshNumber();
    const free = given.isFree(id);
    const fetched = fetchTools();
    fetched.catch(() => {});
    let tell: (dealt: Awaited<Held['dealt']>) => void = () => {};
    const dealt: Held['dealt'] = new Promise((resolve) => {
      tell = resolve;
    });
    const held: Held = { id, attempt, calledOff, wanted, over: false, dealt };
    const deal: Deal = async (order) => {
      const [{ ahead }, mayBe] = await Promise.all([fetched, free]);
      if (!mayBe) throw new Error('not free');
      const outcome = ahead(order, { signal, hurry: held.wanted });
      tell({ order, outcome });
      // The page has nothing to do until it is dealt.
      given.fetchRoom();
      return outcome;
    };
    const ended = (good: boolean): void => {
      held.over = true;
      tell(null);
      if (running === held) running = null;
      const kept = holds.get(id) === held;
      // What came to nothing leaves no number behind; the next one may have better luck.
      if (kept && !good) holds.delete(id);
      if (signal.aborted) return;
      standing?.tried.add(id);
      // A lane that found nothing has been ended with its worker.
      if (kept) after(REST_MS, given.wake);
      goOn();
    };
    holds.set(id, held);
    running = held;
    given.setup(id, { attempt, signal, deal }).then(
      (setup) => ended(setup?.ok === true),
      (error: unknown) => {
        // A page whose workers break down would only stand still.
        if (isWithoutWorkers(error)) tools = null;
        ended(false);
      },
    );
  };

  const reach = (id: string, sure: boolean): void => {
    next = null;
    const held = holds.get(id);
    if (held !== undefined) held.wanted = true;
    if (held !== undefined || tools === null || !given.isSealed(id)) return;
    // A pointer that goes over one card after the other ends nothing that another card has begun.
    if (running !== null && (sure || !running.wanted)) callOff(running);
    if (running !== null) {
      next = id;
      return;
    }
    given.wake();
    begin(id, tools, true);
  };

  const goOn = (): void => {
    if (running !== null) return;
    if (next !== null && !holds.has(next)) reach(next, false);
    else tick(REST_MS);
  };

  const tick = (milliseconds: number): void => {
    if (standing === null || stopTimer !== null) return;
    stopTimer = after(milliseconds, () => {
      stopTimer = null;
      // The next sign of somebody begins it again.
      if (!given.isVisible()) somebody = false;
      if (!somebody || running !== null) return;
      if (!quiet) {
        quiet = true;
        tick(QUIET_MS);
      } else dealNext();
    });
  };

  const dealNext = (): void => {
    if (standing === null) return;
    const { inTurn, tried } = standing;
    given.fetchRoom();
    const id = inTurn().find((one) => !tried.has(one) && !holds.has(one));
    if (id === undefined || tools === null) return;
    given.wake();
    begin(id, tools, false);
  };

  const leave = (): void => {
    standing = null;
    stopTimer?.();
    stopTimer = null;
    if (running?.wanted === false) callOff(running);
  };

  return {
    approach: (id) => ({
      near(here) {
        nearest = here ? id : null;
        if (!here) return;
        after(NEAR_MS, () => {
          if (nearest !== id) return;
          given.fetchRoom();
          reach(id, false);
        });
      },
      reach() {
        nearest = null;
        given.fetchRoom();
        reach(id, true);
      },
    }),
    headFor(id) {
      nearest = null;
      next = null;
      if (running !== null && running.id !== id) callOff(running);
      if (id !== null) reach(id, true);
      leave();
    },
    standBy(inTurn) {
      leave();
      const here = { inTurn, tried: new Set<string>() };
      standing = here;
      somebody = false;
      quiet = false;
      tick(FIRST_MS);
      return () => {
        if (standing === here) leave();
      };
    },
    stirred() {
      quiet = false;
      if (somebody) return;
      somebody = true;
      tick(QUIET_MS);
    },
    take(id, signal) {
      next = null;
      const held = holds.get(id);
      holds.delete(id);
      if (running !== null && running !== held) callOff(running);
      if (held === undefined || tools === null) return { attempt: freshNumber() };
      const fetchTools = tools;
      const off = (): void => held.calledOff.abort();
      signal.addEventListener('abort', off);
      return {
        attempt: held.attempt,
        async deal(order, options) {
          const { beside } = await fetchTools();
          const dealt = await held.dealt;
          if (dealt !== null && (await given.isSame(dealt.order, order))) {
            const outcome = await dealt.outcome.catch(() => null);
            if (outcome?.ok) return outcome;
          } else off();
          return beside(order, options);
        },
      };
    },
  };
}

const isWithoutWorkers = (error: unknown): boolean =>
  error instanceof Error && (error as { readonly failure?: unknown }).failure === 'noWorker';
