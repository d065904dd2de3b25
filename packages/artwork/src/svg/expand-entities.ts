import type { ArtworkError } from '../artwork-error.ts';
import { svgRefusal } from './svg-refusals.ts';

/**
 * Largest text that all entities together may add, in characters: honest files use a few names for long
 * addresses.
 */
const MAX_ADDED_CHARACTERS = 4_000_000;

/** How deep entities may be made of entities. */
const MAX_DEPTH = 16;

/** What a document type declaration says about entities. */
export interface ExpandedEntities {
  /** The document; entities that hold elements are put in their places, lines are kept. */
  readonly text: string;
  /** Entities that hold only text, with their references already replaced, for the XML parser to put in. */
  readonly values: ReadonlyMap<string, string>;
  /** Names of entities that live in other files, which are never read. */
  readonly external: readonly string[];
}

/**
 * Reads the entities of the internal document type subset, with limits that honest files never reach.
 *
 * @throws {ArtworkError} `svg-entity-loop` when one is made of itself, `svg-entities-too-large` when they add
 *   too much text
 */
export function expandEntities(source: string): ExpandedEntities {
  const subset = internalSubset(source);
  if (subset === undefined) {
    return { text: source, values: new Map(), external: [] };
  }
  const { raw, external } = declaredEntities(source.slice(subset.from, subset.to));
  const values = new Map<string, string>();
  for (const name of raw.keys()) {
    values.set(name, expand(name, raw, [], values));
  }
  const body = source.slice(subset.to);
  let added = 0;
  for (const [, name] of body.matchAll(/&([^\s#;&<]+);/g)) {
    added += values.get(name as string)?.length ?? 0;
    if (added > MAX_ADDED_CHARACTERS) {
      throw tooLarge();
    }
  }
  const text = body.replace(/&([^\s#;&<]+);/g, (whole, name: string) => {
    const value = values.get(name);
    // line breaks inside would shift the places of all that follows
    return value?.includes('<') ? value.replace(/[\r\n]+/g, ' ') : whole;
  });
  return { text: source.slice(0, subset.to) + text, values, external };
}

/** Where the brackets of `<!DOCTYPE … [ … ]>` begin and end. */
function internalSubset(source: string): { from: number; to: number } | undefined {
  const head = /<!DOCTYPE\b(?:[^[>"']|"[^"]*"|'[^']*')*\[/.exec(source.slice(0, 100_000));
  if (head === null) {
    return undefined;
  }
  const from = head.index + head[0].length;
  const end = /(?:[^\]"'<]|"[^"]*"|'[^']*'|<!--[\s\S]*?-->|<)*?\]/y;
  end.lastIndex = from;
  const match = end.exec(source);
  return match === null ? undefined : { from, to: from + match[0].length };
}

function declaredEntities(subset: string): { raw: Map<string, string>; external: string[] } {
  const raw = new Map<string, string>();
  const external: string[] = [];
  const declarations = subset.replace(/<!--[\s\S]*?-->/g, '');
  for (const match of declarations.matchAll(
    /<!ENTITY\s+(%\s+)?([^\s"'%]+)\s+(?:"([^"]*)"|'([^']*)'|(SYSTEM|PUBLIC))/g,
  )) {
    const [, parameter, name, double, single, outside] = match;
    if (name === undefined || parameter !== undefined) {
      continue;
    }
    if (outside !== undefined) {
      external.push(name);
    } else if (!raw.has(name)) {
      // the first declaration counts (XML 1.0 §4.2); character references are replaced at once (§4.5)
      raw.set(
        name,
        (double ?? single ?? '').replace(/&#(x[\da-fA-F]+|\d+);/g, (_, code: string) => character(code)),
      );
    }
  }
  return { raw, external };
}

function character(code: string): string {
  const value = code.startsWith('x') ? Number.parseInt(code.slice(1), 16) : Number(code);
  return value > 0 && value <= 0x10ffff ? String.fromCodePoint(value) : '';
}

function expand(
  name: string,
  raw: ReadonlyMap<string, string>,
  path: readonly string[],
  done: ReadonlyMap<string, string>,
): string {
  const ready = done.get(name);
  if (ready !== undefined) {
    return ready;
  }
  if (path.includes(name) || path.length > MAX_DEPTH) {
    throw svgRefusal('svg-entity-loop', { entity: name });
  }
  const value = (raw.get(name) ?? '').replace(/&([^\s#;&<]+);/g, (whole, inner: string) =>
    raw.has(inner) ? expand(inner, raw, [...path, name], done) : whole,
  );
  if (value.length > MAX_ADDED_CHARACTERS) {
    throw tooLarge();
  }
  return value;
}

function tooLarge(): ArtworkError {
  return svgRefusal('svg-entities-too-large', { mostCharacters: MAX_ADDED_CHARACTERS });
}
