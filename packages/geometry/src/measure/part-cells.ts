import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { wholeCells } from './axis-blocks.ts';
import { AxisEdge } from './axis-edge.ts';
import { areaBesideLines, distanceBesideLines } from './cell-forms.ts';
import { AREA, type CellSums, LENGTH, VOLUME } from './cell-sums.ts';

/**
 * Sums of the cells beside the axis where its clearance is at least `radius`, given the edges that pass it.
 */
export function cellsAbove(axis: MedialAxis, radius: number, crossing: readonly number[]): CellSums {
  return addParts(axis, radius, crossing, true, wholeCells(axis, radius, Infinity));
}

/**
 * Sums of the cells beside the axis where its clearance is less than `radius`, given the edges that pass it.
 */
export function cellsBelow(axis: MedialAxis, radius: number, crossing: readonly number[]): CellSums {
  return addParts(axis, radius, crossing, false, wholeCells(axis, 0, radius));
}

/** Adds the cells beside the upper or the lower parts of the edges that pass a radius. */
function addParts(
  axis: MedialAxis,
  radius: number,
  crossing: readonly number[],
  isUpper: boolean,
  sums: CellSums,
): CellSums {
  const { edgeFrom, edgeTo, edgeLeft, edgeRight, nodeX, nodeY, nodeR, boundary } = axis;
  const { count, tx, ty } = boundary;
  const edge = new AxisEdge(axis);
  let area = 0;
  let length = 0;
  let volume = 0;
  for (const e of crossing) {
    const from = edgeFrom[e];
    const to = edgeTo[e];
    const left = edgeLeft[e];
    const right = edgeRight[e];
    const a = isUpper ? radius : nodeR[from];
    const b = isUpper ? nodeR[to] : radius;
    if (left >= count || right >= count) {
      edge.load(e);
      edge.addCells(a, b, sums);
      continue;
    }
    // inlined: between two segments, as at every corner, there are many
    const vx = nodeX[to] - nodeX[from];
    const vy = nodeY[to] - nodeY[from];
    const share = (b - a) / (nodeR[to] - nodeR[from]);
    const along = share * (vx * (tx[right] - tx[left]) + vy * (ty[right] - ty[left]));
    area += areaBesideLines(along, a, b);
    length += along;
    volume += distanceBesideLines(along, a, b);
  }
  sums[AREA] += area;
  sums[LENGTH] += length;
  sums[VOLUME] += volume;
  return sums;
}
