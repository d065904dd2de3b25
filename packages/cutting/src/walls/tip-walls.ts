import type { MedialAxis } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import type { FollowingProfile } from '../following/following-profile.ts';
import { halfSweepArea, type TipSweep, tipSurfaces } from '../following/tip-surfaces.ts';
import type { WallCollector } from './wall-collector.ts';

/** Depths between which surfaces are wanted, and the greatest length of elements. */
export interface TipBand {
  readonly depthsMm: readonly [topMm: number, bottomMm: number];
  readonly longestMm: number;
}

/**
 * Adds what a flat tip leaves along the axis between two depths: on each stretch, two quarter turns of its
 * rim at the slope of the tip's path.
 */
export function addTipWalls(
  walls: WallCollector,
  axis: MedialAxis,
  profile: FollowingProfile,
  { depthsMm, longestMm }: TipBand,
): void {
  const { originX, originY } = axis.boundary;
  const { sweeps, rests, share } = tipSurfaces(axis, profile, depthsMm, longestMm);
  for (const sweep of sweeps) {
    pollStep();
    addHalf(walls, axis, { ...sweep, lengthMm: share * sweep.lengthMm }, profile.tipFlatMm, 1);
    addHalf(walls, axis, { ...sweep, lengthMm: share * sweep.lengthMm }, profile.tipFlatMm, -1);
  }
  for (const { x, y, areaMm2 } of rests) {
    pollStep();
    walls.flat(originX + x, originY + y, 1, 0, Math.PI / 2, areaMm2);
  }
}

function addHalf(
  walls: WallCollector,
  axis: MedialAxis,
  sweep: TipSweep,
  flatMm: number,
  side: 1 | -1,
): void {
  const { originX, originY } = axis.boundary;
  const { x, y, upX, upY, lengthMm, fall, sweepRad } = sweep;
  // at angle t from down the axis, the normal is along cos t · (down · fall, −1) + sin t · (aside · fall, 0)
  const [asideX, asideY] = [-side * upY, side * upX];
  const a = walls.dot(-upX * fall, -upY * fall, -1);
  const b = walls.dot(asideX * fall, asideY * fall, 0);
  const exposedMm2 = flatMm * lengthMm * absWaveIntegral(a, b, sweepRad / 2);
  const middle = sweepRad / 4;
  const [cos, sin] = [Math.cos(middle), Math.sin(middle)];
  const [dx, dy] = [asideX * sin - upX * cos, asideY * sin - upY * cos];
  const lean = Math.atan2(cos, Math.max(0, fall));
  const at = [originX + x + flatMm * dx, originY + y + flatMm * dy] as const;
  walls.known(...at, dx, dy, lean, halfSweepArea(sweep, flatMm), exposedMm2);
}

/** ∫ |a cos t + b sin t| dt from 0 to `to`, at most a quarter turn. */
function absWaveIntegral(a: number, b: number, to: number): number {
  const whole = (t: number): number => a * Math.sin(t) - b * Math.cos(t);
  const zero = a * b < 0 ? Math.atan(-a / b) : to;
  const turn = Math.min(to, zero);
  return Math.abs(whole(turn) - whole(0)) + Math.abs(whole(to) - whole(turn));
}
