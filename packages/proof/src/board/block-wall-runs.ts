import { fibreVector, type WallRunOptions, wallRuns } from '@pourproof/geometry';
import { type Point, radians } from '@pourproof/plane';
import type { BlockMeasures } from './block-measures.ts';
import { clipPath } from './clip-path.ts';
import { stretchesOf } from './stretches-of.ts';
import { leastAlong, sidewaysExposure, type WallSlope } from './wall-exposure.ts';

/** A stretch of wall in one block: an open line and a point on it, mm. */
export interface BlockWallRun {
  readonly path: Float64Array;
  readonly atMm: Point;
  readonly edges: readonly WallEdge[];
}

/** An edge of a stretch of wall. */
export interface WallEdge {
  /** See `sidewaysExposure`. */
  readonly exposure: number;
  /** Its length as seen along the fibres, mm: how wide a stain from it is. */
  readonly acrossMm: number;
  /** Whether its wood is on the side that the fibre's azimuth points to. */
  readonly isAhead: boolean;
}

/** Rounding of an exposure that equals its limit. */
const EXPOSURE_TOL = 1e-12;

/**
 * The stretches of wall in a block with at least an exposure in three dimensions, see `sidewaysExposure`;
 * clipped to the block.
 *
 * @param leanRad angle of the walls from the vertical at the face
 */
export function blockWallRuns(
  { block, near }: BlockMeasures,
  leanRad: number,
  { minExposure, ...options }: WallRunOptions,
): readonly BlockWallRun[] {
  const slope: WallSlope = { diveRad: radians(block.diveDeg), leanRad };
  const { rising, falling } = leastAlong(minExposure, slope);
  const least = Math.min(rising, falling);
  if (least > 1 + EXPOSURE_TOL) {
    return [];
  }
  const { region } = block;
  const grainRad = radians(block.grainDeg);
  const isOneLimit = Math.abs(rising - falling) <= EXPOSURE_TOL;
  const isSquare = (along: number): boolean =>
    Math.abs(along) >= (along > 0 ? rising : falling) - EXPOSURE_TOL;
  return wallRuns(near, grainRad, { ...options, minExposure: Math.min(1, least) }).flatMap((run) =>
    clipPath(run.path, region)
      .flatMap((path) =>
        isOneLimit
          ? [path]
          : stretchesOf(path, (edge) => isSquare(alongOf(edge, grainRad)), options.joinGapMm),
      )
      .map((path) => ({
        path,
        atMm: region === null && isOneLimit ? run.atMm : middleOf(path),
        edges: edgesOf(path, grainRad, slope),
      })),
  );
}

/** The two ends of an edge. */
type Edge = readonly [ax: number, ay: number, bx: number, by: number];

/** n₂·f₂ of an edge; beside an edge (ex, ey) of a clean ring, the wood is on the side of (ey, −ex). */
function alongOf([ax, ay, bx, by]: Edge, grainRad: number): number {
  const [fx, fy] = fibreVector(grainRad);
  const [dx, dy] = [bx - ax, by - ay];
  const length = Math.hypot(dx, dy);
  return length > 0 ? (dy * fx - dx * fy) / length : 0;
}

function edgesOf(path: Float64Array, grainRad: number, slope: WallSlope): readonly WallEdge[] {
  const edges: WallEdge[] = [];
  for (let i = 0; i + 3 < path.length; i += 2) {
    const edge = path.subarray(i, i + 4) as unknown as Edge;
    const along = alongOf(edge, grainRad);
    const lengthMm = Math.hypot(edge[2] - edge[0], edge[3] - edge[1]);
    edges.push({
      exposure: sidewaysExposure(along, slope),
      acrossMm: lengthMm * Math.abs(along),
      isAhead: along > 0,
    });
  }
  return edges;
}

/** The midpoint of the longest edge of a line. */
function middleOf(path: Float64Array): Point {
  let best: Point = [path[0] ?? 0, path[1] ?? 0];
  let longest = -1;
  for (let i = 0; i + 3 < path.length; i += 2) {
    const [ax, ay, bx, by] = path.subarray(i, i + 4) as unknown as [number, number, number, number];
    const length = Math.hypot(bx - ax, by - ay);
    if (length > longest) {
      longest = length;
      best = [(ax + bx) / 2, (ay + by) / 2];
    }
  }
  return best;
}
