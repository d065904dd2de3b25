import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge, sweepAt } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { adaptiveIntegral } from '../integrals/adaptive-integral.ts';
import type { FollowingProfile } from './following-profile.ts';

/** Chords that a curved axis edge counts as; one between two straight walls is straight. */
const CHORDS_PER_EDGE = 4;

/**
 * Tolerance of the integral over the arc of a rim, relative to its radius: far below the error of the chords.
 */
const RIM_ARC_REL_TOL = 1e-9;
/** Arcs that end at a node and go on from it differ by rounding, up to this angle. */
const EQUAL_ARCS_TOL_RAD = 1e-9;

/**
 * What the rim of a flat tip sweeps along a chord of the axis: a half circle or less, facing down the axis.
 */
export interface TipSweep {
  /** Middle of the axis there, relative to the axis' origin. */
  readonly x: number;
  readonly y: number;
  /** Unit direction up the axis. */
  readonly upX: number;
  readonly upY: number;
  readonly lengthMm: number;
  /** Depth gained per mm up the axis. */
  readonly fall: number;
  /** Angle of the arc between the two walls. */
  readonly sweepRad: number;
}

/** Where the flat of the tip comes to rest, as at a top of the axis. */
export interface TipRest {
  readonly x: number;
  readonly y: number;
  readonly areaMm2: number;
}

/** Surfaces that a flat tip leaves along the axis. */
export interface TipSurfaces {
  readonly sweeps: readonly TipSweep[];
  readonly rests: readonly TipRest[];
  /** Share of the sweeps that exists: on both sides of a bottleneck the rims start inside each other. */
  readonly share: number;
}

/**
 * Surfaces that a flat tip leaves along the axis between two depths and above the depth limit, in stretches
 * no longer than `longestMm`. Arcs that end at a node and do not go on from it rest there as sectors. Those
 * that start from nothing, at a bottleneck, are taken off the sweeps.
 */
export function tipSurfaces(
  axis: MedialAxis,
  profile: FollowingProfile,
  [topMm, bottomMm]: readonly [number, number],
  longestMm: number = Infinity,
): TipSurfaces {
  const { tipFlatMm: flat, slope, reachMm } = profile;
  const least = flat + topMm * slope;
  const most = Math.min(reachMm, flat + bottomMm * slope);
  const ended = new Float64Array(axis.nodeR.length);
  const edge = new AxisEdge(axis);
  const sweeps: TipSweep[] = [];
  for (let e = 0; e < axis.edgeFrom.length; e++) {
    pollStep();
    if (edge.isSecondary(e)) {
      continue;
    }
    edge.load(e);
    for (const [node, sign] of [
      [axis.edgeTo[e], 1],
      [axis.edgeFrom[e], -1],
    ]) {
      const r = axis.nodeR[node];
      if (r >= least && r < most) {
        edge.at(r);
        ended[node] += sign * sweepAt(axis.boundary, edge);
      }
    }
    if (edge.r1 >= least && edge.r0 < most) {
      const from = edge.r0 >= least ? 0 : edge.shareOf(least);
      const to = edge.r1 < most ? 1 : edge.shareOf(most);
      addSweeps(axis, edge, { slope, longestMm, shares: [from, to] }, sweeps);
    }
  }
  return { sweeps, ...settled(axis, ended, flat, sweeps) };
}

/** Sectors that rest at nodes, and the share of the sweeps that is left without those missing at nodes. */
function settled(
  axis: MedialAxis,
  ended: Float64Array,
  flat: number,
  sweeps: readonly TipSweep[],
): Pick<TipSurfaces, 'rests' | 'share'> {
  const rests: TipRest[] = [];
  let missing = 0;
  ended.forEach((turn, node) => {
    const areaMm2 = (flat * flat * turn) / 2;
    if (turn > EQUAL_ARCS_TOL_RAD) {
      rests.push({ x: axis.nodeX[node], y: axis.nodeY[node], areaMm2 });
    } else {
      missing -= areaMm2;
    }
  });
  const plan = sweeps.reduce(
    (sum, { lengthMm, sweepRad }) => sum + 2 * flat * lengthMm * Math.sin(sweepRad / 2),
    0,
  );
  return { rests, share: plan > missing ? 1 - missing / plan : 0 };
}

interface SweepSetting {
  readonly slope: number;
  readonly longestMm: number;
  /** Shares of the way up the edge between which the tip sweeps. */
  readonly shares: readonly [number, number];
}

function addSweeps(
  axis: MedialAxis,
  edge: AxisEdge,
  { slope, longestMm, shares }: SweepSetting,
  sweeps: TipSweep[],
): void {
  const [from, to] = shares;
  const least = edge.kind === 'segments' ? 1 : CHORDS_PER_EDGE;
  const stretches = Math.max(least, Math.ceil(edge.lengthBetween(from, to) / longestMm));
  for (let k = 0; k < stretches; k++) {
    const low = from + ((to - from) * k) / stretches;
    const high = from + ((to - from) * (k + 1)) / stretches;
    edge.atShare(low);
    const [ax, ay, ar] = [edge.x, edge.y, edge.clearance];
    edge.atShare(high);
    const [bx, by, br] = [edge.x, edge.y, edge.clearance];
    const chord = Math.hypot(bx - ax, by - ay);
    const lengthMm = edge.lengthBetween(low, high);
    if (chord > 0 && lengthMm > 0) {
      edge.atShare((low + high) / 2);
      const sweepRad = sweepAt(axis.boundary, edge);
      const [upX, upY] = [(bx - ax) / chord, (by - ay) / chord];
      // the clearance never rises faster than the distance, save by rounding on very short edges
      const fall = Math.min(1, Math.max(0, (br - ar) / lengthMm)) / slope;
      sweeps.push({ x: edge.x, y: edge.y, upX, upY, lengthMm, fall, sweepRad });
    }
  }
}

/** Area of one of the two halves of the surface that a tip of radius `flatMm` sweeps, mm². */
export function halfSweepArea({ sweepRad, lengthMm, fall }: TipSweep, flatMm: number): number {
  const along = (t: number): number => Math.hypot(fall, Math.cos(t));
  return flatMm * lengthMm * adaptiveIntegral(along, 0, sweepRad / 2, RIM_ARC_REL_TOL).value;
}
