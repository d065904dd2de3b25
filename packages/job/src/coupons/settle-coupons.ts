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
/** No rule is coarser, mm (our choice). */
const MAX_RULE_MM = 20;
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
    readings: row.slots.map((slot, k) => readSlot(`${at}, slot ${k + 1}`, slot, ruleMm(at, row))),
  };
}

/** What the rule was read to, mm; `null` where the row does not say. */
function ruleMm(at: string, { rule }: CouponRow): number | null {
  if (rule === undefined) {
    return null;
  }
  const value = readMeasure(`${at}: rule`, rule, 'length');
  if (!(value > 0 && value <= MAX_RULE_MM)) {
    throw new JobError('coupon-rule', `${at}: rule`, { shown: shownInput(rule), maxMm: MAX_RULE_MM });
  }
  return value;
}

function readSlot(at: string, input: SlotInput, stepMm: number | null): CouponReading {
  if (typeof input === 'string') {
    return parseSlot(at, input, stepMm);
  }
  switch (input.kind) {
    case 'class':
      return input;
    case 'none-visible':
      return { ...input, belowMm: streakMm(at, `${input.belowMm}mm`) };
    case 'between':
      return between(at, `${input.fromMm}mm`, `${input.toMm}mm`);
    case 'streak': {
      const lengthMm = streakMm(at, `${input.lengthMm}mm`);
      const step = input.stepMm ?? stepMm;
      return { kind: 'streak', lengthMm, ...(step === null ? {} : { stepMm: step }) };
    }
  }
}

function parseSlot(at: string, typed: string, stepMm: number | null): CouponReading {
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
  const ends = /^(?:between\s+)?(\S.*?)\s+(?:and|to)\s+(\S.*)$/u.exec(text);
  if (ends !== null) {
    return between(at, ends[1] ?? '', ends[2] ?? '');
  }
  if (!/\d/u.test(text)) {
    throw new JobError('coupon-reading', at, { shown: typed, classes: CLASSES });
  }
  const lengthMm = streakMm(at, text);
  return { kind: 'streak', lengthMm, stepMm: stepMm ?? lastDigitMm(at, text) };
}

/** A streak of which only the ends are known; the first takes the unit of the second where it has none. */
function between(at: string, from: string, to: string): CouponReading {
  const unit = /[a-z"″”]+\s*$/u.exec(to)?.[0] ?? '';
  const fromMm = readMeasure(at, /[a-z"″”]\s*$/u.test(from) ? from : `${from}${unit}`, 'length');
  const toMm = streakMm(at, to);
  if (!(fromMm >= 0 && fromMm < toMm)) {
    throw new JobError('coupon-ends', at, { from, to });
  }
  return { kind: 'between', fromMm, toMm };
}

/** What the last digit of a typed length stands for: `1.2mm` was read to 0.1 mm, `1/16in` to a sixteenth. */
function lastDigitMm(at: string, text: string): number {
  const unit = /[a-z"″”]+\s*$/u.exec(text)?.[0] ?? 'mm';
  const parts = /\/\s*(\d+)/u.exec(text)?.[1];
  if (parts !== undefined) {
    return readMeasure(at, `1/${parts}${unit}`, 'length');
  }
  const digits = /[.,](\d+)/u.exec(text)?.[1]?.length ?? 0;
  return readMeasure(at, `${(10 ** -digits).toFixed(digits)}${unit}`, 'length');
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
