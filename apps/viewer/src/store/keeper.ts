import { type Bench, stateOf } from '../model/bench.ts';
import { EMPTY_SHELF, isSameShelf, type Shelf } from '../model/shelf.ts';
import { type BenchStore, ChangedElsewhere } from './bench-store.ts';
import type { KeptJob } from './database.ts';
import type { Tabs } from './tabs.ts';

/** A page that is loaded again waits so long, ms, for the one that it was to let go of its job (our choice: it takes a few at most). */
const PATIENCE_MS = 800;

/** Whether what is done is kept: not where the browser keeps nothing, has no room, or failed. */
export type Keeping = 'kept' | 'unavailable' | 'full' | 'failed';

/** What a keeper works with. */
export interface KeepPorts {
  /** @throws {Error} where the browser keeps nothing */
  readonly open: () => Promise<BenchStore>;
  readonly tabs: Tabs;
  /** The job of this tab, which outlives a reload of it and nothing else. */
  readonly own: { readonly get: () => string | null; readonly set: (id: string) => void };
  readonly now: () => number;
  readonly newId: () => string;
  /** Has the page keep its bench under another id, and say why. */
  readonly keepAs: (id: string, note: string) => void;
  /** Called after every change of what is listed. */
  readonly changed: () => void;
}

/** Said where a job cannot be opened. */
export class OpenElsewhere extends Error {
  override readonly name = 'OpenElsewhere';
}

/** Keeps what is done on a page in the browser, and tells what else is kept there. Two tabs never have the same job. */
export class Keeper {
  keeping: Keeping = 'kept';
  /** All jobs that are kept, the last one first. */
  jobs: readonly KeptJob[] = [];
  /** Those that other tabs have. */
  elsewhere: ReadonlySet<string> = new Set();
  /** A shelf that was opened in another tab and is not that of this job; `null` for none. */
  offered: Shelf | null = null;
  /** What happened to this tab's job when it was opened; `''` for nothing. */
  said = '';

  readonly #ports: KeepPorts;
  #store: BenchStore | null = null;
  #bench: Bench | null = null;
  #isUnsaved = false;
  #saving: Promise<void> | null = null;
  readonly #held = new Set<string>();
  #listedAs = '';
  #declined = 0;

  constructor(ports: KeepPorts) {
    this.#ports = ports;
    ports.tabs.hear(() => void this.refresh());
  }

  /**
   * What the page begins with: the job that it had when it was loaded again, else the last one that no other tab has, else a new one.
   *
   * @param begin makes a new bench
   */
  async first(begin: (id: string, shelf: Shelf) => Promise<Bench>): Promise<Bench> {
    try {
      this.#store = await this.#ports.open();
      const own = this.#ports.own.get();
      const kept = own === null ? await this.#last(this.#store) : await this.#again(this.#store, own);
      if (kept !== null) {
        return kept;
      }
    } catch {
      this.keeping = 'unavailable';
      this.#store = null;
    }
    return this.another(begin);
  }

