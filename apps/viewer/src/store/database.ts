import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Shelf } from '../model/shelf.ts';

/** What a job is listed by. */
export interface KeptJob {
  readonly id: string;
  /** Of its artwork; `''` for none. */
  readonly name: string;
  readonly isDemo: boolean;
  /** When it was last changed, ms since 1970. */
  readonly savedAt: number;
  readonly stepCount: number;
}

/** A job as it is kept: all its steps, without bytes. */
export interface KeptBench {
  readonly id: string;
  /** Grows with every save, so that whoever saves sees whether someone else has meanwhile. */
  readonly revision: number;
  readonly form: typeof FORM;
  readonly bench: unknown;
}

/** The shelf that new jobs begin with. */
export interface KeptShelf {
  readonly shelf: Shelf;
  readonly revision: number;
}

/** The form of what is kept (ours); what has another one is left alone. */
export const FORM = 1;

interface Tables extends DBSchema {
  jobs: { key: string; value: KeptJob };
  benches: { key: string; value: KeptBench };
  files: { key: string; value: Uint8Array };
  shelf: { key: string; value: KeptShelf };
}

/** The page's database in this browser. */
export type Database = IDBPDatabase<Tables>;

/**
 * Opens it.
 *
 * @param closed called when the browser takes it away, or another tab needs a newer one
 * @throws {DOMException} where the browser keeps nothing for this page
 */
export async function openDatabase(closed: () => void, name = 'pourproof'): Promise<Database> {
  return openDB<Tables>(name, 1, {
    upgrade: (database) => {
      database.createObjectStore('jobs', { keyPath: 'id' });
      database.createObjectStore('benches', { keyPath: 'id' });
      database.createObjectStore('files');
      database.createObjectStore('shelf');
    },
    blocking: (_current, _blocked, event) => {
      (event.target as IDBDatabase).close();
      closed();
    },
    terminated: closed,
  });
}
