import type { BleedClass, Coupon, CouponReading, MaterialsBook } from '@pourproof/materials';
import { MeasureError, parseMeasure, type Quantity } from '@pourproof/plane';
import { JobError } from '../job-error.ts';
import type { CouponRow } from './coupon-row.ts';

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
const LONGEST_MM = 500;
/** A year in the shop; longer is taken for a slip of the unit (our choice). */
const LONGEST_HOURS = 24 * 366;

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
  const woodId = row.wood ?? defaults.wood;
  if (woodId === null) {
    throw new JobError(
      `${at}: the board has several woods, so the row must name its own, as "wood": "maple".`,
    );
  }
  const sealHours = typed(at, 'sealHours', row.sealHours, 'time', defaults.sealHours);
  const temperatureC = typed(at, 'temp', row.temp, 'temperature', defaults.shopTempC);
  if (!(sealHours >= 0 && sealHours <= LONGEST_HOURS)) {
    throw new JobError(
      `${at}: sealHours "${row.sealHours}" is no time that a seal was left. Check its unit.`,
    );
  }
  if (!(temperatureC >= 5 && temperatureC <= 45)) {
    throw new JobError(
      `${at}: temp is ${temperatureC} °C; epoxy is not poured below 5C or above 45C. Check its unit.`,
    );
  }
  return {
    row: number,
    board: row.board ?? null,
    made: {
      wood: known(at, 'wood', woodId, materials.woods),
      part: row.part ?? null,
      seal: known(at, 'seal', row.seal ?? defaults.seal, materials.sealers),
      coats: row.coats ?? defaults.coats,
      sealHours,
      resin: known(at, 'resin', row.resin ?? defaults.resin, materials.resins),
      temperatureC,
    },
    readings: row.slots.map((text, slot) => reading(`${at}, slot ${slot + 1}`, text)),
  };
}

function typed(
  at: string,
  key: string,
  text: string | undefined,
  quantity: Quantity,
  otherwise: number,
): number {
  return text === undefined ? otherwise : measure(`${at}: ${key}`, text, quantity);
}

function measure(at: string, text: string, quantity: Quantity): number {
  try {
    return parseMeasure(text, quantity).value;
  } catch (error) {
    if (error instanceof MeasureError) {
      throw new JobError(`${at}: ${error.message}`);
    }
    throw error;
  }
}

function known<Row>(at: string, key: string, id: string, table: Readonly<Record<string, Row>>): Row {
  const row = Object.hasOwn(table, id) ? table[id] : undefined;
  if (row === undefined) {
    throw new JobError(`${at}: ${key} "${id}" is unknown. Known: ${Object.keys(table).join(', ')}.`);
  }
  return row;
}

function reading(at: string, typedText: string): CouponReading {
  const text = typedText.trim().toLowerCase();
  const name = CLASSES.find((each) => each === text);
  if (name !== undefined) {
    return { kind: 'class', class: name };
  }
  const none = /^(?:none|nothing)(?:\s+visible)?(?:\s+below\s+(.+))?$/u.exec(text);
  if (none !== null) {
    if (none[1] === undefined) {
      throw new JobError(
        `${at}: "${typedText}" does not say how short a streak would have been seen. Write it like "none below 0.45mm".`,
      );
    }
    return { kind: 'none-visible', belowMm: lengthMm(at, none[1]) };
  }
  if (!/\d/u.test(text)) {
    throw new JobError(
      `${at}: "${typedText}" is no reading. Write a length such as "1.2mm", "none below 0.45mm", or one of ${CLASSES.join(', ')}.`,
    );
  }
  return { kind: 'streak', lengthMm: lengthMm(at, text) };
}

function lengthMm(at: string, text: string): number {
  const value = measure(at, text, 'length');
  if (value === 0) {
    throw new JobError(
      `${at}: a streak of 0 is no reading. Write the shortest that you would have seen, as "none below 0.45mm".`,
    );
  }
  if (!(value > 0 && value <= LONGEST_MM)) {
    throw new JobError(
      `${at}: "${text}" is no length of a streak (above 0, up to ${LONGEST_MM} mm). Check its unit.`,
    );
  }
  return value;
}
