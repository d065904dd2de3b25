import { type Declaration, parseDeclarations } from './css-rules.ts';
import type { RuleIndex } from './match-rules.ts';
import { isPresentationAttribute, isValidValue, PROPERTIES } from './properties.ts';
import { StringPairs } from './string-pairs.ts';
import type { SvgElement } from './svg-element.ts';

/** The winning declaration of each property of an element, before inheritance. */
export type Declared = StringPairs;

/**
 * Cascades presentation attributes, style rules and the `style` attribute (SVG 2 §6, CSS Cascade 4):
 * attributes are the weakest, then rules by specificity and order, then `style`; `!important` turns the order
 * of the last two over the rest. A value that is not valid for its property never wins.
 */
export function cascade(element: SvgElement, rules: RuleIndex): Declared {
  const won = new Map<string, string>();
  for (const [name, value] of element.attributes) {
    if (isPresentationAttribute(name, element.name)) {
      declare(won, name, value);
    }
  }
  const important: Declaration[] = [];
  const take = (declarations: readonly Declaration[]): void => {
    for (const declaration of declarations) {
      if (declaration.important) {
        important.push(declaration);
      } else {
        declare(won, declaration.property, declaration.value);
      }
    }
  };
  for (const rule of rules.rulesFor(element)) {
    take(rule.declarations);
  }
  const inline = element.attributes.get('style');
  if (inline !== undefined) {
    take(parseDeclarations(inline));
  }
  for (const { property, value } of important) {
    declare(won, property, value);
  }
  return new StringPairs([...won].flat());
}

function declare(won: Map<string, string>, property: string, raw: string): void {
  const value = raw.trim();
  if (property === 'marker') {
    for (const part of ['marker-start', 'marker-mid', 'marker-end']) {
      declare(won, part, value);
    }
  } else if (property === 'all' && /^(?:inherit|initial|unset|revert|revert-layer)$/i.test(value)) {
    for (const name of PROPERTIES.keys()) {
      won.set(name, value);
    }
  } else if (property === 'font') {
    // font: … size[/line-height] family
    const size = /(?:^|\s)([\d.]+(?:px|pt|pc|mm|cm|in|em|rem|ex|%))(?:\s*\/\s*\S+)?\s+(.+)$/i.exec(value);
    if (size !== null) {
      won.set('font-size', size[1] as string);
      won.set('font-family', size[2] as string);
    }
  } else if (isValidValue(property, value)) {
    won.set(property, value);
  }
}
