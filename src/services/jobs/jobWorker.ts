/** Beside the page: takes jobs from the pool. */
import { expose } from 'comlink';
import { endlessWords } from '../../words/en/endless.ts';
import { readShippedLibrary } from '../library/shippedLibrary.ts';
import { doJob } from './doJob.ts';
import type { Workbench } from './jobTable.ts';

let library: ReturnType<typeof readShippedLibrary> | null = null;
const world = {
  library: async () => {
    library ??= readShippedLibrary();
    return library;
  },
  endlessWords,
};

const bench: Workbench = { run: (name, order, onShare) => doJob(name, order, world, onShare) };
expose(bench);
