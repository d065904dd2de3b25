import {
  InternalError,
  poll,
  pollStep,
  RESOLVE_GRID_MM,
  type Rings,
  ringStart,
  ringsBounds,
} from '@pourproof/plane';
import { CrossingsError, MAX_CROSSINGS } from './crossings-error.ts';
import { addOwner, addSegment, emptySegmentSet, isBefore, type SegmentSet } from './segment-set.ts';
import { sweepPass } from './sweep-pass.ts';
import type { CrossingSink } from './sweep-state.ts';
import { VertexIndex } from './vertex-index.ts';

/** Edges cut so that they meet in common ends only, with their order along a sweep line. */
export interface Arrangement {
  readonly segments: SegmentSet;
  /** For each segment the one directly below its left end, −1 for none. */
  readonly below: readonly number[];
  /** Vertex of each drawn point. */
  readonly vertexOfPoint: Uint32Array;
  /** Points nearer to each other than this are one, mm. */
  readonly toleranceMm: number;
  /** Largest distance that a drawn point was moved onto an earlier one, mm. */
  readonly largestMoveMm: number;
}

/**
 * The first pass cuts nearly everything, the second proves it; drawings needed three at most. Only where
 * crossings lie as dense as the tolerance, thousands within 1 µm, does rounding keep making new ones.
 */
const MAX_PASSES = 10;
/** There the tolerance grows by this factor with each attempt: at the most, 33 µm. */
const COARSER = 16;
const MAX_ATTEMPTS = 5;

/**
 * Cuts the edges of rings wherever they meet.
 *
 * Drawn points keep their coordinates, except those nearer than the tolerance to an earlier one. O((n + k)
 * log n) for n points and k meetings.
 *
 * @param shapeOfEdge shape of each drawn edge, the edge numbered by its first point
 * @param onCrossing makes the sink that each crossing is handed to, with the owner lists of both segments
 *   (see `SegmentSet`)
 * @throws {RangeError} when a coordinate is not finite
 * @throws {CrossingsError} when more than {@link MAX_CROSSINGS} crossings are found
 */
export function arrange(rings: Rings, shapeOfEdge: Uint32Array, onCrossing: CrossingSinkMaker): Arrangement {
  let toleranceMm = toleranceFor(rings);
  for (let attempt = 0; attempt < MAX_ATTEMPTS; attempt++) {
    const arrangement = tryArrange(rings, shapeOfEdge, toleranceMm, onCrossing);
    if (arrangement !== undefined) {
      return arrangement;
    }
    toleranceMm *= COARSER;
  }
  throw new InternalError('cutting edges at their crossings should come to an end');
}

/** Makes the sink for one attempt over a set of segments. */
export type CrossingSinkMaker = (segments: SegmentSet) => CrossingSink;

/** Tolerance where the extent is 0, mm: equal points are still one. */
const MIN_TOLERANCE_MM = 1e-18;

/** Largest tolerance as a share of the extent: minute artwork keeps its shape. */
const MINUTE_REL_TOL = 5e-7;
/** Smallest tolerance as a share of the extent: the cells of the vertex index have 32-bit numbers. */
const NUMBERED_REL_TOL: number = 2 ** -30;
/**
 * Smallest tolerance as a share of the distance from the origin: 2⁸ units in the last place, what computed
 * crossings are off by and more.
 */
const ROUNDING_REL_TOL: number = 2 ** -44;

/** Half the grid, within what the extent and the distance from the origin allow. */
function toleranceFor(rings: Rings): number {
  const [minX, minY, maxX, maxY] = ringsBounds(rings);
  const extent = Math.max(maxX - minX, maxY - minY, 0);
  const farthest = Math.max(Math.abs(minX), Math.abs(minY), Math.abs(maxX), Math.abs(maxY));
  if (rings.coords.length > 0 && !Number.isFinite(extent + farthest)) {
    throw new RangeError('coordinates must be finite numbers of mm');
  }
  return Math.max(
    Math.min(RESOLVE_GRID_MM / 2, extent * MINUTE_REL_TOL),
    extent * NUMBERED_REL_TOL,
    farthest * ROUNDING_REL_TOL,
    MIN_TOLERANCE_MM,
  );
}

