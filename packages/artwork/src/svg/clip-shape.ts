import { type FillRule, translation } from '@pourproof/plane';
import { type Path, PathBuilder } from '../path/path.ts';
import { transformPath } from '../path/transform-path.ts';
import { ellipsePath } from './basic-shape.ts';
import { type LengthContext, lengthList, parseLength, userUnits } from './css-length.ts';
import { parsePathData } from './path-data.ts';

/** The box that a shape's percentages and places refer to, in user units. */
export interface ShapeBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A CSS basic shape as a path in user units with its fill rule. */
export interface ClipShape {
  readonly path: Path;
  readonly fillRule: FillRule;
}

/**
 * The path of a CSS basic shape (CSS Shapes 1 §3): `circle()`, `ellipse()`, `inset()`, `polygon()` or
 * `path()`; `undefined` for anything else or a value that is not valid. A shape without size gives an empty
 * path.
 */
export function clipShape(text: string, box: ShapeBox, lengths: LengthContext): ClipShape | undefined {
  const [, name = '', inside = ''] = /^([a-z]+)\(\s*([\s\S]*?)\s*\)$/i.exec(text.trim()) ?? [];
  const maker = MAKERS.get(name.toLowerCase());
  const made = maker?.(inside, new BoxLengths(box, lengths));
  return made === undefined ? undefined : 'path' in made ? made : { path: made, fillRule: 'nonzero' };
}

// maps, since words of a file may be names that every object has
const MAKERS: ReadonlyMap<string, (inside: string, lengths: BoxLengths) => Path | ClipShape | undefined> =
  new Map<string, (inside: string, lengths: BoxLengths) => Path | ClipShape | undefined>([
    ['circle', (inside, lengths) => round(inside, lengths, 1)],
    ['ellipse', (inside, lengths) => round(inside, lengths, 2)],
    ['inset', inset],
    ['polygon', polygon],
    ['path', pathFunction],
  ]);

/** Lengths and percentages of a box. */
class BoxLengths {
  readonly box: ShapeBox;
  readonly #lengths: LengthContext;

  constructor(box: ShapeBox, lengths: LengthContext) {
    this.box = box;
    this.#lengths = { ...lengths, viewportWidth: box.width, viewportHeight: box.height };
  }

