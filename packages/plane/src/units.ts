/** Millimetres in one inch, exactly (international inch of 1959). */
export const MM_PER_INCH = 25.4;
/** CSS reference pixels in one inch (CSS Values and Units 3, §5.2). */
export const CSS_PX_PER_INCH = 96;
/** Points in one inch (CSS Values and Units 3, §5.2). */
export const PT_PER_INCH = 72;
/** Points in one pica (CSS Values and Units 3, §5.2). */
export const PT_PER_PICA = 12;
/**
 * Millilitres in one US fluid ounce, exactly (NIST Handbook 44, appendix C; from memory).
 * @public
 */
export const ML_PER_US_FL_OZ = 29.5735295625;
/**
 * Grams in one avoirdupois ounce, exactly (NIST Handbook 44, appendix C; from memory).
 * @public
 */
export const G_PER_OZ = 28.349523125;
/**
 * Grams in one avoirdupois pound, exactly (NIST Handbook 44, appendix C; from memory).
 * @public
 */
export const G_PER_LB = 453.59237;

/** Radians from degrees. */
export function radians(deg: number): number {
  return (deg * Math.PI) / 180;
}

/** Degrees from radians. */
export function degrees(rad: number): number {
  return (rad * 180) / Math.PI;
}

/** Millimetres from inches. */
export function mmFromInches(inches: number): number {
  return inches * MM_PER_INCH;
}

/** Inches from millimetres. */
export function inchesFromMm(mm: number): number {
  return mm / MM_PER_INCH;
}
