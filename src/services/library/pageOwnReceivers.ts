/** The page's one shelf of receivers of somebody's own. What reads and checks them is not for the first page, so it comes when the shelf is first wanted. */
import type { OwnReceivers } from '../store/ownReceivers.ts';

let shelf: Promise<OwnReceivers> | null = null;

export function pageOwnReceivers(): Promise<OwnReceivers> {
  shelf ??= import('../store/ownReceivers.ts').then(({ createOwnReceivers }) =>
    createOwnReceivers({ name: 'haystack-receivers', now: () => Date.now() }),
  );
  // A piece of the page that could not be fetched is asked for again.
  shelf.catch(() => {
    shelf = null;
  });
  return shelf;
}
