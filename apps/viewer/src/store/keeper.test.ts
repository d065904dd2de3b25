import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { afterAct } from '../model/after-act.ts';
import { type Bench, BLANK_BENCH, stateOf } from '../model/bench.ts';
import { blankBench } from '../model/first-bench.ts';
import type { PageAct } from '../model/page-acts.ts';
import type { Shelf } from '../model/shelf.ts';
import { BenchStore } from './bench-store.ts';
import { type Database, openDatabase } from './database.ts';
import { Keeper } from './keeper.ts';
import type { Tabs } from './tabs.ts';

let databases = 0;
let ids = 0;
const newId = (): string => `id ${++ids}`;
const [begun] = blankBench('', { shop: null, materials: null, coupons: null }).steps;
const begin = async (id: string, shelf: Shelf): Promise<Bench> => blankBench(id, shelf);

/** A browser with its database, its locks (or none), and tabs that can be opened, closed and loaded again. */
async function browser(hasLocks: boolean) {
  const name = `test ${++databases}`;
  const locks = new Set<string>();
  const heard = new Set<() => void>();
  const database = await openDatabase(() => {}, name);
  const tabsOf = (): Tabs => {
    const own = new Set<string>();
    return {
      take: async (id) => {
        if (hasLocks && locks.has(id) && !own.has(id)) {
          return false;
        }
        locks.add(id);
        own.add(id);
        return true;
      },
      leave: (id) => {
        own.delete(id);
        locks.delete(id);
      },
      taken: async () => new Set(hasLocks ? locks : []),
      tell: () => {
        for (const listener of heard) {
          listener();
        }
      },
      hear: (listener) => heard.add(listener),
    };
  };
  return {
    database,
    open: (own: { id: string | null }, on: Database = database) => tab(tabsOf(), own, on),
    store: () => new BenchStore(database, newId),
  };
}

/** A tab: a bench that acts are done on, and its keeper. */
async function tab(tabs: Tabs, own: { id: string | null }, database: Database) {
  let bench = BLANK_BENCH;
  const told: string[] = [];
  const keeper = new Keeper({
    open: async () => new BenchStore(database, newId),
    tabs,
    own: {
      get: () => own.id,
      set: (id) => {
        own.id = id;
      },
    },
    now: () => ++ids,
    newId,
    keepAs: (id, note) => {
      told.push(note);
      act({ do: 'keep-as', id, note });
    },
    changed: () => {},
  });
  const act = (each: PageAct): void => {
    bench = afterAct(bench, each);
    keeper.keep(bench);
  };
  act({ do: 'lay', bench: await keeper.first(begin) });
  return {
    keeper,
    act,
    own,
    told,
    bench: () => bench,
    another: async () => act({ do: 'lay', bench: await keeper.another(begin) }),
    openKept: async (k: number) => {
      const job = keeper.jobs[k % Math.max(keeper.jobs.length, 1)];
      if (job !== undefined && job.id !== bench.id) {
        await keeper.open(job.id).then(
          (kept) => act({ do: 'lay', bench: kept }),
          () => told.push('elsewhere'),
        );
      }
    },
  };
}

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const A = bytes('<svg/>');
const opens = (name: string): PageAct => ({
  do: 'open',
  files: {
    names: [name],
    artwork: { name, bytes: A },
    font: null,
    job: null,
    coupons: null,
    shop: null,
    materials: null,
    shippedFont: null,
  },
});
const typed = (depth: string): PageAct => ({ do: 'change-job', part: { depth }, seen: '', run: '' });

type TabStep =
  | 'type'
  | 'open a drawing'
  | 'undo'
  | 'another job'
  | 'load again'
  | 'duplicate'
  | 'new tab'
  | { readonly openKept: number };
const step = fc.record({
  tab: fc.nat(2),
  does: fc.oneof(
    { weight: 5, arbitrary: fc.constant<TabStep>('type') },
    {
      weight: 4,
      arbitrary: fc.constantFrom<TabStep>(
        'open a drawing',
        'undo',
        'another job',
        'load again',
        'duplicate',
        'new tab',
      ),
    },
    { weight: 2, arbitrary: fc.record({ openKept: fc.nat(5) }) },
  ),
  isWaitedFor: fc.boolean(),
});

test('whatever tabs do at once, every tab’s job is kept as it is there, and nothing that was typed is lost unless it is said', async () => {
  await fc.assert(
    fc.asyncProperty(fc.boolean(), fc.array(step, { maxLength: 18 }), async (hasLocks, steps) => {
      const { open, store, database } = await browser(hasLocks);
      const tabs = [await open({ id: null })];
      const depths: string[] = [];
      const undone = new Set<string>();
      for (const { tab: which, does, isWaitedFor } of steps) {
        const k = which % tabs.length;
        const at = tabs[k]!;
        if (does === 'type') {
          const depth = `${(1 + depths.length / 1000).toFixed(3)}mm`;
          depths.push(depth);
          at.act(typed(depth));
        } else if (does === 'open a drawing') {
          at.act(opens(`${steps.length}.svg`));
        } else if (does === 'undo') {
          // what is taken back goes with the next act, as the maker means it
          undone.add(stateOf(at.bench()).job.depth ?? '');
          at.act({ do: 'undo' });
        } else if (does === 'another job') {
          await at.another();
        } else if (does === 'load again') {
          await at.keeper.close();
          tabs[k] = await open(at.own);
          const again = tabs[k]!.bench();
          // what nothing was done on is begun anew
          expect(again.steps).toEqual(at.bench().steps.length > 1 ? at.bench().steps : [begun]);
        } else if (does === 'duplicate') {
          await at.keeper.settled();
          tabs.push(await open({ ...at.own }));
        } else if (does === 'new tab') {
          tabs.push(await open({ id: null }));
        } else {
          await at.openKept(does.openKept);
        }
        await (isWaitedFor ? at.keeper.settled() : undefined);
      }
      // a fork is an act of its own
      for (const each of [...tabs, ...tabs]) {
        await each.keeper.settled();
      }
      const kept = store();
      const jobs = await kept.jobs();
      const benches = await Promise.all(jobs.map(async ({ id }) => kept.load(id)));
      for (const { bench, keeper } of tabs) {
        expect(keeper.keeping).toBe('kept');
        // without locks two tabs show one job until one of them does something, which is then a copy
        const isShared = tabs.filter((other) => other.bench().id === bench().id).length > 1;
        if (bench().steps.length > 1 && !isShared) {
          expect(benches.find((each) => each?.id === bench().id)).toEqual(bench());
        }
      }
      const found = new Set(benches.flatMap((each) => each?.steps.map(({ state }) => state.job.depth) ?? []));
      expect(depths.filter((depth) => !undone.has(depth) && !found.has(depth))).toEqual([]);
      if (hasLocks) {
        const shown = tabs.map(({ bench }) => bench().id);
        expect(new Set(shown).size).toBe(shown.length);
      }
      database.close();
    }),
    { numRuns: 60 },
  );
});

