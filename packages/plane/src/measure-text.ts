import { G_PER_LB, G_PER_OZ, ML_PER_US_FL_OZ, MM_PER_INCH, PT_PER_INCH, PT_PER_PICA } from './units.ts';

/** The kind of quantity that a typed measure is. */
export type Quantity = 'length' | 'angle' | 'volume' | 'mass' | 'speed' | 'time' | 'temperature';

/** A measure as the maker typed it: the value in our unit and the unit that was typed. */
export interface Measure {
  /** mm, degrees, ml, g, mm/min, hours or °C, by the quantity. */
  readonly value: number;
  /** The unit as typed, in its plain form: `mm`, `in`, `deg`, … */
  readonly unit: string;
}

/** A typed measure that could not be read; `message` says why, and what to type instead. */
export class MeasureError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'MeasureError';
  }
}

interface UnitRow {
  readonly plain: string;
  readonly factor: number;
  readonly offset?: number;
}

const ROW = (plain: string, factor: number, offset?: number): UnitRow =>
  offset === undefined ? { plain, factor } : { plain, factor, offset };

const INCH = ROW('in', MM_PER_INCH);
const HOUR = ROW('h', 1);
const MINUTE = ROW('min', 1 / 60);

const UNITS: Readonly<Record<Quantity, ReadonlyMap<string, UnitRow>>> = {
  length: new Map([
    ['mm', ROW('mm', 1)],
    ['cm', ROW('cm', 10)],
    ['m', ROW('m', 1000)],
    ['um', ROW('um', 0.001)],
    ['µm', ROW('um', 0.001)],
    ['in', INCH],
    ['inch', INCH],
    ['inches', INCH],
    ['"', INCH],
    ['″', INCH],
    ['”', INCH],
    ['thou', ROW('thou', MM_PER_INCH / 1000)],
    ['mil', ROW('thou', MM_PER_INCH / 1000)],
    ['ft', ROW('ft', MM_PER_INCH * 12)],
    ['pt', ROW('pt', MM_PER_INCH / PT_PER_INCH)],
    ['pc', ROW('pc', (MM_PER_INCH / PT_PER_INCH) * PT_PER_PICA)],
  ]),
  angle: new Map([
    ['deg', ROW('deg', 1)],
    ['°', ROW('deg', 1)],
    ['rad', ROW('rad', 180 / Math.PI)],
  ]),
  volume: new Map([
    ['ml', ROW('ml', 1)],
    ['l', ROW('l', 1000)],
    ['cm3', ROW('ml', 1)],
    ['mm3', ROW('mm3', 0.001)],
    ['fl oz', ROW('fl oz', ML_PER_US_FL_OZ)],
    ['floz', ROW('fl oz', ML_PER_US_FL_OZ)],
  ]),
  mass: new Map([
    ['g', ROW('g', 1)],
    ['mg', ROW('mg', 0.001)],
    ['kg', ROW('kg', 1000)],
    ['oz', ROW('oz', G_PER_OZ)],
    ['lb', ROW('lb', G_PER_LB)],
  ]),
  speed: new Map([
    ['mm/min', ROW('mm/min', 1)],
    ['mm/s', ROW('mm/s', 60)],
    ['in/min', ROW('in/min', MM_PER_INCH)],
    ['ipm', ROW('in/min', MM_PER_INCH)],
  ]),
  time: new Map([
    ['h', HOUR],
    ['hr', HOUR],
    ['hour', HOUR],
    ['hours', HOUR],
    ['min', MINUTE],
    ['s', ROW('s', 1 / 3600)],
    ['d', ROW('d', 24)],
    ['day', ROW('d', 24)],
    ['days', ROW('d', 24)],
  ]),
  temperature: new Map([
    ['c', ROW('C', 1)],
    ['°c', ROW('C', 1)],
    ['f', ROW('F', 5 / 9, -32)],
    ['°f', ROW('F', 5 / 9, -32)],
  ]),
};

const EXAMPLES: Readonly<Record<Quantity, readonly [string, string]>> = {
  length: ['mm', 'in'],
  angle: ['deg', 'rad'],
  volume: ['ml', 'fl oz'],
  mass: ['g', 'oz'],
  speed: ['mm/min', 'in/min'],
  time: ['h', 'min'],
  temperature: ['C', 'F'],
};

// A number as makers type it: 3, 3.2, 3,2, .125, 1/8, 1-1/2, 1 1/2 (a sign only in front).
const NUMBER = /^([+-]?)(?:(\d+)[ -](\d+)\/(\d+)|(\d+)\/(\d+)|(\d+[.,]?\d*|[.,]\d+)(e[+-]?\d+)?)\s*(.*)$/iu;
// 1,250 is one and a quarter to some and twelve hundred and fifty to others; 0,125 is plain.
const THOUSANDS = /^[1-9]\d{0,2},\d{3}$/u;

