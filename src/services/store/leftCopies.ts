/** Takes up what pages left in the lifeboat while they went away: each copy into its own run, and only where it has more than the database. */
import { parseJson } from '../../files/parseJson.ts';
import { OPEN_RUN_LIMITS } from '../../files/runFileSchema.ts';
import type { Aside, OpenRun } from './keptRuns.ts';
import { type Base, changeShelves } from './layout.ts';
import type { LeftCopy } from './lifeboat.ts';
import { asideOf, isObject, readOpenRun } from './records.ts';

export interface ReadCopy {
  readonly run: OpenRun | null;
  readonly savedAtMs: number;
  /** the copy itself, where it or a part of it could not be read */
  readonly aside: Aside | null;
}

/** Read like any file: it may have been torn off in the middle, or written by anybody. */
export function readLeftCopy({ text }: LeftCopy, newId: () => string): ReadCopy {
  const json = parseJson(text, 'last copy', OPEN_RUN_LIMITS);
  const record = json.ok && isObject(json.value) ? json.value : {};
  // A copy from before there were learners and dates says nothing of them.
  const read = readOpenRun({ learner: null, ...record });
  if (read === null) return { run: null, savedAtMs: 0, aside: asideOf(newId(), 'unreadable', { ...record, text }) };
  const { savedAtMs } = record;
  const short = read.run.events.length < read.recorded;
  return {
    run: read.run,
    savedAtMs: typeof savedAtMs === 'number' && savedAtMs >= 0 ? savedAtMs : 0,
    aside: short ? asideOf(newId(), 'stopsShort', { ...record, text }) : null,
  };
}

export async function stowCopy(base: Base, copy: LeftCopy, newId: () => string): Promise<void> {
  const { run, savedAtMs, aside } = readLeftCopy(copy, newId);
  await changeShelves(base, ['open', 'kept', 'aside'], async (change) => {
    const asides = change.objectStore('aside');
    const open = change.objectStore('open');
    if (aside !== null) await asides.put(aside);
    if (run === null) return;
    const there = await open.get(run.runId);
    // A run that was signed off since needs no copy of how it stood before.
    if (there === undefined && (await change.objectStore('kept').getKey(run.runId)) !== undefined) return;
    const read = there === undefined ? null : readOpenRun(there);
    if (there !== undefined && read === null) await asides.put(asideOf(newId(), 'unreadable', there));
    if (read === null || hasMore(run, read.run)) await open.put({ ...run, savedAtMs });
  });
}

/** Of two states of one run, the one that has more of it. */
function hasMore(copy: OpenRun, there: OpenRun): boolean {
  if (copy.events.length !== there.events.length) return copy.events.length > there.events.length;
  return copy.elapsedMs >= there.elapsedMs;
}
