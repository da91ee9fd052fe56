/**
 * Plays a demonstration at a bench: each of its acts goes to the bench as a learner's would, at the time that the technician took for it. What is said is read
 * before what it is about is done. The bench's own clock goes by the technician's until somebody takes over.
 */
import type { BenchEvent } from '../bench/benchEvent.ts';
import type { TimedEvent } from '../files/runFile.ts';
import type { ShownPort, ShownSpeed, ShownView } from '../present/shownPort.ts';

/** A saying and its place: said before this event, from 0. */
export interface Caption {
  readonly before: number;
  readonly text: string;
}

export interface PlayerGiven {
  readonly events: readonly TimedEvent[];
  /** in order; the first is said before anything is done */
  readonly captions: readonly Caption[];
  /** lets the bench's clock come to this millisecond, and does the act */
  readonly act: (event: BenchEvent, atMs: number) => void;
  /** lets the bench stand as it stood after so many acts */
  readonly goTo: (done: number) => void;
  readonly after: (milliseconds: number, callback: () => void) => unknown;
  readonly takeOver: () => void;
  readonly fromStart: () => void;
}

/** How long a reader is given for a letter, and an act is given at most, milliseconds; and what share of his pauses is kept. */
const LETTER_MS = 55;
const MOST_ACT_MS = 400;
const SHARE: Readonly<Record<ShownSpeed, number>> = { slow: 1, plain: 0.35, quick: 0.1 };
const READING: Readonly<Record<ShownSpeed, number>> = { slow: 1.6, plain: 1, quick: 0.4 };

export function createDemonstrationPlayer(given: PlayerGiven): ShownPort {
  const { captions } = given;
  // The signature is the learner's own affair.
  const events = given.events.filter(({ type }) => type !== 'signedOff');
  const listeners = new Set<() => void>();
  let done = 0;
  let said = 0;
  let over = false;
  /** counts the times that it was started or stopped: what was ordered before is void */
  let spell = 0;
  let view: ShownView = {
    caption: captions[0]?.text ?? '',
    at: 1,
    of: captions.length,
    playing: false,
    ended: false,
    speed: 'plain',
    act: null,
  };
  const show = (change: Partial<ShownView>): void => {
    view = { ...view, ...change };
    for (const listener of [...listeners]) listener();
  };
  const dueNext = (): boolean => said + 1 < captions.length && captions[said + 1]!.before <= done;
  const sayNext = (): void => {
    said++;
    show({ caption: captions[said]!.text, at: said + 1, ended: isLast() });
  };
  const isLast = (): boolean => done >= events.length && said + 1 >= captions.length;
  const actNext = (): void => {
    const { atMs, ...event } = events[done]!;
    done++;
    given.act(event, atMs);
    show({ act: event, ended: isLast() });
  };
  const readingMs = (): number => view.caption.length * LETTER_MS * READING[view.speed];
  const order = (milliseconds: number): void => {
    const mine = spell;
    given.after(milliseconds, () => {
      if (mine === spell && view.playing) play();
    });
  };
  const play = (): void => {
    if (isLast()) show({ playing: false });
    else if (dueNext()) {
      sayNext();
      order(readingMs());
    } else {
      const before = events[done - 1]?.atMs ?? 0;
      actNext();
      order(Math.min(events[done - 1]!.atMs - before, MOST_ACT_MS) * SHARE[view.speed]);
    }
  };
  const stop = (): void => {
    spell++;
    show({ playing: false });
  };
  return {
    view: () => view,
    toggle() {
      if (over) return;
      if (view.playing) stop();
      else if (!isLast()) {
        spell++;
        show({ playing: true });
        order(0);
      }
    },
    step() {
      if (over) return;
      stop();
      while (!dueNext() && done < events.length) actNext();
      if (dueNext()) sayNext();
    },
    stepBack() {
      if (over) return;
      stop();
      // Part of what belongs to this saying has been done: back to where it was said; else to the saying before.
      if (done <= captions[said]!.before) {
        if (said === 0) return;
        said--;
      }
      done = captions[said]!.before;
      given.goTo(done);
      show({ caption: captions[said]!.text, at: said + 1, ended: false, act: events[done - 1] ?? null });
    },
    setSpeed: (speed) => show({ speed }),
    takeOver() {
      if (over) return;
      over = true;
      stop();
      given.takeOver();
    },
    fromStart() {
      over = true;
      stop();
      given.fromStart();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}
