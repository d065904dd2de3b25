import { type Cutter, heightAt, type ProfilePiece, radiusAt } from '../cutters/cutter.ts';
import type { ProfileChord } from '../cutters/profile-chords.ts';
import { type FlankMoments, flankMoments, radiusMoments } from '../cutters/profile-moments.ts';

/** Share by which a flank may seem to get flatter upwards through rounding where two pieces touch. */
const SLOPE_SHARE = 1e-9;

/**
 * A cutter that goes as deep as its flanks allow, down to a depth limit: how deep, and what it leaves at a distance from a wall that faces a
 * clearance. Below `reachMm` of clearance the flanks hold it up; from there on the limit does.
 */
export class FollowingProfile {
  readonly cutter: Cutter;
  readonly depthMm: number;
  /** Radius at the face when the tip is at the depth limit. */
  readonly reachMm: number;
  /** Radius of a flat at the tip; where walls are nearer the cutter does not go. */
  readonly tipFlatMm: number;
  /** Radius from which on the flank is straight up to `reachMm`. */
  readonly flankFromMm: number;
  /** Height at which that flank starts. */
  readonly flankHeightMm: number;
  /** Least radius gained for each mm of height: on that flank, or on an arc at the face. */
  readonly slope: number;

  /** @throws {RangeError} when flanks get flatter upwards, or the cutter has none */
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
      if (!(below <= steepest * (1 + SLOPE_SHARE))) {
        throw new RangeError('a cutter whose flanks get flatter upwards cannot follow walls; let it clear');
      }
      steepest = above;
    }
    const top = flanks.findLast((piece) => piece.fromHeightMm < depthMm) ?? flanks[0];
    this.flankFromMm = top.arc === undefined ? top.fromRadiusMm : this.reachMm;
    this.flankHeightMm = top.arc === undefined ? top.fromHeightMm : depthMm;
    this.slope = slopeAt(top, depthMm, this.reachMm);
  }

  /** Whether the cutter is one straight flank from its tip, or from the flat there, up to the face. */
  get isStraight(): boolean {
    return this.flankFromMm === this.tipFlatMm;
  }

  /** Radius of the ball at the tip, where there is one and at most one flank above it. */
  get ballMm(): number | undefined {
    const { arc } = this.cutter.pieces[0];
    const sloped = this.cutter.pieces.filter((piece) => piece.toRadiusMm > piece.fromRadiusMm);
    return arc === undefined || arc.centreRadiusMm > 0 || sloped.length > 2 ? undefined : arc.radiusMm;
  }

  /** Depth of the tip where the clearance is as given. */
  tipDepth(clearanceMm: number): number {
    return clearanceMm >= this.reachMm ? this.depthMm : heightAt(this.cutter, clearanceMm);
  }

  /** How much deeper the tip gets for each mm of clearance: 0 where it does not cut, and at the depth limit. */
  sinkAt(clearanceMm: number): number {
    if (clearanceMm >= this.reachMm || clearanceMm < this.tipFlatMm) {
      return 0;
    }
    const piece = this.cutter.pieces.find(
      ({ fromHeightMm, toHeightMm, toRadiusMm }) => toHeightMm > fromHeightMm && clearanceMm <= toRadiusMm,
    );
    return piece === undefined ? 0 : 1 / slopeAt(piece, heightAt(this.cutter, clearanceMm), clearanceMm);
  }

  /** Height up to which the profile rises by no more than `slope` for each mm of radius. */
  heightOfSlope(slope: number): number {
    let height = 0;
    for (const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, arc } of this.cutter.pieces) {
      if (arc !== undefined) {
        const most = arc.centreHeightMm - arc.radiusMm / Math.hypot(1, slope);
        height = Math.max(height, Math.min(toHeightMm, Math.max(fromHeightMm, most)));
      } else if (toHeightMm - fromHeightMm <= slope * (1 + SLOPE_SHARE) * (toRadiusMm - fromRadiusMm)) {
        height = Math.max(height, toHeightMm);
      }
    }
    return height;
  }

  /** Clearances at which the depth of the tip is not smooth, rising, up to `reachMm`. */
  get kinksMm(): readonly number[] {
    const kinks = [this.tipFlatMm, ...this.cutter.pieces.map((piece) => piece.toRadiusMm), this.reachMm];
    return [...new Set(kinks)].filter((kink) => kink > 0 && kink <= this.reachMm).sort((a, b) => a - b);
  }

  /** Depth at a distance from a wall over whose contact the clearance is as given, by a cutter that stands on that contact's own normal. */
  depthBeside(distanceMm: number, clearanceMm: number): number {
    const z = Math.min(clearanceMm, this.reachMm);
    const beyond = Math.max(0, z - Math.max(0, distanceMm));
    return this.tipDepth(z) - heightAt(this.cutter, beyond);
  }

  /** Radius at a depth below the face of the cutter whose tip is as deep as a clearance allows; below 0 where it does not reach that deep. */
  radiusBelow(clearanceMm: number, depthMm: number): number {
    const height = this.tipDepth(clearanceMm) - depthMm;
    return height < 0 ? -1 : radiusAt(this.cutter, height);
  }

  /**
   * ∫ of the depth beside a straight wall over the distance from it, up to the axis at `clearanceMm`, mm²: left by a cutter as deep as a clearance
   * of `centreMm` allows, moved so that it touches the wall.
   */
  stripMm2(clearanceMm: number, centreMm: number): number {
    const z = Math.min(clearanceMm, centreMm);
    const all = radiusMoments(this.cutter, centreMm).heightMm2;
    const beyond = z < centreMm ? radiusMoments(this.cutter, centreMm - z).heightMm2 : 0;
    return clearanceMm * this.tipDepth(centreMm) - (all - beyond);
  }

  /** The same around a reflex point: ∫ of the depth times the distance, mm³ for each radian. */
  fanMm3(clearanceMm: number, centreMm: number): number {
    const z = Math.min(clearanceMm, centreMm);
    const all = radiusMoments(this.cutter, centreMm);
    const beyond = radiusMoments(this.cutter, centreMm - z);
    const heightMm2 = all.heightMm2 - beyond.heightMm2;
    const weighted = all.heightRadiusMm3 - beyond.heightRadiusMm3;
    return (clearanceMm ** 2 * this.tipDepth(centreMm)) / 2 - centreMm * heightMm2 + weighted;
  }

  /** Length of the surface beside a straight wall, up to the axis, without what is floor at the depth limit; mm. */
  slantMm(clearanceMm: number, centreMm: number): number {
    const [top, low] = this.#surface(clearanceMm, centreMm);
    return top.flankMm - low.flankMm;
  }

  /** The same around a reflex point: ∫ of the distance over that length, mm² for each radian. */
  slantFanMm2(clearanceMm: number, centreMm: number): number {
    const [top, low] = this.#surface(clearanceMm, centreMm);
    return centreMm * (top.flankMm - low.flankMm) - (top.flankRadiusMm2 - low.flankRadiusMm2);
  }

  /** Length and first moment of the profile out to the wall and out to the axis. */
  #surface(clearanceMm: number, centreMm: number): readonly [FlankMoments, FlankMoments] {
    const inner = Math.max(0, centreMm - clearanceMm);
    const flat = centreMm >= this.reachMm ? 0 : Math.max(0, this.tipFlatMm - inner);
    const top = flankMoments(this.cutter, this.tipDepth(centreMm));
    const level = {
      flankMm: top.flankMm + flat,
      flankRadiusMm2: top.flankRadiusMm2 + (flat * (flat + 2 * inner)) / 2,
    };
    return [level, flankMoments(this.cutter, heightAt(this.cutter, inner))];
  }

  /**
   * Distances from the wall between which a stretch of the profile makes the surface between two depths; the second is not above the first where it makes
   * none. At the depth limit the tip's own flat is floor.
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

/** Radius gained for each mm of height at the lower and at the upper end of a piece. */
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
