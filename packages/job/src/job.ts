import {
  type Coupon,
  defaultMaterials,
  type LevelMethodId,
  levelMethods,
  type MaterialsBook,
  type Resin,
  type ResinColourId,
  type Scale,
  type Sealer,
  type Wood,
} from '@pourproof/materials';
import { MeasureError, parseMeasure, type Quantity } from '@pourproof/plane';
import type { Bit } from './bit.ts';
import { type SettledBoard, settleBoard } from './board/settle-board.ts';
import { settleCoupons } from './coupons/settle-coupons.ts';
import { JobError } from './job-error.ts';
import type { JobFile } from './job-file.ts';
import { type Driving, settleDriving } from './machine.ts';
import { parseBit } from './parse-bit.ts';
import { refuseNonsense } from './refuse-nonsense.ts';
import { parseShopTime } from './shop-time.ts';

/** The question that a proof answers; every value settled. Lengths in mm, angles in degrees, times in hours. */
export interface Job extends SettledBoard, Driving {
  /** In the order of use; at least one. */
  readonly bits: readonly Bit[];
  readonly depthMm: number;
  readonly grainDeg: number;
  readonly diveDeg: number;
  /** Ids into `materials`; their rows are in `rows`. */
  readonly wood: string;
  readonly seal: string;
  readonly resin: string;
  readonly weigh: string;
  /** Whether the board was ever oiled or waxed. */
  readonly isOiled: boolean;
  readonly coats: number;
  readonly sealHours: number;
  /** Test slots that the maker has cut and read, of any board. */
  readonly coupons: readonly Coupon[];
  /** Colour of the resin; `null` when the maker did not say. */
  readonly colour: ResinColourId | null;
  readonly pigmentPct: number;
  readonly levelMm: number;
  readonly levelBy: LevelMethodId;
  readonly overpourMm: number;
  readonly wastePct: number;
  readonly boards: number;
  readonly pricePerG: number | null;
  readonly shopTempC: number;
  /** Start of carving, see `parseShopTime`; `null` when the maker did not say. */
  readonly start: number | null;
  readonly toleranceMm: number;
  readonly units: 'mm' | 'in';
  /** All materials that the job may name. */
  readonly materials: MaterialsBook;
  /** The rows of the materials that it does name. */
  readonly rows: JobRows;
  /** Names of the values above that were not given. */
  readonly defaults: readonly string[];
}

/** The materials of a job. */
export interface JobRows {
  readonly wood: Wood;
  readonly seal: Sealer;
  readonly resin: Resin;
  readonly scale: Scale;
}

/**
 * What a job is where the maker says nothing: a 1/8 in flat bit, 1/8 in deep, in sugar maple without a seal.
 * Common practice throughout (no source), and each one used is listed in the report.
 */
export const JOB_DEFAULTS: Readonly<
  Partial<Record<keyof JobFile, string | number | boolean | readonly string[]>>
> = {
  bit: ['flat:1/8in'],
  depth: '1/8in',
  grain: '0deg',
  dive: '0deg',
  wood: 'maple',
  oiled: false,
  seal: 'none',
  coats: 1,
  sealHours: '24h',
  resin: 'coating',
  pigmentPct: 3,
  level: '0.5mm',
  levelBy: 'hand',
  overpour: '0.5mm',
  wastePct: 15,
  boards: 1,
  weigh: 'tenth',
  // where the tables' values hold
  shopTemp: '25C',
  tolerance: '0.005mm',
  units: 'mm',
};

/** Keys that a described board speaks for. */
const FROM_BOARD: readonly string[] = ['wood', 'grain', 'dive'];

/**
 * Settles a job on the materials that ship with pourproof: later parts override earlier ones, defaults fill the rest and are named.
 *
 * @throws {JobError} when a value cannot be read or makes no sense
 */
export function settleJob(...parts: readonly Partial<JobFile>[]): Job {
  return settleJobWith(defaultMaterials, ...parts);
}

