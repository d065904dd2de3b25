import { sweptAcross } from '@pourproof/arrangement';
import { type CleanRegion, invariant, signedArea } from '@pourproof/plane';
import { type AxisBlocks, areaOfAll, axisBlocks } from '../measure/axis-blocks.ts';
import { type Boundary, boundaryOf } from './boundary.ts';
import { collapsePieces } from './collapse-pieces.ts';
import { cutAtBottlenecks } from './cut-at-bottlenecks.ts';
import { findBottlenecks } from './find-bottlenecks.ts';
import { obbTree } from './obb-tree.ts';

/**
 * The medial axis of a region with its clearances, as a linked graph. Coordinates are relative to `boundary.originX/Y`, mm.
 *
 * Sites are edges (index i: from point i to the next) and reflex vertices (index `boundary.count + i`). An axis edge is a piece of the bisector
 * of its two sites, a straight line or a parabola arc, along which the clearance never falls from `edgeFrom` to `edgeTo`; seen in that
 * direction, with y up, `edgeLeft` lies on the left. Edges between a site edge and its own end point are secondary edges: they bound cells but
 * belong to no stroke. Half-edge 2e walks up edge e with the right site at hand, 2e + 1 down with the left site;
 * `nextHalf` goes on around the same part of the boundary.
 */
export interface MedialAxis {
  readonly region: CleanRegion;
  readonly boundary: Boundary;
  readonly nodeX: Float64Array;
  readonly nodeY: Float64Array;
  /** Clearance of each node, mm: 0 at points of the boundary. The first `bottleneckCount` nodes are bottlenecks. */
  readonly nodeR: Float64Array;
  readonly bottleneckCount: number;
  readonly edgeFrom: Int32Array;
  readonly edgeTo: Int32Array;
  readonly edgeLeft: Int32Array;
  readonly edgeRight: Int32Array;
  readonly nextHalf: Int32Array;
  /** What the cells beside runs of edges sum up to, so that questions need to look into few of them. */
  readonly blocks: AxisBlocks;
}

/** Share of the area by which cells fail to tile the region at most; rounding makes 1e-12 of it. */
const TILING_REL_TOL = 1e-9;

/** The same where walls lie within rounding of each other and nothing better can be had; of a region that is not clean far more. */
const WORST_TILING_REL_TOL = 1e-4;

/**
 * The medial axis of a region, exact for its straight edges up to rounding. An empty region gives an empty axis. O(n log n) time where boxes of
 * consecutive edges overlap little. Where seams thinner than rounding keep the cells from tiling the region, it is the axis of the region without them.
 *
 * @throws {InternalError} when the cells do not tile the region: it was not clean, or we are wrong
 */
export function medialAxis(region: CleanRegion): MedialAxis {
  const axis = axisOf(region);
  const misfit = misfitOf(axis);
  if (misfit <= TILING_REL_TOL) {
    return axis;
  }
  const seamless = axisOf(sweptAcross(region));
  // a misfit may be no number
  const better = misfit <= misfitOf(seamless) ? axis : seamless;
  invariant(misfitOf(better) <= WORST_TILING_REL_TOL, 'the cells of the medial axis tile the artwork');
  return better;
}

/** By what share of the region's area the cells fail to tile it. */
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
  // all axes made alike, field by field: loops over them run at half the speed on objects that were spread together
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
