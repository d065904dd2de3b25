import { compose, IDENTITY, radians, rotation, scaling, type Transform, translation } from '@pourproof/plane';
import { parseLength, userUnits } from './css-length.ts';

const ANGLES: ReadonlyMap<string, number> = new Map([
  ['', 1],
  ['deg', 1],
  ['grad', 0.9],
  ['rad', 180 / Math.PI],
  ['turn', 360],
]);

/** A number with or without a unit; signs and points may separate numbers. */
const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?(?:[a-z]+|%)?/gi;

/** The box that percentages of a CSS transform refer to. */
export interface ReferenceBox {
  readonly width: number;
  readonly height: number;
}

/**
 * The affine map of a `transform` attribute or CSS property (CSS Transforms 1 §6 to §8), in user units.
 * `undefined` when any part of the list is not understood: then the whole list counts as absent, as the
 * specification has it.
 */
export function parseTransformList(text: string, box: ReferenceBox): Transform | undefined {
  const source = text.trim();
  if (source === '' || source === 'none') {
    return IDENTITY;
  }
  let result = IDENTITY;
  const item = /\s*,?\s*([a-zA-Z]+)\s*\(([^()]*)\)/y;
  let at = 0;
  while (at < source.length) {
    item.lastIndex = at;
    const match = item.exec(source);
    if (match === null) {
      return undefined;
    }
    const next = oneTransform(match[1] as string, match[2] as string, box);
    if (next === undefined || !next.every(Number.isFinite)) {
      return undefined;
    }
    result = compose(result, next);
    at = item.lastIndex;
  }
  return result;
}

function oneTransform(name: string, text: string, box: ReferenceBox): Transform | undefined {
  const args = text.match(NUMBER) ?? [];
  if (/[^\s,]/.test(text.replace(NUMBER, ' ')) || /,\s*,/.test(text)) {
    return undefined;
  }
  const numbers = args.map((a) => numberOf(a));
  const [p = 0, q, r] = numbers;
  const all = (...counts: number[]): boolean =>
    counts.includes(args.length) && numbers.every((n) => n !== undefined);
  switch (name.toLowerCase()) {
    case 'matrix':
      return all(6) ? (numbers as unknown as Transform) : undefined;
    case 'translate':
      return translate(args[0], args[1] ?? '0', args.length === 1 || args.length === 2, box);
    case 'translatex':
      return translate(args[0], '0', args.length === 1, box);
    case 'translatey':
      return translate('0', args[0], args.length === 1, box);
    case 'scale':
      return all(1, 2) ? scaling(p, q ?? p) : undefined;
    case 'scalex':
      return all(1) ? scaling(p, 1) : undefined;
    case 'scaley':
      return all(1) ? scaling(1, p) : undefined;
    case 'rotate':
      return rotate(args, numbers[1], r);
    case 'skewx':
      return skew(args, 'x');
    case 'skewy':
      return skew(args, 'y');
    case 'skew':
      return skew(args, 'both');
    default:
      return undefined;
  }
}

function numberOf(text: string): number | undefined {
  const length = parseLength(text);
  if (length?.unit === '%') {
    return length.value / 100;
  }
  return length?.unit === '' ? length.value : undefined;
}

function angleOf(text: string | undefined): number | undefined {
  const match = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)([a-z]*)$/i.exec(text ?? '');
  const unit = ANGLES.get((match?.[2] ?? '?').toLowerCase());
  return match === null || unit === undefined ? undefined : radians(Number(match[1]) * unit);
}

function translate(
  x: string | undefined,
  y: string | undefined,
  countIsRight: boolean,
  box: ReferenceBox,
): Transform | undefined {
  if (
    !countIsRight ||
    x === undefined ||
    y === undefined ||
    parseLength(x) === undefined ||
    parseLength(y) === undefined
  ) {
    return undefined;
  }
  const context = { viewportWidth: box.width, viewportHeight: box.height, fontSize: 16, rootFontSize: 16 };
  return translation(userUnits(x, 'x', context), userUnits(y, 'y', context));
}

function rotate(
  args: readonly string[],
  cx: number | undefined,
  cy: number | undefined,
): Transform | undefined {
  const angle = angleOf(args[0]);
  if (angle === undefined || (args.length !== 1 && args.length !== 3)) {
    return undefined;
  }
  if (args.length === 1) {
    return rotation(angle);
  }
  return cx === undefined || cy === undefined
    ? undefined
    : compose(translation(cx, cy), compose(rotation(angle), translation(-cx, -cy)));
}

function skew(args: readonly string[], kind: 'x' | 'y' | 'both'): Transform | undefined {
  const a = angleOf(args[0]);
  const b = args.length === 1 ? 0 : angleOf(args[1]);
  if (a === undefined || b === undefined || args.length > (kind === 'both' ? 2 : 1)) {
    return undefined;
  }
  return kind === 'y' ? [1, Math.tan(a), 0, 1, 0, 0] : [1, Math.tan(b), Math.tan(a), 1, 0, 0];
}
