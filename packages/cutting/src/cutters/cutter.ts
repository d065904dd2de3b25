/** What kind of cutter it is, for messages; what it cuts depends on its profile alone. */
export type CutterShape = 'flat' | 'ball' | 'bull nose' | 'vee' | 'tapered ball' | 'profile';

/**
 * One piece of a cutter's profile, from its lower to its upper end; neither height nor radius decreases.
 * Straight, or a convex circular arc within the lower outer quadrant of its circle.
 */
export interface ProfilePiece {
  readonly fromHeightMm: number;
  readonly fromRadiusMm: number;
  readonly toHeightMm: number;
  readonly toRadiusMm: number;
  /** Circle of the arc; absent on a straight piece. */
  readonly arc?: {
    readonly radiusMm: number;
    readonly centreHeightMm: number;
    readonly centreRadiusMm: number;
  };
}

/**
 * A cutter as the solid of revolution that its edges sweep: radius over height above the tip. The first piece
 * starts at height 0 and radius 0; a flat bottom is a piece of height 0. Above the last piece the radius
 * stays the same: a thicker shank is not modelled.
 */
export interface Cutter {
  readonly shape: CutterShape;
  readonly pieces: readonly ProfilePiece[];
  /** Twice the largest radius, mm. */
  readonly diameterMm: number;
  /** Length of the cutting edges above the tip, mm, which limits the depth. Infinity where none is given. */
  readonly cuttingLengthMm: number;
}

/**
 * Radius of a cutter at a height above its tip, mm: where the profile is level, that at the outer end; above
 * the profile, the largest.
 *
 * @throws {RangeError} when the height is negative or not a number
 */
export function radiusAt(cutter: Cutter, heightMm: number): number {
  if (!(heightMm >= 0)) {
    throw new RangeError(`heightMm is ${heightMm}; give a number of millimetres, 0 or more`);
  }
  const { pieces } = cutter;
  for (let k = pieces.length - 1; k >= 0; k--) {
    const piece = pieces[k];
    if (heightMm >= piece.toHeightMm) {
      return piece.toRadiusMm;
    }
    if (heightMm >= piece.fromHeightMm) {
      return radiusOn(piece, heightMm);
    }
  }
  return 0;
}

/**
 * Least height above the tip at which a cutter has a radius, mm: how far its tip reaches down between walls
 * at that distance. Infinity beyond its largest radius.
 *
 * @throws {RangeError} when the radius is negative or not a number
 */
export function heightAt(cutter: Cutter, radiusMm: number): number {
  if (!(radiusMm >= 0)) {
    throw new RangeError(`radiusMm is ${radiusMm}; give a number of millimetres, 0 or more`);
  }
  for (const piece of cutter.pieces) {
    if (radiusMm <= piece.toRadiusMm) {
      return heightOn(piece, radiusMm);
    }
  }
  return Infinity;
}

function radiusOn(piece: ProfilePiece, height: number): number {
  const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, arc } = piece;
  if (arc === undefined) {
    const share = (height - fromHeightMm) / (toHeightMm - fromHeightMm);
    return fromRadiusMm + share * (toRadiusMm - fromRadiusMm);
  }
  const below = arc.centreHeightMm - height;
  return arc.centreRadiusMm + Math.sqrt(Math.max(0, (arc.radiusMm - below) * (arc.radiusMm + below)));
}

function heightOn(piece: ProfilePiece, radius: number): number {
  const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, arc } = piece;
  if (radius <= fromRadiusMm) {
    return fromHeightMm;
  }
  if (arc === undefined) {
    return (
      fromHeightMm + ((radius - fromRadiusMm) / (toRadiusMm - fromRadiusMm)) * (toHeightMm - fromHeightMm)
    );
  }
  const out = radius - arc.centreRadiusMm;
  return arc.centreHeightMm - Math.sqrt(Math.max(0, (arc.radiusMm - out) * (arc.radiusMm + out)));
}
