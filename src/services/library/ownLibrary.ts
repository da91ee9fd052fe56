/** The scenarios that the user has opened from files, on the receivers that come with the page. */
import type { ScenarioEntry } from '../../present/scenarioEntry.ts';
import { openPar, PAR_NOT_KNOWN } from '../../scenario/par.ts';
import type { OwnScenario } from '../store/ownScenario.ts';
import type { OwnShelf } from '../store/ownShelf.ts';
import type { Library } from './library.ts';

/** `receivers`: with the entries of what comes with the page. */
export function createOwnLibrary(shelf: OwnShelf, receivers: Pick<Library, 'receiver' | 'entries'>): Library {
  return {
    entries() {
      const shipped = new Set(receivers.entries().map(({ receiver }) => receiver));
      return shelf.all().map((one) => ownEntry(one, shipped));
    },
    leftOut: () => [],
    async setup(id, options = {}) {
      await shelf.ready;
      const own = shelf.all().find((one) => one.id === id);
      if (own === undefined) return null;
      const { ownSetup } = await import('./ownReading.ts');
      return ownSetup(own, receivers, options);
    },
    receiver: async () => null,
    knownSet: async () => null,
    subscribe: shelf.subscribe,
  };
}

/** Only the certifier's word makes a scenario certified: a par in the file is what its author says. */
function ownEntry({ entry, certificate, receiverHash }: OwnScenario, shipped: ReadonlySet<string>): ScenarioEntry {
  const { uncertified: _, ...own } = entry;
  const rest = {
    ...own,
    ...(shipped.has(own.receiver) ? {} : { ownReceiver: true as const }),
    ...(receiverHash === undefined ? {} : { receiverHash }),
  };
  const par = openPar({ ...own, par: certificate?.kind === 'certified' ? certificate.par : PAR_NOT_KNOWN });
  if (certificate?.kind === 'certified') return { ...rest, par, own: 'certified' };
  return { ...rest, par, uncertified: true, own: certificate === null ? 'notTried' : 'refused' };
}
