import type { LetteringFont } from './lettering-font.ts';

/** Cost of a font with the wrong slope: more than any difference of weights. */
const WRONG_SLOPE = 1e6;
/** Cost of a weight on the wrong side: decides between two that are equally far. */
const WRONG_SIDE = 0.5;

/** What a text asks of a font. */
export interface WantedFont {
  /** Family names in the order of preference; quotes and capitals do not matter. */
  readonly families: readonly string[];
  /** Weight from 1 to 1000; 400 is regular, 700 bold. */
  readonly weight?: number;
  readonly italic?: boolean;
}

/**
 * The font of those at hand that comes nearest to what a text asks for, and whether its family is one of
 * those asked for. Of the first family at hand, or of all fonts when none is, slope counts before weight, and
 * of weights the nearest, the bolder of two for bold text. `undefined` when there are no fonts.
 *
 * @see CSS Fonts 4 §5.2, of whose matching this is the part that bears on font files without widths
 */
export function findFont(
  fonts: readonly LetteringFont[],
  wanted: WantedFont,
): { readonly font: LetteringFont; readonly familyFound: boolean } | undefined {
  const family = wanted.families
    .map(familyKey)
    .find((key) => fonts.some((font) => familyKey(font.family) === key));
  const candidates = family === undefined ? fonts : fonts.filter((font) => familyKey(font.family) === family);
  const weight = wanted.weight ?? 400;
  let best: LetteringFont | undefined;
  let bestCost = Number.POSITIVE_INFINITY;
  for (const font of candidates) {
    const slope = font.italic === (wanted.italic ?? false) ? 0 : WRONG_SLOPE;
    const towards = weight > 500 ? font.weight >= weight : font.weight <= weight;
    const cost = slope + Math.abs(font.weight - weight) + (towards ? 0 : WRONG_SIDE);
    if (cost < bestCost) {
      best = font;
      bestCost = cost;
    }
  }
  return best && { font: best, familyFound: family !== undefined };
}

function familyKey(name: string): string {
  return name
    .replace(/^\s*["']|["']\s*$/g, '')
    .trim()
    .toLowerCase();
}
