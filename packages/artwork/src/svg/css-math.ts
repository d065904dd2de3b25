import { calc, mathFunctionNames } from '@csstools/css-calc';

const NUMBER = '[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:e[+-]?\\d+)?';
const RELATIVE = new RegExp(`(?<![\\w.])(${NUMBER})(rem|em|ex|ch|vmin|vmax|vw|vh|%)(?![\\w%])`, 'giu');
const RESULT = new RegExp(`^(${NUMBER})(px)?$`, 'iu');

/** Whether a text is a call of a math function, such as `calc(1mm + 2px)` or `min(50%, 3em)`. */
export function isMath(text: string): boolean {
  const name = /^\s*([a-z0-9-]+)\(/iu.exec(text)?.[1];
  return name !== undefined && mathFunctionNames.has(name.toLowerCase());
}

/** Whether it holds a unit that is measured against something else than a ruler. */
export function hasRelativeUnit(text: string): boolean {
  return text.search(RELATIVE) >= 0;
}

/**
 * The value of a math function (CSS Values 4 §10): a length in CSS pixels, or a number with `isLength` false.
 *
 * @param perUnit what one of a relative unit is in CSS pixels, percentages too
 * @returns `undefined` for what cannot be computed: mixed kinds, unknown units, results that are not finite
 */
export function computeMath(
  text: string,
  perUnit: (unit: string) => number,
): { readonly value: number; readonly isLength: boolean } | undefined {
  const inPixels = text.replace(
    RELATIVE,
    (_, number: string, unit: string) => `${Number(number) * perUnit(unit.toLowerCase())}px`,
  );
  const match = RESULT.exec(computed(inPixels));
  const value = Number(match?.[1] ?? Number.NaN);
  return Number.isFinite(value) ? { value, isLength: match?.[2] !== undefined } : undefined;
}

/** All digits of a double. */
const PRECISION = 17;

function computed(text: string): string {
  try {
    return calc(text, { toCanonicalUnits: true, precision: PRECISION });
  } catch {
    // nested too deeply for the library
    return '';
  }
}
