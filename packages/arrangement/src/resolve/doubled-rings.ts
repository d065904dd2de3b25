import { type Point, type Rings, ringArea, ringStart } from '@pourproof/plane';

/** An outline that is drawn again. */
export interface DoubledRing {
  /** Numbers of the shapes that draw it: the first, and the one that draws it again (the same number when within one shape). */
  readonly regions: readonly [number, number];
  readonly areaMm2: number;
  readonly atMm: Point;
}

/**
 * The rings that repeat an earlier ring point by point, whatever their direction and starting point, in drawn order.
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

/** The vertices from the smallest onwards in the direction of its smaller neighbour, repeats left out. */
function ringKey(vertexOfPoint: Uint32Array, from: number, to: number): string {
  const ring: number[] = [];
  for (let i = from; i < to; i++) {
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
    turned.push(ring[(forward ? start + i : start + n - i) % n]);
  }
  return turned.join();
}
