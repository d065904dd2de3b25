import { parseLength } from './css-length.ts';
import { parseDeclarations } from './css-rules.ts';
import { placeOf, type SvgNotices } from './scene.ts';
import { elementName, type SvgElement } from './svg-element.ts';

/** Lengths that each shape element is made of (SVG 2 §10). */
const GEOMETRY: ReadonlyMap<string, readonly string[]> = new Map([
  ['rect', ['x', 'y', 'width', 'height', 'rx', 'ry']],
  ['circle', ['cx', 'cy', 'r']],
  ['ellipse', ['cx', 'cy', 'rx', 'ry']],
  ['line', ['x1', 'y1', 'x2', 'y2']],
]);

/** Words that stand for a length, and values that the cascade resolves. */
const OTHER_VALUES = /^(?:auto|inherit|initial|unset|revert|revert-layer|var\([\s\S]*\))$/iu;

/** Notices where a length of a shape, or the width of its stroke, cannot be read and counts as not given. */
export function noticeLengths(notices: SvgNotices, element: SvgElement): void {
  const names = [...(GEOMETRY.get(element.name) ?? []), 'stroke-width'];
  const declared = parseDeclarations(element.attributes.get('style') ?? '');
  for (const name of names) {
    const styled = declared.filter(({ property }) => property === name).map(({ value }) => value);
    for (const text of [element.attributes.get(name), ...styled]) {
      const value = text?.trim() ?? '';
      if (value !== '' && parseLength(value) === undefined && !OTHER_VALUES.test(value)) {
        const detail = `${elementName(element)} ${name}="${value.slice(0, 30)}"`;
        notices.add('length-unreadable', placeOf(element), detail);
      }
    }
  }
}
