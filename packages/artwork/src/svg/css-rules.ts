import type { CssNode, Rule, Selector } from 'css-tree';
import generate from 'css-tree/generator';
import parse from 'css-tree/parser';
import walk from 'css-tree/walker';

/** One declaration, value as text without comments. */
export interface Declaration {
  readonly property: string;
  readonly value: string;
  readonly important: boolean;
}

/** One selector of a rule with what it declares. */
export interface StyleRule {
  readonly selector: string;
  /** The same as it was parsed. */
  readonly parts: Selector;
  /** What its last compound must have, to look rules up by: `#id`, `.class`, `tag` or `*`. */
  readonly key: string;
  /** CSS specificity as one number: ids, classes and types, each below 1000. */
  readonly specificity: number;
  readonly declarations: readonly Declaration[];
}

/** A style sheet as rules in order, and what of it was not taken. */
export interface StyleSheet {
  readonly rules: readonly StyleRule[];
  /** At-rules and broken parts left out, in a few words each. */
  readonly skipped: readonly string[];
  /** Addresses that the sheet imports, which are never fetched. */
  readonly imports: readonly string[];
}

/**
 * Reads a style sheet's rules for a static picture on a screen; rules for other media are left out and named.
 */
export function parseStyleSheet(text: string): StyleSheet {
  const rules: StyleRule[] = [];
  const skipped: string[] = [];
  const imports: string[] = [];
  // the comment marks of very old pages are white space in CSS
  const tree = parse(text, {
    parseValue: false,
    parseCustomProperty: false,
    onParseError: () => skipped.push('unreadable rule'),
  });
  walk(tree, {
    enter(node: CssNode) {
      if (node.type === 'Atrule') {
        const name = node.name.toLowerCase();
        const prelude = node.prelude === null ? '' : generate(node.prelude);
        if (name === 'import') {
          imports.push(prelude);
        } else if (name === 'media' && isForScreen(prelude)) {
          return undefined;
        } else if (name !== 'font-face' && name !== 'charset' && name !== 'namespace' && name !== 'page') {
          skipped.push(`@${name}${prelude === '' ? '' : ` ${prelude}`}`.slice(0, 60));
        }
        return walk.skip;
      }
      if (node.type === 'Rule') {
        addRule(rules, skipped, node);
        return walk.skip;
      }
      return undefined;
    },
  });
  return { rules, skipped, imports };
}

/** Reads the declarations of a `style` attribute. */
export function parseDeclarations(text: string): Declaration[] {
  const list = parse(text, {
    context: 'declarationList',
    parseValue: false,
    parseCustomProperty: false,
    onParseError: () => undefined,
  });
  return declarationsIn(list);
}

function isForScreen(media: string): boolean {
  return media.split(',').some((query) => {
    const words = query.trim().toLowerCase();
    return words === '' || words === 'all' || words === 'screen' || words === 'only screen';
  });
}

function addRule(rules: StyleRule[], skipped: string[], rule: Rule): void {
  if (rule.prelude.type !== 'SelectorList') {
    skipped.push(`rule "${generate(rule.prelude).slice(0, 40)}"`);
    return;
  }
  const declarations = declarationsIn(rule.block);
  rule.prelude.children.forEach((selector) => {
    if (selector.type === 'Selector') {
      rules.push({
        selector: generate(selector),
        parts: selector,
        key: lookUpKey(selector),
        specificity: specificityOf(selector),
        declarations,
      });
    }
  });
}

function declarationsIn(node: CssNode): Declaration[] {
  const out: Declaration[] = [];
  walk(node, (part: CssNode) => {
    if (part.type === 'Declaration') {
      const value = generate(part.value)
        .replace(/\/\*[\s\S]*?\*\//g, ' ')
        .trim();
      const property = part.property.startsWith('--') ? part.property : part.property.toLowerCase();
      out.push({ property, value, important: part.important === true });
    }
  });
  return out;
}

function lookUpKey(selector: Selector): string {
  let key = '*';
  selector.children.forEach((part) => {
    if (part.type === 'Combinator') {
      key = '*';
    } else if (part.type === 'IdSelector') {
      key = `#${part.name}`;
    } else if (part.type === 'ClassSelector' && !key.startsWith('#')) {
      key = `.${part.name}`;
    } else if (part.type === 'TypeSelector' && key === '*') {
      key = part.name.includes('|') ? '*' : part.name;
    }
  });
  // escapes inside names: leave it to the matcher
  return key.includes('\\') ? '*' : key;
}

/** Selectors Level 4 §15, with the arguments of :is and :not counted by their most specific one. */
function specificityOf(selector: Selector): number {
  let sum = 0;
  selector.children.forEach((part) => {
    if (part.type === 'IdSelector') {
      sum += 1_000_000;
    } else if (part.type === 'ClassSelector' || part.type === 'AttributeSelector') {
      sum += 1000;
    } else if (part.type === 'TypeSelector') {
      sum += part.name === '*' ? 0 : 1;
    } else if (part.type === 'PseudoClassSelector') {
      sum += pseudoSpecificity(part.name, part.children?.first ?? null);
    }
  });
  return sum;
}

function pseudoSpecificity(name: string, argument: CssNode | null): number {
  if (name === 'where') {
    return 0;
  }
  if ((name === 'is' || name === 'not' || name === 'has') && argument?.type === 'SelectorList') {
    let most = 0;
    argument.children.forEach((inner) => {
      if (inner.type === 'Selector') {
        most = Math.max(most, specificityOf(inner));
      }
    });
    return most;
  }
  return 1000;
}
