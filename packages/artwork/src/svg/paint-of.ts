import { type Bounds, isEmptyBounds } from '@pourproof/plane';
import type { ComputedStyle } from './computed-style.ts';
import { type Colour, parseColour } from './css-colour.ts';
import { findReferenced, hrefOf, urlAddress } from './references.ts';
import { type DrawState, type Scene, styleAround, styleUnder } from './scene.ts';
import { placeOf, type SvgElement } from './svg-element.ts';

/** Longest chain of gradients that inherit their stops from one another. */
const MAX_BORROWING = 32;

/** Opacity of a gradient that has translucent stops: below 1, so that it hides nothing beneath. */
const MAX_TRANSLUCENT = 0.999;

/** What a fill or stroke is painted with: its colour and opacity; `undefined` for none. */
export function paintOf(
  scene: Scene,
  state: DrawState,
  property: 'fill' | 'stroke',
  element: SvgElement,
  box: () => Bounds,
): Colour | undefined {
  const value = state.style.get(property);
  const colour = /^url\(/i.test(value)
    ? serverPaint(scene, state, value, element, box)
    : plainPaint(state, value);
  if (colour === undefined) {
    return undefined;
  }
  const alpha = colour.alpha * state.style.alpha(`${property}-opacity`);
  if (alpha === 0) {
    scene.notices.add('invisible-paint', placeOf(element));
    return undefined;
  }
  return { hex: colour.hex, alpha };
}

function plainPaint(state: DrawState, value: string): Colour | undefined {
  switch (value.toLowerCase()) {
    case 'none':
      return undefined;
    case 'currentcolor':
      return state.style.currentColour;
    case 'context-fill':
      return state.contextFill;
    case 'context-stroke':
      return state.contextStroke;
    default:
      return parseColour(value);
  }
}

/** A gradient or pattern, or the fallback after it where it is missing (SVG 2 §13.2). */
function serverPaint(
  scene: Scene,
  state: DrawState,
  value: string,
  element: SvgElement,
  box: () => Bounds,
): Colour | undefined {
  const fallback = value.slice(value.indexOf(')') + 1).trim();
  const server = findReferenced(scene, urlAddress(value) ?? '', element);
  switch (server?.name) {
    case 'linearGradient':
    case 'radialGradient':
      return gradientPaint(scene, server, element, box);
    case 'pattern':
      if (hasNoExtent(server.attributes.get('patternUnits') !== 'userSpaceOnUse', box)) {
        return undefined;
      }
      scene.notices.add('pattern-fill', placeOf(element));
      return patternColour(scene, server);
    default:
      return fallback === '' ? undefined : plainPaint(state, fallback);
  }
}

/** Paint by a box without width or height paints nothing (SVG 2 §8.10). */
function hasNoExtent(byBox: boolean, box: () => Bounds): boolean {
  if (!byBox) {
    return false;
  }
  const b = box();
  return isEmptyBounds(b) || b[0] === b[2] || b[1] === b[3];
}

function gradientPaint(
  scene: Scene,
  gradient: SvgElement,
  element: SvgElement,
  box: () => Bounds,
): Colour | undefined {
  const chain = borrowingChain(scene, gradient);
  const stops = chain.map((g) => g.children.filter((c) => c.name === 'stop')).find((s) => s.length > 0) ?? [];
  const units = chain.map((g) => g.attributes.get('gradientUnits')).find((u) => u !== undefined);
  if (stops.length === 0 || hasNoExtent(units !== 'userSpaceOnUse', box)) {
    return undefined;
  }
  const colours = stops.map((stop) => stopColour(scene, stop));
  // a stop that can be seen names the colour, the most opaque one says whether anything is painted
  const first = colours.find((c) => c.alpha > 0) ?? (colours[0] as Colour);
  const alpha = colours.reduce((most, c) => Math.max(most, c.alpha), 0);
  scene.notices.add('gradient-fill', placeOf(element));
  const least = colours.reduce((low, c) => Math.min(low, c.alpha), 1);
  return { hex: first.hex, alpha: least < 1 ? Math.min(alpha, MAX_TRANSLUCENT) : alpha };
}

function borrowingChain(scene: Scene, gradient: SvgElement): SvgElement[] {
  const chain = [gradient];
  for (let at: SvgElement | undefined = gradient; at !== undefined && chain.length < MAX_BORROWING; ) {
    const href: string | undefined = hrefOf(at);
    const next: SvgElement | undefined = href === undefined ? undefined : findReferenced(scene, href, at);
    if (next !== undefined && chain.includes(next)) {
      scene.notices.add('reference-cycle', placeOf(next), next.name);
      break;
    }
    if (next !== undefined) {
      chain.push(next);
    }
    at = next;
  }
  return chain;
}

function stopColour(scene: Scene, stop: SvgElement): Colour {
  const style = styleOf(scene, stop);
  const value = style.get('stop-color');
  const colour = value.toLowerCase() === 'currentcolor' ? style.currentColour : parseColour(value);
  const { hex, alpha } = colour ?? { hex: '#000000', alpha: 1 };
  return { hex, alpha: alpha * style.alpha('stop-opacity') };
}

function patternColour(scene: Scene, pattern: SvgElement): Colour {
  const first = pattern.children.find((c) => c.name !== '');
  const value = first === undefined ? '' : styleOf(scene, first).get('fill');
  return { hex: parseColour(value)?.hex ?? '#000000', alpha: 1 };
}

/** An element's style where it stands in the file, for parts that are never drawn themselves. */
function styleOf(scene: Scene, element: SvgElement): ComputedStyle {
  return styleUnder(scene, element, styleAround(scene, element));
}
