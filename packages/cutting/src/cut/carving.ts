import type { ArcRings, MedialAxis } from '@pourproof/geometry';
import type { Point } from '@pourproof/plane';
import type { Cutter } from '../cutters/cutter.ts';
import type { StepCut } from '../slices/step-cut.ts';

/** One cutter and how it is used. */
export interface CarveStep {
  readonly cutter: Cutter;
  /**
   * `clear`: the tip stays at the step's depth and the centre goes wherever the cutter fits. `follow`: the
   * tip goes as deep as it can with the flanks inside the artwork's edge.
   */
  readonly way: 'clear' | 'follow';
  /**
   * Depth limit of this step, mm below the face; by default that of the whole cut. The cutting length limits
   * it too.
   */
  readonly depthMm?: number;
}

/** Depth, and tolerance where the result cannot be exact. */
export interface CarveOptions {
  /** Depth limit of all steps, mm below the face, above 0. */
  readonly depthMm: number;
  /**
   * Tolerance of outlines where slices of several steps are joined as polygons, mm. 0.001 by default (our
   * choice).
   */
  readonly toleranceMm?: number;
}

/**
 * What one step adds to those before it; never negative, even where joined outlines differ within their
 * tolerance.
 */
export interface StepAddition {
  /** Area at the face, mm². */
  readonly areaMm2: number;
  /** Length of the artwork's outline that the cut reaches now and did not reach before, mm. */
  readonly lengthMm: number;
  readonly volumeMm3: number;
  /** Area of the deepest floor that a flat bottom goes over now and did not before, mm². */
  readonly floorMm2: number;
  /** A point in each separate place that is new at the face. */
  readonly places: readonly Point[];
  /** Depth of the step, mm below the face. */
  readonly depthMm: number;
  /** What keeps it from the depth asked for: its cutting length, or its diameter where the flanks end. */
  readonly limitedBy: 'length' | 'diameter' | undefined;
}

/** What several cutters together remove from one artwork. Depths are mm below the face, points absolute. */
export interface Carving {
  readonly axis: MedialAxis;
  /** What each step cuts by itself. */
  readonly stepCuts: readonly StepCut[];
  /** Tolerance of joined outlines, mm. */
  readonly toleranceMm: number;
  /** Outline at the face; outer rings have positive area. */
  readonly outline: ArcRings;
  readonly areaMm2: number;
  /** Bound on its error: rounding, but where outlines of several steps are joined as polygons. */
  readonly areaErrorMm2: number;
  readonly volumeMm3: number;
  /**
   * Bound on the error of `volumeMm3`; where slices are joined as polygons, the part that their integral over
   * depth adds is an estimate.
   */
  readonly volumeErrorMm3: number;
  /** Area of the floor at `depthLimitMm`. */
  readonly floorAreaMm2: number;
  /** Bound on its error, as that of the area. */
  readonly floorAreaErrorMm2: number;
  /** The part of it that no flat bottom goes over, so that tips leave scallops. */
  readonly scallopedFloorMm2: number;
  /** Outline of the floor at `depthLimitMm` that flat bottoms of clearing cutters go over; no rings where none does. */
  sweptFloorOutline(): ArcRings;
  /** Area of level floors above that, where one step ends and a smaller slice goes on. */
  readonly ledgeAreaMm2: number;
  /** Area of the walls along their slope. */
  readonly wallAreaMm2: number;
  /**
   * Error of `wallAreaMm2`: rounding where flanks are straight; an estimate, not a bound, for rounded tips
   * that follow and where slices are joined.
   */
  readonly wallAreaErrorMm2: number;
  /** Deepest point of the cut: a V stops above its limit where no stroke is wide enough; 0 where nothing is cut. */
  readonly maxDepthMm: number;
  /** How deep the deepest step may go. */
  readonly depthLimitMm: number;
  readonly perCutter: readonly StepAddition[];
  /** Area of the cut at a depth, mm². */
  sliceArea(depthBelowFaceMm: number): number;
  /** Outline of the cut at a depth. */
  sliceOutline(depthBelowFaceMm: number): ArcRings;
  /** Depth of the cut below a point of the face, mm; 0 where nothing is cut. */
  depthAt(xMm: number, yMm: number): number;
  /** Outlines at several depths, in the order given. */
  contours(depthsMm: readonly number[]): readonly ArcRings[];
}
