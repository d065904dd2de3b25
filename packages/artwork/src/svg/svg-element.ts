import type { NoticePlace } from '@pourproof/plane';
import type { StringPairs } from './string-pairs.ts';

/** The namespace of SVG elements. */
export const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';

/**
 * An element of the file. Attribute names keep the prefixes `xlink:` and `xml:`; a `label` in an editor's own
 * namespace is `*:label`, whatever its prefix; all others are as written.
 */
export interface SvgElement {
  /** Local name for SVG elements; `''` for elements of other namespaces. */
  readonly name: string;
  readonly attributes: StringPairs;
  readonly parent: SvgElement | undefined;
  readonly children: readonly SvgElement[];
  /**
   * Text directly inside: item i stands before child i, the last one after all; items without text are
   * missing, and so are those of white space alone outside of `text`.
   */
  readonly texts: readonly string[];
  /** Place among its parent's children. */
  readonly index: number;
  readonly line: number;
  readonly column: number;
}

/** The element in words: `path#wing`, for notices. */
export function elementName(element: SvgElement): string {
  const id = element.attributes.get('id');
  return id === undefined || id === '' ? element.name : `${element.name}#${id}`;
}

/** All text directly inside an element. */
export function ownText(element: SvgElement): string {
  return element.texts.join('');
}

/** The element's place in the file. */
export function placeOf(element: SvgElement): NoticePlace {
  return { line: element.line, column: element.column, element: elementName(element) };
}
