import { pollStep, type Rings, ringStart } from '@pourproof/plane';
import { orient2d } from 'robust-predicates';
import { ROUNDING_REL_TOL, STRAIGHT_TOL_RAD } from './tolerances.ts';

/**
 * The edges of a region as the medial axis needs them: edge i runs from point i to point `next[i]`, the
 * inside on the side of its normal `(-ty, tx)`. Coordinates are relative to `(originX, originY)`, the centre
 * of the bounding box, so that artwork far from the origin keeps its digits.
 */
export interface Boundary {
  readonly count: number;
  readonly originX: number;
  readonly originY: number;
  /** Largest absolute coordinate, mm. */
  readonly extent: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Unit direction of each edge. */
  readonly tx: Float64Array;
  readonly ty: Float64Array;
  readonly length: Float64Array;
  readonly next: Int32Array;
  readonly previous: Int32Array;
  /** 1 where the inside angle is π or more, so that the vertex itself is a site. */
  readonly isReflex: Uint8Array;
}

/** The edges of the rings of a clean region; none may have length 0. */
export function boundaryOf(rings: Rings): Boundary {
  const { coords, ringEnds } = rings;
  const count = coords.length / 2;
  const { originX, originY, extent } = middle(coords);
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    pollStep();
    x[i] = coords[2 * i] - originX;
    y[i] = coords[2 * i + 1] - originY;
  }
  const next = new Int32Array(count);
  const previous = new Int32Array(count);
  for (let k = 0; k < ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const to = ringEnds[k];
    for (let i = from; i < to; i++) {
      pollStep();
      const j = i + 1 === to ? from : i + 1;
      next[i] = j;
      previous[j] = i;
    }
  }
  const tx = new Float64Array(count);
  const ty = new Float64Array(count);
  const length = new Float64Array(count);
  const isReflex = new Uint8Array(count);
  for (let i = 0; i < count; i++) {
    pollStep();
    const j = next[i];
    const dx = coords[2 * j] - coords[2 * i];
    const dy = coords[2 * j + 1] - coords[2 * i + 1];
    const d = Math.sqrt(dx * dx + dy * dy);
    length[i] = d;
    tx[i] = dx / d;
    ty[i] = dy / d;
  }
  for (let i = 0; i < count; i++) {
    pollStep();
    const h = previous[i];
    const j = next[i];
    // orient2d is positive for a turn from +y to +x; a straight vertex is a site with an empty cell
    const turn = orient2d(
      coords[2 * h],
      coords[2 * h + 1],
      coords[2 * i],
      coords[2 * i + 1],
      coords[2 * j],
      coords[2 * j + 1],
    );
    const slack = STRAIGHT_TOL_RAD + (ROUNDING_REL_TOL * extent) / Math.min(length[h], length[i]);
    isReflex[i] = turn >= 0 || isStraight(tx[h], ty[h], tx[i], ty[i], slack) ? 1 : 0;
  }
  return { count, originX, originY, extent, x, y, tx, ty, length, next, previous, isReflex };
}

/**
 * Whether two directions differ by no more than the rounding of themselves and of the points that they join.
 */
function isStraight(ax: number, ay: number, bx: number, by: number, slackRad: number): boolean {
  return Math.abs(ax * by - ay * bx) < slackRad && ax * bx + ay * by > 0;
}

function middle(coords: Float64Array): { originX: number; originY: number; extent: number } {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i < coords.length; i += 2) {
    minX = Math.min(minX, coords[i]);
    maxX = Math.max(maxX, coords[i]);
    minY = Math.min(minY, coords[i + 1]);
    maxY = Math.max(maxY, coords[i + 1]);
  }
  if (coords.length === 0) {
    return { originX: 0, originY: 0, extent: 0 };
  }
  return {
    originX: (minX + maxX) / 2,
    originY: (minY + maxY) / 2,
    extent: Math.max(maxX - minX, maxY - minY) / 2,
  };
}
