import type { CssNode } from 'css-tree';
import type { SvgElement } from './svg-element.ts';

/** An element's place among its siblings, from 1, counted from either end. */
type Place = (element: SvgElement) => number;

/**
 * The test of a pseudo-class that asks for the place among siblings (Selectors 4 §14), in constant time for
 * each element; `undefined` for any other, and for one that counts only siblings which match a selector.
 */
export function placeTest(
  name: string,
  argument: CssNode | null,
): ((element: SvgElement) => boolean) | undefined {
  switch (name) {
    case 'first-child':
      return (element) => fromStart(element) === 1;
    case 'last-child':
      return (element) => fromEnd(element) === 1;
    case 'only-child':
      return (element) => fromStart(element) === 1 && fromEnd(element) === 1;
    case 'first-of-type':
      return (element) => ofType(element)[0] === 1;
    case 'last-of-type':
      return (element) => ofType(element)[1] === 1;
    case 'only-of-type':
      return (element) => ofType(element).every((place) => place === 1);
    case 'nth-child':
      return nthTest(fromStart, argument);
    case 'nth-last-child':
      return nthTest(fromEnd, argument);
    case 'nth-of-type':
      return nthTest((element) => ofType(element)[0], argument);
    case 'nth-last-of-type':
      return nthTest((element) => ofType(element)[1], argument);
    default:
      return undefined;
  }
}

const fromStart: Place = ({ index }) => index + 1;
const fromEnd: Place = ({ index, parent }) => (parent?.children.length ?? 1) - index;

/** Places among siblings of the same name, from the start and from the end, for each child of a parent. */
const places = new WeakMap<SvgElement, readonly (readonly [number, number])[]>();

function ofType({ parent, index }: SvgElement): readonly [number, number] {
  if (parent === undefined) {
    return [1, 1];
  }
  let known = places.get(parent);
  if (known === undefined) {
    const counts = new Map<string, number>();
    const starts = parent.children.map(({ name }) => {
      const place = (counts.get(name) ?? 0) + 1;
      counts.set(name, place);
      return place;
    });
    known = parent.children.map(({ name }, i) => {
      const start = starts[i] as number;
      return [start, (counts.get(name) as number) - start + 1] as const;
    });
    places.set(parent, known);
  }
  return known[index] ?? [1, 1];
}

/** Places a·n + b for n = 0, 1, 2 …; `odd` and `even` too. */
function nthTest(place: Place, argument: CssNode | null): ((element: SvgElement) => boolean) | undefined {
  if (argument?.type !== 'Nth' || argument.selector !== null) {
    return undefined;
  }
  const { nth } = argument;
  const isWord = nth.type === 'Identifier';
  const a = isWord ? 2 : Number(nth.a ?? 0);
  const b = isWord ? (nth.name.toLowerCase() === 'odd' ? 1 : 0) : Number(nth.b ?? 0);
  return (element) => {
    const steps = (place(element) - b) / a;
    return a === 0 ? place(element) === b : steps >= 0 && Number.isInteger(steps);
  };
}
