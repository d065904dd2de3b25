// the colour spaces of CSS and no others
import 'culori/css';
import { converter, formatHex, parse } from 'culori/fn';

const toRgb = converter('rgb');

/** A colour as `#rrggbb` and its opacity 0…1. */
export interface Colour {
  readonly hex: string;
  readonly alpha: number;
}

/** Colour words of the system (CSS Color 4 §6.2); they have no fixed value and are taken for black. */
const SYSTEM_COLOURS =
  /^(?:accentcolor|accentcolortext|activetext|buttonborder|buttonface|buttontext|canvas|canvastext|field|fieldtext|graytext|highlight|highlighttext|linktext|mark|marktext|selecteditem|selecteditemtext|visitedtext)$/i;

/** Whether a value is a CSS colour, `currentColor` included. */
export function isColour(value: string): boolean {
  return /^currentcolor$/i.test(value) || SYSTEM_COLOURS.test(value) || parseColour(value) !== undefined;
}

/** `#rgb` and `#rrggbb`, as most drawings write colours, a million times over: read without the library. */
const PLAIN_HEX = /^#(?:[\da-f]{3}|[\da-f]{6})$/i;

/**
 * A CSS colour (CSS Color 4) clipped to what `#rrggbb` holds; `undefined` for anything else, `currentColor`
 * included.
 */
export function parseColour(value: string): Colour | undefined {
  if (PLAIN_HEX.test(value)) {
    const hex = value.toLowerCase();
    return { hex: hex.length === 7 ? hex : hex.replace(/[\da-f]/g, '$&$&'), alpha: 1 };
  }
  return readColour(value);
}

function readColour(value: string): Colour | undefined {
  if (SYSTEM_COLOURS.test(value)) {
    return { hex: '#000000', alpha: 1 };
  }
  let rgb: ReturnType<typeof toRgb>;
  try {
    // rgb(1.5 …) and icc-color fallbacks are kept out by the parser itself
    rgb = toRgb(
      parse(
        value
          .replace(/\s+icc-color\(.*$/i, '')
          .trim()
          .toLowerCase(),
      ),
    );
  } catch {
    return undefined;
  }
  if (rgb === undefined || ![rgb.r, rgb.g, rgb.b].every(Number.isFinite)) {
    return undefined;
  }
  const alpha = rgb.alpha ?? 1;
  return { hex: formatHex(rgb), alpha: Number.isFinite(alpha) ? Math.max(0, Math.min(1, alpha)) : 1 };
}
