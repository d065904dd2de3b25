import type { Carving } from '@pourproof/cutting';
import { polygonFromArcs } from '@pourproof/geometry';
import { type LengthUnit, mmFromInches, type Rings } from '@pourproof/plane';

/** A line of equal depth. */
export interface DepthContour {
  readonly depthMm: number;
  readonly outline: Rings;
}

/** Round steps between lines, in each unit. */
const STEPS_MM: readonly number[] = [0.1, 0.2, 0.25, 0.5, 1, 2, 2.5, 5, 10];
const STEPS_IN: readonly number[] = [1 / 256, 1 / 128, 1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4];
/** More lines would run together in narrow strokes. */
const MAX_LINES = 6;

/** A line within this share of the greatest depth coincides with the deepest place and is left out. */
const DEEPEST_REL_TOL = 1e-9;

/**
 * Lines of equal depth of a cut whose walls slope, at round depths, shallowest first; the face and the
 * deepest place have none.
 */
export function depthContours(
  carving: Carving,
  deepestMm: number,
  { units, toleranceMm }: { readonly units: LengthUnit; readonly toleranceMm: number },
): readonly DepthContour[] {
  const steps = units === 'mm' ? STEPS_MM : STEPS_IN.map(mmFromInches);
  const step = steps.find((each) => deepestMm / each <= MAX_LINES) ?? deepestMm / MAX_LINES;
  const depths: number[] = [];
  for (let k = 1; k * step < deepestMm * (1 - DEEPEST_REL_TOL); k++) {
    depths.push(k * step);
  }
  return carving.contours(depths).map((outline, k) => ({
    depthMm: depths[k] as number,
    outline: polygonFromArcs(outline, toleranceMm),
  }));
}