/**
 * Reads a measure as makers type it: `1/8in`, `3/16"`, `.125in`, `1-1/2in`, `3.2mm`, `3,2mm`, `80in/min`,
 * `2 fl oz`, `12.5 g`. A comma is a decimal point, unless it may as well part thousands: `1,250mm` is refused.
 *
 * @example
 * parseMeasure('1/8in', 'length').value; // 3.175
 * parseMeasure('70F', 'temperature').value.toFixed(1); // 21.1
 *
 * @param text the typed text
 * @param quantity what it must be; a bare number is refused, except `0` for lengths and angles, which is the
 *   same in every unit
 * @returns the value in mm, degrees, ml, g, mm/min, hours or °C, and the unit as typed
 * @throws {MeasureError} when the text is not a number with a unit of this quantity
 */
export function parseMeasure(text: string, quantity: Quantity): Measure {
  const [first, second] = EXAMPLES[quantity];
  const match = NUMBER.exec(text.trim());
  if (match === null) {
    throw new MeasureError(
      `"${text}" is not ${named(quantity)}. Type a number with its unit, such as ${example(quantity)}.`,
    );
  }
  const decimal = match[7] ?? '';
  if (THOUSANDS.test(decimal)) {
    const [point, none] = ['.', ''].map((sign) => text.trim().replace(',', sign));
    throw new MeasureError(`"${text}" can be read in two ways. Did you mean ${point} or ${none}?`);
  }
  const number = numberFrom(match);
  if (!Number.isFinite(number)) {
    throw notFinite(text, quantity);
  }
  const unit = (match[9] ?? '').trim().toLowerCase().replace(/\s+/gu, ' ');
  if (unit === '') {
    if (number === 0 && (quantity === 'length' || quantity === 'angle')) {
      return { value: 0, unit: first };
    }
    throw new MeasureError(
      `"${text}" has no unit. Did you mean ${text.trim()}${spaced(first)} or ${text.trim()}${spaced(second)}?`,
    );
  }
  const row = UNITS[quantity].get(unit);
  if (row === undefined) {
    const known = [...new Set([...UNITS[quantity].values()].map((u) => u.plain))].join(', ');
    throw new MeasureError(
      `"${text}" is not ${named(quantity)}: unit "${unit}" is unknown here. Units: ${known}.`,
    );
  }
  const value = (number + (row.offset ?? 0)) * row.factor;
  if (!Number.isFinite(value)) {
    throw notFinite(text, quantity);
  }
  return { value, unit: row.plain };
}

function notFinite(text: string, quantity: Quantity): MeasureError {
  return new MeasureError(
    `"${text}" is not ${named(quantity)}: the number is not finite. Check the fraction.`,
  );
}

function spaced(unit: string): string {
  return unit.includes(' ') ? ` ${unit}` : unit;
}

function named(quantity: Quantity): string {
  return quantity === 'angle' ? 'an angle' : `a ${quantity}`;
}

function numberFrom(match: RegExpExecArray): number {
  const [, sign, whole, over, under, num, den, decimal, exponent] = match;
  const size =
    whole !== undefined
      ? Number(whole) + Number(over) / Number(under)
      : num !== undefined
        ? Number(num) / Number(den)
        : Number(`${decimal?.replace(',', '.')}${exponent ?? ''}`);
  return sign === '-' ? -size : size;
}

function example(quantity: Quantity): string {
  const numbers: Readonly<Record<Quantity, string>> = {
    length: '3.2mm or 1/8in',
    angle: '60deg',
    volume: '6.4ml or 2 fl oz',
    mass: '12.5g or 1/2oz',
    speed: '2000mm/min or 80in/min',
    time: '24h or 90min',
    temperature: '21C or 70F',
  };
  return numbers[quantity];
}

/**
 * Reads a length as makers type it.
 *
 * @returns millimetres
 * @throws {MeasureError} when it is not a length with a unit
 */
export function parseLengthMm(text: string): number {
  return parseMeasure(text, 'length').value;
}

/** The unit in which a person reads lengths. */
export type LengthUnit = 'mm' | 'in';

/**
 * A length as text in the given unit, to the digits that a shop can use (0.01 mm, 0.001 in).
 *
 * @example
 * formatLength(3.175, 'in'); // 0.125 in
 */
export function formatLength(mm: number, unit: LengthUnit): string {
  return unit === 'mm' ? `${trim(mm, 2)} mm` : `${trim(mm / MM_PER_INCH, 3)} in`;
}

/** An area as text in the given unit (0.1 mm², 0.001 in²). */
export function formatArea(mm2: number, unit: LengthUnit): string {
  return unit === 'mm' ? `${trim(mm2, 1)} mm²` : `${trim(mm2 / MM_PER_INCH ** 2, 3)} in²`;
}

/** A volume as text: millilitres, or US fluid ounces for those who read inches. */
export function formatVolume(mm3: number, unit: LengthUnit): string {
  return unit === 'mm' ? `${trim(mm3 / 1000, 2)} ml` : `${trim(mm3 / 1000 / ML_PER_US_FL_OZ, 3)} fl oz`;
}

function trim(value: number, digits: number): string {
  // 1.575 is a hair less in binary and would give 1.57: a half goes up, as by hand
  const text = (value * (1 + Number.EPSILON * 8)).toFixed(digits);
  return text === `-${(0).toFixed(digits)}` ? (0).toFixed(digits) : text;
}
