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
  /** whether a new attempt at it may be wanted: it is sealed, none lies open, and no exam has it */
  readonly mayBeWanted: (id: string) => Promise<boolean>;
  /** fetches the room where jobs are done */
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
  /** the last one that somebody has reached for, and whether a new attempt at it is known to be wanted */
  let next: { readonly id: string; may: boolean } | null = null;
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

  const begin = (id: string, wanted: boolean): void => {
    if (tools === null) return;
    const fetchTools = tools;
    const calledOff = new AbortController();
    const { signal } = calledOff;
    const attempt = freshNumber();
    let tell: (dealt: Awaited<Held['dealt']>) => void = () => {};
    const dealt: Held['dealt'] = new Promise((resolve) => {
      tell = resolve;
    });
    const held: Held = { id, attempt, calledOff, wanted, over: false, dealt };
    const deal: Deal = async (order) => {
      const { ahead } = await fetchTools();
      const outcome = ahead(order, { signal, hurry: held.wanted });
      tell({ order, outcome });
      return outcome;
    };
    holds.set(id, held);
    running = held;
    const ended = (good: boolean): void => {
      held.over = true;
      tell(null);
      if (running === held) running = null;
      // What is over for its own reasons leaves no number behind; the next attempt may have better luck.
      if (!good && holds.get(id) === held) holds.delete(id);
      if (signal.aborted) return;
      // A lane that found nothing is ended with its worker.
      given.wake();
      goOn();
    };
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
    given.fetchRoom();
    if (tools === null) return;
    const held = holds.get(id);
    if (held !== undefined) {
      held.wanted = true;
      if (sure && running !== null && running !== held) callOff(running);
      return;
    }
    if (given.isSealed(id)) given.wake();
    const mine = { id, may: false };
    next = mine;
    void given.mayBeWanted(id).then((may) => {
      if (next !== mine) return;
      mine.may = may;
      // A pointer that goes over one card after the other ends nothing that another card has begun.
      if (may && running !== null && (sure || !running.wanted)) callOff(running);
      goOn();
    });
  };

  const goOn = (): void => {
    if (running !== null) return;
    if (next?.may !== true) {
      tick(REST_MS);
      return;
    }
    const { id } = next;
    next = null;
    if (!holds.has(id)) begin(id, true);
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
      } else void dealNext();
    });
  };

  const dealNext = async (): Promise<void> => {
    const here = standing;
    if (here === null) return;
    given.fetchRoom();
    const id = here.inTurn().find((one) => !here.tried.has(one) && !holds.has(one));
    if (id === undefined) return;
    const may = await given.mayBeWanted(id);
    if (standing !== here || running !== null || holds.has(id)) return;
    here.tried.add(id);
    if (may) begin(id, false);
    else goOn();
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
          if (nearest === id) reach(id, false);
        });
      },
      reach() {
        nearest = null;
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
