import type { JobInput } from '@pourproof/job';
import type { Vetted } from '@pourproof/wording';
import type { Tinypool } from 'tinypool';
import type { FaultBundle } from './fault.ts';
import { poolOf } from './pool.ts';
import type { Refusal } from './refusal.ts';
import type { Source } from './source.ts';
import type { VetOptions } from './vet.ts';

/** One of many: a source and the job that it is vetted for. */
export interface ManyItem {
  readonly source: Source;
  readonly job: JobInput;
  readonly options?: VetOptions;
}

/** What came of one of many: a proof, why it is refused, or a fault of pourproof, with the bundle that replays it where there is one. */
export type ManyAnswer =
  | { readonly kind: 'vetted'; readonly vetted: Vetted }
  | { readonly kind: 'refused'; readonly refusal: Refusal }
  | { readonly kind: 'fault'; readonly what: string; readonly bundle?: FaultBundle };

/** How many are vetted. */
export interface ManyOptions {
  /** Threads; as many as the machine has cores if left out. */
  readonly threads?: number;
  /** Memory that one thread may take for its objects, MB; an item that needs more is a fault, and the others go on. Node's own limit if left out. */
  readonly heapMb?: number;
  /** What settings are called in refusals, by key; their keys if left out. */
  readonly names?: Readonly<Record<string, string>>;
}

/** An item as it goes to a thread. */
export interface PostedItem extends ManyItem {
  readonly names: Readonly<Record<string, string>>;
}

/** Items that wait or run for each thread: one runs, and the next is there when it ends. */
const AHEAD = 2;

/**
 * Vets many sources on all cores, as `vet` does one. Answers come in the order of the items. Items are drawn one by one when a thread will soon
 * be free, and answers wait until they are asked for, so that memory holds a few for each thread, however many there are. What is wrong with
 * one item stands in its place; the others are vetted all the same.
 *
 * Node only.
 *
 * @throws {RangeError} when `threads` is no whole number above 0
 *
 * @example
 * ```ts
 * for await (const answer of vetMany(names.map((text) => ({ source: { kind: 'lettering', text, font }, job })))) {
 *   console.log(answer.kind === 'vetted' ? answer.vetted.report.verdict : answer.kind);
 * }
 * ```
 */
export async function* vetMany(
  items: Iterable<ManyItem> | AsyncIterable<ManyItem>,
  { threads, heapMb, names = {} }: ManyOptions = {},
): AsyncGenerator<ManyAnswer, void, void> {
  const pool = poolOf({ threads, heapMb });
  const most = pool.options.maxThreads * AHEAD;
  const waiting: Promise<ManyAnswer>[] = [];
  try {
    for await (const item of items) {
      waiting.push(answered(pool, { ...item, names }));
      if (waiting.length >= most) {
        yield await (waiting.shift() as Promise<ManyAnswer>);
      }
    }
    while (waiting.length > 0) {
      yield await (waiting.shift() as Promise<ManyAnswer>);
    }
  } finally {
    await pool.destroy();
  }
}

/** Compares jobs and artworks on all cores; see {@link Comparison}. */
export { compare } from './compare/compare.ts';
export type { ComparedRow, Comparison, Figures, RowOutcome, RowPicture, Varied } from './compare/row.ts';

/** The answer of a thread; one that breaks down, as out of memory, harms its own item alone. */
async function answered(pool: Tinypool, item: PostedItem): Promise<ManyAnswer> {
  try {
    return await pool.run(item);
  } catch (error) {
    return { kind: 'fault', what: error instanceof Error ? error.message : String(error) };
  }
}
