import { JobError } from '../refusals/job-error.ts';

/**
 * What a number must lie between; ends belong to it unless `above` is used. Units are those of the settled
 * value.
 */
export interface Range {
  /** The number must be greater than this. */
  readonly above?: number;
  readonly min?: number;
  readonly max?: number;
  readonly isWhole?: true;
  /** Why a larger value is refused, or where to look for the slip; a sentence. */
  readonly why?: string;
  /** How a value is typed, such as `1/8in or 3mm`. */
  readonly example?: string;
}

/** Temperatures of a shop in which epoxy is poured, °C (from memory; data sheets ask for 15 to 30). */
export const EPOXY_TEMPERATURES: Range = {
  min: 5,
  max: 45,
  why: 'Epoxy is not poured in such a shop: check the unit.',
};

/** Digits of a value in a message. */
const SHOWN_DIGITS = 6;

/**
 * Refuses a number that lies outside of a range.
 *
 * @param unit for the message, such as `mm`; `''` for a plain number
 * @throws {JobError}
 */
export function refuseOutside(key: string, value: number, unit: string, range: Range): void {
  const { above = -Infinity, min = -Infinity, max = Infinity, isWhole, why = '', example = '' } = range;
  const isInside = value > above && value >= min && value <= max;
  if (!isInside || (isWhole === true && !Number.isInteger(value))) {
    throw new JobError('out-of-range', key, {
      shown: withUnit(Number(value.toPrecision(SHOWN_DIGITS)), unit),
      range: rangeWords(range, unit),
      why: value > max || example === '' ? why : '',
      example,
    });
  }
}

/** A range in words: `above 0`, `a whole number from 0 to 10`, `between 5 °C and 45 °C`. */
export function rangeWords({ above, min, max, isWhole }: Range, unit: string): string {
  const end = (value: number): string => (value === 0 ? '0' : withUnit(value, unit));
  if (isWhole === true && min !== undefined && max !== undefined) {
    return `a whole number from ${min} to ${max}`;
  }
  if (min !== undefined && max !== undefined) {
    return `between ${end(min)} and ${end(max)}`;
  }
  const least =
    above === undefined ? (min === undefined ? '' : `${end(min)} or more`) : `above ${end(above)}`;
  const most = max === undefined ? '' : `at most ${end(max)}`;
  return [least, most].filter((part) => part !== '').join(' and ');
}

function withUnit(value: number, unit: string): string {
  return unit === '' ? String(value) : unit === '°' ? `${value}°` : `${value} ${unit}`;
}
