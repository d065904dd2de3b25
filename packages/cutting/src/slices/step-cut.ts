import type { ArcRings } from '@pourproof/geometry';
import type { Bounded } from '../integrals/adaptive-integral.ts';

/**
 * Points that lie within `reachMm` of those where a disc of `centreMm` fits: how most slices of most cuts can be told exactly.
 */
export interface Reach {
  readonly centreMm: number;
  readonly reachMm: number;
}

/** What one step cuts by itself. Depths are below the face, from 0 to below `depthMm`; at `depthMm` itself it is the floor. */
export interface StepCut {
  readonly depthMm: number;
  /** Whether its slices are told by `reachAt` alone; where not, that is only a part of them. */
  readonly isExact: boolean;
  reachAt(depthMm: number): Reach;
  sliceArea(depthMm: number): Bounded;
  sliceOutline(depthMm: number): ArcRings;
  /** At most so much of that outline's area lies outside of the slice, mm². */
  sliceExcess(depthMm: number): number;
  volumeBetween(topMm: number, bottomMm: number): Bounded;
  /** Area of the walls between two depths. */
  wallBetween(topMm: number, bottomMm: number): Bounded;
  /** Clearance from which on the cut reaches the artwork's edge. */
  readonly edgeClearanceMm: number;
}

/** Share of a radius within which two radii are the same for {@link containsReach}. */
const SAME_SHARE = 1e-12;

/**
 * Whether all points of b are points of a, whatever the artwork: each of b's discs lies in one of a's of the same centre, or is the union of
 * a's smaller ones, whose centres are as much nearer to the edge as they are smaller.
 */
export function containsReach(a: Reach, b: Reach): boolean {
  const slack = SAME_SHARE * Math.max(a.centreMm, b.centreMm);
  return a.reachMm > b.reachMm
    ? a.centreMm <= b.centreMm + slack
    : a.centreMm - a.reachMm <= b.centreMm - b.reachMm + slack;
}
