/** Beside the page: takes jobs from the pool. */
import { expose } from 'comlink';
import { pageOwnReceivers } from '../library/pageOwnReceivers.ts';
import { readShippedFolder } from '../library/shippedFolder.ts';
import { shippedPar, shippedSet } from '../library/shippedSet.ts';
import { ownOf } from '../store/ownDatabase.ts';
import { doJob } from './doJob.ts';
import type { Workbench } from './jobTable.ts';

let library: ReturnType<typeof readShippedFolder> | null = null;
const world = {
  library: () => {
    library ??= readShippedFolder().catch((error: unknown) => {
      // What could not be fetched once may be had the next time.
      library = null;
      throw error;
    });
    return library;
  },
  knownSet: shippedSet,
  par: shippedPar,
  ownReceiver: async (id: string, hash?: string) => {
    // A shelf that cannot be opened has nothing on it.
    const read = await pageOwnReceivers()
      .then((shelf) => shelf.read(id, hash))
      .catch(() => null);
    return read?.ok ? read.value : null;
  },
  own: async (id: string) =>
    (await ownOf(id)).map(({ text, certificate, receiverHash }) => ({
      ...{ text, receiverHash },
      par: certificate?.kind === 'certified' ? certificate.par : null,
    })),
};

const bench: Workbench = { run: (name, order, onShare) => doJob(name, order, world, onShare) };
expose(bench);
