import { type Cutter, heightAt, type ProfilePiece, radiusAt } from '../cutters/cutter.ts';
import type { ProfileChord } from '../cutters/profile-chords.ts';
import { type FlankMoments, flankMoments, radiusMoments } from '../cutters/profile-moments.ts';

/**
 * Slopes of two pieces that meet smoothly differ by rounding: up to this, relative to the slope, they are
 * equal.
 */
const SMOOTH_JOINT_REL_TOL = 1e-9;

/**
 * A cutter that goes as deep as its flanks allow, down to a depth limit: the depth of its tip at a clearance,
 * and the depth it leaves at a distance from the wall. At clearances below `reachMm` the flanks limit the
 * depth, from there on the depth limit does.
 */
export class FollowingProfile {
  readonly cutter: Cutter;
  readonly depthMm: number;
  /** Radius at the face with the tip at the depth limit, mm. */
  readonly reachMm: number;
  /** Radius of a flat tip, mm; at smaller clearances the cutter does not fit. */
  readonly tipFlatMm: number;
  /** Radius from which the flank is straight up to `reachMm`, mm. */
  readonly flankFromMm: number;
  /** Height at which that straight flank starts, mm. */
  readonly flankHeightMm: number;
  /** Radius gained per mm of height at the face, where it is least. */
  readonly slope: number;

  /** @throws {RangeError} when flanks get flatter upwards, or there are none */
  constructor(cutter: Cutter, depthMm: number) {
    this.cutter = cutter;
    this.depthMm = depthMm;
    this.reachMm = radiusAt(cutter, depthMm);
    this.tipFlatMm = radiusAt(cutter, 0);
    const flanks = cutter.pieces.filter((piece) => piece.toHeightMm > 0);
    if (flanks.length === 0 || flanks[0].toRadiusMm === flanks[0].fromRadiusMm) {
      throw new RangeError('a cutter without sloped flanks cannot follow walls; let it clear');
    }
    let steepest = Infinity;
    for (const piece of flanks) {
      const [below, above] = endSlopes(piece);
      if (!(below <= steepest * (1 + SMOOTH_JOINT_REL_TOL))) {
        throw new RangeError('a cutter whose flanks get flatter upwards cannot follow walls; let it clear');
      }
      steepest = above;
    }
    const top = flanks.findLast((piece) => piece.fromHeightMm < depthMm) ?? flanks[0];
    this.flankFromMm = top.arc === undefined ? top.fromRadiusMm : this.reachMm;
    this.flankHeightMm = top.arc === undefined ? top.fromHeightMm : depthMm;
    this.slope = slopeAt(top, depthMm, this.reachMm);
  }

  /** Whether one straight flank leads from the tip, or from its flat, up to the face. */
  get isStraight(): boolean {
    return this.flankFromMm === this.tipFlatMm;
  }

  /** Radius of the ball at the tip, mm; undefined without one, or with more than one flank above it. */
  get ballMm(): number | undefined {
    const { arc } = this.cutter.pieces[0];
    const sloped = this.cutter.pieces.filter((piece) => piece.toRadiusMm > piece.fromRadiusMm);
    return arc === undefined || arc.centreRadiusMm > 0 || sloped.length > 2 ? undefined : arc.radiusMm;
  }

  /** Depth of the tip at a clearance, mm. */
  tipDepth(clearanceMm: number): number {
    return clearanceMm >= this.reachMm ? this.depthMm : heightAt(this.cutter, clearanceMm);
  }

  /** Depth that the tip gains per mm of clearance; 0 where it does not fit, and at the depth limit. */
  sinkAt(clearanceMm: number): number {
    if (clearanceMm >= this.reachMm || clearanceMm < this.tipFlatMm) {
      return 0;
    }
    const piece = this.cutter.pieces.find(
      ({ fromHeightMm, toHeightMm, toRadiusMm }) => toHeightMm > fromHeightMm && clearanceMm <= toRadiusMm,
    );
    return piece === undefined ? 0 : 1 / slopeAt(piece, heightAt(this.cutter, clearanceMm), clearanceMm);
  }

