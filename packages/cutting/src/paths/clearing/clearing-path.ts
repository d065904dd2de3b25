import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge, enteringRadius } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { RETRACT_EQUIVALENT_MM, UNSEEN_REACH_MM } from '../../tolerances.ts';
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
   * Distance between neighbouring offset loops, mm, above 0 and at most the diameter. Beyond half the
   * diameter they leave posts in corners, which short paths of their own take; after an earlier cutter no
   * more than half the diameter is used.
   */
  readonly stepoverMm: number;
  /** Depth of the floor below the face, mm, 0 or more. */
  readonly depthMm: number;
  /**
   * Depth down to which everything is open already, mm, at most `depthMm`; passes start there. 0 by default.
   */
  readonly openDepthMm?: number;
  /** Diameter of the narrowest cutter used before, mm: only what it left is cut. 0, the default, for none. */
  readonly earlierDiameterMm?: number;
  /** Greatest depth of a pass, mm; unlimited by default. */
  readonly deepestPassMm?: number;
  /**
   * After an earlier cutter: longest move to the next run without a retract, over what that cutter has cut at
   * least as deep, mm. With `deepestPassMm` 40 by default, about what a retract takes (our choice), else 0,
   * because passes made of the path later would repeat the move each time.
   */
  readonly stayDownMm?: number;
  /** How far loops reach into earlier work, mm; 0.1 by default (our choice). */
  readonly overlapMm?: number;
  /**
   * Places where the cutter reaches no more than this beyond the earlier cut are skipped, mm; 0.02 by
   * default, too little to see (our choice).
   */
  readonly ignoreMm?: number;
}

/** How far loops reach into earlier work by default, mm (our choice). */
const DEFAULT_OVERLAP_MM = 0.1;

/**
 * Contour-parallel path of a flat cutter that clears all it can reach: offset loops at the clearances radius,
 * radius + stepover, …, connected loops joined into one closed run by short links along which the centre
 * still fits. After an earlier cutter, only loops or parts of them that take more are kept. Exactly what the
 * cutter can reach is swept, save for `ignoreMm`. No runs where the cutter fits nowhere or the earlier one
 * took everything. Linear in the axis for each loop.
 *
 * @example
 * const path = clearingPath(axis, { diameterMm: 3.175, stepoverMm: 1.27, depthMm: 3, deepestPassMm: 1.6 });
 * cuttingTime(path).minutes; // on a small router table
 *
 * @throws {RangeError} when a size is out of range
 */
export function clearingPath(axis: MedialAxis, clearing: Clearing): CutterPath {
  const { diameterMm, stepoverMm, depthMm, openDepthMm = 0, earlierDiameterMm = 0 } = clearing;
  const { overlapMm = DEFAULT_OVERLAP_MM, ignoreMm = UNSEEN_REACH_MM } = clearing;
  const { deepestPassMm = Infinity } = clearing;
  const { stayDownMm = deepestPassMm === Infinity ? 0 : RETRACT_EQUIVALENT_MM } = clearing;
  checkSize('diameterMm', diameterMm, diameterMm > 0, 'above 0');
  const isStepover = stepoverMm > 0 && stepoverMm <= diameterMm;
  checkSize('stepoverMm', stepoverMm, isStepover, 'above 0 and at most diameterMm');
  checkSize('depthMm', depthMm, depthMm >= 0);
  checkSize('openDepthMm', openDepthMm, openDepthMm >= 0 && openDepthMm <= depthMm, 'from 0 to depthMm');
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
  const levels = levelsOf(axis, edges, radius, stepover, wide);
  const { loops, links } = offsetLoops(axis, {
    edges: byLevel(axis, edges, levels),
    wide,
    levels,
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
    pollStep();
    out.push(run[i], run[i + 1], depthMm, run[i + 2]);
  }
  return out;
}

function checkSize(name: string, value: number, isGood: boolean, range = '0 or more'): void {
  if (!(isGood && Number.isFinite(value))) {
    throw new RangeError(`${name} is ${value}; give a number of millimetres, ${range}`);
  }
}

/** Axis edges, secondary ones left out, that rise to the radius and start where the earlier cutter did not fit. */
function edgesToClear(axis: MedialAxis, radius: number, wide: number): readonly number[] {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const shape = new AxisEdge(axis);
  const chosen: number[] = [];
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    if (nodeR[edgeTo[e]] >= radius && nodeR[edgeFrom[e]] < wide && !shape.isSecondary(e)) {
      chosen.push(e);
    }
  }
  return chosen;
}

/**
 * Edges that rise to the highest level first, then those that rise to the next only, and so on; in order of
 * the axis between two levels, where rounding would else tell edges of one height apart.
 */
function byLevel(axis: MedialAxis, edges: readonly number[], levels: readonly number[]): Int32Array {
  const { edgeTo, nodeR } = axis;
  const byCount: number[][] = levels.map(() => []);
  for (const e of edges) {
    pollStep();
    byCount[levelsBelow(levels, nodeR[edgeTo[e]]) - 1].push(e);
  }
  return Int32Array.from(byCount.toReversed().flat());
}

/** How many rising levels a height reaches. */
function levelsBelow(levels: readonly number[], height: number): number {
  let [low, high] = [0, levels.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (levels[middle] <= height) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  return low;
}

/** Clearances of the loops, in rising order. */
function levelsOf(
  axis: MedialAxis,
  edges: readonly number[],
  radius: number,
  stepover: number,
  wide: number,
): number[] {
  const levels: number[] = [];
  const widest = edges.reduce((most, e) => Math.max(most, axis.nodeR[axis.edgeTo[e]]), 0);
  for (let level = radius; level <= widest && level < wide; ) {
    levels.push(level);
    level = enteringRadius(axis, radius + levels.length * stepover);
  }
  return levels;
}
