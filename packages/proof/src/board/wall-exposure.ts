import { inFace } from './block-measures.ts';

/** Angles of a wall, and of the fibres that it cuts, to the face. */
export interface WallSlope {
  /** Slope of grain: angle of the fibres out of the face towards their azimuth, 0 to π/2. */
  readonly diveRad: number;
  /** Angle of the wall from the vertical, 0 to below π/2: half the included angle of a V. */
  readonly leanRad: number;
}

/**
 * Least |n₂·f₂| at which walls reach an exposure: those whose wood is on the side to which the fibres rise,
 * and the others.
 */
export interface LeastAlong {
  readonly rising: number;
  readonly falling: number;
}

/**
 * Share of the colour travel by which streaks from a wall stain the wood beside it, 0 to 1: its exposure
 * |n·f| in three dimensions, n = (cos(lean) n₂, −sin(lean)), limited by how far fibres reach across the face,
 * and 0 where streaks run back under the cut.
 *
 * @param along n₂·f₂ on the face, −1 to 1: n₂ the normal into the wood, f₂ the fibre's azimuth
 */
export function sidewaysExposure(along: number, { diveRad, leanRad }: WallSlope): number {
  const level = inFace(diveRad) * Math.abs(along);
  const drop = Math.sin(leanRad) * Math.sin(diveRad);
  const square = Math.cos(leanRad) * level + (along > 0 ? -drop : drop);
  return Math.max(0, Math.min(level, square));
}

/** The highest {@link sidewaysExposure} of any wall: of one at right angles to the fibres' azimuth. */
export function highestSideways(slope: WallSlope): number {
  return Math.max(sidewaysExposure(1, slope), sidewaysExposure(-1, slope));
}

/** Least |n₂·f₂| at which {@link sidewaysExposure} reaches a value above 0; above 1 if no wall does. */
export function leastAlong(exposure: number, { diveRad, leanRad }: WallSlope): LeastAlong {
  const level = inFace(diveRad);
  const drop = Math.sin(leanRad) * Math.sin(diveRad);
  const square = Math.cos(leanRad) * level;
  return {
    rising: Math.max(exposure / level, (exposure + drop) / square),
    falling: Math.max(exposure / level, (exposure - drop) / square),
  };
}
