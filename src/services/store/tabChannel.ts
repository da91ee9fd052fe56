/** Lets the tabs of one browser speak to one another. */

export interface TabChannel {
  /** to all tabs but this one */
  post(message: unknown): void;
  /** returns what stops it */
  listen(listener: (message: unknown) => void): () => void;
}

/** Null where the browser has no such thing: then each tab is on its own. */
export function openTabChannel(name: string): TabChannel | null {
  if (typeof BroadcastChannel === 'undefined') return null;
  const channel = new BroadcastChannel(name);
  return {
    post: (message) => channel.postMessage(message),
    listen(listener) {
      const hear = (event: MessageEvent): void => listener(event.data);
      channel.addEventListener('message', hear);
      return () => channel.removeEventListener('message', hear);
    },
  };
}
