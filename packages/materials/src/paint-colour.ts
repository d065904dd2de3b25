import { colorsNamed, convertRgbToXyz65, convertXyz65ToLab65, parseHex } from 'culori/fn';
import { ciede2000, type Lab } from './colour-difference.ts';

/**
 * Plain words for colours of a drawing, and the names of CSS that a maker would call by each (our choice): one anchor a word
 * would call a plain red of 80 % brown.
 */
const PLAIN_WORDS = {
  black: ['black'],
  white: ['white', 'ivory'],
  grey: ['grey', 'dimgrey', 'silver', 'slategrey'],
  red: ['red', 'crimson', 'firebrick', 'darkred'],
  orange: ['orange', 'darkorange', 'orangered'],
  yellow: ['yellow', 'gold', 'khaki'],
  green: ['green', 'lime', 'darkgreen', 'limegreen', 'seagreen', 'olivedrab'],
  blue: ['blue', 'navy', 'royalblue', 'steelblue', 'deepskyblue', 'lightskyblue'],
  purple: ['purple', 'indigo', 'darkviolet', 'mediumpurple'],
  pink: ['pink', 'hotpink', 'deeppink'],
  brown: ['brown', 'saddlebrown', 'sienna', 'chocolate', 'tan'],
  cyan: ['cyan', 'turquoise', 'darkcyan'],
} as const satisfies Record<string, readonly (keyof typeof colorsNamed)[]>;

const HEX_DIGITS = 6;

/**
 * A colour of a drawing as `#rrggbb`, from `#rgb`, `#rrggbb` or a name of CSS; `null` for anything else.
 *
 * Names are those of CSS Color 4 §6.1.
 */
export function paintHex(word: string): string | null {
  const text = word.trim().toLowerCase();
  if (/^#(?:[\da-f]{3}|[\da-f]{6})$/u.test(text)) {
    return text.length > HEX_DIGITS ? text : text.replaceAll(/[\da-f]/gu, '$&$&');
  }
  const value = Object.hasOwn(colorsNamed, text) ? colorsNamed[text as keyof typeof colorsNamed] : undefined;
  return value === undefined ? null : `#${value.toString(16).padStart(HEX_DIGITS, '0')}`;
}

/**
 * CIE L*a*b* under D65 of a colour of a drawing, taken as sRGB.
 *
 * @param hex `#rrggbb`
 * @throws {RangeError} when it is none
 */
export function paintLab(hex: string): Lab {
  const rgb = parseHex(hex);
  if (rgb === undefined) {
    throw new RangeError(`"${hex}" is no colour; write it as #rrggbb`);
  }
  const { l, a, b } = convertXyz65ToLab65(convertRgbToXyz65(rgb));
  return [l, a, b];
}

/** The plain word that a colour of a drawing comes nearest to: `#e30613` is red. */
export function plainColourWord(hex: string): string {
  const lab = paintLab(hex);
  const [nearest] = Object.entries(PLAIN_WORDS)
    .flatMap(([word, names]) =>
      names.map((name) => ({ word, difference: ciede2000(lab, paintLab(paintHex(name) ?? '')) })),
    )
    .toSorted((a, b) => a.difference - b.difference);
  return nearest?.word ?? hex;
}
