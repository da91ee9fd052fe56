/**
 * Jobs beside the page: a few workers, made when they are wanted, one job each at a time, the rest wait their turn. Every job tells how far it is, can be
 * called off, and ends with its outcome or with a `JobFailed` that says what went wrong. A job is one long computation, so calling off one that has
 * begun ends its worker; the next job gets a new one.
 */
import { proxy, type Remote, releaseProxy, wrap } from 'comlink';
import type { JobName, OnShare, Order, Outcome, Workbench } from './jobTable.ts';

/** A worker as far as the pool needs it; a test gives one of its own. */
export interface WorkerLike {
  postMessage(message: unknown, transfer: Transferable[]): void;
  addEventListener(type: string, listener: EventListenerOrEventListenerObject): void;
  removeEventListener(type: string, listener: EventListenerOrEventListenerObject): void;
  terminate(): void;
}

export interface JobOptions {
  readonly signal?: AbortSignal;
  readonly onShare?: OnShare;
}

export interface Jobs {
  /** Rejects with a `JobFailed`. */
  run<N extends JobName>(name: N, order: Order<N>, options?: JobOptions): Promise<Outcome<N>>;
  /** so many jobs could begin at once */
  free(): number;
  /** has every worker stand by that there may be, before a job wants one */
  wake(): void;
  /** calls off everything and lets the workers go */
  close(): void;
}

/** `calledOff`: by its signal or because the pool was closed; `threw`: the job itself went wrong; `noWorker`: the worker could not be had or broke down. */
export type JobFailure = 'calledOff' | 'threw' | 'noWorker';

export class JobFailed extends Error {
  readonly failure: JobFailure;
  constructor(failure: JobFailure, detail = '') {
    super(detail === '' ? failure : `${failure}: ${detail}`);
    this.name = 'JobFailed';
    this.failure = failure;
  }
}

interface Waiting {
  readonly start: (bench: Bench) => void;
  readonly fail: (failure: JobFailed) => void;
}

interface Bench {
  readonly worker: WorkerLike;
  readonly remote: Remote<Workbench>;
  busy: boolean;
}

/** `make` gives a new worker; at most `most` are there at a time. */
export function createJobs(make: () => WorkerLike, most: number): Jobs {
  const benches: Bench[] = [];
  const queue: Waiting[] = [];
  const running = new Set<(failure: JobFailed) => void>();
  let closed = false;

  const dismiss = (bench: Bench): void => {
    const at = benches.indexOf(bench);
    if (at < 0) return;
    benches.splice(at, 1);
    bench.worker.terminate();
  };
  const newBench = (): Bench => {
    const worker = make();
    const bench: Bench = { worker, remote: wrap<Workbench>(worker as never), busy: false };
    benches.push(bench);
    worker.addEventListener('error', (event) => {
      // One that breaks down while it stands by is not to be given a job.
      if (bench.busy) return;
      (event as Event).preventDefault();
      dismiss(bench);
    });
    return bench;
  };
  const freeBench = (): Bench | null => {
    const at = benches.findIndex((bench) => !bench.busy);
    if (at < 0) return benches.length >= most ? null : newBench();
    // By turns, so that what each has learnt of its work stays fresh.
    const [bench] = benches.splice(at, 1);
    benches.push(bench!);
    return bench!;
  };
  const next = (): void => {
    while (queue.length > 0) {
      let bench: Bench | null;
      try {
        bench = freeBench();
      } catch (error) {
        queue.shift()!.fail(new JobFailed('noWorker', textOf(error)));
        continue;
      }
      if (bench === null) return;
      bench.busy = true;
      queue.shift()!.start(bench);
    }
  };

  return {
    run(name, order, { signal, onShare } = {}) {
      return new Promise((resolve, reject) => {
        let at: Bench | null = null;
        let share = 0;
        const broken = (event: Event): void => {
          event.preventDefault();
          end(new JobFailed('noWorker', (event as ErrorEvent).message ?? ''), true);
        };
        const calledOff = (): void => end(new JobFailed('calledOff'), true);
        /** Ends the job once, whichever way; `spoilt`: the worker is in the middle of it, or broken, and must go. */
        const end = (failure: JobFailed | null, spoilt: boolean): void => {
          signal?.removeEventListener('abort', calledOff);
          running.delete(stop);
          const waits = queue.indexOf(waiting);
          if (waits >= 0) queue.splice(waits, 1);
          if (at !== null) {
            at.worker.removeEventListener('error', broken);
            at.busy = false;
            if (spoilt) dismiss(at);
            at = null;
          }
          if (failure !== null) reject(failure);
          next();
        };
        const stop = (failure: JobFailed): void => end(failure, true);
        const hear = (told: number): void => {
          // Messages of a job that has ended may still arrive.
          if (at === null || told <= share) return;
          share = Math.min(told, 1);
          onShare?.(share);
        };
        const waiting: Waiting = {
          fail: (failure) => end(failure, false),
          start(bench) {
            at = bench;
            bench.worker.addEventListener('error', broken);
            const callback = proxy(hear);
            (bench.remote.run as (...of: unknown[]) => Promise<unknown>)(name, order, callback).then(
              (outcome) => {
                if (at !== bench) return;
                end(null, false);
                resolve(outcome as never);
              },
              (error: unknown) => {
                if (at === bench) end(new JobFailed('threw', textOf(error)), false);
              },
            );
          },
        };
        if (closed || signal?.aborted === true) {
          reject(new JobFailed('calledOff'));
          return;
        }
        running.add(stop);
        signal?.addEventListener('abort', calledOff);
        queue.push(waiting);
        next();
      });
    },
    wake() {
      try {
        while (!closed && benches.length < most) newBench();
      } catch {
        // Who has a job hears of it.
      }
    },
    free: () => most - benches.filter((bench) => bench.busy).length - queue.length,
    close() {
      closed = true;
      for (const stop of [...running]) stop(new JobFailed('calledOff'));
      for (const bench of [...benches]) {
        bench.remote[releaseProxy]();
        dismiss(bench);
      }
    },
  };
}

function textOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
