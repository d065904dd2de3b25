import {
  type CutterSize,
  defaultMaterials,
  type MaterialsBook,
  MaterialsError,
  mergeMaterials,
} from '@pourproof/materials';
import { readBit } from '../bits/parse-bit.ts';
import { typedBit } from '../bits/typed-bit.ts';
import { overridesFrom } from '../materials-file/materials-file.ts';
import { JobError } from '../refusals/job-error.ts';
import { refuseShape } from '../refusals/shape-issues.ts';
import type { JobInput } from '../settings/table.ts';
import { settleJob } from '../settle-job.ts';
import { withKnownChoices } from '../values/known-choices.ts';
import { knownId } from '../values/known-row.ts';
import type { Shop, ShopBit, ShopResin, ShopSeal } from './shop.ts';
import { type BitRow, type ResinRow, type SealRow, SHOP_SCHEMA, shopFileSchema } from './shop-schema.ts';

/** A file of the right shape. */
interface ShopFile {
  readonly bits?: readonly BitRow[];
  readonly woods?: readonly string[];
  readonly seals?: readonly SealRow[];
  readonly resins?: readonly ResinRow[];
  readonly scales?: readonly string[];
  readonly usual?: JobInput;
  readonly materials?: Parameters<typeof overridesFrom>[0];
}

/**
 * The shop of a parsed `shop.json`, every value read and checked.
 *
 * @param name file name for messages, and for answers that say where a value comes from
 * @throws {JobError} naming what is wrong, where in the file, and what to write
 *
 * @example
 * ```ts
 * const shop = readShopFile({ schema: 'pourproof/shop@1', bits: ['flat:1/8in'], usual: { feed: '1200mm/min' } }, 'shop.json');
 * settleJob({ depth: '3mm' }, { shop }).machine.feedMmPerMin; // 1200
 * ```
 */
export function readShopFile(data: unknown, name: string): Shop {
  const known = withKnownUsual(data);
  const result = shopFileSchema.safeParse(known, { reportInput: true });
  if (!result.success) {
    const keys = Object.keys(shopFileSchema.shape);
    refuseShape(result.error, { file: name, schema: SHOP_SCHEMA, keys, forms: {} });
  }
  // the schema has checked its shape; what it holds is read below
  const file = known as ShopFile;
  const bits = rowsOf(name, 'bits', file.bits, shopBitOf);
  const materials = bookOf(name, file, bits);
  const { woods, sealers, resins, scales } = materials;
  const shop: Shop = {
    name,
    bits,
    woods: rowsOf(name, 'woods', file.woods, (wood) => knownId('wood', wood, woods)),
    scales: rowsOf(name, 'scales', file.scales, (scale) => knownId('scale', scale, scales)),
    seals: rowsOf(name, 'seals', file.seals, (row) => sealOf(row, sealers)),
    resins: rowsOf(name, 'resins', file.resins, (row) => resinOf(row, resins)),
    usual: file.usual ?? {},
    materials,
  };
  return { ...shop, materials: { ...materials, atHand: atHandIn(shop) } };
}

/** What is usual, with its choices as the schema writes them. */
function withKnownUsual(data: unknown): unknown {
  return typeof data === 'object' && data !== null && 'usual' in data
    ? { ...data, usual: withKnownChoices(data.usual) }
    : data;
}

/** The rows of a list, each read; what is wrong with one is told with its number, from 1. */
function rowsOf<Row, Read>(
  file: string,
  list: string,
  rows: readonly Row[] | undefined,
  read: (row: Row) => Read,
): readonly Read[] {
  return (rows ?? []).map((row, k) =>
    told(
      file,
      (key) => `${list}, row ${k + 1}${key === 'bit' ? '' : `: ${key}`}`,
      () => read(row),
    ),
  );
}

/** What is wrong with an entry, with the file and the place in it. */
function told<Result>(file: string, placeOf: (key: string) => string, attempt: () => Result): Result {
  try {
    return attempt();
  } catch (error) {
    if (error instanceof JobError) {
      const { what, remedy } = error.wordsIn(placeOf);
      throw new JobError('shop-entry', null, { file, reason: what, remedy });
    }
    if (error instanceof MaterialsError) {
      const { place, what, remedy } = error;
      throw new JobError('shop-entry', null, { file, reason: `materials.${place}: ${what}`, remedy });
    }
    throw error;
  }
}

function shopBitOf(row: BitRow): ShopBit {
  const { bit, price, changeMinutes, toBuy } =
    typeof row === 'object' && 'bit' in row ? row : { bit: row, price: undefined };
  return {
    bit: readBit(bit),
    text: typedBit(bit),
    price: price ?? null,
    changeMinutes: changeMinutes ?? null,
    isToBuy: toBuy ?? false,
  };
}

function sealOf(row: SealRow, sealers: MaterialsBook['sealers']): ShopSeal {
  const { seal, coats, sealHours, pricePerG = null } = typeof row === 'string' ? { seal: row } : row;
  if (sealHours !== undefined || coats !== undefined) {
    settleJob({ coats, sealHours });
  }
  return {
    seal: knownId('seal', seal, sealers),
    pricePerG,
    ...(coats === undefined ? {} : { coats }),
    ...(sealHours === undefined ? {} : { sealHours }),
  };
}

function resinOf(row: ResinRow, resins: MaterialsBook['resins']): ShopResin {
  const { resin, pricePerG = null } = typeof row === 'string' ? { resin: row } : row;
  return { resin: knownId('resin', resin, resins), pricePerG };
}

/** The tables with the shop's own entries; its bits are the sizes at hand. What is usual is settled with them once, to refuse it here. */
function bookOf(name: string, file: ShopFile, bits: readonly ShopBit[]): MaterialsBook {
  const placeOf = (key: string): string => `usual.${key}`;
  return told(name, placeOf, () => {
    const entered = mergeMaterials(defaultMaterials, overridesFrom(file.materials ?? {}));
    const cutters = bits.flatMap(sizeOf);
    const materials: MaterialsBook =
      cutters.length === 0 || file.materials?.cutters !== undefined
        ? entered
        : { ...entered, cutters: { value: cutters, status: 'entered', because: ['maker-entry'] } };
    settleJob(file.usual ?? {}, { materials });
    return materials;
  });
}

function atHandIn({ seals, resins, scales }: Shop): NonNullable<MaterialsBook['atHand']> {
  return {
    sealers: seals.map(({ seal }) => seal),
    resins: resins.map(({ resin }) => resin),
    scales,
  };
}

/** A bit as a size at hand; none for shapes that the list of sizes does not know. */
function sizeOf({ bit, text }: ShopBit): readonly CutterSize[] {
  const label = text.split(':')[1] ?? '';
  switch (bit.kind) {
    case 'flat':
    case 'ball':
      return [{ shape: bit.kind, label, diameterMm: bit.diameterMm, angleDeg: null }];
    case 'vee':
      return [{ shape: 'vee', label, diameterMm: bit.diameterMm, angleDeg: bit.angleDeg }];
    case 'taper':
      return [{ shape: 'tapered-ball', label, diameterMm: bit.tipDiameterMm, angleDeg: bit.sideDeg }];
    default:
      return [];
  }
}
