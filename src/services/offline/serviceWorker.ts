/**
 * The service worker: keeps every file of the page after the first visit, so that the bench works offline, and serves the files of one build together.
 * A newer build waits beside until somebody takes it (offline.ts): a run that is being worked on is never reloaded from under the hand.
 */
import { cleanupOutdatedCaches, type PrecacheEntry, precacheAndRoute } from 'workbox-precaching';

/** Written by scripts/offline.ts when the page is built. */
declare const FILES: readonly PrecacheEntry[];

interface WorkerScope {
  addEventListener(kind: 'message', hear: (event: { readonly data: unknown }) => void): void;
  skipWaiting(): Promise<void>;
}

const scope = self as unknown as WorkerScope;
scope.addEventListener('message', ({ data }) => {
  if (typeof data === 'object' && data !== null && 'type' in data && data.type === 'SKIP_WAITING')
    void scope.skipWaiting();
});
precacheAndRoute([...FILES]);
cleanupOutdatedCaches();
