/** What a self-check compares: two figures that were reached in different ways, or one with what bounds it. */
export type BalanceId =
  | 'artwork-is-cut-and-left'
  | 'cut-is-its-outline'
  | 'bits-add-up-to-cut'
  | 'colours-add-up-to-cut'
  | 'blocks-lie-in-cut'
  | 'rounds-lie-in-artwork'
  | 'volume-lies-between-slices'
  | 'depth-is-within-limit'
  | 'floor-lies-in-cut'
  | 'fills-add-up-to-volume'
  | 'fill-fits-its-colour'
  | 'mix-is-its-fill'
  | 'grams-are-volume-by-density'
  | 'parts-keep-the-ratio'
  | 'cups-add-up-to-mix'
  | 'width-is-distance-to-outline'
  | 'width-lies-in-artwork';

/** Unit of a balance. */
export type BalanceUnit = 'mm' | 'mm2' | 'mm3' | 'ml' | 'g';

/** A figure with the range in which another way to it puts it. */
export interface Balance {
  readonly id: BalanceId;
  readonly unit: BalanceUnit;
  /** The figure of the proof. */
  readonly got: number;
  /** The least and the greatest that it may be. */
  readonly least: number;
  readonly most: number;
  /** Which bit, colour, round or sample it is of, from 0; absent for the whole. */
  readonly index?: number;
}

/** A balance that does not hold. */
export interface Miss extends Balance {
  /** By how much the figure lies outside its range; `NaN` where it is no number. */
  readonly by: number;
}

/** The same figure by another way, which may be off by some amount. */
export function equalWithin(
  id: BalanceId,
  unit: BalanceUnit,
  [got, want, by]: readonly [got: number, want: number, by: number],
  index?: number,
): Balance {
  return { id, unit, got, least: want - by, most: want + by, ...(index === undefined ? {} : { index }) };
}

/** The balances that do not hold; one with a figure that is no number never does. */
export function missesOf(balances: readonly Balance[]): readonly Miss[] {
  return balances.flatMap((balance) => {
    const { got, least, most } = balance;
    const isKept = got >= least && got <= most;
    return isKept
      ? []
      : [{ ...balance, by: Number.isFinite(got) ? Math.max(least - got, got - most) : Number.NaN }];
  });
}
