import type { Notice, NoticePlace } from '@pourproof/plane';
import { MAX_PLACES } from './max-places.ts';
import { makeNotice, type NoticeKind } from './notice-kind.ts';

/** What is known of something that occurred several times. */
export type Tally = {
  readonly count: number;
  /** Names of what it occurred to, or other details, each once, and how often each occurred. */
  readonly details: readonly string[];
  readonly counts: readonly number[];
  /** Smallest and largest measure of it in mm; 0 where it has none. */
  readonly minMm: number;
  readonly maxMm: number;
};

interface Entry {
  count: number;
  readonly where: NoticePlace[];
  readonly details: Map<string, number>;
  min: number;
  max: number;
}

/** Collects the notices of one reading, one for each kind, in the order of first sight. */
export class NoticeBook<Code extends string> {
  readonly #kinds: Readonly<Record<Code, NoticeKind<Tally>>>;
  readonly #entries = new Map<string, Entry | Notice>();

  constructor(kinds: Readonly<Record<Code, NoticeKind<Tally>>>) {
    this.#kinds = kinds;
  }

  /** Adds one case of a kind; `detail` and `measureMm` go into its parameters. */
  add(code: Code, place: NoticePlace = {}, detail = '', measureMm?: number): void {
    let entry = this.#entries.get(code);
    if (entry === undefined || !('details' in entry)) {
      entry = { count: 0, where: [], details: new Map(), min: Infinity, max: -Infinity };
      this.#entries.set(code, entry);
    }
    entry.count++;
    if (measureMm !== undefined) {
      entry.min = Math.min(entry.min, measureMm);
      entry.max = Math.max(entry.max, measureMm);
    }
    if (entry.where.length < MAX_PLACES && Object.keys(place).length > 0) {
      entry.where.push(place);
    }
    if (detail !== '' && (entry.details.has(detail) || entry.details.size < MAX_PLACES)) {
      entry.details.set(detail, (entry.details.get(detail) ?? 0) + 1);
    }
  }

  /** Adds a notice that occurs once in a reading. */
  put(notice: Notice): void {
    this.#entries.set(notice.code, notice);
  }

  /** All notices so far. */
  notices(): Notice[] {
    return [...this.#entries].map(([code, entry]) => {
      if (!('details' in entry)) {
        return entry;
      }
      const { count, details, min, max, where } = entry;
      const tally: Tally = {
        count,
        details: [...details.keys()],
        counts: [...details.values()],
        minMm: Number.isFinite(min) ? min : 0,
        maxMm: Number.isFinite(max) ? max : 0,
      };
      return makeNotice(code, this.#kinds[code as Code], tally, where);
    });
  }
}

/**
 * The first of a tally's details, with how often each occurred if one did more than once, and how many more
 * there are.
 */
export function listed({ details, counts }: Tally, max: number): string {
  const isCounted = counts.some((n) => n > 1);
  const shown = details.slice(0, max).map((detail, i) => (isCounted ? `${counts[i]} × ${detail}` : detail));
  const rest = details.length - max;
  return rest > 0 ? `${shown.join(', ')} and ${rest} more` : shown.join(', ');
}
