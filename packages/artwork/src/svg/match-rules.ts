import { compile } from 'css-select';
import type { StyleRule } from './css-rules.ts';
import { ownText, type SvgElement } from './svg-element.ts';

/** A rule that can be asked whether it matches. */
interface ReadyRule extends StyleRule {
  readonly order: number;
  readonly matches: (element: SvgElement) => boolean;
}

/** Rules of all style sheets in order, ready to be asked for an element's. */
export interface RuleIndex {
  /** Rules that match, weakest first. */
  rulesFor(element: SvgElement): readonly StyleRule[];
  /** Selectors that are not understood. */
  readonly unknown: readonly string[];
}

/**
 * Makes rules searchable: each element is only compared with rules that end in its id, one of its classes,
 * its name, or anything.
 */
export function indexRules(rules: readonly StyleRule[]): RuleIndex {
  const byKey = new Map<string, ReadyRule[]>();
  const unknown: string[] = [];
  rules.forEach((rule, order) => {
    let matches: (element: SvgElement) => boolean;
    try {
      matches = compile<SvgElement, SvgElement>(rule.selector, {
        xmlMode: true,
        adapter: ADAPTER,
        cacheResults: false,
      });
    } catch {
      unknown.push(rule.selector);
      return;
    }
    const list = byKey.get(rule.key);
    const ready = { ...rule, order, matches };
    if (list === undefined) {
      byKey.set(rule.key, [ready]);
    } else {
      list.push(ready);
    }
  });
  const rulesFor = (element: SvgElement): readonly StyleRule[] => {
    if (byKey.size === 0) {
      return [];
    }
    const classes = (element.attributes.get('class') ?? '').split(/\s+/).filter(Boolean);
    const keys = new Set([
      '*',
      element.name,
      `#${element.attributes.get('id') ?? ''}`,
      ...classes.map((c) => `.${c}`),
    ]);
    const found = [...keys].flatMap((key) => byKey.get(key) ?? []).filter((rule) => rule.matches(element));
    return found.sort((a, b) => a.specificity - b.specificity || a.order - b.order);
  };
  return { rulesFor, unknown };
}

/**
 * The library only reads the lists, which it asks to be writable; copying them for each question would cost
 * the square of their length.
 */
const ADAPTER = {
  isTag: (node: SvgElement): node is SvgElement => node !== undefined,
  getAttributeValue: (element: SvgElement, name: string): string | undefined => element.attributes.get(name),
  getChildren: (node: SvgElement): SvgElement[] => node.children as SvgElement[],
  getName: (element: SvgElement): string => element.name,
  getParent: (node: SvgElement): SvgElement | null => node.parent ?? null,
  getSiblings: (node: SvgElement): SvgElement[] => (node.parent?.children ?? [node]) as SvgElement[],
  prevElementSibling: (node: SvgElement): SvgElement | null => node.parent?.children[node.index - 1] ?? null,
  getText: (node: SvgElement): string => ownText(node),
  hasAttrib: (element: SvgElement, name: string): boolean => element.attributes.has(name),
  removeSubsets: (nodes: SvgElement[]): SvgElement[] => nodes,
};
