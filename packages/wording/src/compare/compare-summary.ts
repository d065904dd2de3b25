import { flagOf, type SettingKey } from '@pourproof/job';
import { type Compared, type ToldRow, valueText } from './compared.ts';

/** What the rows of one value of a setting come to. */
export interface ValueSummary {
  readonly value: string;
  readonly rows: number;
  readonly clear: number;
  readonly caution: number;
  readonly stop: number;
  /** Rows that were refused, and faults of ours. */
  readonly refused: number;
  /** Artworks of which one row at least is not stopped. */
  readonly artworksMade: number;
  /** Means of the rows that were judged, `null` where there is none. */
  readonly mean: {
    readonly lostLengthMm: number;
    readonly minutes: number;
    readonly massG: number;
    /** `null` where no price is known. */
    readonly price: number | null;
  } | null;
  /** What bits of it cost that are still to be bought, in the maker's money; 0 where all are at hand, `null` where no shop says it. */
  readonly toBuy: number | null;
}

/** What decides between two values, in its order: stops and refusals, clear rows, lost length, time. */
export type Merit = 'stops' | 'clear' | 'lost' | 'time';

/** The values of one setting beside each other. */
export interface SettingSummary {
  readonly key: SettingKey;
  readonly name: string;
  /** In the order of the table. */
  readonly values: readonly ValueSummary[];
  /** The one that does best, and in what it first differs from the next; `null` where two are alike in all. */
  readonly best: { readonly value: string; readonly by: Merit } | null;
}

/** Each setting that is compared with what its values come to over all else. */
export function compareSummary({ rows, keys, bitPrices }: Compared): readonly SettingSummary[] {
  return keys.map((key) => {
    const values = [...grouped(rows, key)].map(([value, own]) => ({
      ...summaryOf(value, own),
      toBuy: key === 'bit' && bitPrices !== undefined ? priceToBuy(own, bitPrices) : null,
    }));
    const [first, second] = values.toSorted(
      (a, b) => COMPARED.map((of) => of(a, b)).find((by) => by !== 0) ?? 0,
    );
    const by =
      first === undefined || second === undefined
        ? undefined
        : MERITS.find((_, k) => COMPARED[k]?.(first, second) !== 0);
    return {
      key,
      name: flagOf(key) ?? key,
      values,
      best: first === undefined || by === undefined ? null : { value: first.value, by },
    };
  });
}

function priceToBuy([row]: readonly ToldRow[], prices: ReadonlyMap<string, number>): number | null {
  const bits = [row?.values.bit ?? []].flat().map((bit) => prices.get(String(bit)));
  return bits.some((price) => price === undefined)
    ? null
    : bits.reduce<number>((sum, price) => sum + (price ?? 0), 0);
}

/** Artworks that are read, and stopped in each of their rows. */
export function neverMade({ rows }: Compared): readonly string[] {
  const artworks = [...new Set(rows.map(({ artwork }) => artwork))];
  return artworks.filter((artwork) => {
    const own = rows.filter((row) => row.artwork === artwork);
    return own.some(({ outcome }) => outcome.is === 'judged') && !own.some(isMade);
  });
}

function grouped(rows: readonly ToldRow[], key: SettingKey): ReadonlyMap<string, readonly ToldRow[]> {
  const groups = new Map<string, ToldRow[]>();
  for (const row of rows) {
    const value = valueText(key, row.values);
    groups.set(value, [...(groups.get(value) ?? []), row]);
  }
  return groups;
}

type Summed = Omit<ValueSummary, 'toBuy'>;

function summaryOf(value: string, rows: readonly ToldRow[]): Summed {
  const figures = rows.flatMap(({ outcome }) => (outcome.is === 'judged' ? [outcome.figures] : []));
  const count = (verdict: string): number => figures.filter((each) => each.verdict === verdict).length;
  const mean = (of: (each: (typeof figures)[number]) => number): number =>
    figures.reduce((sum, each) => sum + of(each), 0) / figures.length;
  return {
    value,
    rows: rows.length,
    clear: count('clear'),
    caution: count('caution'),
    stop: count('stop'),
    refused: rows.length - figures.length,
    artworksMade: new Set(rows.filter(isMade).map(({ artwork }) => artwork)).size,
    mean:
      figures.length === 0
        ? null
        : {
            lostLengthMm: mean(({ lostLengthMm }) => lostLengthMm),
            minutes: mean(({ minutes }) => minutes),
            massG: mean(({ massG }) => massG),
            price: figures.some(({ price }) => price === null) ? null : mean(({ price }) => price ?? 0),
          },
  };
}

function isMade({ outcome }: ToldRow): boolean {
  return outcome.is === 'judged' && outcome.figures.verdict !== 'stop';
}

/** Lengths and times that differ by less than this share are alike: no maker chooses by less (our choice). */
const ALIKE = 0.005;

const MERITS: readonly Merit[] = ['stops', 'clear', 'lost', 'time'];

/** Which of two values is ahead in each merit; 0 where neither is. */
const COMPARED: readonly ((a: Summed, b: Summed) => number)[] = [
  (a, b) => a.stop + a.refused - (b.stop + b.refused),
  (a, b) => b.clear - a.clear,
  (a, b) => apart(a.mean?.lostLengthMm, b.mean?.lostLengthMm),
  (a, b) => apart(a.mean?.minutes, b.mean?.minutes),
];

/** Which figure is less; one that is missing is more than any. */
function apart(a = Number.POSITIVE_INFINITY, b = Number.POSITIVE_INFINITY): number {
  return a === b || (Number.isFinite(a - b) && Math.abs(a - b) <= ALIKE * Math.max(a, b)) ? 0 : a - b;
}