function tryArrange(
  rings: Rings,
  shapeOfEdge: Uint32Array,
  toleranceMm: number,
  onCrossing: CrossingSinkMaker,
): Arrangement | undefined {
  const [minX, minY] = ringsBounds(rings);
  const pointCount = rings.coords.length / 2;
  const vertices = new VertexIndex(toleranceMm, minX, minY, pointCount);
  const vertexOfPoint = new Uint32Array(pointCount);
  for (let i = 0; i < pointCount; i++) {
    pollStep();
    vertexOfPoint[i] = vertices.findOrAdd(rings.coords[2 * i], rings.coords[2 * i + 1]);
  }
  const { largestMoveMm } = vertices;
  const segments = drawnSegments(rings, vertexOfPoint, vertices);
  const sink = limited(onCrossing(segments), vertices);
  for (let pass = 0; pass < MAX_PASSES; pass++) {
    poll();
    const { changed, below } = sweepPass(segments, sweepOrder(vertices), shapeOfEdge, toleranceMm, sink);
    if (!changed) {
      return { segments, below, vertexOfPoint, toleranceMm, largestMoveMm };
    }
  }
  return undefined;
}

/** A sink that hands crossings on while there are not too many. */
function limited(sink: CrossingSink, { x, y }: VertexIndex): CrossingSink {
  let found = 0;
  return (v, a, b) => {
    found += b < 0 ? 0 : 1;
    if (found > MAX_CROSSINGS) {
      throw new CrossingsError(found, MAX_CROSSINGS, [x[v], y[v]]);
    }
    sink(v, a, b);
  };
}

function drawnSegments(rings: Rings, vertexOfPoint: Uint32Array, vertices: VertexIndex): SegmentSet {
  const segments = emptySegmentSet(vertices);
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const to = rings.ringEnds[k];
    for (let i = from; i < to; i++) {
      pollStep();
      const u = vertexOfPoint[i];
      const v = vertexOfPoint[i + 1 === to ? from : i + 1];
      if (u !== v) {
        const sign = isBefore(vertices, u, v) ? 1 : -1;
        const s = addSegment(segments, u, v, -1);
        segments.owners[s] = addOwner(segments, i, sign, -1);
      }
    }
  }
  return segments;
}

/**
 * All vertices by x, then y: a bucket sort along x with as many buckets as vertices, then by comparison
 * within each.
 */
function sweepOrder({ x, y }: VertexIndex): Uint32Array {
  const count = x.length;
  let minX = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  for (let v = 0; v < count; v++) {
    pollStep();
    minX = Math.min(minX, x[v]);
    maxX = Math.max(maxX, x[v]);
  }
  const density = (count - 1) / (maxX - minX);
  const perMm = Number.isFinite(density) ? density : 0;
  const slotOf = (v: number): number => Math.min(count - 1, Math.floor((x[v] - minX) * perMm));
  // first the size of each bucket, then its end, finally its start
  const slots = new Uint32Array(count + 1);
  for (let v = 0; v < count; v++) {
    pollStep();
    slots[slotOf(v)]++;
  }
  for (let k = 1; k <= count; k++) {
    slots[k] += slots[k - 1];
  }
  const order = new Uint32Array(count);
  for (let v = count - 1; v >= 0; v--) {
    pollStep();
    order[--slots[slotOf(v)]] = v;
  }
  const compare = (u: number, v: number): number => x[u] - x[v] || y[u] - y[v];
  for (let k = 0; k < count; k++) {
    pollStep();
    const [from, to] = [slots[k], slots[k + 1]];
    if (to - from === 2 && compare(order[from], order[from + 1]) > 0) {
      [order[from], order[from + 1]] = [order[from + 1], order[from]];
    } else if (to - from > 2) {
      order.subarray(from, to).sort(compare);
    }
  }
  return order;
}
