import type { NoticeBook } from '../notice-book.ts';
import { lengthList, parseLength } from './css-length.ts';
import { elementName, placeOf, type SvgElement } from './svg-element.ts';
import type { SvgNoticeCode } from './svg-notices.ts';
import { parseViewBox } from './view-box.ts';

/** How an attribute writes its lengths or numbers. */
type Form = 'length' | 'lengths' | 'number' | 'numbers' | 'side' | 'box' | 'angle';

const PLACES = { x: 'lengths', y: 'lengths', dx: 'lengths', dy: 'lengths', rotate: 'numbers' } as const;

/** Attributes with lengths or numbers that are no properties (SVG 2 §8.9), by their elements. */
const ATTRIBUTES: ReadonlyMap<string, readonly (readonly [string, Form])[]> = new Map(
  Object.entries<Readonly<Record<string, Form>>>({
    line: { x1: 'length', y1: 'length', x2: 'length', y2: 'length' },
    text: { ...PLACES, textLength: 'length' },
    tspan: { ...PLACES, textLength: 'length' },
    textPath: { startOffset: 'length', textLength: 'length' },
    marker: {
      ...{ markerWidth: 'length', markerHeight: 'length', refX: 'side', refY: 'side' },
      ...{ viewBox: 'box', orient: 'angle' },
    },
    mask: { x: 'length', y: 'length', width: 'length', height: 'length' },
    svg: { viewBox: 'box' },
    symbol: { viewBox: 'box' },
  }).map(([name, forms]) => [name, Object.entries(forms)] as const),
);
const NONE: readonly (readonly [string, Form])[] = [];

/** Properties that hold lengths or numbers; what else is not valid is told by what it does. */
const PROPERTIES: ReadonlySet<string> = new Set([
  ...['x', 'y', 'width', 'height', 'cx', 'cy', 'r', 'rx', 'ry'],
  ...['stroke-width', 'stroke-dasharray', 'stroke-dashoffset', 'stroke-miterlimit'],
  ...['opacity', 'fill-opacity', 'stroke-opacity', 'stop-opacity'],
  ...['font-size', 'letter-spacing', 'word-spacing', 'transform-origin'],
]);

/** Properties that say what is painted and how: colours, fill rules, ends and corners of strokes. */
const PAINTED: ReadonlySet<string> = new Set([
  ...['color', 'fill', 'stroke', 'stop-color', 'fill-rule', 'clip-rule'],
  ...['stroke-linecap', 'stroke-linejoin', 'visibility', 'mask-type'],
]);

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/iu;
const SIDES = /^(?:left|right|top|bottom|center)$/iu;

/** Notices lengths, numbers, colours and the like that cannot be used as they are written and count as not given; each once, however often it is drawn. */
export class LengthNotices {
  readonly #notices: NoticeBook<SvgNoticeCode>;
  readonly #told = new Map<SvgElement, Set<string>>();

  constructor(notices: NoticeBook<SvgNoticeCode>) {
    this.#notices = notices;
  }

  /** Looks at the attributes of an element that are no properties. */
  attributesOf(element: SvgElement): void {
    this.#look(element, 'pathLength', 'number');
    for (const [name, form] of ATTRIBUTES.get(element.name) ?? NONE) {
      this.#look(element, name, form);
    }
  }

  /** Takes a declared value that is not valid for its property. */
  refused(element: SvgElement, property: string, value: string): void {
    if (PROPERTIES.has(property)) {
      this.#tell('length-unreadable', element, property, value);
    } else if (value !== '' && PAINTED.has(property)) {
      this.#tell('value-unreadable', element, property, value);
    }
  }

  /** Takes a value with `var()` that gives none that its property can have, once it is asked for. */
  invalid(element: SvgElement, property: string, value: string): void {
    const code = PROPERTIES.has(property) ? 'length-unreadable' : 'value-unreadable';
    this.#tell(code, element, property, value);
  }

  #look(element: SvgElement, name: string, form: Form): void {
    const value = element.attributes.get(name)?.trim();
    // a list may be empty; a length or a number that says nothing is a slip
    const isGiven = value !== undefined && (value !== '' || form === 'length' || form === 'number');
    if (isGiven && !isReadable(value, form)) {
      this.#tell('length-unreadable', element, name, value);
    }
  }

  #tell(
    code: 'length-unreadable' | 'value-unreadable',
    element: SvgElement,
    name: string,
    value: string,
  ): void {
    const detail = `${elementName(element)} ${name}="${value.slice(0, 30)}"`;
    const told = this.#told.get(element) ?? new Set();
    if (!told.has(detail)) {
      this.#told.set(element, told.add(detail));
      this.#notices.add(code, placeOf(element), detail);
    }
  }
}

function isReadable(value: string, form: Form): boolean {
  const isNumber = (text: string): boolean => NUMBER.test(text) && Number.isFinite(Number(text));
  switch (form) {
    case 'length':
      return parseLength(value) !== undefined;
    case 'side':
      return SIDES.test(value) || parseLength(value) !== undefined;
    case 'lengths':
      return lengthList(value).every((part) => parseLength(part) !== undefined);
    case 'number':
      return isNumber(value);
    case 'box':
      return parseViewBox(value) !== undefined;
    case 'angle':
      return (
        /^auto(?:-start-reverse)?$/u.test(value) || isNumber(value.replace(/(?:deg|grad|rad|turn)$/iu, ''))
      );
    default:
      return lengthList(value).every(isNumber);
  }
}
