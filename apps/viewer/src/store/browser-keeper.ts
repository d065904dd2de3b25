import { BenchStore } from './bench-store.ts';
import { openDatabase } from './database.ts';
import { Keeper, type KeepPorts } from './keeper.ts';
import { browserTabs } from './tabs.ts';

/** The job of a tab in its session storage. */
const OWN = 'pourproof-job';

/** A keeper on this browser's database, for this tab. */
export function browserKeeper(ports: Pick<KeepPorts, 'keepAs' | 'changed'>): Keeper {
  return new Keeper({
    ...ports,
    open: async () => new BenchStore(await openDatabase(() => {}), newId),
    tabs: browserTabs(),
    own: {
      get: () => tried(() => sessionStorage.getItem(OWN)),
      set: (id) => {
        tried(() => sessionStorage.setItem(OWN, id));
      },
    },
    now: () => Date.now(),
    newId,
  });
}

/** Random, as no other tab or day has it; pages that did not come over a safe connection have no other source of it. */
export function newId(): string {
  return [...crypto.getRandomValues(new Uint32Array(4))].map((part) => part.toString(36)).join('-');
}

/** A browser that keeps nothing refuses even to be asked. */
function tried<T>(ask: () => T): T | null {
  try {
    return ask();
  } catch {
    return null;
  }
}
