/** What the tabs of the page know of each other. */
export interface Tabs {
  /** Takes a job for this tab until it leaves it; `false` where another tab has it for that long, ms. */
  readonly take: (id: string, patienceMs: number) => Promise<boolean>;
  readonly leave: (id: string) => void;
  /** The jobs that tabs have now, this one among them. */
  readonly taken: () => Promise<ReadonlySet<string>>;
  /** Tells the others that something that they show may have changed. */
  readonly tell: () => void;
  readonly hear: (listener: () => void) => void;
}

const LOCK = 'pourproof job ';

/**
 * Tabs of a browser. Where it has no locks (pages that did not come over a safe connection) every tab gets what it asks for: the database refuses
 * whoever saves over another then.
 */
export function browserTabs(): Tabs {
  const locks = 'locks' in navigator ? navigator.locks : null;
  const channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel('pourproof') : null;
  const leaving = new Map<string, () => void>();
  return {
    take: async (id, patienceMs) =>
      locks === null ||
      leaving.has(id) ||
      lockFor(locks, LOCK + id, patienceMs, (leave) => leaving.set(id, leave)),
    leave: (id) => {
      leaving.get(id)?.();
      leaving.delete(id);
    },
    taken: async () => {
      const { held = [] } = (await locks?.query()) ?? {};
      return new Set(
        held.flatMap(({ name = '' }) => (name.startsWith(LOCK) ? [name.slice(LOCK.length)] : [])),
      );
    },
    tell: () => channel?.postMessage('changed'),
    hear: (listener) => channel?.addEventListener('message', listener),
  };
}

function lockFor(
  locks: LockManager,
  name: string,
  patienceMs: number,
  got: (leave: () => void) => void,
): Promise<boolean> {
  const options: LockOptions =
    patienceMs === 0 ? { ifAvailable: true } : { signal: AbortSignal.timeout(patienceMs) };
  return new Promise((resolve) => {
    locks
      .request(name, options, (lock) => {
        resolve(lock !== null);
        return lock === null ? undefined : new Promise<void>((leave) => got(leave));
      })
      // the wait was over
      .catch(() => resolve(false));
  });
}
