import { pollStep } from '@pourproof/plane';

/** Significant digits of every number in a report: a ten-millionth of a metre in a board of a metre is the last of them. */
const DIGITS = 10;
/** Decimals at most, so that what is left of a difference of equals is 0 and not 10⁻¹⁵. */
const DECIMALS = 9;
/**
 * Share by which a number is enlarged first. Round inputs often end in a 5 just behind the last digit, and two
 * JavaScript engines whose sines differ by 10⁻¹⁶ would take it to different sides.
 */
const OFF_THE_HALF = 2 ** -42;

/** A copy of data in which every number is rounded alike, so that reports of two JavaScript engines agree byte for byte. */
export function roundedReport<T>(data: T): T {
  return rounded(data) as T;
}

function rounded(data: unknown): unknown {
  if (typeof data === 'number') {
    return roundedNumber(data);
  }
  pollStep();
  if (Array.isArray(data)) {
    // most of a report are points, a few numbers each
    const copy = new Array<unknown>(data.length);
    for (let k = 0; k < data.length; k++) {
      copy[k] = rounded(data[k]);
    }
    return copy;
  }
  if (typeof data !== 'object' || data === null) {
    return data;
  }
  const fields: Record<string, unknown> = {};
  for (const key of Object.keys(data)) {
    fields[key] = rounded((data as Record<string, unknown>)[key]);
  }
  return fields;
}

/** A number with {@link DIGITS} significant digits and at most {@link DECIMALS} decimals; never −0. */
export function roundedNumber(value: number): number {
  if (!Number.isFinite(value) || Number.isInteger(value)) {
    return value + 0;
  }
  // most numbers are places, which are rounded already
  const units = Math.round(value * PLACE_SCALE);
  if (units / PLACE_SCALE === value && Math.abs(units) < MOST_PLACE_UNITS) {
    return value;
  }
  const off = value * (1 + OFF_THE_HALF);
  const decimals = DIGITS - 1 - Math.floor(Math.log10(Math.abs(off)));
  const short =
    decimals < 0 || decimals > EXACT_POWERS
      ? Number(off.toPrecision(DIGITS))
      : (roundedTo(off, decimals, 10 ** (DIGITS - 1)) ?? Number(off.toPrecision(DIGITS)));
  // from 1 on there are no more decimals than these
  return (
    (decimals <= DECIMALS ? short : (roundedTo(short, DECIMALS, 0) ?? Number(short.toFixed(DECIMALS)))) + 0
  );
}

/** Units of the last digit of a place in a mm, and so few of them that the number has fewer digits than {@link DIGITS}. */
const PLACE_SCALE = 1e4;
const MOST_PLACE_UNITS = 1e9;

/** Powers of ten up to this one are exact in a double. */
const EXACT_POWERS = 22;
/** Nearer to the half between two numbers than this, in units of the last digit, the text of a number has to decide. */
const NEAR_HALF = 1e-3;

/**
 * A number with so many decimals, the same as by way of its text, which takes many times as long: the quotient of two exact numbers is the double
 * nearest to the decimal. `null` where only the text can tell.
 *
 * @param least of the digits without the point: with fewer there was room for more of them
 */
function roundedTo(value: number, decimals: number, least: number): number | null {
  const scale = 10 ** decimals;
  const scaled = value * scale;
  const digits = Math.round(scaled);
  const size = Math.abs(digits);
  const isClear = Math.abs(Math.abs(scaled - digits) - 0.5) > NEAR_HALF;
  return isClear && size >= least && size < 10 ** DIGITS ? digits / scale : null;
}
