import { MeasureError, parseMeasure, type Quantity } from '@pourproof/plane';
import * as z from 'zod/mini';
import { JobError } from '../refusals/job-error.ts';

/** A length as typed, such as `3.2mm` or `1/8in`, or as a structure. */
export type LengthInput = string | { readonly mm: number } | { readonly in: number };
/** An angle as typed, such as `45deg`, or as a structure. */
export type AngleInput = string | { readonly deg: number } | { readonly rad: number };
/** A time as typed, such as `24h`, or as a structure. */
export type TimeInput =
  | string
  | { readonly h: number }
  | { readonly min: number }
  | { readonly s: number }
  | { readonly d: number };
/** A speed as typed, such as `40in/min`, or as a structure. */
export type SpeedInput =
  | string
  | { readonly mmPerMin: number }
  | { readonly mmPerS: number }
  | { readonly inPerMin: number };
/** A temperature as typed, such as `21C`, or as a structure. */
export type TemperatureInput = string | { readonly celsius: number } | { readonly fahrenheit: number };

/** The inputs of the quantities that a job holds. */
export interface MeasureInputs {
  readonly length: LengthInput;
  readonly angle: AngleInput;
  readonly time: TimeInput;
  readonly speed: SpeedInput;
  readonly temperature: TemperatureInput;
}

/** Quantities that a job holds. */
export type JobQuantity = keyof MeasureInputs & Quantity;

/** Keys of the structured forms, with the unit that each stands for when it is typed. */
const UNIT_KEYS: Readonly<Record<JobQuantity, Readonly<Record<string, string>>>> = {
  length: { mm: 'mm', in: 'in' },
  angle: { deg: 'deg', rad: 'rad' },
  time: { h: 'h', min: 'min', s: 's', d: 'd' },
  speed: { mmPerMin: 'mm/min', mmPerS: 'mm/s', inPerMin: 'in/min' },
  temperature: { celsius: 'C', fahrenheit: 'F' },
};

/** Digits of an example: enough for any, and without the rounding of its unit. */
const EXAMPLE_DIGITS = 12;

const SCHEMAS: Readonly<Record<JobQuantity, z.ZodMiniType>> = {
  length: union('length'),
  angle: union('angle'),
  time: union('time'),
  speed: union('speed'),
  temperature: union('temperature'),
};

/** The schema of a quantity: a text with its unit, or an object of one unit and its number. */
export function measureSchema(quantity: JobQuantity): z.ZodMiniType {
  return SCHEMAS[quantity];
}

function union(quantity: JobQuantity): z.ZodMiniType {
  const objects = Object.keys(UNIT_KEYS[quantity]).map((key) => z.strictObject({ [key]: z.number() }));
  // the id makes one definition of it that a JSON schema refers to
  return z.union([z.string(), ...objects]).check(z.meta({ id: quantity }));
}

/** Both ways of giving a quantity, for messages and the schema: `"1/8in" or {"in": 0.125}`. */
export function measureForms(quantity: JobQuantity, typed: string): string {
  const { value, unit } = parseMeasure(typed, quantity);
  const key = Object.keys(UNIT_KEYS[quantity]).find((each) => UNIT_KEYS[quantity][each] === unit) ?? unit;
  // no unit of the examples has an offset but the Fahrenheit, which no example uses
  const number = value / parseMeasure(`1${unit}`, quantity).value;
  return `"${typed}" or {"${key}": ${Number(number.toPrecision(EXAMPLE_DIGITS))}}`;
}

/**
 * The value of a measure in mm, degrees, hours, mm/min or °C.
 *
 * @param key the setting, for the message
 * @throws {JobError} when a text is not a measure of this quantity
 */
export function readMeasure<Q extends JobQuantity>(
  key: string,
  input: MeasureInputs[Q],
  quantity: Q,
): number {
  try {
    return parseMeasure(typedMeasure(input, quantity), quantity).value;
  } catch (error) {
    throw error instanceof MeasureError
      ? new JobError('not-a-measure', key, { quantity, reason: error.message })
      : error;
  }
}

/**
 * A measure as it is typed: a structure becomes the text that it stands for, so that one parser reads both.
 */
export function typedMeasure(input: string | object, quantity: JobQuantity): string {
  if (typeof input === 'string') {
    return input;
  }
  const [[key, number] = ['', Number.NaN]] = Object.entries(input);
  return `${number}${UNIT_KEYS[quantity][key]}`;
}

/** A value as it was given, for messages: a text as it stands, a structure as JSON. */
export function shownInput(input: unknown): string {
  return typeof input === 'string' ? input : JSON.stringify(input);
}
