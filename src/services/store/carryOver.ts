/** A database of the first layout becomes one of today's: runs that lay open by scenario, kept runs with their files in them. */
import { readRunFile } from '../../files/runFileSchema.ts';
import { entryOfFile } from './indexEntry.ts';
import type { FreshRun } from './keptRuns.ts';
import { type Base, type CarryOver, keptRecord, type OpenRecord, type Upgrade } from './layout.ts';
import { asideOf, isObject, readOpenRun, stringIn } from './records.ts';

interface Clerk {
  readonly now: () => number;
  readonly newId: () => string;
}

export function carryOverFor(clerk: Clerk): CarryOver {
  return async (base, from, change, layOut) => {
    const before = from === 1 ? await takeFirstLayout(base, change) : { open: [], kept: [] };
    layOut();
    await carryOver(before, change, clerk);
  };
}

interface FirstLayout {
  readonly open: readonly unknown[];
  readonly kept: readonly unknown[];
}

async function takeFirstLayout(base: Base, change: Upgrade): Promise<FirstLayout> {
  const before: FirstLayout = {
    open: await change.objectStore('open').getAll(),
    kept: await change.objectStore('kept').getAll(),
  };
  base.deleteObjectStore('open');
  base.deleteObjectStore('kept');
  return before;
}

/** No record may stop another from being carried over: what cannot be read is set aside whole. */
async function carryOver(before: FirstLayout, change: Upgrade, { now, newId }: Clerk): Promise<void> {
  const aside = async (record: unknown): Promise<void> => {
    await change.objectStore('aside').put(asideOf(newId(), 'unreadable', record));
  };
  const seen = new Set<string>();
  for (const record of before.open) {
    // The first layout knew of no learners.
    const today = isObject(record) ? { ...record, learner: null, savedAtMs: now() } : record;
    const read = readOpenRun(today);
    if (read === null || seen.has(read.run.runId)) {
      await aside(record);
      continue;
    }
    seen.add(read.run.runId);
    // Acts that cannot be read are met when the run is taken up, and told then.
    await change.objectStore('open').put(today as OpenRecord);
  }
  let serial = 0;
  for (const record of [...before.kept].sort((a, b) => serialOf(a) - serialOf(b))) {
    const text = stringIn(record, 'text');
    const entry = entryFromText(stringIn(record, 'runId'), text);
    if (entry === null || text === null) {
      await aside(record);
      continue;
    }
    serial++;
    await change.objectStore('kept').put(keptRecord({ ...entry, serial }));
    await change.objectStore('texts').put({ runId: entry.runId, text });
  }
}

/** The file says everything that the index wants to know. */
export function entryFromText(runId: string | null, text: string | null): FreshRun | null {
  if (runId === null || text === null) return null;
  const file = readRunFile(text, 'kept run');
  return file.ok ? entryOfFile(runId, file.value) : null;
}

function serialOf(record: unknown): number {
  const serial = isObject(record) ? record.serial : null;
  return typeof serial === 'number' && Number.isFinite(serial) ? serial : Number.MAX_VALUE;
}
