import type { ArcRings } from '@pourproof/geometry';
import type { Bounded } from '../integrals/adaptive-integral.ts';

/**
 * The points within `reachMm` of those with a clearance of at least `centreMm`: an erosion, then a dilation.
 * Most slices of most cuts are exactly that.
 */
export interface Reach {
  readonly centreMm: number;
  readonly reachMm: number;
}

/** What one step cuts by itself. Depths are mm below the face; a slice at `depthMm` itself is the floor. */
export interface StepCut {
  readonly depthMm: number;
  /** Deepest point of what it cuts: `depthMm` where there is floor, less where the walls meet above, 0 where nothing is cut. */
  readonly deepestMm: number;
  /** Whether `reachAt` describes its slices completely; otherwise it describes only a part of each. */
  readonly isExact: boolean;
  reachAt(depthMm: number): Reach;
  sliceArea(depthMm: number): Bounded;
  sliceOutline(depthMm: number): ArcRings;
  /** Upper bound on the area of that outline outside the slice, mm². */
  sliceExcess(depthMm: number): number;
  volumeBetween(topMm: number, bottomMm: number): Bounded;
  /** Area of the walls between two depths, mm². */
  wallBetween(topMm: number, bottomMm: number): Bounded;
  /** Least clearance at which the cut reaches the artwork's edge, mm; Infinity where it never does. */
  readonly edgeClearanceMm: number;
}

/** Radii closer than this, relative to the larger centre radius, are equal: a few thousand roundings. */
const EQUAL_RADII_REL_TOL = 1e-12;

/**
 * Whether b lies within a whatever the artwork: each disc of b lies in the disc of a with the same centre, or
 * is the union of smaller discs of a, whose centres are nearer to the edge by as much as they are smaller.
 */
export function containsReach(a: Reach, b: Reach): boolean {
  const slack = EQUAL_RADII_REL_TOL * Math.max(a.centreMm, b.centreMm);
  return a.reachMm > b.reachMm
    ? a.centreMm <= b.centreMm + slack
    : a.centreMm - a.reachMm <= b.centreMm - b.reachMm + slack;
}