/**
 * Settles a job as {@link settleJob} does, on a book of materials that may hold the maker's own.
 *
 * @throws {JobError} when a value cannot be read or makes no sense
 */
export function settleJobWith(materials: MaterialsBook, ...parts: readonly Partial<JobFile>[]): Job {
  const given = merged(parts);
  const value = <T>(key: keyof JobFile): T => (given[key] ?? JOB_DEFAULTS[key]) as T;
  const typed = (key: keyof JobFile, quantity: Quantity): number => measure(key, value(key), quantity);
  const board = settleBoard(given, (id) => Object.hasOwn(materials.woods, id));
  const wood = known('wood', board.board?.blocks[0]?.wood ?? value('wood'), materials.woods);
  const seal = known('seal', value('seal'), materials.sealers);
  const resin = known('resin', value('resin'), materials.resins);
  const weigh = known('weigh', value('weigh'), materials.scales);
  const job: Omit<Job, 'coupons'> = {
    ...board,
    ...settleDriving(given, (key, quantity) => measure(key, given[key] ?? '', quantity)),
    bits: value<readonly string[]>('bit').map((text) => read('bit', () => parseBit(text))),
    depthMm: typed('depth', 'length'),
    grainDeg: typed('grain', 'angle'),
    diveDeg: typed('dive', 'angle'),
    wood: wood.id,
    seal: seal.id,
    resin: resin.id,
    weigh: weigh.id,
    isOiled: value('oiled'),
    coats: value('coats'),
    sealHours: typed('sealHours', 'time'),
    colour: given.colour ?? null,
    pigmentPct: value('pigmentPct'),
    levelMm:
      given.level === undefined && given.levelBy !== undefined
        ? levelMethods[given.levelBy].removalMm.value
        : typed('level', 'length'),
    levelBy: value('levelBy'),
    overpourMm: typed('overpour', 'length'),
    wastePct: value('wastePct'),
    boards: value('boards'),
    pricePerG: given.pricePerG ?? null,
    shopTempC: typed('shopTemp', 'temperature'),
    start: given.start === undefined ? null : parseShopTime(given.start),
    toleranceMm: typed('tolerance', 'length'),
    units: value('units'),
    materials,
    rows: { wood: wood.row, seal: seal.row, resin: resin.row, scale: weigh.row },
    defaults: Object.keys(JOB_DEFAULTS).filter(
      (key) =>
        given[key as keyof JobFile] === undefined && !(board.board !== null && FROM_BOARD.includes(key)),
    ),
  };
  const isOneWood = new Set(board.board?.blocks.map((block) => block.wood)).size <= 1;
  const settled: Job = {
    ...job,
    coupons: settleCoupons(given.coupons ?? [], { ...job, wood: isOneWood ? wood.id : null }, materials),
  };
  refuseNonsense(settled);
  return settled;
}

function merged(parts: readonly Partial<JobFile>[]): Partial<JobFile> {
  const given: Partial<Record<string, unknown>> = {};
  for (const part of parts) {
    for (const [key, value] of Object.entries(part)) {
      if (value !== undefined) {
        given[key] = value;
      }
    }
  }
  return given as Partial<JobFile>;
}

function measure(key: string, text: string, quantity: Quantity): number {
  return read(key, () => parseMeasure(text, quantity).value);
}

function read<T>(key: string, parse: () => T): T {
  try {
    return parse();
  } catch (error) {
    if (error instanceof MeasureError) {
      throw new JobError(`${key}: ${error.message}`);
    }
    throw error;
  }
}

function known<Row>(
  key: string,
  id: string,
  table: Readonly<Record<string, Row>>,
): { readonly id: string; readonly row: Row } {
  const row = Object.hasOwn(table, id) ? table[id] : undefined;
  if (row === undefined) {
    throw new JobError(`${key} "${id}" is unknown. Known: ${Object.keys(table).join(', ')}.`);
  }
  return { id, row };
}
