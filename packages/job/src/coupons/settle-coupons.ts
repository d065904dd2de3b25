import type { BleedClass, Coupon, CouponReading, MaterialsBook } from '@pourproof/materials';
import { JobError } from '../refusals/job-error.ts';
import { knownRow } from '../values/known-row.ts';
import { readMeasure, shownInput } from '../values/measure-input.ts';
import { EPOXY_TEMPERATURES, refuseOutside } from '../values/range.ts';
import type { CouponRow, SlotInput } from './coupon-row.ts';

/** What a coupon takes from its job where its row says nothing. */
export interface CouponDefaults {
  /** `null` where the board has several woods. */
  readonly wood: string | null;
  readonly seal: string;
  readonly coats: number;
  readonly sealHours: number;
  readonly resin: string;
  readonly shopTempC: number;
}

/** Longer streaks are taken for a slip of the unit, mm (our choice). */
const MAX_STREAK_MM = 500;
/** A year in the shop; longer is taken for a slip of the unit (our choice). */
const MAX_SEAL_HOURS = 24 * 366;

const CLASSES: readonly BleedClass[] = ['clean', 'slight', 'moderate', 'severe'];

/**
 * Coupons with their materials looked up and their readings in mm.
 *
 * @throws {JobError} naming the row, counted from 1, its slot, and what to write
 */
export function settleCoupons(
  rows: readonly CouponRow[],
  defaults: CouponDefaults,
  materials: MaterialsBook,
): readonly Coupon[] {
  return rows.map((row, k) => settleCoupon(row, k + 1, defaults, materials));
}

function settleCoupon(
  row: CouponRow,
  number: number,
  defaults: CouponDefaults,
  materials: MaterialsBook,
): Coupon {
  const at = `coupons, row ${number}`;
  const wood = row.wood ?? defaults.wood;
  if (wood === null) {
    throw new JobError('coupon-wood', at, { row: number });
  }
  const sealHours =
    row.sealHours === undefined ? defaults.sealHours : readMeasure(`${at}: sealHours`, row.sealHours, 'time');
  if (!(sealHours >= 0 && sealHours <= MAX_SEAL_HOURS)) {
    throw new JobError('coupon-hours', at, { row: number, shown: shownInput(row.sealHours) });
  }
  const temperatureC =
    row.temp === undefined ? defaults.shopTempC : readMeasure(`${at}: temp`, row.temp, 'temperature');
  refuseOutside(`${at}: temp`, temperatureC, '°C', EPOXY_TEMPERATURES);
  const seal = row.seal ?? defaults.seal;
  const resin = row.resin ?? defaults.resin;
  return {
    row: number,
    board: row.board ?? null,
    made: {
      wood: knownRow(`${at}: wood`, wood, materials.woods),
      part: row.part ?? null,
      seal: knownRow(`${at}: seal`, seal, materials.sealers),
      coats: row.coats ?? defaults.coats,
      sealHours,
      resin: knownRow(`${at}: resin`, resin, materials.resins),
      temperatureC,
    },
    readings: row.slots.map((slot, k) => readSlot(`${at}, slot ${k + 1}`, slot)),
  };
}

function readSlot(at: string, input: SlotInput): CouponReading {
  if (typeof input === 'string') {
    return parseSlot(at, input);
  }
  switch (input.kind) {
    case 'class':
      return input;
    case 'none-visible':
      return { ...input, belowMm: streakMm(at, `${input.belowMm}mm`) };
    case 'streak':
      return { ...input, lengthMm: streakMm(at, `${input.lengthMm}mm`) };
  }
}

function parseSlot(at: string, typed: string): CouponReading {
  const text = typed.trim().toLowerCase();
  const name = CLASSES.find((each) => each === text);
  if (name !== undefined) {
    return { kind: 'class', class: name };
  }
  const none = /^(?:none|nothing)(?:\s+visible)?(?:\s+below\s+(.+))?$/u.exec(text);
  if (none !== null) {
    if (none[1] === undefined) {
      throw new JobError('coupon-none', at, { shown: typed });
    }
    return { kind: 'none-visible', belowMm: streakMm(at, none[1]) };
  }
  if (!/\d/u.test(text)) {
    throw new JobError('coupon-reading', at, { shown: typed, classes: CLASSES });
  }
  return { kind: 'streak', lengthMm: streakMm(at, text) };
}

function streakMm(at: string, text: string): number {
  const value = readMeasure(at, text, 'length');
  if (value === 0) {
    throw new JobError('coupon-zero', at, {});
  }
  if (!(value > 0 && value <= MAX_STREAK_MM)) {
    throw new JobError('coupon-length', at, { shown: text, maxMm: MAX_STREAK_MM });
  }
  return value;
}
