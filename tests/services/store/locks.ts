/** Locks as the Web Locks API has them (W3C Web Locks, sections 3 and 4): a queue for each name, stealing, and leaving the queue. */

interface Request {
  readonly grant: () => void;
  readonly refuse: (error: unknown) => void;
}

interface Holder {
  readonly refuse: (error: unknown) => void;
}

export type FakeLocks = Pick<LockManager, 'request'> & {
  /** how many hold or wait */
  size(name: string): number;
};

const aborted = (): DOMException => new DOMException('aborted', 'AbortError');

export function fakeLocks(): FakeLocks {
  const held = new Map<string, Holder>();
  const queues = new Map<string, Request[]>();
  const queueOf = (name: string): Request[] => {
    const queue = queues.get(name) ?? [];
    queues.set(name, queue);
    return queue;
  };
  const next = (name: string): void => {
    if (!held.has(name)) queueOf(name).shift()?.grant();
  };

  const request = (name: string, options: LockOptions, work: () => Promise<unknown>): Promise<unknown> =>
    new Promise((resolve, reject) => {
      const holder: Holder = { refuse: reject };
      const mine: Request = {
        refuse: reject,
        grant() {
          held.set(name, holder);
          void work().then(
            (value) => {
              if (held.get(name) !== holder) return;
              held.delete(name);
              resolve(value);
              next(name);
            },
            () => {},
          );
        },
      };
      if (options.steal === true) {
        held.get(name)?.refuse(aborted());
        held.delete(name);
        mine.grant();
        return;
      }
      options.signal?.addEventListener('abort', () => {
        const queue = queueOf(name);
        const at = queue.indexOf(mine);
        if (at < 0) return;
        queue.splice(at, 1);
        reject(aborted());
      });
      queueOf(name).push(mine);
      queueMicrotask(() => next(name));
    });
  return {
    request: request as LockManager['request'],
    size: (name) => (held.has(name) ? 1 : 0) + queueOf(name).length,
  };
}
