import { booleans, combineShapes } from '@pourproof/arrangement';
import { leftStanding, medialAxis } from '@pourproof/geometry';
import { type CleanRegion, type Region, type Rings, ringCoords, ringsBounds } from '@pourproof/plane';
import type { Joins } from './joins.ts';
import type { KeptPlace } from './kept-open.ts';
import { narrowPaths } from './narrow-paths.ts';
import { type OffsetRegion, offsetRegion } from './offset-region.ts';
import { isWithin } from './region-shapes.ts';
import { StripPen } from './strip-pen.ts';

/** How thin strokes are widened, lengths in mm. */
export interface LeastStrokeOptions {
  readonly joins?: Joins;
  /** Wood that is left between two strokes at least, or as much as is drawn where that is less. */
  readonly keepMm?: number;
  readonly toleranceMm: number;
}

/** A region with its thin strokes widened. */
export interface WidenedStrokes extends OffsetRegion {
  /** How far the outline has moved where it has moved most, mm. */
  readonly reachMm: number;
}

/**
 * A region whose strokes are `leastMm` wide where they are narrower; everything else stays as it is.
 *
 * What is narrow is what a round bit of that width leaves standing as a stroke or a part (`leftStanding`); what it leaves of corners and tips
 * stays. There the outline moves as {@link offsetRegion} moves it by what the
 * narrowest lacks, and no farther than half the least width from the middle of the stroke, so that no stroke becomes wider than that.
 *
 * @throws {RangeError} when a length is not finite, or negative, or the tolerance not above 0
 * @example
 * const bar = resolveRegions([{ ...packRings([[0, 0, 40, 0, 40, 1.5, 0, 1.5]]), fillRule: 'nonzero' }]).region;
 * leastStroke(bar, 2, { toleranceMm: 0.005 }).region; // 2 mm wide and 40.5 mm long
 */
export function leastStroke(
  region: CleanRegion,
  leastMm: number,
  { joins = 'mitre', keepMm = 0, toleranceMm }: LeastStrokeOptions,
): WidenedStrokes {
  if (!Number.isFinite(leastMm) || leastMm < 0 || !(toleranceMm > 0)) {
    throw new RangeError(`leastMm is ${leastMm}, toleranceMm ${toleranceMm}; give lengths in mm`);
  }
  if (leastMm <= 2 * toleranceMm || region.ringEnds.length === 0) {
    return { region, kept: [], reachMm: 0 };
  }
  const half = leastMm / 2;
  const axis = medialAxis(region);
  // what was widened before is that wide to the flattening of its curves
  const level = half - toleranceMm;
  const strokes = leftStanding(axis, level, toleranceMm)
    .pieces.filter(({ kind }) => kind === 'stroke' || kind === 'part')
    .map(({ outline }) => ({ box: ringsBounds(outline), rings: ringsOf(outline) }));
  const paths = narrowPaths(axis, level, (x, y) =>
    strokes.some(
      ({ box: [left, top, right, bottom], rings }) =>
        x >= left && x <= right && y >= top && y <= bottom && rings.some((ring) => isWithin(ring, x, y)),
    ),
  );
  const lacking = Math.max(0, ...paths.map(({ widthMm }) => half - widthMm / 2));
  if (paths.length === 0) {
    return { region, kept: [], reachMm: 0 };
  }
  const near = (by: number): readonly Region[] => {
    const pen = new StripPen(axis, { half: half + by, level: half, toleranceMm });
    return paths.map((path) => pen.along(path, half + lacking));
  };
  const moved = offsetRegion(region, lacking, { joins, keepMm, toleranceMm });
  const wider = combineShapes([filled(moved.region)], near(0), 'intersect');
  const beside = near(keepMm);
  return {
    region: booleans(region, wider, 'union'),
    kept: moved.kept.filter((place) => beside.some((strip) => holds(strip, place))),
    reachMm: lacking,
  };
}

function holds(strip: Region, { atMm: [x, y] }: KeptPlace): boolean {
  return ringsOf(strip).some((ring) => isWithin(ring, x, y));
}

function ringsOf(rings: Rings): readonly Float64Array[] {
  return Array.from(rings.ringEnds, (_, k) => ringCoords(rings, k));
}

function filled(region: CleanRegion): Region {
  return { ...region, fillRule: 'nonzero' };
}
