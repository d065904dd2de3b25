import { defaultMaterials, type MaterialsBook } from '@pourproof/materials';
import { bitSize } from './bits/bit.ts';
import { refuseBoardConflicts, withBlocks } from './board/with-blocks.ts';
import type { CouponRow } from './coupons/coupon-row.ts';
import { settleCoupons } from './coupons/settle-coupons.ts';
import type { Job, JobRows, SourceKind } from './job.ts';
import { refuseJobShape } from './job-file.ts';
import { JobError } from './refusals/job-error.ts';
import { refuseForSource } from './refuse-for-source.ts';
import type { Setting } from './settings/setting.ts';
import { FLAT, type JobInput, SECTIONS, SETTING_KEYS, SETTINGS, type SettingKey } from './settings/table.ts';
import { usualInput } from './settings/usual-input.ts';
import { filledByShop, withEdges } from './shop-file/filled-by-shop.ts';
import type { Shop } from './shop-file/shop.ts';
import { typedUnit } from './typed-unit.ts';
import { withKnownChoices } from './values/known-choices.ts';
import { knownId, knownRow } from './values/known-row.ts';

/** What a job is settled with. */
export interface SettleOptions {
  /** Materials that it may name; those that ship with pourproof if left out. */
  readonly materials?: MaterialsBook | undefined;
  /** The maker's shop, which fills in what the job does not say; its tables stand where `materials` are left out. */
  readonly shop?: Shop | undefined;
  /** Coupons that stand beside the job; a job with coupons of its own is refused then. */
  readonly coupons?: readonly CouponRow[] | undefined;
  /** What is vetted; if left out, lettering where the job has a text and a file where it names an artwork. */
  readonly source?: SourceKind | undefined;
  /** Whether a font is at hand for lettering; if left out, the job must name one. */
  readonly hasFont?: boolean | undefined;
}

/**
 * Settles a job: every value is read and checked, usual values fill what was not given and are named in
 * `defaults`.
 *
 * Nothing of the input is ignored: unknown keys, values of the wrong type, empty lists, and settings that
 * contradict one another or what is vetted are refused by name.
 *
 * @throws {JobError} when a value cannot be read or makes no sense
 *
 * @example
 * ```ts
 * const job = settleJob({ bit: ['flat:1/8in'], depth: { mm: 3 }, wood: 'cherry' });
 * job.depthMm; // 3
 * ```
 */
export function settleJob(given: JobInput, options: SettleOptions = {}): Job {
  const input = withKnownChoices(given);
  const shop = options.shop ?? null;
  const { materials = shop?.materials ?? defaultMaterials } = options;
  refuseJobShape(input, null);
  const keys = Object.keys(input).filter(
    (key): key is SettingKey => key !== 'schema' && input[key as SettingKey] !== undefined,
  );
  refuseContradictions(input);
  const { filled, fromShop } = filledByShop(input, shop, materials);
  const settled = withEdges(settledFields(filled, materials), shop);
  const board = withBlocks(settled.board, input.block, (typed) => knownId('board', typed, materials.woods));
  const wood = board?.blocks[0]?.wood ?? settled.wood;
  const job: Omit<Job, 'coupons'> = {
    ...settled,
    board,
    thicknessMm: board?.thicknessMm ?? settled.thicknessMm,
    wood,
    units: input.units ?? typedUnit(input) ?? settled.units,
    source: options.source ?? namedSource(input),
    materials,
    rows: rowsOf({ ...settled, wood }, materials),
    input: options.coupons === undefined ? input : { ...input, coupons: options.coupons },
    given: keys,
    shop,
    fromShop,
    defaults: SETTING_KEYS.filter((key) => isTakenAsUsual(key, filled)),
  };
  refuseThickness(job);
  const whole = { ...job, coupons: couponsOf(input, options.coupons, job, materials) };
  refuseForSource(whole, input, options.hasFont ?? input.font !== undefined);
  return whole;
}

/** What the table settles by itself. */
type SettledFields = Omit<
  Job,
  'source' | 'materials' | 'rows' | 'input' | 'given' | 'shop' | 'fromShop' | 'defaults' | 'coupons'
>;

function settledFields(input: JobInput, materials: MaterialsBook): SettledFields {
  const fields: Record<string, unknown> = {};
  for (const [key, row] of Object.entries<Setting>(FLAT)) {
    if (row.field !== null) {
      fields[row.field] = settledValue(key as SettingKey, row, input, materials) ?? null;
    }
  }
  for (const [section, rows] of Object.entries(SECTIONS)) {
    const values = Object.entries<Setting>(rows).map(
      ([key, row]) => [row.field, settledValue(key as SettingKey, row, input, materials)] as const,
    );
    fields[section] = Object.fromEntries(values.filter(([, value]) => value !== undefined));
  }
  // the rows of each group are checked against its fields where they stand
  return fields as unknown as SettledFields;
}

function settledValue(key: SettingKey, row: Setting, input: JobInput, materials: MaterialsBook): unknown {
  const value = input[key] ?? usualInput(key, input);
  return value === undefined ? row.absent : row.holds.settle(value, key, materials);
}

function rowsOf(
  { wood, seal, resin, weigh }: Pick<Job, 'wood' | 'seal' | 'resin' | 'weigh'>,
  { woods, sealers, resins, scales }: MaterialsBook,
): JobRows {
  return {
    wood: knownRow('wood', wood, woods),
    seal: knownRow('seal', seal, sealers),
    resin: knownRow('resin', resin, resins),
    scale: knownRow('weigh', weigh, scales),
  };
}

function namedSource({ artwork, text }: JobInput): SourceKind | null {
  return text !== undefined ? 'lettering' : artwork !== undefined ? 'file' : null;
}

function isTakenAsUsual(key: SettingKey, input: JobInput): boolean {
  const { usual, only } = SETTINGS[key];
  const isFromBoard = input.board !== undefined && only?.board === 'without';
  const isFromUnit = key === 'units' && typedUnit(input) !== undefined;
  return usual !== undefined && input[key] === undefined && !isFromBoard && !isFromUnit;
}

function refuseContradictions(input: JobInput): void {
  const sizes = (['width', 'height', 'scale'] as const).filter((key) => input[key] !== undefined);
  if (sizes.length > 1) {
    throw new JobError('two-sizes', sizes[0] ?? null, { keys: sizes });
  }
  if (input.artwork !== undefined && input.text !== undefined) {
    throw new JobError('two-artworks', 'artwork', { file: null });
  }
  if (input.text?.trim() === '') {
    throw new JobError('text-empty', 'text', {});
  }
  refuseBoardConflicts(input);
}

function refuseThickness({
  thicknessMm,
  depthMm,
  units,
}: Pick<Job, 'thicknessMm' | 'depthMm' | 'units'>): void {
  if (thicknessMm !== null && depthMm >= thicknessMm) {
    throw new JobError('deeper-than-board', 'depth', {
      depth: bitSize(depthMm, units),
      thickness: bitSize(thicknessMm, units),
    });
  }
}

function couponsOf(
  input: JobInput,
  beside: readonly CouponRow[] | undefined,
  job: Omit<Job, 'coupons'>,
  materials: MaterialsBook,
): Job['coupons'] {
  if (input.coupons !== undefined && beside !== undefined) {
    throw new JobError('two-coupons', 'coupons', {});
  }
  const isOneWood = new Set(job.board?.blocks.map((block) => block.wood)).size <= 1;
  return settleCoupons(
    input.coupons ?? beside ?? [],
    { ...job, wood: isOneWood ? job.wood : null },
    materials,
  );
}
