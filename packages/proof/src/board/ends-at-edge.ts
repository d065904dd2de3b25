import { fibreVector } from '@pourproof/geometry';
import type { Board } from '@pourproof/job';
import { applyTransform, type Point, radians, ringCoords } from '@pourproof/plane';
import type { BlockMeasures } from './block-measures.ts';
import { clipSegment } from './clip-segment.ts';
import type { PlacedBoard } from './place-board.ts';

/** Wood along the fibres from a pocket to the edge of the board, mm, with its ends in the artwork's frame. */
export interface EndAtEdge {
  readonly gapMm: number;
  readonly from: Point;
  readonly to: Point;
}

/** A way shorter than this is none: the pocket is open at the edge there, mm. */
const MIN_GAP_MM = 1e-6;
/** Share of a way that may be missing from its block: rounding. */
const SHARE_TOL = 1e-6;

/**
 * For every outline of the cut in a block and each sense of the fibres, the shortest way along them to the edge of the board, if it is shorter than a reach.
 * Ways that cross a glue line are left out: it stops colour.
 *
 * Exact for the flattened outline, since the way to a straight edge is shortest at a corner.
 */
export function endsAtEdge(
  { block, cut }: BlockMeasures,
  reachMm: number,
  board: Board,
  { toBoard, toArtwork }: PlacedBoard,
): readonly EndAtEdge[] {
  const [fx, fy] = fibreVector(radians(block.grainDeg));
  const origin = applyTransform(toBoard, [0, 0]);
  const tip = applyTransform(toBoard, [fx, fy]);
  const along: Point = [tip[0] - origin[0], tip[1] - origin[1]];
  const found: EndAtEdge[] = [];
  for (let k = 0; k < cut.ringEnds.length; k++) {
    const ring = ringCoords(cut, k);
    for (const sense of [1, -1]) {
      const way: Point = [sense * along[0], sense * along[1]];
      let nearest: EndAtEdge | null = null;
      for (let i = 0; i < ring.length; i += 2) {
        const from: Point = [ring[i] as number, ring[i + 1] as number];
        const at = applyTransform(toBoard, from);
        const gapMm = wayOut(at, way, board);
        if (gapMm > MIN_GAP_MM && gapMm < (nearest?.gapMm ?? reachMm)) {
          const to = applyTransform(toArtwork, [at[0] + gapMm * way[0], at[1] + gapMm * way[1]]);
          nearest = isInBlock(block.region, from, to) ? { gapMm, from, to } : nearest;
        }
      }
      if (nearest !== null) {
        found.push(nearest);
      }
    }
  }
  return found;
}

/** Length of a way, of unit direction, from a point on the board to its edge. */
function wayOut([x, y]: Point, [dx, dy]: Point, { widthMm, heightMm }: Board): number {
  const along = (at: number, step: number, end: number): number =>
    step > 0 ? (end - at) / step : step < 0 ? -at / step : Number.POSITIVE_INFINITY;
  return Math.min(along(x, dx, widthMm), along(y, dy, heightMm));
}

function isInBlock(region: BlockMeasures['block']['region'], [ax, ay]: Point, [bx, by]: Point): boolean {
  if (region === null) {
    return true;
  }
  // a way along a joint has wood on either side
  return [1, -1].some((side) => {
    const parts = clipSegment(region, [ax, ay, bx, by], [side * (ay - by), side * (bx - ax)]);
    return parts.reduce((sum, [from, to]) => sum + to - from, 0) > 1 - SHARE_TOL;
  });
}
