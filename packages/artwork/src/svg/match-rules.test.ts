import { compile } from 'css-select';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseStyleSheet } from './css-rules.ts';
import { expandEntities } from './expand-entities.ts';
import { indexRules } from './match-rules.ts';
import { parseSvgTree } from './parse-svg-tree.ts';
import { SearchSteps } from './search-steps.ts';
import type { SvgElement } from './svg-element.ts';

const treeOf = (body: string): SvgElement =>
  parseSvgTree(expandEntities(`<svg xmlns="http://www.w3.org/2000/svg">${body}</svg>`)).root;
const all = (root: SvgElement): SvgElement[] => [root, ...root.children.flatMap(all)];
const rulesOf = (selector: string, steps?: SearchSteps): ReturnType<typeof indexRules> =>
  indexRules(parseStyleSheet(`${selector}{fill:red}`).rules, steps);
const matchedBy = (root: SvgElement, selector: string): boolean[] => {
  const index = rulesOf(selector);
  return all(root).map((element) => index.rulesFor(element).length > 0);
};

describe('selectors', () => {
  const names = fc.constantFrom('g', 'a', 'rect');
  const node = fc.letrec<{ node: string }>((tie) => ({
    node: fc.oneof(
      { maxDepth: 5, depthSize: 'large' },
      fc.tuple(names, fc.constantFrom('', ' class="u"', ' id="i"')).map(([n, a]) => `<${n}${a}/>`),
      fc
        .tuple(
          names,
          fc.constantFrom('', ' class="u"', ' class="u v"'),
          fc.array(tie('node'), { maxLength: 4 }),
        )
        .map(([n, a, inner]) => `<${n}${a}>${inner.join('')}</${n}>`),
    ),
  })).node;
  const compound = fc.constantFrom(
    ...['g', 'a', 'rect', '.u', '.v', '#i', '*', 'g.u', 'a:first-child', ':last-child', ':nth-child(2n+1)'],
    ...[
      ':nth-last-child(-n+2)',
      ':nth-of-type(even)',
      ':nth-child(3)',
      ':only-child',
      'g:not(.u)',
      ':is(a, g .u)',
    ],
    ...[
      ':first-of-type',
      ':last-of-type',
      ':only-of-type',
      ':nth-last-of-type(2n)',
      ':not(g > a)',
      '[class~=v]',
    ],
    ...[':has(> .u)', ':where(g, #i) ', ':root', ':nth-child(odd)', ':nth-child(-2n+5)', ':nth-child(3n-1)'],
  );
  const selectors = fc
    .tuple(
      compound,
      fc.array(fc.tuple(fc.constantFrom(' ', ' > ', ' + ', ' ~ '), compound), { maxLength: 4 }),
    )
    .map(([first, rest]) => first + rest.flat().join(''));

  test('match what the library alone matches', () => {
    fc.assert(
      fc.property(fc.array(node, { minLength: 1, maxLength: 4 }), selectors, (parts, selector) => {
        const root = treeOf(parts.join(''));
        const matches = compile<SvgElement, SvgElement>(selector, { xmlMode: true, adapter: ADAPTER });
        expect(matchedBy(root, selector), selector).toEqual(all(root).map((element) => matches(element)));
      }),
    );
  });

  const deep = (depth: number): SvgElement => treeOf(`${'<g>'.repeat(depth)}<rect/>${'</g>'.repeat(depth)}`);
  const wide = (count: number): SvgElement => treeOf('<rect/>'.repeat(count));
  const stepsFor = (root: SvgElement, selector: string): number => {
    const steps = new SearchSteps();
    const index = rulesOf(selector, steps);
    all(root).forEach((element) => void index.rulesFor(element));
    return steps.count;
  };

  test.each([
    ['descendants', `${'g '.repeat(20)}.none ${'g '.repeat(20)}rect`, deep],
    ['descendants of anything', `.none ${'* '.repeat(40)}`, deep],
    ['siblings', `.none ~ ${'rect ~ '.repeat(20)}rect`, wide],
    [
      'lists inside one another',
      `.none :is(.none *, ${':not(.none *) '.repeat(9)}) ${'* '.repeat(20)}`,
      deep,
    ],
    ['places among siblings', `rect:nth-child(2n) + rect:nth-last-of-type(3n)`, wide],
  ] as const)('%s take steps in proportion to elements', (_, selector, tree) => {
    const [few, many] = [stepsFor(tree(400), selector), stepsFor(tree(800), selector)];
    expect(few).toBeGreaterThan(100);
    expect(many).toBeLessThan(2.1 * few);
    // each compound of the selector looks at each element a few times at most
    expect(many).toBeLessThan(4 * 800 * selector.split(/[\s>+~,()]+/u).length);
  });

  test('a sheet that would take forever all the same is refused', () => {
    const index = rulesOf(':has(:has(.none))', new SearchSteps(10_000));
    expect(() => all(wide(2000)).forEach((element) => void index.rulesFor(element))).toThrow(
      expect.objectContaining({ code: 'svg-styles-too-large' }),
    );
  });

  test.each(['rect::before', 'svg|rect', `${':not('.repeat(80)}g${')'.repeat(80)}`])(
    '%s is not understood, and told',
    (selector) => {
      expect(rulesOf(selector).unknown).toHaveLength(1);
    },
  );
});

const ADAPTER = {
  isTag: (node: SvgElement): node is SvgElement => node !== undefined,
  getAttributeValue: (element: SvgElement, name: string): string | undefined => element.attributes.get(name),
  getChildren: (node: SvgElement): SvgElement[] => [...node.children],
  getName: (element: SvgElement): string => element.name,
  getParent: (node: SvgElement): SvgElement | null => node.parent ?? null,
  getSiblings: (node: SvgElement): SvgElement[] => [...(node.parent?.children ?? [node])],
  getText: (): string => '',
  hasAttrib: (element: SvgElement, name: string): boolean => element.attributes.has(name),
  removeSubsets: (nodes: SvgElement[]): SvgElement[] => nodes,
};
