import { type SaxesAttributeNS, SaxesParser, type SaxesTagNS } from 'saxes';
import type { ExpandedEntities } from './expand-entities.ts';
import { StringPairs } from './string-pairs.ts';
import { StringPool } from './string-pool.ts';
import { SVG_NAMESPACE, type SvgElement } from './svg-element.ts';
import { svgRefusal } from './svg-refusals.ts';

/** Most elements nested in one another: drawings stay below 50, and the reader recurses. */
const MAX_NESTING = 1000;

/** The tree of a file and what was odd about its XML. */
export interface SvgTree {
  readonly root: SvgElement;
  /** A namespace prefix that the file uses but never declares. */
  readonly undeclaredPrefix?: string;
}

/**
 * Reads well-formed XML into a tree of SVG elements. Elements of other namespaces keep their place with the
 * name `''`, so that nothing inside them is painted. A file whose root has no namespace at all is taken for
 * SVG.
 *
 * @throws {ArtworkError} `svg-empty`, `svg-not-well-formed`, `svg-not-svg`, `svg-nested-too-deeply`
 */
export function parseSvgTree({ text, values }: Pick<ExpandedEntities, 'text' | 'values'>): SvgTree {
  if (text.trim() === '') {
    throw svgRefusal('svg-empty', {});
  }
  const parser = new SaxesParser({ xmlns: true, position: true });
  parser.ENTITIES = Object.assign(Object.create(null), {
    amp: '&',
    gt: '>',
    lt: '<',
    quot: '"',
    apos: "'",
    ...Object.fromEntries(values),
  });
  const builder = new TreeBuilder(parser);
  parser.write(text).close();
  return builder.tree();
}

/**
 * An element whose content is still being read. Most elements are empty, and share the one list of nothing.
 */
interface OpenElement extends SvgElement {
  children: SvgElement[];
  texts: string[];
}

const NO_CHILDREN: SvgElement[] = [];
const NO_TEXTS: string[] = [];

class TreeBuilder {
  private root: SvgElement | undefined;
  private readonly stack: OpenElement[] = [];
  private readonly pool = new StringPool();
  /** How many of the open elements are `text`, where white space counts. */
  private textDepth = 0;
  private undeclaredPrefix: string | undefined;
  private bare = false;
  private startLine = 1;
  private startColumn = 1;
  private readonly parser: SaxesParser<{ xmlns: true; position: true }>;

  constructor(parser: SaxesParser<{ xmlns: true; position: true }>) {
    this.parser = parser;
    parser.on('error', (error) => this.fail(error.message));
    parser.on('opentagstart', (tag) => {
      this.startLine = parser.line;
      this.startColumn = Math.max(1, parser.columnIndex - tag.name.length);
    });
    parser.on('opentag', (tag) => this.open(tag));
    parser.on('closetag', () => this.close());
    parser.on('text', (text) => this.addText(text));
    parser.on('cdata', (text) => this.addText(text));
  }

  tree(): SvgTree {
    if (this.root === undefined) {
      throw svgRefusal('svg-not-svg', { root: '' });
    }
    return this.undeclaredPrefix === undefined
      ? { root: this.root }
      : { root: this.root, undeclaredPrefix: this.undeclaredPrefix };
  }

  private fail(message: string): void {
    const unbound = /unbound namespace prefix: (?:"|)([^".]+)/.exec(message);
    if (unbound !== null) {
      this.undeclaredPrefix ??= unbound[1];
      return;
    }
    const { line } = this.parser;
    const column = this.parser.columnIndex + 1;
    const reason = message.replace(/^(?:[^:]*:)?\d+:\d+: /, '').replace(/\.$/, '');
    throw svgRefusal('svg-not-well-formed', { reason }, { line, column });
  }

  private open(tag: SaxesTagNS): void {
    const parent = this.stack[this.stack.length - 1];
    if (parent === undefined) {
      this.bare = tag.uri === '';
      if (tag.local !== 'svg' || (tag.uri !== SVG_NAMESPACE && !this.bare)) {
        throw svgRefusal(
          'svg-not-svg',
          { root: tag.name.slice(0, 40) },
          { line: this.startLine, column: this.startColumn },
        );
      }
    }
    if (this.stack.length >= MAX_NESTING) {
      throw svgRefusal(
        'svg-nested-too-deeply',
        { most: MAX_NESTING },
        { line: this.startLine, column: this.startColumn },
      );
    }
    const isSvg = tag.uri === SVG_NAMESPACE || (this.bare && tag.uri === '');
    const element: OpenElement = {
      name: isSvg ? this.pool.one(tag.local) : '',
      attributes: this.attributesOf(tag),
      parent,
      children: NO_CHILDREN,
      texts: NO_TEXTS,
      index: parent?.children.length ?? 0,
      line: this.startLine,
      column: this.startColumn,
    };
    if (parent !== undefined) {
      if (parent.children === NO_CHILDREN) {
        parent.children = [];
      }
      parent.children.push(element);
    }
    this.root ??= element;
    this.stack.push(element);
    this.textDepth += element.name === 'text' ? 1 : 0;
  }

  private close(): void {
    const element = this.stack.pop();
    this.textDepth -= element?.name === 'text' ? 1 : 0;
    if (element !== undefined && element.children.length > 0) {
      // a list that has grown keeps room for more
      element.children = element.children.slice();
    }
  }

  private attributesOf(tag: SaxesTagNS): StringPairs {
    const keys = Object.keys(tag.attributes);
    const flat = new Array<string>(2 * keys.length);
    keys.forEach((key, i) => {
      const attribute = tag.attributes[key] as SaxesAttributeNS;
      flat[2 * i] = this.pool.one(attributeName(attribute));
      flat[2 * i + 1] = this.pool.one(attribute.value);
    });
    return new StringPairs(flat);
  }

  private addText(text: string): void {
    const element = this.stack[this.stack.length - 1];
    if (element === undefined || (this.textDepth === 0 && /^\s*$/.test(text))) {
      return;
    }
    if (element.texts === NO_TEXTS) {
      element.texts = [];
    }
    const at = element.children.length;
    element.texts[at] = (element.texts[at] ?? '') + text;
  }
}

/**
 * `xlink:href` whatever prefix the file uses for it; `*:label` for a label in any editor's own namespace;
 * else as written.
 */
function attributeName({
  prefix,
  local,
  uri,
  name,
}: {
  prefix: string;
  local: string;
  uri: string;
  name: string;
}): string {
  if (prefix === '' || prefix === 'xmlns') {
    return name;
  }
  if (uri === 'http://www.w3.org/1999/xlink' || prefix === 'xlink') {
    return `xlink:${local}`;
  }
  if (prefix === 'xml') {
    return `xml:${local}`;
  }
  return local === 'label' ? '*:label' : name;
}
