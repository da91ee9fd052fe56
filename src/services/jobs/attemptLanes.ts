/**
 * An attempt at a sealed scenario dealt in two lanes: its ideas are tried by turns in two workers, the even ones here and the odd ones there, and the first in their order that can be certified is
 * taken, as if they had been tried one after the other. One lane alone where the page has no two workers to spare.
 */
import { IDEAS_OF_ATTEMPT, noIdea } from '../../certify/dealt.ts';
import type { JobOptions, Jobs } from './jobPool.ts';
import type { Order, Outcome } from './jobTable.ts';

const LANES = 2;

/** What a lane has come to: the idea it is at, and its end. */
interface Lane {
  at: number;
  end: Outcome<'ideas'> | undefined;
}

/** Of those that have found something the lowest idea, once no other lane can still find a lower one; undefined while that is open, null where all have ended with nothing. */
function firstOf(lanes: readonly Lane[]): Outcome<'ideas'> | undefined {
  let best: NonNullable<Outcome<'ideas'>> | null = null;
  for (const { end } of lanes) if (end && (best === null || end.idea < best.idea)) best = end;
  const below = best?.idea ?? IDEAS_OF_ATTEMPT;
  return lanes.some((lane) => lane.end === undefined && lane.at < below) ? undefined : best;
}

export async function dealInLanes(
  jobs: Jobs,
  order: Order<'attempt'>,
  { signal }: Pick<JobOptions, 'signal'> = {},
): Promise<Outcome<'attempt'>> {
  const lanes: Lane[] = Array.from({ length: Math.min(LANES, Math.max(1, jobs.free())) }, (_, first) => ({
    at: first,
    end: undefined,
  }));
  // A lane that can find nothing any more that counts is ended in the middle of it.
  const over = new AbortController();
  const stop = (): void => over.abort();
  if (signal?.aborted === true) stop();
  signal?.addEventListener('abort', stop);
  try {
    const found = await new Promise<NonNullable<Outcome<'ideas'>> | null>((resolve, reject) => {
      const look = (): void => {
        const best = firstOf(lanes);
        if (best !== undefined) resolve(best);
      };
      for (const [first, lane] of lanes.entries()) {
        const onShare = (share: number): void => {
          if (share >= 1) return;
          lane.at = Math.round(share * IDEAS_OF_ATTEMPT);
          look();
        };
        jobs.run('ideas', { ...order, first, step: lanes.length }, { signal: over.signal, onShare }).then((end) => {
          lane.end = end;
          look();
        }, reject);
      }
    });
    return found === null ? noIdea(order.scenario, order.attempt) : { ok: true, value: found.setup };
  } finally {
    signal?.removeEventListener('abort', stop);
    stop();
  }
}
