export { aciColour, trueColour } from './aci-colour.ts';
export { type Bounds, boundsOf, EMPTY_BOUNDS, isEmptyBounds, joinBounds } from './bounds.ts';
export {
  CHORD_HEIGHT_SLACK,
  CORNER_TURN_RAD,
  SHORT_CHORD_TOLERANCES,
  STRAIGHT_TURN_RAD,
} from './chord-turns.ts';
export type { Drawing, DrawnShape, OpenOutline, OpenOutlines, OutlineGap, TriedJoin } from './drawing.ts';
export { InternalError, invariant } from './invariant.ts';
export { keepUnits } from './keep-units.ts';
export {
  formatArea,
  formatLength,
  formatVolume,
  type LengthUnit,
  type Measure,
  MeasureError,
  parseLengthMm,
  parseMeasure,
  type Quantity,
} from './measure-text.ts';
export type { Notice, NoticeEffect, NoticeParams, NoticePlace } from './notice.ts';
export { NOTICE_CODES } from './notice-codes.ts';
export type { Point } from './point.ts';
export { asking, type Poll, poll, pollStep } from './poll.ts';
export {
  type CleanRegion,
  type FillRule,
  packRings,
  perimeter,
  type Region,
  type Rings,
  ringArea,
  ringCoords,
  ringStart,
  ringsBounds,
  signedArea,
} from './region.ts';
export { BoxIndex } from './structures/box-index.ts';
export { UnionFind } from './structures/union-find.ts';
export { type TextInUnits, textInUnits } from './text-in-units.ts';
export {
  byGrain,
  COINCIDENT_REL_TOL,
  DEFAULT_FLATTEN_TOLERANCE_MM,
  DEFAULT_JOIN_TOLERANCE_MM,
  inGrains,
  RESOLVE_GRID_MM,
  SPECK_AREA_MM2,
  TIE_GRAIN_MM,
} from './tolerance.ts';
export {
  applyTransform,
  compose,
  determinant,
  IDENTITY,
  rotation,
  scaling,
  type Transform,
  transformRings,
  translation,
} from './transform.ts';
export {
  CSS_PX_PER_INCH,
  degrees,
  G_PER_LB,
  G_PER_OZ,
  inchesFromMm,
  ML_PER_US_FL_OZ,
  MM_PER_INCH,
  mmFromInches,
  PT_PER_INCH,
  PT_PER_PICA,
  radians,
} from './units.ts';
