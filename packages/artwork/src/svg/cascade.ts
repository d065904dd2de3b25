import { type Declaration, parseDeclarations } from './css-rules.ts';
import type { RuleIndex } from './match-rules.ts';
import { isPresentationAttribute, isValidValue, PROPERTIES } from './properties.ts';
import { StringPairs } from './string-pairs.ts';
import type { SvgElement } from './svg-element.ts';

/** The winning declaration of each property of an element, before inheritance. */
export type Declared = StringPairs;

/** Told of each value that is not valid for a property that is known. */
export type RefusedValue = (property: string, value: string) => void;

/**
 * Cascades presentation attributes, style rules and the `style` attribute (SVG 2 §6, CSS Cascade 4):
 * attributes are the weakest, then rules by specificity and order, then `style`; `!important` turns the order
 * of the last two over the rest. A value that is not valid for its property never wins.
 */
export function cascade(element: SvgElement, rules: RuleIndex, onRefused: RefusedValue): Declared {
  const won = new Map<string, string>();
  const declare = (name: string, value: string): void => declareIn(won, name, value, onRefused);
  for (const [name, value] of element.attributes) {
    if (isPresentationAttribute(name, element.name)) {
      declare(name, value);
    }
  }
  const important: Declaration[] = [];
  const take = (declarations: readonly Declaration[]): void => {
    for (const declaration of declarations) {
      if (declaration.important) {
        important.push(declaration);
      } else {
        declare(declaration.property, declaration.value);
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
    declare(property, value);
  }
  return new StringPairs([...won].flat());
}

function declareIn(won: Map<string, string>, property: string, raw: string, onRefused: RefusedValue): void {
  const value = raw.trim();
  if (property === 'marker') {
    for (const part of ['marker-start', 'marker-mid', 'marker-end']) {
      declareIn(won, part, value, onRefused);
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
  } else {
    onRefused(property, value);
  }
}
