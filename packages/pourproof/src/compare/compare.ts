import { poolOf } from '../pool.ts';
import type { ComparedRow, Comparison, PostedRows, RowOutcome } from './row.ts';
import { byCost, countOf, rowsOf } from './rows-of.ts';

/** How rows are compared. */
export interface CompareOptions {
  /** Threads; as many as the machine has cores if left out. */
  readonly threads?: number;
  /** What settings are called in refusals, by key; their keys if left out. */
  readonly names?: Readonly<Record<string, string>>;
  /** Whether rows come with shapes to draw them. */
  readonly isPictured?: boolean;
  /** Told whenever some rows have been judged: how many of how many. */
  readonly onProgress?: (done: number, of: number) => void;
}

/** Parts that the rows of a source are split into for each thread, so that all of them end at about the same time. */
const PARTS = 3;

/**
 * Judges every source with every choice of values, on all cores. Rows come in their order: source by source, the last setting changing
 * fastest. Each figure is that of `vet`, digit for digit; no ways out are sought. A row that is refused stays a row, with the reason.
 *
 * Node only.
 *
 * @throws {RangeError} when `threads` is no whole number above 0
 *
 * @example
 * ```ts
 * for await (const row of compare({ sources, job: { wood: 'cherry' }, vary: { depth: ['2mm', '3mm'], seal: ['none', 'shellac'] } })) {
 *   console.log(row.values, row.outcome.is === 'judged' ? row.outcome.figures.verdict : row.outcome.is);
 * }
 * ```
 */
export async function* compare(
  { sources, job, vary, options = {} }: Comparison,
  { threads, names = {}, isPictured = false, onProgress }: CompareOptions = {},
): AsyncGenerator<ComparedRow, void, void> {
  const pool = poolOf({ threads });
  const rows = rowsOf(vary);
  const order = byCost(vary);
  const size = Math.max(1, Math.ceil((countOf(vary) * sources.length) / (PARTS * pool.options.maxThreads)));
  const parts = Array.from({ length: Math.ceil(order.length / size) }, (_, k) =>
    order.slice(k * size, (k + 1) * size),
  );
  let done = 0;
  const told = (judged: readonly RowOutcome[]): readonly RowOutcome[] => {
    done += judged.length;
    onProgress?.(done, rows.length * sources.length);
    return judged;
  };
  try {
    const answers = sources.map((source) =>
      parts.map(async (part) => {
        const posted: PostedRows = {
          source,
          job,
          rows: part.map((k) => rows[k] ?? {}),
          options,
          names,
          isPictured,
        };
        try {
          return told((await pool.run(posted)) as readonly RowOutcome[]);
        } catch (error) {
          // a thread that breaks down, as out of memory, harms its own rows alone
          const what = error instanceof Error ? error.message : String(error);
          return told(part.map((): RowOutcome => ({ is: 'fault', what })));
        }
      }),
    );
    for (const [source, all] of answers.entries()) {
      const outcomes: RowOutcome[] = [];
      for (const [k, answer] of all.entries()) {
        for (const [n, outcome] of (await answer).entries()) {
          outcomes[parts[k]?.[n] ?? 0] = outcome;
        }
      }
      for (const [k, outcome] of outcomes.entries()) {
        yield { source, values: rows[k] ?? {}, outcome };
      }
    }
  } finally {
    await pool.destroy();
  }
}
