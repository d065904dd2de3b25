import type { CleanRegion } from '@pourproof/plane';
import { regionShapes } from './change/region-shapes.ts';
import { fitOutlines } from './fit/fit-outline.ts';
import type { FitTolerance } from './fit/fit-run.ts';
import type { OutlinePath } from './fit/outline-path.ts';

/** Shapes with curves fitted to their outlines. */
export interface FittedShapes {
  /** Each shape by its outline and those of its holes. */
  readonly shapes: readonly (readonly OutlinePath[])[];
  /** How many points join lines, arcs and curves. */
  readonly nodes: number;
  /** The farthest that they lie from what they were fitted to, mm. */
  readonly offMm: number;
}

/** The shapes of a region with curves fitted to their outlines. */
export function fittedShapes(region: CleanRegion, tolerance: FitTolerance): FittedShapes {
  const shapes = regionShapes(region).map((shape) => fitOutlines(shape, tolerance));
  const all = shapes.flat();
  return {
    shapes,
    nodes: all.reduce((sum, { pieces }) => sum + pieces.length, 0),
    offMm: all.reduce((most, { offMm }) => Math.max(most, offMm), 0),
  };
}
