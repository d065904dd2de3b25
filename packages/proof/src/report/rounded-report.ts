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
  if (Array.isArray(data)) {
    return data.map(rounded);
  }
  return typeof data === 'object' && data !== null
    ? Object.fromEntries(Object.entries(data).map(([key, value]) => [key, rounded(value)]))
    : data;
}

/** A number with {@link DIGITS} significant digits and at most {@link DECIMALS} decimals; never −0. */
export function roundedNumber(value: number): number {
  if (!Number.isFinite(value) || Number.isInteger(value)) {
    return value + 0;
  }
  const short = Number((value * (1 + OFF_THE_HALF)).toPrecision(DIGITS));
  return Number(short.toFixed(DECIMALS)) + 0;
}
