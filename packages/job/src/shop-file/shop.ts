import type { MaterialsBook } from '@pourproof/materials';
import type { Bit } from '../bits/bit.ts';
import type { JobInput, SettingKey } from '../settings/table.ts';

/** What a maker's shop has and does; a job settled with it takes from it what it does not say itself. */
export interface Shop {
  /** Name of the file, for answers that say where a value comes from. */
  readonly name: string;
  /** In the order of the file: the first is the one that is usually taken. */
  readonly bits: readonly ShopBit[];
  /** Ids of woods, scales and the seals and resins in the order of the file; empty where the file says nothing. */
  readonly woods: readonly string[];
  readonly scales: readonly string[];
  readonly seals: readonly ShopSeal[];
  readonly resins: readonly ShopResin[];
  /** Settings as they are in every job of the shop that does not say otherwise, as they are given. */
  readonly usual: Pick<JobInput, SettingKey>;
  /** The tables with the shop's own entries, and its bits as the sizes at hand. */
  readonly materials: MaterialsBook;
}

/** A bit of the shop's list. */
export interface ShopBit {
  readonly bit: Bit;
  /** As it is typed. */
  readonly text: string;
  /** In the maker's money; `null` where it was not given. */
  readonly price: number | null;
  /** Minutes to put it in and to set it to the face; `null` where they were not given. */
  readonly changeMinutes: number | null;
  /** Whether it would have to be bought first. */
  readonly isToBuy: boolean;
}

/** A seal of the shop's list, with the coats and the wait that the shop gives it. */
export interface ShopSeal extends Pick<JobInput, 'coats' | 'sealHours'> {
  readonly seal: string;
  /** Price of a gram of liquid, in the maker's money; `null` where it was not given. */
  readonly pricePerG: number | null;
}

/** A resin of the shop's list. */
export interface ShopResin {
  readonly resin: string;
  /** Price of a gram of mix, in the maker's money; `null` where it was not given. */
  readonly pricePerG: number | null;
}

/**
 * The row of a shop's list for a bit: that of the same shape, and of the same edge where the bit names one; else that with the longest edge.
 * `undefined` where the list has none.
 */
export function shopBit(shop: Shop | null, bit: Bit): ShopBit | undefined {
  const edge = (each: ShopBit): number => each.bit.cuttingLengthMm ?? 0;
  const same = (shop?.bits ?? [])
    .filter((each) => shapeOf(each.bit) === shapeOf(bit))
    .toSorted((a, b) => edge(b) - edge(a));
  return same.find((each) => each.bit.cuttingLengthMm === bit.cuttingLengthMm) ?? same[0];
}

function shapeOf({ cuttingLengthMm: _, ...shape }: Bit): string {
  return JSON.stringify(Object.entries(shape).toSorted(([a], [b]) => (a < b ? -1 : 1)));
}
