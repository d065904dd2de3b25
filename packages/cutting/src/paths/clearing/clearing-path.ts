import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge, enteringRadius } from '@pourproof/geometry';
import { type CutterPath, packRuns, type Run } from '../cutter-path.ts';
import { equalPasses, runInPasses } from '../in-passes.ts';
import { joinRuns } from './join-runs.ts';
import { offsetLoops } from './offset-loops.ts';
import { tourLoops } from './tour-loops.ts';

/** How an area is cleared by a flat cutter. */
export interface Clearing {
  /** Diameter of the cutter, mm, above 0. */
  readonly diameterMm: number;
  /**
   * Distance between one round and the next, mm, above 0 and at most the diameter. Beyond half the diameter
   * loops leave posts in corners, which get short ways of their own; after an earlier cutter no more than
   * half the diameter is used.
   */
  readonly stepoverMm: number;
  /** Depth of the floor below the face, mm, 0 or more. */
  readonly depthMm: number;
  /**
   * Depth down to which other work has opened all of it, mm, at most `depthMm`; passes start there. 0 by
   * default.
   */
  readonly openDepthMm?: number;
  /**
   * Diameter of the narrowest cutter that has been here before, mm; only what it left is cut. 0, the default,
   * for none.
   */
  readonly earlierDiameterMm?: number;
  /** Most depth taken in one pass, mm; unlimited by default. */
  readonly deepestPassMm?: number;
  /**
   * After an earlier cutter, the next run is reached without a lift where that one has cut all the way, at
   * least as deep, and it is no farther than this, mm. With `deepestPassMm` 40 by default (our choice: what a
   * lift takes at a common feed), else 0: passes made of the path later would go that way each time.
   */
  readonly stayDownMm?: number;
  /** How far each round that takes up earlier work reaches into it, mm; 0.1 by default (our choice). */
  readonly overlapMm?: number;
  /**
   * Places where the cutter would reach no more than this beyond the earlier cut are passed over, mm; 0.02 by
   * default (our choice: not seen).
   */
  readonly ignoreMm?: number;
}

const DEFAULT_OVERLAP_MM = 0.1;
const DEFAULT_IGNORE_MM = 0.02;
const DEFAULT_STAY_DOWN_MM = 40;

/**
 * Path of a flat cutter that takes all it can reach at one depth: loops at clearance radius, radius +
 * stepover, … until nothing is left, those that hang together joined into one closed run by short moves that
 * stay where the cutter's centre may go. After an earlier cutter only the loops, or their parts, that take
 * more are kept. Every point of what the cutter can reach, and no other, is swept (but for `ignoreMm`). No
 * runs where the cutter fits nowhere or the earlier one took all. Time linear in the axis for each round.
 *
 * @throws {RangeError} when a size is out of range
 */
export function clearingPath(axis: MedialAxis, clearing: Clearing): CutterPath {
  const { diameterMm, stepoverMm, depthMm, openDepthMm = 0, earlierDiameterMm = 0 } = clearing;
  const { overlapMm = DEFAULT_OVERLAP_MM, ignoreMm = DEFAULT_IGNORE_MM } = clearing;
  const { deepestPassMm = Infinity } = clearing;
  const { stayDownMm = deepestPassMm === Infinity ? 0 : DEFAULT_STAY_DOWN_MM } = clearing;
  checkSize('diameterMm', diameterMm, diameterMm > 0);
  checkSize('stepoverMm', stepoverMm, stepoverMm > 0 && stepoverMm <= diameterMm);
  checkSize('depthMm', depthMm, depthMm >= 0);
  checkSize('openDepthMm', openDepthMm, openDepthMm >= 0 && openDepthMm <= depthMm);
  checkSize('earlierDiameterMm', earlierDiameterMm, earlierDiameterMm >= 0);
  checkSize('overlapMm', overlapMm, overlapMm >= 0);
  checkSize('ignoreMm', ignoreMm, ignoreMm >= 0);
  checkSize('stayDownMm', stayDownMm, stayDownMm >= 0);
  const depths =
    deepestPassMm === Infinity
      ? [depthMm]
      : equalPasses(depthMm - openDepthMm, deepestPassMm).map((pass) => openDepthMm + pass);
  const radius = enteringRadius(axis, diameterMm / 2);
  const wide = earlierDiameterMm > 0 ? enteringRadius(axis, earlierDiameterMm / 2) : Infinity;
  if (wide <= radius) {
    return packRuns([]);
  }
  const stepover = wide < Infinity ? Math.min(stepoverMm, radius) : stepoverMm;
  const edges = edgesToClear(axis, radius, wide);
  const { loops, links } = offsetLoops(axis, {
    edges,
    wide,
    levels: levelsOf(axis, edges, radius, stepover, wide),
    tailRadius: stepover > radius ? radius : undefined,
    discRadius: wide - radius,
    overlap: overlapMm,
    ignore: ignoreMm,
  });
  const runs = tourLoops(loops, links).flatMap(({ points, first: { hub } }) =>
    runInPasses(level(points, depthMm), depths).map((run) => ({ points: run, hub })),
  );
  const { originX, originY } = axis.boundary;
  return packRuns(joinRuns(axis, runs, wide, stayDownMm), originX, originY);
}

/** A run `[x, y, bulge, …]` at one depth. */
function level(run: readonly number[], depthMm: number): Run {
  const out: number[] = [];
  for (let i = 0; i < run.length; i += 3) {
    out.push(run[i], run[i + 1], depthMm, run[i + 2]);
  }
  return out;
}

function checkSize(name: string, value: number, isGood: boolean): void {
  if (!(isGood && Number.isFinite(value))) {
    throw new RangeError(`${name} is ${value}; give millimetres in the range that the documentation names`);
  }
}

/**
 * Axis edges, no secondary edges, that rise to the radius and start where the earlier cutter did not fit;
 * highest first.
 */
function edgesToClear(axis: MedialAxis, radius: number, wide: number): Int32Array {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const shape = new AxisEdge(axis);
  const chosen: number[] = [];
  for (let e = 0; e < edgeFrom.length; e++) {
    if (nodeR[edgeTo[e]] >= radius && nodeR[edgeFrom[e]] < wide && !shape.isSecondary(e)) {
      chosen.push(e);
    }
  }
  return Int32Array.from(chosen).sort((a, b) => nodeR[edgeTo[b]] - nodeR[edgeTo[a]]);
}

/** Clearances of the loops, from the least on. */
function levelsOf(
  axis: MedialAxis,
  edges: Int32Array,
  radius: number,
  stepover: number,
  wide: number,
): number[] {
  const levels: number[] = [];
  const widest = edges.length === 0 ? 0 : axis.nodeR[axis.edgeTo[edges[0]]];
  for (let level = radius; level <= widest && level < wide; ) {
    levels.push(level);
    level = enteringRadius(axis, radius + levels.length * stepover);
  }
  return levels;
}
