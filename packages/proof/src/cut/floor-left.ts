import { booleans, resolveRegions } from '@pourproof/arrangement';
import { reachedOutline } from '@pourproof/cutting';
import { type MedialAxis, medialAxis, openedArea, polygonFromArcs } from '@pourproof/geometry';
import { type CleanRegion, ringArea, ringCoords } from '@pourproof/plane';
import type { CutMeasures } from './measure-cut.ts';

/** The tip covers a narrower floor in a round or two, mm (our choice). */
export const NARROW_FLOOR_MM = 1;

/** Level floor that only the tip of a V passes over, without what a round or two of it cover. */
export interface FloorLeft {
  readonly areaMm2: number;
  /** Outer outlines of its pieces, flattened, and their areas. */
  readonly pieces: readonly { readonly ring: Float64Array; readonly areaMm2: number }[];
}

/** The floor at the greatest depth, and what of it no flat bottom of the job's bits goes over. */
export function floorRegions(
  { carving }: Pick<CutMeasures, 'carving'>,
  toleranceMm: number,
): { readonly floor: CleanRegion; readonly left: CleanRegion } {
  const clean = (arcs: Parameters<typeof polygonFromArcs>[0]): CleanRegion =>
    resolveRegions([{ ...polygonFromArcs(arcs, toleranceMm), fillRule: 'nonzero' }]).region;
  const floor = clean(carving.sliceOutline(carving.depthLimitMm));
  const swept = clean(carving.sweptFloorOutline());
  return { floor, left: swept.ringEnds.length === 0 ? floor : booleans(floor, swept, 'subtract') };
}

/** What a flat bit of this diameter, added to the job, would go over of a region with this axis. */
export function sweptBy(axis: MedialAxis, diameterMm: number, toleranceMm: number): CleanRegion {
  const arcs = reachedOutline(axis, diameterMm / 2, diameterMm / 2);
  return resolveRegions([{ ...polygonFromArcs(arcs, toleranceMm), fillRule: 'nonzero' }]).region;
}

/** What is left of a floor once places that the tip covers in a round or two are done: narrow ones and specks. */
export function floorLeft(left: CleanRegion, toleranceMm: number): FloorLeft {
  const wide = sweptBy(medialAxis(left), NARROW_FLOOR_MM, toleranceMm);
  const outer = Array.from(wide.ringEnds, (_, k) => ringCoords(wide, k))
    .map((ring) => ({ ring, areaMm2: ringArea(ring) }))
    .filter(({ areaMm2 }) => areaMm2 > 0);
  const specks = outer.filter(({ areaMm2 }) => areaMm2 <= NARROW_FLOOR_MM ** 2);
  return {
    areaMm2: Math.max(
      0,
      openedArea(medialAxis(left), NARROW_FLOOR_MM / 2) -
        specks.reduce((sum, { areaMm2 }) => sum + areaMm2, 0),
    ),
    pieces: outer.filter(({ areaMm2 }) => areaMm2 > NARROW_FLOOR_MM ** 2),
  };
}
