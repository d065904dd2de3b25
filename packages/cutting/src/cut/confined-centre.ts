import { type Cutter, radiusAt } from '../cutters/cutter.ts';
import type { FollowingProfile } from '../following/following-profile.ts';

/** Depths sampled between two kinks of either profile before the best one is refined. */
const DEPTH_SAMPLES = 32;
/** Steps of the ternary search around the best sample: it narrows to (2/3)^60 of an interval. */
const TERNARY_STEPS = 60;

/**
 * Least clearance that the centre of a clearing cutter with its tip at `depthMm` needs to stay inside the
 * sloped walls that a following cutter leaves, mm: over all depths, the greatest sum of its radius and the
 * wall's inset.
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
  const step = (to - from) / DEPTH_SAMPLES;
  let best = 0;
  for (let k = 1; k <= DEPTH_SAMPLES; k++) {
    best = f(from + k * step) > f(from + best * step) ? k : best;
  }
  let low = from + Math.max(0, best - 1) * step;
  let high = from + Math.min(DEPTH_SAMPLES, best + 1) * step;
  for (let k = 0; k < TERNARY_STEPS; k++) {
    const third = (high - low) / 3;
    if (f(low + third) < f(high - third)) {
      low += third;
    } else {
      high -= third;
    }
  }
  return Math.max(f(from), f(to), f((low + high) / 2));
}
