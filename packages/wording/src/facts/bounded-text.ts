/** A number in mm, mm² or mm³ large enough to tell the factor from it to the digits that are printed. */
const MANY = 1e6;
/** Rounding of a bound that is a whole number of last digits, by the digits of the factor. */
const WHOLE_TOL = 1e-6;

/**
 * A figure with its bound, `12.3 ± 0.4 mm²`: the bound rounded up to two digits, the figure to as many decimals. What is certain to the
 * digits that are printed anyway is printed without.
 *
 * @param format prints one number with its unit
 */
export function boundedText(value: number, bound: number, format: (value: number) => string): string {
  const [many = '', ...unit] = format(MANY).split(' ');
  const factor = Number(many) / MANY;
  const decimals = (many.split('.')[1] ?? '').length;
  const exact = bound * factor;
  if (exact < 10 ** -decimals / 2) {
    return format(value);
  }
  const kept = Math.max(0, Math.min(decimals, 1 - Math.floor(Math.log10(exact))));
  const shown = Math.ceil(exact * 10 ** kept - WHOLE_TOL) / 10 ** kept;
  return `${(value * factor).toFixed(kept)} ± ${shown.toFixed(kept)} ${unit.join(' ')}`;
}
