import { sweptAcross } from '@pourproof/arrangement';
import { type CleanRegion, invariant, signedArea } from '@pourproof/plane';
import { type AxisBlocks, areaOfAll, axisBlocks } from '../measure/axis-blocks.ts';
import { type Boundary, boundaryOf } from './boundary.ts';
import { collapsePieces } from './collapse-pieces.ts';
import { cutAtBottlenecks } from './cut-at-bottlenecks.ts';
import { findBottlenecks } from './find-bottlenecks.ts';
import { obbTree } from './obb-tree.ts';

/**
 * The medial axis of a region with its clearances, as a linked graph. Coordinates are relative to
 * `boundary.originX/Y`, mm.
 *
 * Sites are edges (index i: from point i to the next) and reflex vertices (index `boundary.count + i`). An
 * axis edge is a piece of the bisector of its two sites, a straight line or an arc of a parabola, along which
 * the clearance never falls from `edgeFrom` to `edgeTo`; seen in that direction, with y up, `edgeLeft` lies
 * on the left. Edges between a segment and its own end vertex are secondary: they bound cells but belong to
 * no stroke. Half-edge 2e goes up edge e with the right site beside it, 2e + 1 down with the left site;
 * `nextHalf` continues around the same part of the boundary.
 */
export interface MedialAxis {
  readonly region: CleanRegion;
  readonly boundary: Boundary;
  readonly nodeX: Float64Array;
  readonly nodeY: Float64Array;
  /** Clearance of each node, mm; 0 at boundary points. The first `bottleneckCount` nodes are bottlenecks. */
  readonly nodeR: Float64Array;
  readonly bottleneckCount: number;
  readonly edgeFrom: Int32Array;
  readonly edgeTo: Int32Array;
  readonly edgeLeft: Int32Array;
  readonly edgeRight: Int32Array;
  readonly nextHalf: Int32Array;
  /** Sums over the cells beside blocks of edges, so that measures need to visit few edges. */
  readonly blocks: AxisBlocks;
}

/** Relative tolerance on the area that cells may fail to tile; rounding causes 1e-12. */
const TILING_REL_TOL = 1e-9;

/** The same where walls lie within rounding of each other; a region that is not clean misses by far more. */
const WORST_TILING_REL_TOL = 1e-4;

/**
 * The medial axis of a region, exact for its straight edges up to rounding. An empty region gives an empty
 * axis. O(n log n) time where boxes of consecutive edges overlap little. Where seams thinner than rounding
 * keep the cells from tiling the region, it is the axis of the region without them.
 *
 * @example
 * const bar = resolveRegions([{ ...packRings([[0, 0, 40, 0, 40, 5, 0, 5]]), fillRule: 'nonzero' }]).region;
 * Math.max(...medialAxis(bar).nodeR); // 2.5
 *
 * @throws {InternalError} when the cells do not tile the region: it was not clean, or this is our bug
 */
export function medialAxis(region: CleanRegion): MedialAxis {
  const axis = axisOf(region);
  const misfit = misfitOf(axis);
  if (misfit <= TILING_REL_TOL) {
    return axis;
  }
  const seamless = axisOf(sweptAcross(region));
  // misfit may be NaN
  const better = misfit <= misfitOf(seamless) ? axis : seamless;
  invariant(misfitOf(better) <= WORST_TILING_REL_TOL, 'the cells of the medial axis tile the artwork');
  return better;
}

/** Share of the region's area that its cells fail to tile. */
function misfitOf({ region, blocks }: MedialAxis): number {
  const area = signedArea(region);
  const misfit = Math.abs(areaOfAll(blocks) - area);
  return area > 0 ? misfit / area : misfit;
}

function axisOf(region: CleanRegion): MedialAxis {
  const boundary = boundaryOf(region);
  const bottlenecks = findBottlenecks(boundary, obbTree(boundary));
  const graph = collapsePieces(boundary, bottlenecks, cutAtBottlenecks(boundary, bottlenecks));
  const blocks = axisBlocks(boundary, graph);
  // field by field: loops over an axis run at half the speed where objects were spread together
  return {
    region,
    boundary,
    nodeX: graph.nodeX,
    nodeY: graph.nodeY,
    nodeR: graph.nodeR,
    bottleneckCount: graph.bottleneckCount,
    edgeFrom: graph.edgeFrom,
    edgeTo: graph.edgeTo,
    edgeLeft: graph.edgeLeft,
    edgeRight: graph.edgeRight,
    nextHalf: graph.nextHalf,
    blocks,
  };
}
