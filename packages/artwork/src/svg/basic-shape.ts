import { type Path, PathBuilder } from '../path/path.ts';
import type { ComputedStyle } from './computed-style.ts';
import { type LengthContext, userUnits } from './css-length.ts';
import { parsePathData } from './path-data.ts';
import type { SvgElement } from './svg-element.ts';

/** A shape element's geometry in user units, and what of its data was wrong. */
export interface ShapeGeometry {
  readonly path: Path;
  /** Index of the first error in path data or points. */
  readonly errorAt?: number;
}

/** The elements that paint geometry of their own. */
export const SHAPE_ELEMENTS: ReadonlySet<string> = new Set([
  'path',
  'rect',
  'circle',
  'ellipse',
  'line',
  'polyline',
  'polygon',
]);

/**
 * The geometry of a shape element as its equivalent path (SVG 2 §10), in user units; shapes without size give
 * an empty one.
 */
export function shapeGeometry(
  element: SvgElement,
  style: ComputedStyle,
  context: LengthContext,
): ShapeGeometry {
  const shape = new Shape(element, style, context);
  switch (element.name) {
    case 'path':
      return pathElement(element, style);
    case 'rect':
      return { path: shape.rect() };
    case 'circle':
      return { path: ellipsePath(shape.x('cx'), shape.y('cy'), shape.other('r'), shape.other('r')) };
    case 'ellipse':
      return { path: shape.ellipse() };
    case 'line':
      return { path: shape.line() };
    default:
      return points(element.attributes.get('points') ?? '', element.name === 'polygon');
  }
}

function pathElement(element: SvgElement, style: ComputedStyle): ShapeGeometry {
  const declared = style.get('d');
  // the property may hold path("…"); the attribute is plain data
  const inCss = /^path\(\s*(["'])([\s\S]*)\1\s*\)$/.exec(declared);
  return parsePathData(inCss?.[2] ?? element.attributes.get('d') ?? '');
}

/** Reads the lengths of one shape element. */
class Shape {
  private readonly element: SvgElement;
  private readonly style: ComputedStyle;
  private readonly context: LengthContext;

  constructor(element: SvgElement, style: ComputedStyle, context: LengthContext) {
    this.element = element;
    this.style = style;
    this.context = context;
  }

  x(name: string): number {
    return userUnits(this.style.get(name), 'x', this.context);
  }

  y(name: string): number {
    return userUnits(this.style.get(name), 'y', this.context);
  }

  other(name: string): number {
    return userUnits(this.style.get(name), 'other', this.context);
  }

  /** SVG 2 §10.2: a missing radius takes the other's value; both at most half the side. */
  rect(): Path {
    const x = this.x('x');
    const y = this.y('y');
    const width = this.x('width');
    const height = this.y('height');
    if (!(width > 0) || !(height > 0)) {
      return [];
    }
    const [rx, ry] = this.radii();
    return roundedRect(x, y, width, height, Math.min(rx, width / 2), Math.min(ry, height / 2));
  }

  ellipse(): Path {
    return ellipsePath(this.x('cx'), this.y('cy'), ...this.radii());
  }

  line(): Path {
    const at = (name: string, axis: 'x' | 'y'): number =>
      userUnits(this.element.attributes.get(name), axis, this.context);
    const out = new PathBuilder();
    out.moveTo(at('x1', 'x'), at('y1', 'y'));
    out.lineTo(at('x2', 'x'), at('y2', 'y'));
    return out.path();
  }

  private radii(): [number, number] {
    const auto = (name: string): boolean => this.style.get(name) === 'auto';
    const rx = auto('rx') ? undefined : this.x('rx');
    const ry = auto('ry') ? undefined : this.y('ry');
    return [rx ?? ry ?? 0, ry ?? rx ?? 0];
  }
}

/**
 * Starts at the top left straight edge and goes towards +x, as the specification does; dashes start there.
 */
function roundedRect(x: number, y: number, w: number, h: number, rx: number, ry: number): Path {
  const out = new PathBuilder();
  const round = rx > 0 && ry > 0;
  const dx = round ? rx : 0;
  const dy = round ? ry : 0;
  const corner = (cx: number, cy: number, quarter: number, toX: number, toY: number): void => {
    if (round) {
      const start = (quarter * Math.PI) / 2;
      out.arcTo({ cx, cy, ux: rx, uy: 0, vx: 0, vy: ry, start, end: start + Math.PI / 2 }, toX, toY);
    }
  };
  const lineTo = (toX: number, toY: number): void => {
    if (toX !== out.x || toY !== out.y) {
      out.lineTo(toX, toY);
    }
  };
  out.moveTo(x + dx, y);
  lineTo(x + w - dx, y);
  corner(x + w - dx, y + dy, -1, x + w, y + dy);
  lineTo(x + w, y + h - dy);
  corner(x + w - dx, y + h - dy, 0, x + w - dx, y + h);
  lineTo(x + dx, y + h);
  corner(x + dx, y + h - dy, 1, x, y + h - dy);
  lineTo(x, y + dy);
  corner(x + dx, y + dy, 2, x + dx, y);
  out.close();
  return out.path();
}

/** Four quarter arcs from the rightmost point towards +y (SVG 2 §10.3). */
export function ellipsePath(cx: number, cy: number, rx: number, ry: number): Path {
  if (!(rx > 0) || !(ry > 0)) {
    return [];
  }
  const out = new PathBuilder();
  out.moveTo(cx + rx, cy);
  const ends = [
    [cx, cy + ry],
    [cx - rx, cy],
    [cx, cy - ry],
    [cx + rx, cy],
  ] as const;
  ends.forEach(([x, y], quarter) => {
    const start = (quarter * Math.PI) / 2;
    out.arcTo({ cx, cy, ux: rx, uy: 0, vx: 0, vy: ry, start, end: start + Math.PI / 2 }, x, y);
  });
  out.close();
  return out.path();
}

/** Pairs of coordinates; an odd last number or anything unreadable ends the shape before it (SVG 2 §10.6). */
function points(text: string, close: boolean): ShapeGeometry {
  const number = /[\s,]*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)/y;
  const values: number[] = [];
  let at = 0;
  for (;;) {
    number.lastIndex = at;
    const match = number.exec(text);
    const value = Number(match?.[1] ?? Number.NaN);
    if (match === null || !Number.isFinite(value)) {
      break;
    }
    values.push(value);
    at = number.lastIndex;
  }
  const out = new PathBuilder();
  for (let i = 0; i + 1 < values.length; i += 2) {
    const [x, y] = [values[i] as number, values[i + 1] as number];
    if (i === 0) {
      out.moveTo(x, y);
    } else {
      out.lineTo(x, y);
    }
  }
  if (close) {
    out.close();
  }
  const wrong = values.length % 2 === 1 || text.slice(at).trim() !== '';
  return wrong ? { path: out.path(), errorAt: at } : { path: out.path() };
}
