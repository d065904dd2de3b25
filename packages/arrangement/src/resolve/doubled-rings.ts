import { type Point, pollStep, type Rings, ringArea, ringStart } from '@pourproof/plane';

/** An outline that is drawn more than once. */
export interface DoubledRing {
  /** The shape that draws it first and the one that repeats it; equal where one shape does both. */
  readonly regions: readonly [number, number];
  readonly areaMm2: number;
  readonly atMm: Point;
}

/**
 * The rings that repeat an earlier ring point by point, from whatever starting point and in either direction,
 * in the order drawn.
 *
 * @param vertexOfPoint the same number for points that count as one
 */
export function doubledRings(
  rings: Rings,
  shapeOfEdge: Uint32Array,
  vertexOfPoint: Uint32Array,
): readonly DoubledRing[] {
  const firstWith = new Map<string, number>();
  const doubled: DoubledRing[] = [];
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const to = rings.ringEnds[k];
    if (to - from < 3) {
      continue;
    }
    const shape = shapeOfEdge[from];
    const key = ringKey(vertexOfPoint, from, to);
    const earlier = firstWith.get(key);
    if (earlier === undefined) {
      firstWith.set(key, shape);
    } else {
      doubled.push({
        regions: [earlier, shape],
        areaMm2: Math.abs(ringArea(rings.coords, from, to)),
        atMm: [rings.coords[2 * from], rings.coords[2 * from + 1]],
      });
    }
  }
  return doubled;
}

/**
 * The vertices from the smallest on, towards its smaller neighbour, without repeats: equal for equal rings.
 */
function ringKey(vertexOfPoint: Uint32Array, from: number, to: number): string {
  const ring: number[] = [];
  for (let i = from; i < to; i++) {
    pollStep();
    if (ring.length === 0 || ring[ring.length - 1] !== vertexOfPoint[i]) {
      ring.push(vertexOfPoint[i]);
    }
  }
  while (ring.length > 1 && ring[ring.length - 1] === ring[0]) {
    ring.pop();
  }
  const n = ring.length;
  let start = 0;
  for (let i = 1; i < n; i++) {
    if (ring[i] < ring[start]) {
      start = i;
    }
  }
  const forward = ring[(start + 1) % n] <= ring[(start + n - 1) % n];
  const turned: number[] = [];
  for (let i = 0; i < n; i++) {
    pollStep();
    turned.push(ring[(forward ? start + i : start + n - i) % n]);
  }
  return turned.join();
}
