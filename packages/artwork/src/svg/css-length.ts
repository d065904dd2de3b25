import { CSS_PX_PER_INCH, MM_PER_INCH, PT_PER_INCH, PT_PER_PICA } from '@pourproof/plane';
import { computeMath, hasRelativeUnit, isMath } from './css-math.ts';

/** A CSS length as written: a number and its unit, `''` for user units. */
export interface CssLength {
  readonly value: number;
  /**
   * `math` for a math function with units that are measured against something: its value is known where it
   * is used, and stands as 0 here.
   */
  readonly unit: string;
}

/** CSS pixels in each absolute unit (CSS Values and Units 3, §5.2). */
const PX: ReadonlyMap<string, number> = new Map([
  ['', 1],
  ['px', 1],
  ['in', CSS_PX_PER_INCH],
  ['cm', (10 * CSS_PX_PER_INCH) / MM_PER_INCH],
  ['mm', CSS_PX_PER_INCH / MM_PER_INCH],
  ['q', CSS_PX_PER_INCH / MM_PER_INCH / 4],
  ['pt', CSS_PX_PER_INCH / PT_PER_INCH],
  ['pc', (PT_PER_PICA * CSS_PX_PER_INCH) / PT_PER_INCH],
]);

const RELATIVE = ['em', 'rem', 'ex', 'ch', '%', 'vw', 'vh', 'vmin', 'vmax'];

/** What lengths are measured against, in user units (CSS pixels). */
export interface LengthContext {
  readonly viewportWidth: number;
  readonly viewportHeight: number;
  readonly fontSize: number;
  readonly rootFontSize: number;
}

/** Reads one length, number or percentage, or a math function of them; `undefined` for anything else. */
export function parseLength(text: string): CssLength | undefined {
  if (isMath(text)) {
    return parseMath(text);
  }
  const match = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)([a-z]*|%)$/i.exec(text.trim());
  if (match === null) {
    return undefined;
  }
  const value = Number(match[1]);
  const unit = (match[2] as string).toLowerCase();
  const perUnit = PX.get(unit) ?? (RELATIVE.includes(unit) ? 1 : Number.NaN);
  return Number.isFinite(value * perUnit) ? { value, unit } : undefined;
}

/** A function of rulers' units alone is a length like any other; without `px` and bare numbers it is physical. */
function parseMath(text: string): CssLength | undefined {
  const found = computeMath(text, () => 1);
  if (found === undefined || hasRelativeUnit(text)) {
    return found === undefined ? undefined : { value: 0, unit: 'math' };
  }
  if (!found.isLength) {
    return { value: found.value, unit: '' };
  }
  const mm = PX.get('mm') as number;
  return /\dpx/iu.test(text) ? { value: found.value, unit: 'px' } : { value: found.value / mm, unit: 'mm' };
}

/** The parts of a list of lengths between white space and commas, or what else separates; brackets hold theirs together. */
export function lengthList(text: string, separator: RegExp = /[\s,]/u): readonly string[] {
  const parts: string[] = [];
  let depth = 0;
  let part = '';
  for (const sign of text) {
    depth += sign === '(' ? 1 : sign === ')' ? -1 : 0;
    if (depth <= 0 && separator.test(sign)) {
      parts.push(part);
      part = '';
    } else {
      part += sign;
    }
  }
  return [...parts, part].filter((each) => each !== '');
}

/** A plain number or a percentage as a share, or a math function of numbers; `undefined` for anything else. */
export function parseAlpha(text: string): number | undefined {
  if (isMath(text)) {
    const found = computeMath(text.replace(/%/gu, ' * 0.01'), () => Number.NaN);
    return found === undefined || found.isLength ? undefined : found.value;
  }
  const [, number, percent] = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(%?)$/iu.exec(text.trim()) ?? [];
  const value = Number(number ?? Number.NaN) / (percent === '%' ? 100 : 1);
  return Number.isFinite(value) ? value : undefined;
}

/**
 * A length in user units. Percentages are of the viewport's width (`x`), height (`y`), or its diagonal
 * divided by √2 (`other`), as SVG 2 §8.9 has it. `ex` and `ch` count as half an em. Unreadable text gives
 * `otherwise`.
 */
export function userUnits(
  text: string | undefined,
  axis: 'x' | 'y' | 'other',
  context: LengthContext,
  otherwise = 0,
): number {
  const length = text === undefined ? undefined : parseLength(text);
  if (length === undefined) {
    return otherwise;
  }
  const { value, unit } = length;
  if (unit === 'math') {
    const perUnit = (each: string): number => relativeUnit(each, axis, context);
    return computeMath(text as string, perUnit)?.value ?? otherwise;
  }
  const px = PX.get(unit);
  return px === undefined ? value * relativeUnit(unit, axis, context) : value * px;
}

function relativeUnit(unit: string, axis: 'x' | 'y' | 'other', c: LengthContext): number {
  const { viewportWidth: w, viewportHeight: h } = c;
  switch (unit) {
    case 'em':
      return c.fontSize;
    case 'rem':
      return c.rootFontSize;
    case 'ex':
    case 'ch':
      return c.fontSize / 2;
    case 'vw':
      return w / 100;
    case 'vh':
      return h / 100;
    case 'vmin':
      return Math.min(w, h) / 100;
    case 'vmax':
      return Math.max(w, h) / 100;
    default:
      return (axis === 'x' ? w : axis === 'y' ? h : Math.hypot(w, h) / Math.SQRT2) / 100;
  }
}
