import { type Cutter, radiusAt } from '../cutters/cutter.ts';
import type { FollowingProfile } from '../following/following-profile.ts';

/** Depths at which the room is looked at between two kinks of either profile, before the best of them is refined. */
const PROBES = 32;
/** Thirds by which the best is refined: (2/3)^60 of a stretch. */
const REFINEMENTS = 60;

/**
 * Least clearance in mm that a clearing cutter's centre needs so that, with its tip at `depthMm`, it stays inside the sloped walls that a following
 * cutter leaves: the most that it and the wall's inset need together at any depth.
 */
export function confinedCentre(cutter: Cutter, depthMm: number, follow: FollowingProfile): number {
  const deepest = Math.min(depthMm, follow.depthMm);
  const need = (depth: number): number =>
    radiusAt(cutter, depthMm - depth) + follow.reachMm - radiusAt(follow.cutter, follow.depthMm - depth);
  const kinks = [
    ...cutter.pieces.map((piece) => depthMm - piece.toHeightMm),
    ...follow.cutter.pieces.map((piece) => follow.depthMm - piece.toHeightMm),
  ];
  const stops = [0, ...kinks.filter((depth) => depth > 0 && depth < deepest), deepest].sort((a, b) => a - b);
  let most = 0;
  for (let k = 0; k + 1 < stops.length; k++) {
    most = Math.max(most, greatest(need, stops[k], stops[k + 1]));
  }
  return most;
}

function greatest(f: (x: number) => number, from: number, to: number): number {
  const step = (to - from) / PROBES;
  let best = 0;
  for (let k = 1; k <= PROBES; k++) {
    best = f(from + k * step) > f(from + best * step) ? k : best;
  }
  let low = from + Math.max(0, best - 1) * step;
  let high = from + Math.min(PROBES, best + 1) * step;
  for (let k = 0; k < REFINEMENTS; k++) {
    const third = (high - low) / 3;
    if (f(low + third) < f(high - third)) {
      low += third;
    } else {
      high -= third;
    }
  }
  return Math.max(f(from), f(to), f((low + high) / 2));
}