  /** A new job, beside those that are kept. */
  async another(begin: (id: string, shelf: Shelf) => Promise<Bench>): Promise<Bench> {
    await this.settled();
    const id = this.#ports.newId();
    await this.#take(id, 0);
    return begin(id, (await this.#keptShelf()) ?? EMPTY_SHELF);
  }

  /**
   * A job that is kept.
   *
   * @throws {OpenElsewhere} where another tab has it
   */
  async open(id: string): Promise<Bench> {
    await this.settled();
    if (!(await this.#take(id, 0))) {
      throw new OpenElsewhere();
    }
    const bench = this.#store === null ? null : await loaded(this.#store, id);
    if (bench === null) {
      this.#leave(id);
      throw new RangeError(`job ${id} is not there`);
    }
    this.said = '';
    return bench;
  }

  /** Keeps a bench, now or as soon as the one before it is written. */
  keep(bench: Bench): void {
    const before = this.#bench;
    if (bench === before) {
      return;
    }
    this.#bench = bench;
    if (before?.id !== bench.id) {
      this.#ports.own.set(bench.id);
      void this.refresh();
    } else if (stateOf(before).shelf !== stateOf(bench).shelf) {
      void this.#publish(stateOf(bench).shelf);
    }
    // a page that nothing was done on is not worth a place in the list
    if (bench.steps.length > 1 && bench.id !== '') {
      this.#isUnsaved = true;
      this.#saving ??= this.#save();
    }
  }

  /** Ends when all that was done is written, or could not be. */
  async settled(): Promise<void> {
    while (this.#saving !== null) {
      await this.#saving;
    }
  }

  /** Deletes a job, unless a tab has it, this one or another. */
  async delete(id: string): Promise<void> {
    if (this.#store === null || this.#held.has(id) || !(await this.#take(id, 0))) {
      return;
    }
    await this.#store.delete(id);
    this.#leave(id);
    this.#ports.tabs.tell();
    await this.refresh();
  }

  /** Leaves the shelf of this job as it is, until another one is opened somewhere. */
  async decline(): Promise<void> {
    this.#declined = (await this.#store?.shelf())?.revision ?? 0;
    await this.refresh();
  }

  /** Looks again at what is kept and at what other tabs have. */
  async refresh(): Promise<void> {
    if (this.#store === null) {
      return;
    }
    try {
      const [jobs, taken, kept] = await Promise.all([
        this.#store.jobs(),
        this.#ports.tabs.taken(),
        this.#store.shelf(),
      ]);
      this.jobs = jobs;
      this.elsewhere = new Set([...taken].filter((id) => !this.#held.has(id)));
      const own = this.#bench === null ? null : stateOf(this.#bench).shelf;
      const isOther = kept !== null && own !== null && !isSameShelf(kept.shelf, own);
      this.offered = isOther && kept.revision !== this.#declined ? kept.shelf : null;
    } catch {
      this.keeping = 'failed';
    }
    this.#ports.changed();
  }

  /** Lets go of everything, as a page does that is closed. */
  async close(): Promise<void> {
    await this.settled();
    for (const id of this.#held) {
      this.#leave(id);
    }
  }

  /** `null` where nothing had been done in this tab. */
  async #again(store: BenchStore, id: string): Promise<Bench | null> {
    const bench = await loaded(store, id);
    if (bench === null || (await this.#take(bench.id, PATIENCE_MS))) {
      return bench;
    }
    // the tab was duplicated by the browser
    const copy = { ...bench, id: this.#ports.newId() };
    await this.#take(copy.id, 0);
    this.said = 'This job is open in another tab too. Here is a copy of it; both are kept, each by itself.';
    return copy;
  }

  async #last(store: BenchStore): Promise<Bench | null> {
    const [job] = await store.jobs();
    if (job === undefined) {
      return null;
    }
    if (await this.#take(job.id, 0)) {
      const bench = await loaded(store, job.id);
      if (bench === null) {
        this.#leave(job.id);
      }
      return bench;
    }
    this.said = `“${job.name}” is open in another tab. This tab begins a job of its own.`;
    return null;
  }

  async #save(): Promise<void> {
    while (this.#isUnsaved && this.#bench !== null) {
      this.#isUnsaved = false;
      await this.#saveOnce(this.#bench);
    }
    this.#saving = null;
    for (const id of this.#held) {
      if (id !== this.#bench?.id) {
        this.#leave(id);
      }
    }
  }

  async #saveOnce(bench: Bench): Promise<void> {
    try {
      if (this.#store === null) {
        return;
      }
      await this.#store.save(bench, this.#ports.now());
      this.#become('kept');
      const listed = `${bench.id} ${stateOf(bench).source?.name}`;
      if (listed !== this.#listedAs) {
        this.#listedAs = listed;
        this.#ports.tabs.tell();
        await this.refresh();
      }
    } catch (error) {
      if (error instanceof ChangedElsewhere) {
        await this.#fork(this.#store as BenchStore, bench);
      } else {
        this.#become(
          error instanceof DOMException && error.name === 'QuotaExceededError' ? 'full' : 'failed',
        );
      }
    }
  }

  /** Somebody else has saved the same job: both go on, each under an id of its own. */
  async #fork(store: BenchStore, bench: Bench): Promise<void> {
    const own = this.#ports.newId();
    await this.#take(own, 0);
    if (this.#bench?.id === bench.id) {
      this.#ports.keepAs(
        own,
        'This job was changed in another tab. Here it goes on as a copy; the other one is kept as it is there.',
      );
    } else {
      // the page has gone to another job meanwhile, and what was done last on this one must not be lost
      await store.save({ ...bench, id: own }, this.#ports.now());
    }
  }

  async #keptShelf(): Promise<Shelf | null> {
    try {
      return (await this.#store?.shelf())?.shelf ?? null;
    } catch {
      this.#become('failed');
      return null;
    }
  }

  async #publish(shelf: Shelf): Promise<void> {
    try {
      const kept = await this.#store?.shelf();
      if (this.#store !== null && !(kept && isSameShelf(kept.shelf, shelf))) {
        await this.#store.keepShelf(shelf);
        this.#ports.tabs.tell();
      }
      await this.refresh();
    } catch {
      this.#become('failed');
    }
  }

  #become(keeping: Keeping): void {
    if (keeping !== this.keeping) {
      this.keeping = keeping;
      this.#ports.changed();
    }
  }

  async #take(id: string, patienceMs: number): Promise<boolean> {
    const isTaken = await this.#ports.tabs.take(id, patienceMs);
    if (isTaken) {
      this.#held.add(id);
      this.#ports.tabs.tell();
    }
    return isTaken;
  }

  #leave(id: string): void {
    this.#held.delete(id);
    this.#ports.tabs.leave(id);
    this.#ports.tabs.tell();
  }
}

/** A job, unless its files are gone. */
async function loaded(store: BenchStore, id: string): Promise<Bench | null> {
  try {
    return await store.load(id);
  } catch (error) {
    if (error instanceof RangeError) {
      return null;
    }
    throw error;
  }
}
