import type { Carving } from '@pourproof/cutting';
import { polygonFromArcs } from '@pourproof/geometry';
import { type LengthUnit, mmFromInches, type Rings } from '@pourproof/plane';

/** A contour line of depth. */
export interface DepthContour {
  readonly depthMm: number;
  readonly outline: Rings;
}

/** Intervals between contours that are easy to count by, in each unit. */
const STEPS_MM: readonly number[] = [0.1, 0.2, 0.25, 0.5, 1, 2, 2.5, 5, 10];
const STEPS_IN: readonly number[] = [1 / 256, 1 / 128, 1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4];
/** More contours than this run together in narrow strokes (our choice). */
const MAX_CONTOURS = 6;
/** A contour this close to the greatest depth, relative to it, is at that depth: rounding. */
const DEEPEST_REL_TOL = 1e-9;

/**
 * Contours of a cut with sloping walls, at round depths, shallowest first; none at the face and at the
 * greatest depth.
 */
export function depthContours(
  carving: Carving,
  deepestMm: number,
  { units, toleranceMm }: { readonly units: LengthUnit; readonly toleranceMm: number },
): readonly DepthContour[] {
  const steps = units === 'mm' ? STEPS_MM : STEPS_IN.map(mmFromInches);
  const step = steps.find((each) => deepestMm / each <= MAX_CONTOURS) ?? deepestMm / MAX_CONTOURS;
  const depths: number[] = [];
  for (let k = 1; k * step < deepestMm * (1 - DEEPEST_REL_TOL); k++) {
    depths.push(k * step);
  }
  return carving.contours(depths).map((outline, k) => ({
    depthMm: depths[k] as number,
    outline: polygonFromArcs(outline, toleranceMm),
  }));
}