  /** A length in user units; `undefined` for what is none. */
  length(text: string | undefined, axis: 'x' | 'y' | 'other'): number | undefined {
    return text === undefined || parseLength(text) === undefined
      ? undefined
      : userUnits(text, axis, this.#lengths);
  }

  /** Where `at x y` is, from words, lengths or percentages; the middle without it. */
  place(text: string | undefined): readonly [number, number] | undefined {
    let [first = 'center', second = 'center', ...more] = words(text ?? '');
    if (/^(?:top|bottom)$/.test(first) || /^(?:left|right)$/.test(second)) {
      [first, second] = [second, first];
    }
    const x = this.length(HORIZONTAL.get(first) ?? first, 'x');
    const y = this.length(VERTICAL.get(second) ?? second, 'y');
    return x === undefined || y === undefined || more.length > 0
      ? undefined
      : [this.box.x + x, this.box.y + y];
  }
}

const HORIZONTAL: ReadonlyMap<string, string> = new Map([
  ['left', '0%'],
  ['center', '50%'],
  ['right', '100%'],
]);
const VERTICAL: ReadonlyMap<string, string> = new Map([
  ['top', '0%'],
  ['center', '50%'],
  ['bottom', '100%'],
]);

function words(text: string): string[] {
  return [...lengthList(text.toLowerCase(), /\s/u)];
}

/**
 * `circle(radius at place)` and `ellipse(radius radius at place)`: closest side where a radius is not given.
 */
function round(inside: string, lengths: BoxLengths, radii: 1 | 2): Path | undefined {
  const [sizes = '', place] = ` ${inside} `.split(/\sat\s/i);
  const at = lengths.place(place);
  const given = words(sizes);
  if (at === undefined || (given.length !== 0 && given.length !== radii)) {
    return undefined;
  }
  const [cx, cy] = at;
  const { x, y, width, height } = lengths.box;
  const across = [Math.abs(cx - x), Math.abs(x + width - cx)];
  const down = [Math.abs(cy - y), Math.abs(y + height - cy)];
  const sidesOf = { x: across, y: down, other: [...across, ...down] };
  const radius = (word = 'closest-side', axis: 'x' | 'y' | 'other'): number => {
    if (word === 'closest-side') {
      return Math.min(...sidesOf[axis]);
    }
    const length = word === 'farthest-side' ? Math.max(...sidesOf[axis]) : lengths.length(word, axis);
    return length ?? Number.NaN;
  };
  const rx = radius(given[0], radii === 1 ? 'other' : 'x');
  const ry = radii === 1 ? rx : radius(given[1], 'y');
  return rx >= 0 && ry >= 0 ? ellipsePath(cx, cy, rx, ry) : undefined;
}

/** `inset(top right bottom left round radii / radii)`: fewer values repeat as those of margins do. */
function inset(inside: string, lengths: BoxLengths): Path | undefined {
  const [sides = '', rounding = ''] = ` ${inside} `.split(/\sround\s/i);
  const [top, right, bottom, left] = fourOf(words(sides));
  const { x, y, width, height } = lengths.box;
  const [t, b] = [lengths.length(top, 'y'), lengths.length(bottom, 'y')];
  const [l, r] = [lengths.length(left, 'x'), lengths.length(right, 'x')];
  const radii = cornerRadii(rounding, lengths);
  if (t === undefined || b === undefined || l === undefined || r === undefined || radii === undefined) {
    return undefined;
  }
  return roundedBox({ x: x + l, y: y + t, width: width - l - r, height: height - t - b }, radii);
}

/** The four values, clockwise from the first, that one to four words stand for. */
function fourOf(values: readonly string[]): readonly (string | undefined)[] {
  const [a, b = a, c = a, d = b] = values;
  return values.length > 4 ? [] : [a, b, c, d];
}

/** Horizontal and vertical radius of each corner, clockwise from the top left. */
function cornerRadii(text: string, lengths: BoxLengths): (readonly [number, number])[] | undefined {
  if (text.trim() === '') {
    return [0, 1, 2, 3].map(() => [0, 0]);
  }
  const [across = '', down = across, ...more] = text.split('/');
  const xs = fourOf(words(across));
  const ys = fourOf(words(down));
  const radii = [0, 1, 2, 3].map((k): [number, number] => [
    lengths.length(xs[k], 'x') ?? Number.NaN,
    lengths.length(ys[k], 'y') ?? Number.NaN,
  ]);
  return more.length > 0 || radii.some(([rx, ry]) => !(rx >= 0 && ry >= 0)) ? undefined : radii;
}

/**
 * A box with rounded corners; radii too large for a side are all made smaller by one factor (CSS Backgrounds
 * 3 §4.5).
 */
function roundedBox({ x, y, width, height }: ShapeBox, radii: readonly (readonly [number, number])[]): Path {
  if (!(width > 0) || !(height > 0)) {
    return [];
  }
  const at = (k: number, axis: 0 | 1): number => radii[k]?.[axis] ?? 0;
  const fit = (side: number, a: number, b: number): number => (a + b > side ? side / (a + b) : 1);
  const factor = Math.min(
    fit(width, at(0, 0), at(1, 0)),
    fit(width, at(3, 0), at(2, 0)),
    fit(height, at(0, 1), at(3, 1)),
    fit(height, at(1, 1), at(2, 1)),
  );
  const out = new PathBuilder();
  // clockwise from the top left corner, each with the signs of the way from its point to the centre of its
  // arc
  const corners = [
    [x, y, 1, 1],
    [x + width, y, -1, 1],
    [x + width, y + height, -1, -1],
    [x, y + height, 1, -1],
  ] as const;
  corners.forEach(([px, py, sx, sy], k) => {
    const isRound = at(k, 0) > 0 && at(k, 1) > 0;
    const rx = isRound ? factor * at(k, 0) : 0;
    const ry = isRound ? factor * at(k, 1) : 0;
    const [cx, cy] = [px + sx * rx, py + sy * ry];
    const start = ((k + 2) * Math.PI) / 2;
    // at even corners the arc begins on the upright side
    const [fromX, fromY, toX, toY] = k % 2 === 0 ? [px, cy, cx, py] : [cx, py, px, cy];
    if (k === 0) {
      out.moveTo(fromX, fromY);
    } else {
      out.lineTo(fromX, fromY);
    }
    if (isRound) {
      out.arcTo({ cx, cy, ux: rx, uy: 0, vx: 0, vy: ry, start, end: start + Math.PI / 2 }, toX, toY);
    }
  });
  out.close();
  return out.path();
}

/** `polygon(rule, x y, x y, …)`. */
function polygon(inside: string, lengths: BoxLengths): ClipShape | undefined {
  const { fillRule, rest } = leadingRule(inside);
  const out = new PathBuilder();
  for (const [i, pair] of rest.split(',').entries()) {
    const [first, second, ...more] = words(pair);
    const x = lengths.length(first, 'x');
    const y = lengths.length(second, 'y');
    if (x === undefined || y === undefined || more.length > 0) {
      return undefined;
    }
    const [px, py] = [lengths.box.x + x, lengths.box.y + y];
    if (i === 0) {
      out.moveTo(px, py);
    } else {
      out.lineTo(px, py);
    }
  }
  out.close();
  return { path: out.path(), fillRule };
}

/** `path(rule, "data")`, its origin in the box's corner; data with an error makes it invalid. */
function pathFunction(inside: string, { box }: BoxLengths): ClipShape | undefined {
  const { fillRule, rest } = leadingRule(inside);
  const data = /^(["'])([\s\S]*)\1$/.exec(rest)?.[2];
  const read = data === undefined ? undefined : parsePathData(data);
  return read === undefined || read.errorAt !== undefined
    ? undefined
    : { path: transformPath(translation(box.x, box.y), read.path), fillRule };
}

function leadingRule(text: string): { fillRule: FillRule; rest: string } {
  const [whole = '', rule] = /^\s*(nonzero|evenodd)\s*,\s*/i.exec(text) ?? [];
  return {
    fillRule: rule?.toLowerCase() === 'evenodd' ? 'evenodd' : 'nonzero',
    rest: text.slice(whole.length),
  };
}
