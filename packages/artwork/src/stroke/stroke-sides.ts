import { ringArea } from '@pourproof/plane';
import { appendWithArea } from '../flatten/area-true-polyline.ts';
import type { Segment } from '../path/path.ts';
import { directionAt, segmentAt } from '../path/segment-at.ts';
import type { StrokeEdges } from './stroke-outline.ts';

/** Largest turn of a curve between two stations, in radians. */
const MAX_TURN = Math.PI / 8;

/** Most halvings of each quarter of a curve, needed where it turns on the spot. */
const MAX_HALVINGS = 12;

/** Nodes and weights of Gauss–Legendre quadrature with four points on 0…1 (exact to degree 7). */
const NODES = [0.06943184420297371, 0.33000947820757187, 0.6699905217924281, 0.9305681557970263];
const WEIGHTS = [0.1739274225687269, 0.3260725774312731, 0.3260725774312731, 0.1739274225687269];

/** A point of the curve with its unit tangent. */
interface Station {
  readonly t: number;
  readonly x: number;
  readonly y: number;
  readonly tx: number;
  readonly ty: number;
}

/**
 * Appends both edges of one segment's stroke, from its first to its last corner. The edges are the true
 * offset curves to within `tolerance`, with exactly the area between them, so that a stroke's area is its
 * width times its length.
 */
export function appendSides(edges: StrokeEdges, segment: Segment, half: number, tolerance: number): void {
  const stations = takeStations(segment, half, tolerance);
  appendEdge(edges.right, edges.extra, segment, stations, -half, tolerance);
  appendEdge(edges.left, edges.extra, segment, stations, half, tolerance);
}

function takeStations(segment: Segment, half: number, tolerance: number): Station[] {
  const first = stationAt(segment, 0);
  const parts = segment.kind === 'line' ? 1 : 4;
  const out = [first];
  let from = first;
  for (let i = 1; i <= parts; i++) {
    const to = stationAt(segment, i / parts);
    if (segment.kind === 'line') {
      out.push(to);
    } else {
      halve(out, segment, from, to, half, tolerance, MAX_HALVINGS);
    }
    from = to;
  }
  return out;
}

function stationAt(segment: Segment, t: number): Station {
  const p = segmentAt(segment, t);
  const [tx, ty] = directionAt(segment, t) ?? [1, 0];
  // the ends as the file gives them
  return t === 1 ? { t, x: segment.x, y: segment.y, tx, ty } : { t, x: p.x, y: p.y, tx, ty };
}

/**
 * Appends the stations after `from` up to `to`, close enough that chords of both edges stay within half the
 * tolerance.
 */
function halve(
  out: Station[],
  segment: Segment,
  from: Station,
  to: Station,
  half: number,
  tolerance: number,
  left: number,
): void {
  const mid = stationAt(segment, (from.t + to.t) / 2);
  const turn = turnBetween(from, mid) + turnBetween(mid, to);
  const length = Math.hypot(mid.x - from.x, mid.y - from.y) + Math.hypot(to.x - mid.x, to.y - mid.y);
  // a chord of an arc of this length and turn lies length·turn/8 off it
  if (left === 0 || (turn <= MAX_TURN && ((length + half * turn) * turn) / 8 <= tolerance / 2)) {
    out.push(to);
    return;
  }
  halve(out, segment, from, mid, half, tolerance, left - 1);
  halve(out, segment, mid, to, half, tolerance, left - 1);
}

function turnBetween(a: Station, b: Station): number {
  return Math.abs(Math.atan2(a.tx * b.ty - a.ty * b.tx, a.tx * b.tx + a.ty * b.ty));
}

/**
 * Appends the edge at signed distance `d` along the normal (−ty, tx); backward parts go to `extra` as rings
 * of their own.
 */
function appendEdge(
  edge: number[],
  extra: number[][],
  segment: Segment,
  stations: readonly Station[],
  d: number,
  tolerance: number,
): void {
  let run: number[] = [];
  let slices: number[] = [];
  const flush = (): void => {
    edge.push(run[0], run[1]);
    if (slices.length > 0) {
      appendWithArea(edge, run, slices, tolerance / 2);
    }
  };
  stations.forEach((b, i) => {
    const a = stations[i - 1];
    const bx = b.x - d * b.ty;
    const by = b.y + d * b.tx;
    if (a !== undefined) {
      const slice = segment.kind === 'line' ? 0 : sliceArea(segment, a, b, d);
      if (slice === undefined) {
        flush();
        edge.push(a.x, a.y, b.x, b.y);
        addBackwardPart(extra, a, b, d);
        run = [];
        slices = [];
      } else {
        slices.push(slice);
      }
    }
    run.push(bx, by);
  });
  flush();
}

/**
 * Signed area between the edge from a to b and its chord, by quadrature of ½∫(o − o(a)) × o′ dt; `undefined`
 * where the edge runs backwards, because the curve is tighter there than `d`.
 */
function sliceArea(segment: Segment, a: Station, b: Station, d: number): number | undefined {
  const ox = a.x - d * a.ty;
  const oy = a.y + d * a.tx;
  const step = b.t - a.t;
  let sum = 0;
  for (let k = 0; k < NODES.length; k++) {
    const p = segmentAt(segment, a.t + step * NODES[k]);
    const speed2 = p.dx * p.dx + p.dy * p.dy;
    const speed = Math.sqrt(speed2);
    const forward = speed - (d * (p.dx * p.ddy - p.dy * p.ddx)) / speed2;
    if (!(forward > 0)) {
      return undefined;
    }
    const tx = p.dx / speed;
    const ty = p.dy / speed;
    sum += WEIGHTS[k] * forward * ((p.x - d * ty - ox) * ty - (p.y + d * tx - oy) * tx);
  }
  return (sum * step) / 2;
}

/**
 * The quadrilateral that the cross-line sweeps from a to b on one side, cut at its crossing if it is a bow
 * tie.
 */
function addBackwardPart(extra: number[][], a: Station, b: Station, d: number): void {
  const ex = a.x - d * a.ty;
  const ey = a.y + d * a.tx;
  const cx = b.x - d * b.ty;
  const cy = b.y + d * b.tx;
  const det = (ex - a.x) * (cy - b.y) - (ey - a.y) * (cx - b.x);
  const s = ((b.x - a.x) * (cy - b.y) - (b.y - a.y) * (cx - b.x)) / det;
  const r = ((b.x - a.x) * (ey - a.y) - (b.y - a.y) * (ex - a.x)) / det;
  if (s > 0 && s < 1 && r > 0 && r < 1) {
    const x = a.x + s * (ex - a.x);
    const y = a.y + s * (ey - a.y);
    addPositive(extra, [a.x, a.y, b.x, b.y, x, y]);
    addPositive(extra, [x, y, ex, ey, cx, cy]);
  } else {
    addPositive(extra, [a.x, a.y, b.x, b.y, cx, cy, ex, ey]);
  }
}

function addPositive(extra: number[][], ring: number[]): void {
  const area = ringArea(ring);
  if (area === 0) {
    return;
  }
  if (area < 0) {
    const turned: number[] = [];
    for (let i = ring.length - 2; i >= 0; i -= 2) {
      turned.push(ring[i], ring[i + 1]);
    }
    extra.push(turned);
    return;
  }
  extra.push(ring);
}
