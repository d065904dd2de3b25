import type { StyleRule } from './css-rules.ts';
import { type ElementTest, selectorTest } from './match-selector.ts';
import { SearchSteps } from './search-steps.ts';
import type { SvgElement } from './svg-element.ts';

/** A rule that can be asked whether it matches. */
interface ReadyRule extends StyleRule {
  readonly order: number;
  readonly matches: ElementTest;
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
 *
 * @throws {ArtworkError} `svg-styles-too-large`, when an element is asked for whose rules take too long to find
 */
export function indexRules(rules: readonly StyleRule[], steps: SearchSteps = new SearchSteps()): RuleIndex {
  const byKey = new Map<string, ReadyRule[]>();
  const unknown: string[] = [];
  rules.forEach((rule, order) => {
    let matches: ElementTest;
    try {
      matches = selectorTest(rule.parts, steps);
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
