import type { ArcRings, MedialAxis } from '@pourproof/geometry';
import type { Point } from '@pourproof/plane';
import type { Cutter } from '../cutters/cutter.ts';
import type { StepCut } from '../slices/step-cut.ts';

/** One cutter at work. */
export interface CarveStep {
  readonly cutter: Cutter;
  /**
   * `clear`: the tip stays at the step's depth and the centre goes wherever the cutter fits. `follow`: the tip goes as deep as the flanks allow,
   * so that they touch the artwork's edge.
   */
  readonly way: 'clear' | 'follow';
  /** Deepest for this step, mm below the face; default: the depth of the whole carving. The cutter's own length limits it further. */
  readonly depthMm?: number;
}

/** How deep, and how fine where it cannot be exact. */
export interface CarveOptions {
  /** Deepest of all, mm below the face, above 0. */
  readonly depthMm: number;
  /** How far outlines may be off where two cutters' slices have to be joined as polygons, mm. Default 0.001 (our choice: a fifth of the flattening's). */
  readonly toleranceMm?: number;
}

/** What one step adds to those before it; never below 0, where joined outlines would say so within their tolerance. */
export interface StepAddition {
  /** Area at the face, mm². */
  readonly areaMm2: number;
  /** Length of the artwork's outline that the cut reaches now and did not before, mm. */
  readonly lengthMm: number;
  readonly volumeMm3: number;
  /** Level floor at the deepest that a flat bottom goes over now and did not before, mm². */
  readonly floorMm2: number;
  /** A point of each separate piece that is new at the face. */
  readonly places: readonly Point[];
  /** How deep the step goes, mm below the face. */
  readonly depthMm: number;
  /** What keeps it from the depth asked for: the length of its edges, or its diameter where its flanks end. */
  readonly limitedBy: 'length' | 'diameter' | undefined;
}

/** The wood that several cutters remove together from one artwork. Depths are mm below the face, points absolute. */
export interface Carving {
  readonly axis: MedialAxis;
  readonly steps: readonly CarveStep[];
  /** What each step cuts by itself. */
  readonly layers: readonly StepCut[];
  /** How far joined outlines may be off. */
  readonly toleranceMm: number;
  /** Outline at the face; outer rings have positive area. */
  readonly outline: ArcRings;
  readonly areaMm2: number;
  readonly volumeMm3: number;
  /** The true volume is within this of `volumeMm3`; where slices had to be joined as polygons, how their integral over depth is off is estimated. */
  readonly volumeErrorMm3: number;
  /** Area of the floor at the deepest. */
  readonly floorAreaMm2: number;
  /** The part of it that no flat bottom goes over, so that tips leave it scalloped. */
  readonly scallopedFloorMm2: number;
  /** Level floors above the deepest, where one step ends and a smaller slice goes on. */
  readonly ledgeAreaMm2: number;
  /** Area of the walls, slanted as they are. */
  readonly wallAreaMm2: number;
  /** How far that may be off: rounding with straight flanks; an estimate, no bound, for rounded tips that follow and where slices had to be joined. */
  readonly wallAreaErrorMm2: number;
  readonly maxDepthMm: number;
  /** Depth at which the first V-shaped cutter's flanks end before the depth asked for is reached; undefined where they do not. */
  readonly cappedAtMm: number | undefined;
  readonly perCutter: readonly StepAddition[];
  /** Area in mm² of the cut at a depth. */
  sliceArea(depthBelowFaceMm: number): number;
  /** Outline of the cut at a depth. */
  sliceOutline(depthBelowFaceMm: number): ArcRings;
  /** Depth in mm of the cut below a point of the face; 0 where nothing is cut. */
  depthAt(xMm: number, yMm: number): number;
  /** Outlines at several depths, in the order given. */
  contours(depthsMm: readonly number[]): readonly ArcRings[];
}