test('a second tab says that the job is open in the first, and a duplicated one that it has a copy', async () => {
  const { open } = await browser(true);
  const first = await open({ id: null });
  first.act(opens('sign.svg'));
  await first.keeper.settled();
  const second = await open({ id: null });
  expect(second.keeper.said).toBe('“sign.svg” is open in another tab. This tab begins a job of its own.');
  expect(second.bench().steps).toEqual([begun]);
  await second.openKept(0);
  expect(second.told).toEqual(['elsewhere']);
  const copy = await open({ ...first.own });
  expect(copy.keeper.said).toContain('Here is a copy of it');
  expect(copy.bench().steps).toEqual(first.bench().steps);
});

test('without locks, of two tabs with one job the second that changes it goes on with a copy, and says so', async () => {
  const { open, store } = await browser(false);
  const first = await open({ id: null });
  first.act(opens('sign.svg'));
  await first.keeper.settled();
  const second = await open({ id: null });
  second.act(typed('2mm'));
  await second.keeper.settled();
  first.act(typed('3mm'));
  await first.keeper.settled();
  await first.keeper.settled();
  expect(first.told).toEqual([expect.stringContaining('Here it goes on as a copy')]);
  const depths = async (id: string) => stateOf((await store().load(id))!).job.depth;
  expect([await depths(first.bench().id), await depths(second.bench().id)]).toEqual(['3mm', '2mm']);
});

test('a shop file that is opened in one tab is offered in the other, which goes by its own until it takes it', async () => {
  const { open } = await browser(true);
  const [first, second] = [await open({ id: null }), await open({ id: null })];
  const shop = { name: 'shop.json', data: { schema: 'pourproof/shop@1', bits: ['flat:2mm'] } };
  const shelf: Shelf = { shop, materials: null, coupons: null };
  first.act({ do: 'take-shelf', shelf });
  await first.keeper.settled();
  await expect.poll(() => second.keeper.offered).toEqual(shelf);
  expect(stateOf(second.bench()).shelf.shop).toBeNull();
  await second.keeper.decline();
  expect(second.keeper.offered).toBeNull();
  // a new job goes by it from the start
  await second.another();
  expect(stateOf(second.bench()).shelf).toEqual(shelf);
});

test('bytes are kept once, however many steps have them, and go with the last job that has them', async () => {
  const { open, database } = await browser(true);
  const first = await open({ id: null });
  first.act(opens('a.svg'));
  first.act(typed('2mm'));
  first.act(opens('again.svg'));
  await first.keeper.settled();
  expect(await database.count('files')).toBe(1);
  const { id } = first.bench();
  await first.another();
  first.act(opens('b.svg'));
  await first.keeper.settled();
  await first.keeper.delete(id);
  expect([await database.count('files'), first.keeper.jobs.map(({ name }) => name)]).toEqual([1, ['b.svg']]);
  await first.keeper.delete(first.bench().id);
  expect(await database.count('files')).toBe(1);
});

test('a browser that is full, or keeps nothing, is told, and what was kept before stays whole', async () => {
  const { open, database, store } = await browser(true);
  const first = await open({ id: null });
  first.act(opens('a.svg'));
  await first.keeper.settled();
  const before = first.bench();
  const full = new Proxy(database, {
    get: (target, key) => {
      if (key === 'transaction') {
        return (...args: Parameters<Database['transaction']>) => {
          if (args[1] === 'readwrite') {
            throw new DOMException('', 'QuotaExceededError');
          }
          return target.transaction(...args);
        };
      }
      const value = Reflect.get(target, key) as unknown;
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
  await first.keeper.close();
  const again = await open(first.own, full);
  again.act(typed('9mm'));
  await again.keeper.settled();
  expect(again.keeper.keeping).toBe('full');
  expect(await store().load(before.id)).toEqual(before);
  expect(stateOf(again.bench()).job.depth).toBe('9mm');
  const none = new Keeper({
    open: () => Promise.reject(new DOMException('', 'SecurityError')),
    tabs: {
      take: async () => true,
      leave: () => {},
      taken: async () => new Set(),
      tell: () => {},
      hear: () => {},
    },
    own: { get: () => null, set: () => {} },
    now: () => 0,
    newId,
    keepAs: () => {},
    changed: () => {},
  });
  expect((await none.first(begin)).steps).toEqual([begun]);
  expect(none.keeping).toBe('unavailable');
});
