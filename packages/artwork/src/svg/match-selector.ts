import { compile } from 'css-select';
import type { CssNode, Selector } from 'css-tree';
import generate from 'css-tree/generator';
import { placeTest } from './place-test.ts';
import type { SearchSteps } from './search-steps.ts';
import { ownText, type SvgElement } from './svg-element.ts';

/** Whether something holds of an element. */
export type ElementTest = (element: SvgElement) => boolean;

/** Selectors inside one another, at most: each is tested by a call inside the other's. */
const MAX_DEPTH = 50;

/**
 * The test of one complex selector. Elements above and before another are asked at most once for each part of
 * the selector, so that all elements together take time in proportion to their number times its parts; the
 * compound selectors between its combinators are the library's.
 *
 * @param steps counts what is looked at, and refuses a file made to exhaust a computer
 * @throws {Error} for a selector that is not understood
 */
export function selectorTest(selector: Selector, steps: SearchSteps, depth = 0): ElementTest {
  if (depth > MAX_DEPTH) {
    throw new Error('selectors are nested too deeply');
  }
  let before: ElementTest | undefined;
  let combinator = '';
  let compound: CssNode[] = [];
  const close = (): void => {
    const own = compoundTest(compound, steps, depth);
    const reached = before;
    const isReached = reached === undefined ? undefined : relation(combinator, reached, steps);
    before = isReached === undefined ? own : (element) => own(element) && isReached(element);
    compound = [];
  };
  selector.children.forEach((part) => {
    if (part.type === 'Combinator') {
      close();
      combinator = part.name;
    } else {
      compound.push(part);
    }
  });
  close();
  return before as unknown as ElementTest;
}

/** Whether what a combinator leads to, going up or back from an element, passes the test of all that stands before it. */
function relation(combinator: string, before: ElementTest, steps: SearchSteps): ElementTest {
  switch (combinator) {
    case ' ':
      return anyAlong(above, before, steps);
    case '>':
      return (element) => element.parent !== undefined && before(element.parent);
    case '~':
      return anyAlong(previous, before, steps);
    case '+':
      return (element) => {
        const beside = previous(element);
        return beside !== undefined && before(beside);
      };
    default:
      throw new Error(`the combinator ${combinator} is not known`);
  }
}

const above = ({ parent }: SvgElement): SvgElement | undefined => parent;
const previous = ({ parent, index }: SvgElement): SvgElement | undefined => parent?.children[index - 1];

/** Whether any element on the way passes; each place of the way is remembered. */
function anyAlong(
  next: (element: SvgElement) => SvgElement | undefined,
  passes: ElementTest,
  steps: SearchSteps,
): ElementTest {
  /** Whether an element passes or any beyond it. */
  const known = new Map<SvgElement, boolean>();
  return (element) => {
    const asked: SvgElement[] = [];
    let found = false;
    for (let at = next(element); at !== undefined; at = next(at)) {
      const before = known.get(at);
      if (before !== undefined) {
        found = before;
        break;
      }
      steps.take();
      asked.push(at);
      if (passes(at)) {
        found = true;
        break;
      }
    }
    for (const each of asked) {
      known.set(each, found);
    }
    return found;
  };
}

/** The test of simple selectors side by side: lists of selectors and places among siblings are ours, all else the library's. */
function compoundTest(parts: readonly CssNode[], steps: SearchSteps, depth: number): ElementTest {
  const tests: ElementTest[] = [];
  const others: string[] = [];
  for (const part of parts) {
    const test = part.type === 'PseudoClassSelector' ? pseudoTest(part, steps, depth) : undefined;
    if (test === undefined) {
      others.push(generate(part));
    } else {
      tests.push(test);
    }
  }
  if (others.length > 0) {
    const matches = compile<SvgElement, SvgElement>(others.join(''), {
      xmlMode: true,
      adapter: adapterCounting(steps),
      cacheResults: false,
    });
    // the cheapest first
    tests.unshift(matches);
  }
  return (element) => {
    steps.take();
    return tests.every((test) => test(element));
  };
}

/** `undefined` for a pseudo-class that is left to the library. */
function pseudoTest(
  { name, children }: CssNode & { type: 'PseudoClassSelector' },
  steps: SearchSteps,
  depth: number,
): ElementTest | undefined {
  const argument = children?.first ?? null;
  const isList = argument?.type === 'SelectorList';
  switch (name.toLowerCase()) {
    case 'is':
    case 'where':
    case 'matches':
      return isList ? anyOf(argument, steps, depth) : undefined;
    case 'not': {
      const any = isList ? anyOf(argument, steps, depth) : undefined;
      return any === undefined ? undefined : (element) => !any(element);
    }
    default:
      return placeTest(name.toLowerCase(), argument);
  }
}

function anyOf(list: CssNode & { type: 'SelectorList' }, steps: SearchSteps, depth: number): ElementTest {
  const tests = list.children
    .toArray()
    .map((inner) => (inner.type === 'Selector' ? selectorTest(inner, steps, depth + 1) : () => false));
  return (element) => tests.some((test) => test(element));
}

/**
 * The library only reads the lists, which it asks to be writable; copying them for each question would cost
 * the square of their length. What goes through children or siblings is counted as long as they are.
 */
function adapterCounting(
  steps: SearchSteps,
): NonNullable<Parameters<typeof compile<SvgElement, SvgElement>>[1]>['adapter'] {
  const siblingsOf = (node: SvgElement): SvgElement[] => (node.parent?.children ?? [node]) as SvgElement[];
  return {
    isTag: (node: SvgElement): node is SvgElement => node !== undefined,
    getAttributeValue: (element: SvgElement, name: string): string | undefined =>
      element.attributes.get(name),
    getChildren: (node: SvgElement): SvgElement[] => {
      steps.take(1 + node.children.length);
      return node.children as SvgElement[];
    },
    getName: (element: SvgElement): string => element.name,
    getParent: (node: SvgElement): SvgElement | null => {
      steps.take();
      return node.parent ?? null;
    },
    getSiblings: (node: SvgElement): SvgElement[] => {
      const siblings = siblingsOf(node);
      steps.take(siblings.length);
      return siblings;
    },
    prevElementSibling: (node: SvgElement): SvgElement | null => previous(node) ?? null,
    getText: (node: SvgElement): string => ownText(node),
    hasAttrib: (element: SvgElement, name: string): boolean => element.attributes.has(name),
    removeSubsets: (nodes: SvgElement[]): SvgElement[] => nodes,
  };
}