  /** Height up to which the profile rises by at most `slope` per mm of radius, mm. */
  heightOfSlope(slope: number): number {
    let height = 0;
    for (const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, arc } of this.cutter.pieces) {
      if (arc !== undefined) {
        const most = arc.centreHeightMm - arc.radiusMm / Math.hypot(1, slope);
        height = Math.max(height, Math.min(toHeightMm, Math.max(fromHeightMm, most)));
      } else if (
        toHeightMm - fromHeightMm <=
        slope * (1 + SMOOTH_JOINT_REL_TOL) * (toRadiusMm - fromRadiusMm)
      ) {
        height = Math.max(height, toHeightMm);
      }
    }
    return height;
  }

  /** Clearances up to `reachMm` at which the depth of the tip is not smooth, in rising order. */
  get kinksMm(): readonly number[] {
    const kinks = [this.tipFlatMm, ...this.cutter.pieces.map((piece) => piece.toRadiusMm), this.reachMm];
    return [...new Set(kinks)].filter((kink) => kink > 0 && kink <= this.reachMm).sort((a, b) => a - b);
  }

  /**
   * Depth at a distance from a contact with a clearance, cut by the cutter whose centre is on that contact's
   * normal, mm.
   */
  depthBeside(distanceMm: number, clearanceMm: number): number {
    const z = Math.min(clearanceMm, this.reachMm);
    const beyond = Math.max(0, z - Math.max(0, distanceMm));
    return this.tipDepth(z) - heightAt(this.cutter, beyond);
  }

  /**
   * Radius, at a depth, of the cutter whose tip is as deep as a clearance allows, mm; negative where it ends
   * above.
   */
  radiusBelow(clearanceMm: number, depthMm: number): number {
    const height = this.tipDepth(clearanceMm) - depthMm;
    return height < 0 ? -1 : radiusAt(this.cutter, height);
  }

  /** ∫ depth dd over the distance d from a straight wall up to the axis at `clearanceMm`, mm², as left by a cutter that touches the wall. */
  segmentMm2(clearanceMm: number): number {
    const centreMm = Math.min(clearanceMm, this.reachMm);
    return clearanceMm * this.tipDepth(centreMm) - radiusMoments(this.cutter, centreMm).heightMm2;
  }

  /** The same around a reflex vertex: ∫ depth · d dd, mm³ per radian. */
  vertexMm3(clearanceMm: number): number {
    const centreMm = Math.min(clearanceMm, this.reachMm);
    const { heightMm2, heightRadiusMm3 } = radiusMoments(this.cutter, centreMm);
    return (clearanceMm ** 2 * this.tipDepth(centreMm)) / 2 - centreMm * heightMm2 + heightRadiusMm3;
  }

  /** Length of the surface beside a straight wall, up to the axis, without floor at the depth limit, mm. */
  slantMm(clearanceMm: number): number {
    return this.#surface(Math.min(clearanceMm, this.reachMm)).flankMm;
  }

  /** The same around a reflex vertex: ∫ d over that length, mm² per radian. */
  slantVertexMm2(clearanceMm: number): number {
    const centreMm = Math.min(clearanceMm, this.reachMm);
    const { flankMm, flankRadiusMm2 } = this.#surface(centreMm);
    return centreMm * flankMm - flankRadiusMm2;
  }

  /** Length and first moment of the profile from its axis up to the wall; above the depth limit a flat tip leaves no floor. */
  #surface(centreMm: number): FlankMoments {
    const flat = centreMm >= this.reachMm ? 0 : this.tipFlatMm;
    const { flankMm, flankRadiusMm2 } = flankMoments(this.cutter, this.tipDepth(centreMm));
    return { flankMm: flankMm + flat, flankRadiusMm2: flankRadiusMm2 + (flat * flat) / 2 };
  }

  /**
   * Distances from the wall between which a chord of the profile leaves the surface between two depths, mm;
   * the second is not above the first where it leaves none. At the depth limit the flat of the tip leaves
   * floor, not wall.
   */
  chordSpan(
    { fromRadiusMm, toRadiusMm, toHeightMm }: ProfileChord,
    clearanceMm: number,
    centreMm: number,
    [topMm, bottomMm]: readonly [number, number],
  ): readonly [number, number] {
    if (toHeightMm === 0 && centreMm >= this.reachMm) {
      return [0, 0];
    }
    const least =
      bottomMm < this.depthMm ? Math.max(fromRadiusMm, this.radiusBelow(centreMm, bottomMm)) : fromRadiusMm;
    const most = topMm > 0 ? Math.min(toRadiusMm, this.radiusBelow(centreMm, topMm)) : toRadiusMm;
    return [Math.max(0, centreMm - most), Math.min(clearanceMm, centreMm - least)];
  }
}

/** Radius gained per mm of height at the lower and at the upper end of a piece. */
function endSlopes(piece: ProfilePiece): [number, number] {
  const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm } = piece;
  return [slopeAt(piece, fromHeightMm, fromRadiusMm), slopeAt(piece, toHeightMm, toRadiusMm)];
}

function slopeAt(piece: ProfilePiece, height: number, radius: number): number {
  const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, arc } = piece;
  return arc === undefined
    ? (toRadiusMm - fromRadiusMm) / (toHeightMm - fromHeightMm)
    : (arc.centreHeightMm - height) / (radius - arc.centreRadiusMm);
}
