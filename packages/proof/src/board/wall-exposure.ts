import { inFace } from './block-measures.ts';

/** How a wall, and the fibres that it cuts, are inclined to the face. */
export interface WallSlope {
  /** How far the fibres leave the face towards their azimuth, 0 to π/2. */
  readonly diveRad: number;
  /** How far the wall leans back from upright, 0 to below π/2: half the included angle of a V. */
  readonly leanRad: number;
}

/**
 * Least products n₂·f₂ at which walls reach an exposure: for wood on the side towards which the fibres rise,
 * and for the other side.
 */
export interface LeastAlong {
  readonly rising: number;
  readonly falling: number;
}

/**
 * Share of the colour travel by which a wall's streaks stain the wood beside it, 0 to 1: its exposure |n·f|
 * in three dimensions, n = (cos(lean) n₂, −sin(lean)), but no more than fibres reach across the face, and 0
 * where streaks run back under the cut.
 *
 * @param along n₂·f₂ on the face, −1 to 1: n₂ out of the cut into the wood, f₂ the fibre's azimuth
 */
export function sidewaysExposure(along: number, { diveRad, leanRad }: WallSlope): number {
  const level = inFace(diveRad) * Math.abs(along);
  const drop = Math.sin(leanRad) * Math.sin(diveRad);
  const square = Math.cos(leanRad) * level + (along > 0 ? -drop : drop);
  return Math.max(0, Math.min(level, square));
}

/** The highest {@link sidewaysExposure} of any wall: one at right angles to the fibres' azimuth. */
export function highestSideways(slope: WallSlope): number {
  return Math.max(sidewaysExposure(1, slope), sidewaysExposure(-1, slope));
}

/**
 * The least products n₂·f₂ at which {@link sidewaysExposure} reaches a value above 0; above 1 where no wall
 * does.
 */
export function leastAlong(exposure: number, { diveRad, leanRad }: WallSlope): LeastAlong {
  const level = inFace(diveRad);
  const drop = Math.sin(leanRad) * Math.sin(diveRad);
  const square = Math.cos(leanRad) * level;
  return {
    rising: Math.max(exposure / level, (exposure + drop) / square),
    falling: Math.max(exposure / level, (exposure - drop) / square),
  };
}
