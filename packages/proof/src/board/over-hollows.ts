import { resolveRegions } from '@pourproof/arrangement';
import { polygonFromArcs } from '@pourproof/geometry';
import { type Hollow, isHollow, isThrough } from '@pourproof/job';
import { applyTransform, type CleanRegion, type Point, ringCoords } from '@pourproof/plane';
import type { Measured } from '../measured.ts';
import { clipSegment } from './clip-segment.ts';
import { obstacleGap } from './rims.ts';

/** The wood between a pocket and a hole or groove in the back of the board below it; mm, the place in the artwork's frame. */
export interface OverHollow {
  readonly hollow: Hollow;
  /** The shortest way through the wood, 0 where the cut opens the hollow. */
  readonly woodMm: number;
  /** Place of the pocket that is nearest. */
  readonly atMm: Point;
}

/** Depths at which a cut with sloping walls is looked at; the wood is told right to its depth over twice that (our choice). */
const SLICES = 32;
/** Just above a floor the slice of its pocket is still there, mm. */
const ABOVE_FLOOR_MM = 1e-6;

/**
 * The wood between a cut and each hole or groove in the back, from the floors and walls that lie above it to its top. What lies beside it, lower than
 * its top, is a rim.
 */
export function overHollows(measured: Measured): readonly OverHollow[] {
  const { job, site, board } = measured;
  const { thicknessMm } = job;
  if (thicknessMm === null || measured.cutRegion.ringEnds.length === 0) {
    return [];
  }
  const backs = job.obstacles.filter(isHollow).filter((each) => !isThrough(each, thicknessMm));
  const slices = backs.length === 0 ? [] : slicesOf(measured);
  return backs.map((hollow) => {
    const topMm = thicknessMm - (hollow.fromBackMm ?? 0) - site.loweredMm;
    return slices.reduce<OverHollow>(
      (least, { depthMm, region }) => {
        const { widthMm, from } = gapTo(region, hollow, board);
        const aboveMm = topMm - depthMm;
        // beside the hollow and lower than its top it is a rim
        const woodMm =
          aboveMm > 0 ? Math.hypot(widthMm, aboveMm) : widthMm > 0 ? Number.POSITIVE_INFINITY : 0;
        return woodMm < least.woodMm ? { hollow, woodMm, atMm: from } : least;
      },
      { hollow, woodMm: Number.POSITIVE_INFINITY, atMm: [0, 0] },
    );
  });
}

interface Slice {
  readonly depthMm: number;
  readonly region: CleanRegion;
}

function slicesOf({ job, carving }: Measured): readonly Slice[] {
  const floors = carving.perCutter.map(({ depthMm }) => depthMm);
  const sloped = job.bits.every(({ kind }) => kind === 'flat')
    ? []
    : Array.from({ length: SLICES }, (_, k) => (carving.maxDepthMm * (k + 1)) / SLICES);
  return [...new Set([...floors, ...sloped, carving.maxDepthMm])]
    .filter((depthMm) => depthMm > 0 && depthMm <= carving.maxDepthMm)
    .map((depthMm) => ({
      depthMm,
      region: resolveRegions([
        {
          ...polygonFromArcs(carving.sliceOutline(Math.max(0, depthMm - ABOVE_FLOOR_MM)), job.toleranceMm),
          fillRule: 'nonzero',
        },
      ]).region,
    }));
}

/** The way over the face from a region to a hollow: 0 where they overlap, infinite from nothing. */
function gapTo(
  region: CleanRegion,
  hollow: Hollow,
  placed: Measured['board'],
): { readonly widthMm: number; readonly from: Point } {
  const [start, end] = (
    hollow.kind === 'hole' ? [hollow.atMm, hollow.atMm] : [hollow.fromMm, hollow.toMm]
  ).map((at) => applyTransform(placed.toArtwork, at)) as [Point, Point];
  // where its middle line runs through the region, no edge need be near
  const [inside] = clipSegment(region, [...start, ...end], [0, 0]);
  if (inside !== undefined) {
    const at = (k: 0 | 1): number => start[k] + inside[0] * (end[k] - start[k]);
    return { widthMm: 0, from: [at(0), at(1)] };
  }
  let best = { widthMm: Number.POSITIVE_INFINITY, from: start };
  for (let k = 0; k < region.ringEnds.length; k++) {
    const ring = ringCoords(region, k);
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const ends: readonly [Point, Point] = [
        [ring[i] as number, ring[i + 1] as number],
        [ring[j] as number, ring[j + 1] as number],
      ];
      const { widthMm, from } = obstacleGap(ends, hollow, '', placed);
      if (widthMm < best.widthMm) {
        best = { widthMm, from };
      }
    }
  }
  return { ...best, widthMm: Math.max(0, best.widthMm) };
}
