import type { MedialAxis } from '@pourproof/geometry';
import { stoppingClearance } from '@pourproof/geometry';
import { DEFAULT_FLATTEN_TOLERANCE_MM, poll, pollStep } from '@pourproof/plane';
import { RETRACT_EQUIVALENT_MM, UNSEEN_REACH_MM } from '../../tolerances.ts';
import { arcLength, type CutterPath, packRuns, type Run } from '../cutter-path.ts';
import { orderRuns } from '../order-runs.ts';
import { coveringTrails } from './covering-trails.ts';
import { type FollowGraph, followGraph } from './follow-graph.ts';
import { radiusAtDepth, tipDepth } from './tip-depth.ts';
import { TipPath } from './tip-path.ts';

/** How a V cutter follows strokes. */
export interface Following {
  /** Angle between the flanks, radians, above 0 and below π. */
  readonly includedRad: number;
  /** Radius of a rounded tip, mm; 0, the default, for a point. */
  readonly tipRadiusMm?: number;
  /** Width of a flat tip, mm; 0, the default, for none. Not together with a rounded tip. */
  readonly tipFlatMm?: number;
  /** Depth limit of the tip, mm, above 0; Infinity for none. */
  readonly depthMm: number;
  /** Tolerance of chords for curved paths, mm; the flattening tolerance by default. */
  readonly toleranceMm?: number;
  /**
   * Branches that reach no more than this farther into a corner are left out, mm; 0.02 by default, too little
   * to see (our choice). Below twice the flattening tolerance, branches into the corners between chords of
   * flattened curves are followed.
   */
  readonly ignoreMm?: number;
  /**
   * Longest path that is walked twice to save a retract, mm; 40 by default, about what a retract takes (our
   * choice).
   */
  readonly retraceMm?: number;
}

/** A path along strokes, with its length. */
export interface FollowingPath {
  readonly path: CutterPath;
  /** Length of all moves in the wood, mm: that of the true curves, not of the chords. */
  readonly lengthMm: number;
  /** The part of it that is walked a second time, mm. */
  readonly retracedMm: number;
}

/**
 * Path of a V cutter's tip whose flanks touch both walls of each stroke: along the medial axis, as deep as
 * the clearance allows, up to the face in corners; where the depth limit stops it, along the offset curve at
 * that depth, and the floor inside is left to a flat cutter. Joined into few runs, short branches walked
 * twice. A round spot is a run of one point. No runs for an empty region.
 *
 * @example
 * const { path, lengthMm } = followingPath(axis, { includedRad: Math.PI / 3, depthMm: 4 });
 *
 * @throws {RangeError} when a size is out of range
 */
export function followingPath(axis: MedialAxis, following: Following): FollowingPath {
  const { includedRad, tipRadiusMm = 0, tipFlatMm = 0, depthMm } = following;
  const { toleranceMm = DEFAULT_FLATTEN_TOLERANCE_MM, retraceMm = RETRACT_EQUIVALENT_MM } = following;
  const { ignoreMm = UNSEEN_REACH_MM } = following;
  check('includedRad', includedRad, includedRad > 0 && includedRad < Math.PI, 'an angle above 0 and below π');
  check('tipRadiusMm', tipRadiusMm, tipRadiusMm >= 0 && tipRadiusMm < Infinity, '0 or more');
  const isFlat = tipFlatMm >= 0 && tipFlatMm < Infinity && tipFlatMm * tipRadiusMm === 0;
  check('tipFlatMm', tipFlatMm, isFlat, '0 or more, and 0 beside a rounded tip');
  check('depthMm', depthMm, depthMm > 0, 'more than 0');
  check('toleranceMm', toleranceMm, toleranceMm > 0, 'more than 0');
  check('ignoreMm', ignoreMm, ignoreMm >= 0, '0 or more');
  check('retraceMm', retraceMm, retraceMm >= 0, '0 or more');
  const tip = { includedRad, tipRadiusMm, tipFlatMm };
  const cap = stoppingClearance(axis, radiusAtDepth(tip, depthMm));
  const graph = followGraph(axis, tipFlatMm / 2, cap, ignoreMm);
  const shape = new TipPath(axis, tip);
  const lengths = graph.pieces.map((piece) => {
    poll();
    return piece.edge < 0 ? curveLength(piece.curve) : shape.length(piece.edge, cap);
  });
  const from = graph.pieces.map((piece) => piece.from);
  const to = graph.pieces.map((piece) => piece.to);
  const trails = coveringTrails(graph.nodeCount, from, to, lengths, retraceMm);
  const runs = trails.map((trail) => runOf(trail, graph, shape, cap, depthMm, toleranceMm));
  for (const v of graph.spots) {
    const depth = Math.min(depthMm, tipDepth(tip, axis.nodeR[v]));
    runs.push([axis.nodeX[v], axis.nodeY[v], depth, 0]);
  }
  let lengthMm = 0;
  let retracedMm = 0;
  const isWalked = new Uint8Array(lengths.length);
  for (const step of trails.flat()) {
    pollStep();
    const length = lengths[step >> 1];
    lengthMm += length;
    retracedMm += isWalked[step >> 1] * length;
    isWalked[step >> 1] = 1;
  }
  return {
    path: packRuns(ordered(runs), axis.boundary.originX, axis.boundary.originY),
    lengthMm,
    retracedMm,
  };
}

function check(name: string, value: number, isGood: boolean, range: string): void {
  if (!isGood) {
    throw new RangeError(`${name} is ${value}; give ${range}`);
  }
}

function curveLength(curve: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i + 3 < curve.length; i += 3) {
    pollStep();
    sum += arcLength(curve[i + 3] - curve[i], curve[i + 4] - curve[i + 1], curve[i + 2]);
  }
  return sum;
}

/** Points `[x, y, depth, bulge, …]` of a trail. */
function runOf(
  trail: readonly number[],
  graph: FollowGraph,
  shape: TipPath,
  cap: number,
  depthMm: number,
  toleranceMm: number,
): number[] {
  const run: number[] = [];
  const push = (x: number, y: number, depth: number, bulge: number): void => {
    const n = run.length;
    if (n > 0 && run[n - 4] === x && run[n - 3] === y && run[n - 2] === depth) {
      run[n - 1] = bulge;
    } else {
      run.push(x, y, depth, bulge);
    }
  };
  for (const step of trail) {
    poll();
    const { edge, curve } = graph.pieces[step >> 1];
    const isBack = (step & 1) === 1;
    if (edge < 0) {
      const count = curve.length / 3;
      for (let k = 0; k < count; k++) {
        pollStep();
        const i = isBack ? count - 1 - k : k;
        const bulge = isBack ? (i > 0 ? -curve[3 * i - 1] : 0) : i + 1 < count ? curve[3 * i + 2] : 0;
        push(curve[3 * i], curve[3 * i + 1], depthMm, bulge);
      }
    } else {
      const points = shape.points(edge, cap, toleranceMm);
      const count = points.length / 3;
      for (let k = 0; k < count; k++) {
        pollStep();
        const i = 3 * (isBack ? count - 1 - k : k);
        push(points[i], points[i + 1], Math.min(points[i + 2], depthMm), 0);
      }
    }
  }
  return run;
}

/** Runs in an order with short moves between them. */
function ordered(runs: readonly Run[]): Run[] {
  const order = orderRuns(
    runs.flatMap((run) => [run[0], run[1]]),
    runs.flatMap((run) => [run[run.length - 4], run[run.length - 3]]),
  );
  return order.map((k) => runs[k]);
}
