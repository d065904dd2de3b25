import { isColour } from './css-colour.ts';
import { lengthList, parseAlpha, parseLength } from './css-length.ts';

/** What a property does without a declaration, and which declared values are taken at all. */
interface PropertyRule {
  readonly initial: string;
  readonly inherited: boolean;
  /** Whether it may be given as an attribute (SVG 2 §6.6); `geometry`: on some elements only. */
  readonly attribute: boolean | readonly string[];
  readonly valid: (value: string) => boolean;
}

const any = (): boolean => true;
const oneOf =
  (...words: readonly string[]) =>
  (value: string): boolean =>
    words.includes(value.toLowerCase());
const length = (value: string): boolean => parseLength(value) !== undefined;
const lengthOrAuto = (value: string): boolean => value === 'auto' || parseLength(value) !== undefined;
const size = (value: string): boolean => value === 'auto' || (parseLength(value)?.value ?? -1) >= 0;
const positive = (value: string): boolean => (parseLength(value)?.value ?? -1) >= 0;
const alpha = (value: string): boolean => parseAlpha(value) !== undefined;
const fontSize = (value: string): boolean =>
  /^(?:(?:xx?-)?(?:small|large)|xxx-large|medium|smaller|larger)$/i.test(value) || positive(value);
const spacing = (value: string): boolean => /^normal$/i.test(value) || length(value);
const origin = (value: string): boolean =>
  lengthList(value, /\s/u).every((part) => /^(?:left|right|top|bottom|center)$/i.test(part) || length(part));
const paint = (value: string): boolean =>
  /^(?:none|context-fill|context-stroke)$/i.test(value) || /^url\(/i.test(value) || isColour(value);
const reference = (value: string): boolean => value === 'none' || /^url\(/i.test(value);
const dashes = (value: string): boolean => value === 'none' || lengthList(value).every(positive);

function rule(
  initial: string,
  inherited: boolean,
  valid: (value: string) => boolean,
  attribute: boolean | readonly string[] = true,
): PropertyRule {
  return { initial, inherited, attribute, valid };
}

/** Every property that bears on what is painted and where (SVG 2 property index). */
export const PROPERTIES: ReadonlyMap<string, PropertyRule> = new Map([
  ['color', rule('black', true, isColour)],
  ['fill', rule('black', true, paint)],
  ['fill-opacity', rule('1', true, alpha)],
  ['fill-rule', rule('nonzero', true, oneOf('nonzero', 'evenodd'))],
  ['clip-rule', rule('nonzero', true, oneOf('nonzero', 'evenodd'))],
  ['stroke', rule('none', true, paint)],
  ['stroke-opacity', rule('1', true, alpha)],
  ['stroke-width', rule('1', true, positive)],
  ['stroke-linecap', rule('butt', true, oneOf('butt', 'round', 'square'))],
  ['stroke-linejoin', rule('miter', true, oneOf('miter', 'round', 'bevel', 'miter-clip', 'arcs'))],
  ['stroke-miterlimit', rule('4', true, (v) => (parseAlpha(v) ?? 0) >= 1)],
  ['stroke-dasharray', rule('none', true, dashes)],
  ['stroke-dashoffset', rule('0', true, length)],
  ['paint-order', rule('normal', true, any)],
  ['visibility', rule('visible', true, oneOf('visible', 'hidden', 'collapse'))],
  ['marker-start', rule('none', true, reference)],
  ['marker-mid', rule('none', true, reference)],
  ['marker-end', rule('none', true, reference)],
  ['font-size', rule('16px', true, fontSize)],
  ['font-family', rule('', true, any)],
  ['font-weight', rule('400', true, any)],
  ['font-style', rule('normal', true, any)],
  ['text-anchor', rule('start', true, oneOf('start', 'middle', 'end'))],
  ['letter-spacing', rule('normal', true, spacing)],
  ['word-spacing', rule('normal', true, spacing)],
  ['direction', rule('ltr', true, oneOf('ltr', 'rtl'))],
  ['writing-mode', rule('horizontal-tb', true, any)],
  ['dominant-baseline', rule('auto', true, any)],
  ['white-space', rule('normal', true, any)],
  ['display', rule('inline', false, any)],
  ['opacity', rule('1', false, alpha)],
  ['clip-path', rule('none', false, any)],
  ['mask', rule('none', false, any)],
  ['mask-type', rule('luminance', false, oneOf('luminance', 'alpha'))],
  ['filter', rule('none', false, any)],
  ['overflow', rule('visible', false, oneOf('visible', 'hidden', 'scroll', 'auto', 'clip'))],
  ['transform', rule('none', false, any)],
  ['transform-origin', rule('', false, origin)],
  ['transform-box', rule('view-box', false, any, false)],
  ['vector-effect', rule('none', false, any)],
  ['stop-color', rule('black', false, isColour)],
  ['stop-opacity', rule('1', false, alpha)],
  ['baseline-shift', rule('0', false, any)],
  ['d', rule('none', false, any, ['path'])],
  ['x', rule('0', false, length, ['svg', 'rect', 'image', 'foreignObject', 'use'])],
  ['y', rule('0', false, length, ['svg', 'rect', 'image', 'foreignObject', 'use'])],
  ['width', rule('auto', false, size, ['svg', 'rect', 'image', 'foreignObject', 'use', 'symbol'])],
  ['height', rule('auto', false, size, ['svg', 'rect', 'image', 'foreignObject', 'use', 'symbol'])],
  ['cx', rule('0', false, length, ['circle', 'ellipse'])],
  ['cy', rule('0', false, length, ['circle', 'ellipse'])],
  ['r', rule('0', false, positive, ['circle'])],
  ['rx', rule('auto', false, (v) => lengthOrAuto(v) && size(v), ['rect', 'ellipse'])],
  ['ry', rule('auto', false, (v) => lengthOrAuto(v) && size(v), ['rect', 'ellipse'])],
]);

/** Whether the property may be given as an attribute of the element. */
export function isPresentationAttribute(property: string, element: string): boolean {
  const attribute = PROPERTIES.get(property)?.attribute ?? false;
  return typeof attribute === 'boolean' ? attribute : attribute.includes(element);
}

/** Whether a declared value is taken; one that is not leaves the declaration before it standing. */
export function isValidValue(property: string, value: string): boolean {
  if (property.startsWith('--')) {
    return true;
  }
  const known = PROPERTIES.get(property);
  return (
    known !== undefined &&
    (/^(?:inherit|initial|unset|revert|revert-layer)$/i.test(value) ||
      /var\(/i.test(value) ||
      known.valid(value))
  );
}
