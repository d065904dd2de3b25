import type { SourceId } from './sources.ts';

/**
 * How far a value can be trusted: `seen` read in the named source; `memory` recalled, not checked; `computed`
 * derived by a formula that a test repeats; `practice` workshop experience; `inference` our reasoning;
 * `prior` our own starting guess, to be moved by coupons; `entered` typed in by the maker.
 */
export type Status = 'seen' | 'memory' | 'computed' | 'practice' | 'inference' | 'prior' | 'entered';

/** Where something comes from: the sources (at least one) and how far to trust it. */
export interface Origin {
  readonly because: readonly SourceId[];
  readonly status: Status;
}

/** A value with its origin; the unit is in the name of the field that holds it. */
export interface Cited<T = number> extends Origin {
  readonly value: T;
}

/** A value with the range that sources or practice give for it. */
export interface CitedRange extends Cited {
  readonly low: number;
  readonly high: number;
}

/** Where something without a value comes from, spelled in one line for the tables. */
export function origin(status: Status, ...because: readonly SourceId[]): Origin {
  return { status, because };
}

/** A value with its origin, spelled in one line for the tables. */
export function cited<T>(value: T, status: Status, ...because: readonly SourceId[]): Cited<T> {
  return { value, status, because };
}

/** A value between two ends with its origin, spelled in one line for the tables. */
export function citedRange(
  value: number,
  ends: readonly [low: number, high: number],
  status: Status,
  ...because: readonly SourceId[]
): CitedRange {
  return { value, low: ends[0], high: ends[1], status, because };
}
