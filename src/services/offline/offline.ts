/** Registers the service worker once the page stands, and tells when a newer build has been fetched and waits to be taken. */

export interface Newer {
  /** the newer build comes in, and the page is read anew */
  readonly take: () => void;
}

/** What of the browser is used, so that tests can bring their own. */
export interface OfflineGiven {
  /** null where the browser has none, or the page did not come from a server */
  readonly register: (() => Promise<WorkboxLike>) | null;
  readonly reload: () => void;
}

/** The part of workbox-window's Workbox that is used. */
export interface WorkboxLike {
  addEventListener(kind: 'waiting' | 'controlling', hear: (event: { readonly isUpdate?: boolean }) => void): void;
  register(): Promise<unknown>;
  messageSkipWaiting(): void;
}

/** `found` may be called more than once, also when another tab has taken the newer build. Never rejects: without a service worker the page works as it is. */
export async function watchForNewer(given: OfflineGiven, found: (newer: Newer) => void): Promise<void> {
  if (given.register === null) return;
  try {
    const workbox = await given.register();
    let asked = false;
    workbox.addEventListener('waiting', () =>
      found({
        take() {
          asked = true;
          workbox.messageSkipWaiting();
        },
      }),
    );
    workbox.addEventListener('controlling', ({ isUpdate }) => {
      if (asked) given.reload();
      else if (isUpdate === true) found({ take: given.reload });
    });
    await workbox.register();
  } catch {
    // Private windows and policies may forbid it.
  }
}

const WORKER_FILE = './serviceWorker.js';

/** Those of this browser. Nothing is registered while the page is still being drawn. */
export function pageOffline(): OfflineGiven {
  const able = import.meta.env.PROD && import.meta.env.MODE !== 'single' && 'serviceWorker' in navigator;
  return {
    register: able
      ? async () => {
          await whenIdle();
          const { Workbox } = await import('workbox-window');
          return new Workbox(WORKER_FILE);
        }
      : null,
    reload: () => location.reload(),
  };
}

const QUIET_MS = 3000;

function whenIdle(): Promise<void> {
  return new Promise((resolve) => {
    const rest = (): void => void setTimeout(resolve, QUIET_MS);
    if (document.readyState === 'complete') rest();
    else addEventListener('load', rest, { once: true });
  });
}
