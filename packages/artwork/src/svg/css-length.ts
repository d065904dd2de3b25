import { CSS_PX_PER_INCH, MM_PER_INCH, PT_PER_INCH, PT_PER_PICA } from '@pourproof/plane';

/** A CSS length as written: a number and its unit, `''` for user units. */
export interface CssLength {
  readonly value: number;
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

/** Reads one length, number or percentage; `undefined` for anything else. */
export function parseLength(text: string): CssLength | undefined {
  const match = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)([a-z]*|%)$/i.exec(text.trim());
  if (match === null) {
    return undefined;
  }
  const value = Number(match[1]);
  const unit = (match[2] as string).toLowerCase();
  return Number.isFinite(value) && (PX.has(unit) || RELATIVE.includes(unit)) ? { value, unit } : undefined;
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
