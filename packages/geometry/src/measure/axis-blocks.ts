import { poll } from '@pourproof/plane';
import type { Boundary } from '../medial-axis/boundary.ts';
import type { AxisGraph } from '../medial-axis/growing-graph.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import {
  AREA,
  addCells,
  type CellSums,
  MAX_CLEARANCE,
  MIN_CLEARANCE,
  noCells,
  SUM_STRIDE,
} from './cell-sums.ts';
import { isSecondary } from './is-secondary.ts';

/**
 * Consecutive edges whose cells are summed once for all. Edges are made by rising clearance, piece by piece,
 * so most blocks lie on one side of a radius; blocks of half the size take twice the memory and save little.
 */
export const BLOCK = 32;

/** The cell sums of each block of consecutive axis edges, one after another. */
export type AxisBlocks = CellSums;

/** The blocks of an axis; linear time. */
export function axisBlocks(boundary: Boundary, graph: AxisGraph): AxisBlocks {
  const count = graph.edgeFrom.length;
  const blocks = new Float64Array(SUM_STRIDE * Math.ceil(count / BLOCK));
  for (let at = 0, e = 0; e < count; at += SUM_STRIDE, e += BLOCK) {
    blocks[at + MIN_CLEARANCE] = Infinity;
    poll();
    addCells(boundary, graph, e, Math.min(e + BLOCK, count), 0, Infinity, blocks, at);
  }
  return blocks;
}

/** Area of all cells, mm². */
export function areaOfAll(blocks: AxisBlocks): number {
  let sum = 0;
  for (let at = 0; at < blocks.length; at += SUM_STRIDE) {
    sum += blocks[at + AREA];
  }
  return sum;
}

/**
 * Sums of the cells beside all edges whose clearance is at least `low` and less than `high` along their whole
 * length.
 */
export function wholeCells(axis: MedialAxis, low: number, high: number): CellSums {
  const { blocks, edgeFrom } = axis;
  const sums = noCells();
  for (let at = 0, e = 0; at < blocks.length; at += SUM_STRIDE, e += BLOCK) {
    const least = blocks[at + MIN_CLEARANCE];
    const greatest = blocks[at + MAX_CLEARANCE];
    if (least >= low && greatest < high) {
      for (let k = 0; k < MIN_CLEARANCE; k++) {
        sums[k] += blocks[at + k];
      }
    } else if (greatest >= low && least < high) {
      addCells(axis.boundary, axis, e, Math.min(e + BLOCK, edgeFrom.length), low, high, sums, 0);
    }
  }
  return sums;
}

/**
 * The edges, other than secondary ones, along which the clearance rises from below a radius to the radius or
 * more, in their order.
 */
export function crossingEdges(axis: MedialAxis, radius: number): number[] {
  const { blocks, edgeFrom, edgeTo, nodeR } = axis;
  const crossing: number[] = [];
  for (let at = 0, first = 0; at < blocks.length; at += SUM_STRIDE, first += BLOCK) {
    if (blocks[at + MIN_CLEARANCE] >= radius || blocks[at + MAX_CLEARANCE] < radius) {
      continue;
    }
    const end = Math.min(first + BLOCK, edgeFrom.length);
    for (let e = first; e < end; e++) {
      if (nodeR[edgeFrom[e]] < radius && nodeR[edgeTo[e]] >= radius && !isSecondary(axis, e)) {
        crossing.push(e);
      }
    }
  }
  return crossing;
}
