export { type AxisChord, axisChords } from './measure/axis-chords.ts';
export { AxisEdge } from './measure/axis-edge.ts';
export { angleBetween, turnBesideVertex } from './measure/cell-forms.ts';
export { checkRadius } from './measure/check-radius.ts';
export { enteringRadius } from './measure/entering-radius.ts';
export { erodedArea } from './measure/eroded-area.ts';
export { fibreVector } from './measure/fibre-vector.ts';
export { endGrainLength } from './measure/grain-length.ts';
export { type HardlyNarrower, hardlyNarrower } from './measure/hardly-narrower.ts';
export { type NarrowStretch, narrowStretches } from './measure/narrow-stretches.ts';
export { openedArea } from './measure/opened-area.ts';
export { parabolaArc } from './measure/parabola-length.ts';
export { reachedArea } from './measure/reached-area.ts';
export { sectorArea } from './measure/sector-area.ts';
export { type SeparatePart, separateParts } from './measure/separate-parts.ts';
export { stoppingClearance } from './measure/stopping-clearance.ts';
export { type StrokeLine, strokeLines } from './measure/stroke-lines.ts';
export { type StrokeWidths, strokeWidths } from './measure/stroke-widths.ts';
export type { TaperWidths } from './measure/taper-widths.ts';
export { type VCut, vVolume } from './measure/v-volume.ts';
export { type WallRun, type WallRunOptions, wallRuns } from './measure/wall-runs.ts';
export type { Boundary } from './medial-axis/boundary.ts';
export { type MedialAxis, medialAxis } from './medial-axis/medial-axis.ts';
export {
  type ArcRings,
  arcRingsArea,
  arcRingsLength,
  packArcRings,
  polygonFromArcs,
} from './outline/arc-rings.ts';
export { curvedEdges } from './outline/curved-edges.ts';
export { leftStanding, type StandingKind, type StandingPiece } from './outline/left-standing.ts';
export { findLevelCrossings, type LevelCrossings, sweepAt } from './outline/level-crossings.ts';
export { type OpenArcs, openArcs } from './outline/open-arcs.ts';
export { outsideOf } from './outline/outside-of.ts';
export { type WithinFlattening, withinFlattening } from './outline/within-flattening.ts';
export { type SweptBand, sweepAlong } from './sweep/sweep-along.ts';
export { type SweepTouch, sweepTouches, touchesWithin } from './sweep/sweep-touches.ts';
export { sweptArea, type WoodAlong, woodAlong } from './sweep/wood-along.ts';
