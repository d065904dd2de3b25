import { compose, rotation, scaling, translation } from '@pourproof/plane';
import type { Path } from '../path/path.ts';
import { directionAt } from '../path/segment-at.ts';
import { userUnits } from './css-length.ts';
import type { ShapePaints } from './draw-shape.ts';
import { countReuse } from './draw-use.ts';
import { narrowed, rectangle } from './draw-viewport.ts';
import { isDrawable } from './is-drawable.ts';
import { findReferenced, urlAddress } from './references.ts';
import { type DrawState, lengthsAt, type Scene, styleAround, styleUnder } from './scene.ts';
import { elementName, placeOf, type SvgElement } from './svg-element.ts';
import { fitViewBox, parseViewBox } from './view-box.ts';

/**
 * Two unit vectors whose sum is shorter than this are opposite, but for rounding: their bisector is then
 * taken square to them.
 */
const OPPOSITE_SUM = 1e-12;

const MARKERS = ['marker-start', 'marker-mid', 'marker-end'] as const;

/** A vertex of a path with the directions of arriving and leaving, in radians, as far as there are any. */
interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly into?: number | undefined;
  readonly out?: number | undefined;
}

/** Draws the markers of a path, line, polyline or polygon at its vertices (SVG 2 §13.7). */
export function drawMarkers(
  scene: Scene,
  element: SvgElement,
  state: DrawState,
  path: Path,
  paints: ShapePaints,
): void {
  if (scene.mode !== 'paint' || !/^(?:path|line|polyline|polygon)$/.test(element.name) || path.length === 0) {
    return;
  }
  if (state.style.get('visibility') !== 'visible') {
    return;
  }
  if (MARKERS.every((property) => state.style.get(property) === 'none')) {
    return;
  }
  const vertices = verticesOf(path);
  const place = (property: string, at: readonly Vertex[]): void => {
    const marker = at.length === 0 ? undefined : markerOf(scene, element, state, property);
    for (const vertex of marker === undefined ? [] : at) {
      drawMarker(scene, element, state, marker as SvgElement, vertex, property === 'marker-start', paints);
    }
  };
  place('marker-start', vertices.slice(0, 1));
  place('marker-mid', vertices.slice(1, -1));
  place('marker-end', vertices.slice(-1));
}

function markerOf(
  scene: Scene,
  element: SvgElement,
  state: DrawState,
  property: string,
): SvgElement | undefined {
  const address = urlAddress(state.style.get(property));
  const marker = address === undefined ? undefined : findReferenced(scene, address, element);
  if (marker?.name !== 'marker') {
    return undefined;
  }
  if (state.within.includes(marker)) {
    scene.notices.add('reference-cycle', placeOf(element), elementName(marker));
    return undefined;
  }
  return marker;
}

/**
 * Each subpath's start and the end of each of its segments; a closing line of no length still makes a vertex.
 */
function verticesOf(path: Path): Vertex[] {
  const out: Vertex[] = [];
  for (const { segments, closed, x0, y0 } of path) {
    const arriving: (number | undefined)[] = [];
    const leaving: (number | undefined)[] = [];
    segments.forEach((s, i) => {
      // a segment of no length takes the direction of its neighbours
      arriving.push(angleOf(directionAt(s, 1)) ?? arriving[i - 1]);
      leaving.push(angleOf(directionAt(s, 0)));
    });
    const last = segments.length - 1;
    for (let i = last - 1; i >= 0; i--) {
      leaving[i] ??= leaving[i + 1];
    }
    out.push({ x: x0, y: y0, into: closed ? arriving[last] : undefined, out: leaving[0] });
    segments.forEach((s, i) => {
      const onwards = i === last ? (closed ? leaving[0] : undefined) : leaving[i + 1];
      out.push({ x: s.x, y: s.y, into: arriving[i] ?? leaving[0], out: onwards });
    });
  }
  return out;
}

function angleOf(direction: readonly [number, number] | undefined): number | undefined {
  return direction === undefined ? undefined : Math.atan2(direction[1], direction[0]);
}

