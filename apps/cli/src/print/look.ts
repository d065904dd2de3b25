import type { Io, OutputStream } from '../io.ts';

/** Width of what is printed to a file or a pipe, so that it is the same everywhere. */
const PIPED_COLUMNS = 80;
/** Wider lines are hard to read. */
const MOST_COLUMNS = 100;
/** Narrower terminals break words themselves. */
const LEAST_COLUMNS = 30;

/** Columns to wrap at: those of the terminal within reason, 80 for a file or a pipe. */
export function columnsOf({ isTerminal, columns }: OutputStream): number {
  // a terminal that does not know its width says 0
  return isTerminal && columns !== undefined && columns > 0
    ? Math.min(MOST_COLUMNS, Math.max(LEAST_COLUMNS, columns))
    : PIPED_COLUMNS;
}

/** Columns that a table may take: all that the terminal has, 80 for a file or a pipe. */
export function tableColumnsOf({ isTerminal, columns }: OutputStream): number {
  return isTerminal && columns !== undefined && columns > 0
    ? Math.max(LEAST_COLUMNS, columns)
    : PIPED_COLUMNS;
}

/** Whether words may be set off in colour: in a terminal that can, unless NO_COLOR asks for none. */
export function isColoured({ out, env }: Io): boolean {
  return out.isTerminal && (env.NO_COLOR ?? '') === '' && env.TERM !== 'dumb';
}
