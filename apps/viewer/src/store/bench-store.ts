import { type Bench, stateOf } from '../model/bench.ts';
import type { Shelf } from '../model/shelf.ts';
import { type Database, FORM, type KeptJob, type KeptShelf } from './database.ts';
import { filesIn, packed, unpacked } from './packed.ts';

/** Said where another tab has saved the same job meanwhile. */
export class ChangedElsewhere extends Error {
  override readonly name = 'ChangedElsewhere';
}

/** Jobs and shelf in the browser's database. A save that would overwrite what someone else has saved meanwhile is refused. */
export class BenchStore {
  readonly #database: Database;
  readonly #newId: () => string;
  readonly #fileIds = new WeakMap<Uint8Array, string>();
  /** The revision of each job that was last read or written here. */
  readonly #revisions = new Map<string, number>();

  constructor(database: Database, newId: () => string) {
    this.#database = database;
    this.#newId = newId;
  }

  /** All jobs, the one that was changed last at the top. */
  async jobs(): Promise<readonly KeptJob[]> {
    const all = await this.#database.getAll('jobs');
    return all.toSorted((a, b) => b.savedAt - a.savedAt);
  }

  /** A job as it was saved; `null` for one that is not there, or in a form that this page does not know. */
  async load(id: string): Promise<Bench | null> {
    const transaction = this.#database.transaction(['benches', 'files']);
    const kept = await transaction.objectStore('benches').get(id);
    if (kept === undefined || kept.form !== FORM) {
      return null;
    }
    const files = new Map<string, Uint8Array>();
    for (const fileId of filesIn(kept.bench)) {
      const bytes = await transaction.objectStore('files').get(fileId);
      if (bytes !== undefined) {
        files.set(fileId, bytes);
        this.#fileIds.set(bytes, fileId);
      }
    }
    await transaction.done;
    this.#revisions.set(id, kept.revision);
    return unpacked(kept.bench, files) as Bench;
  }

  /**
   * Saves a job, with the bytes that are not there yet.
   *
   * @param at ms since 1970
   * @throws {ChangedElsewhere} if someone else has saved or deleted it since it was read or written here; nothing is written then
   * @throws {DOMException} if the browser takes no more; nothing is written then
   */
  async save(bench: Bench, at: number): Promise<void> {
    const { id } = bench;
    const { data, files } = packed(bench, (bytes) => this.#fileId(bytes));
    const transaction = this.#database.transaction(['jobs', 'benches', 'files'], 'readwrite');
    // nothing is half saved: what goes wrong in one part ends the whole
    const done = transaction.done;
    done.catch(() => {});
    const benches = transaction.objectStore('benches');
    const stored = await benches.get(id);
    const revision = this.#revisions.get(id) ?? 0;
    if ((stored?.revision ?? 0) !== revision) {
      transaction.abort();
      throw new ChangedElsewhere();
    }
    const store = transaction.objectStore('files');
    for (const [fileId, bytes] of files) {
      if ((await store.getKey(fileId)) === undefined) {
        await store.put(bytes, fileId);
      }
    }
    await benches.put({ id, revision: revision + 1, form: FORM, bench: data });
    await transaction.objectStore('jobs').put(listed(bench, at));
    await done;
    this.#revisions.set(id, revision + 1);
  }

  /** Deletes a job, and the bytes that no other has. */
  async delete(id: string): Promise<void> {
    const transaction = this.#database.transaction(['jobs', 'benches', 'files'], 'readwrite');
    await transaction.objectStore('jobs').delete(id);
    await transaction.objectStore('benches').delete(id);
    const others = await transaction.objectStore('benches').getAll();
    const needed = new Set(others.flatMap(({ bench }) => [...filesIn(bench)]));
    const files = transaction.objectStore('files');
    for (const fileId of await files.getAllKeys()) {
      if (!needed.has(fileId)) {
        await files.delete(fileId);
      }
    }
    await transaction.done;
    this.#revisions.delete(id);
  }

  /** The shelf that new jobs begin with; `null` before the first. */
  async shelf(): Promise<KeptShelf | null> {
    return (await this.#database.get('shelf', 'shelf')) ?? null;
  }

  /** Keeps a shelf for new jobs: the last that a maker opened counts. */
  async keepShelf(shelf: Shelf): Promise<void> {
    const transaction = this.#database.transaction('shelf', 'readwrite');
    const revision = ((await transaction.store.get('shelf'))?.revision ?? 0) + 1;
    await transaction.store.put({ shelf, revision }, 'shelf');
    await transaction.done;
  }

  #fileId(bytes: Uint8Array): string {
    const known = this.#fileIds.get(bytes);
    if (known !== undefined) {
      return known;
    }
    const id = this.#newId();
    this.#fileIds.set(bytes, id);
    return id;
  }
}

function listed(bench: Bench, savedAt: number): KeptJob {
  const { source, aside } = stateOf(bench);
  return {
    id: bench.id,
    name: source?.name ?? '',
    isDemo: aside !== null,
    savedAt,
    stepCount: bench.steps.length,
  };
}