function drawMarker(
  scene: Scene,
  element: SvgElement,
  state: DrawState,
  marker: SvgElement,
  vertex: Vertex,
  isStart: boolean,
  paints: ShapePaints,
): void {
  countReuse(scene, element);
  const style = styleUnder(scene, marker, styleAround(scene, marker));
  if (style.get('display').toLowerCase() === 'none') {
    return;
  }
  const lengths = lengthsAt(scene, { ...state, style });
  const size = (name: string, axis: 'x' | 'y', otherwise: number): number =>
    userUnits(marker.attributes.get(name), axis, lengths, otherwise);
  const width = size('markerWidth', 'x', 3);
  const height = size('markerHeight', 'y', 3);
  const strokeWidth = userUnits(state.style.get('stroke-width'), 'other', lengthsAt(scene, state), 1);
  const unit = marker.attributes.get('markerUnits') === 'userSpaceOnUse' ? 1 : strokeWidth;
  const box = parseViewBox(marker.attributes.get('viewBox'));
  if (
    !(width > 0) ||
    !(height > 0) ||
    !(unit > 0) ||
    (box !== undefined && !(box.width > 0 && box.height > 0))
  ) {
    return;
  }
  const fit =
    box === undefined
      ? scaling(1)
      : fitViewBox(box, width, height, marker.attributes.get('preserveAspectRatio'));
  // only the scale of the fit counts: the reference point is what lands on the vertex
  const refX = reference(marker.attributes.get('refX'), 'x', box, size('refX', 'x', 0), width);
  const refY = reference(marker.attributes.get('refY'), 'y', box, size('refY', 'y', 0), height);
  const shiftX = fit[0] * refX + fit[4];
  const shiftY = fit[3] * refY + fit[5];
  const turn = compose(translation(vertex.x, vertex.y), rotation(markerAngle(marker, vertex, isStart)));
  const viewportToUser = compose(turn, compose(scaling(unit), translation(-shiftX, -shiftY)));
  const toViewport = compose(state.toMm, viewportToUser);
  if (!isDrawable(scene, marker, compose(toViewport, fit))) {
    return;
  }
  const overflow = style.declares('overflow') ? style.get('overflow') : 'hidden';
  const clip =
    overflow === 'visible' || overflow === 'auto'
      ? state.clip
      : narrowed(state.clip, rectangle(width, height, toViewport));
  const inside: DrawState = {
    ...state,
    style,
    toMm: compose(toViewport, fit),
    viewport: box === undefined ? { width, height } : { width: box.width, height: box.height },
    within: [...state.within, marker],
    contextFill: paints.fill,
    contextStroke: paints.stroke,
    ...(clip === undefined ? {} : { clip }),
  };
  for (const child of marker.children) {
    scene.draw(scene, child, inside);
  }
}

/** A reference coordinate in the marker's content units; words and percentages are of the view box. */
function reference(
  text: string | undefined,
  axis: 'x' | 'y',
  box: { x: number; y: number; width: number; height: number } | undefined,
  plain: number,
  viewportSide: number,
): number {
  const word = text?.trim().toLowerCase() ?? '';
  const start = axis === 'x' ? (box?.x ?? 0) : (box?.y ?? 0);
  const side = axis === 'x' ? (box?.width ?? viewportSide) : (box?.height ?? viewportSide);
  if (/^(?:left|top)$/.test(word)) {
    return start;
  }
  if (word === 'center') {
    return start + side / 2;
  }
  if (/^(?:right|bottom)$/.test(word)) {
    return start + side;
  }
  return word.endsWith('%') ? (Number.parseFloat(word) / 100) * side : plain;
}

function markerAngle(marker: SvgElement, vertex: Vertex, isStart: boolean): number {
  const orient = (marker.attributes.get('orient') ?? '0').trim();
  if (orient === 'auto' || orient === 'auto-start-reverse') {
    const angle = bisector(vertex);
    return orient === 'auto-start-reverse' && isStart ? angle + Math.PI : angle;
  }
  const match = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(deg|grad|rad|turn)?$/i.exec(orient);
  const perUnit = { deg: Math.PI / 180, grad: Math.PI / 200, rad: 1, turn: 2 * Math.PI };
  const unit = (match?.[2]?.toLowerCase() ?? 'deg') as keyof typeof perUnit;
  return match === null ? 0 : Number(match[1]) * perUnit[unit];
}

/** The direction half way between arriving and leaving. */
function bisector({ into, out }: Vertex): number {
  if (into === undefined || out === undefined) {
    return out ?? into ?? 0;
  }
  const x = Math.cos(into) + Math.cos(out);
  const y = Math.sin(into) + Math.sin(out);
  return Math.hypot(x, y) < OPPOSITE_SUM ? out - Math.PI / 2 : Math.atan2(y, x);
}
