import { type CouponRow, readMaterialsFile, readShopFile, type Shop } from '@pourproof/job';
import { defaultMaterials, type MaterialsBook } from '@pourproof/materials';

/** A JSON file as it was opened: it is saved as the same file again. */
export interface NamedData {
  readonly name: string;
  readonly data: unknown;
}

/** What a maker has for every job: the shop, values of materials, coupons; `null` for what was never opened. */
export interface Shelf {
  readonly shop: NamedData | null;
  readonly materials: NamedData | null;
  readonly coupons: readonly CouponRow[] | null;
}

/** A shelf with nothing on it. */
export const EMPTY_SHELF: Shelf = { shop: null, materials: null, coupons: null };

/** What a job is settled with. */
export interface Tables {
  readonly materials: MaterialsBook;
  readonly shop: Shop | null;
}

/** What a job is settled with where the maker has opened nothing. */
export const USUAL_TABLES: Tables = { materials: defaultMaterials, shop: null };

const read = new WeakMap<Shelf, Tables>();

/**
 * The files of a shelf, read.
 *
 * @throws {JobError} when one of them cannot be used
 */
export function tablesOf(shelf: Shelf): Tables {
  const known = read.get(shelf);
  if (known !== undefined) {
    return known;
  }
  const tables = readTables(shelf);
  read.set(shelf, tables);
  return tables;
}

function readTables({ shop: shopFile, materials: file }: Shelf): Tables {
  const shop = shopFile === null ? null : readShopFile(shopFile.data, shopFile.name);
  const usual = shop?.materials ?? defaultMaterials;
  return {
    shop,
    materials: file === null ? usual : readMaterialsFile(file.data, file.name, shop?.materials),
  };
}

/** Whether two shelves hold the same files. */
export function isSameShelf(a: Shelf, b: Shelf): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}

/** The same as the worker takes it. */
export function vetOptions({ materials, shop }: Tables): {
  readonly materials: MaterialsBook;
  readonly shop?: Shop;
} {
  return { materials, ...(shop === null ? {} : { shop }) };
}
