import { AxisEdge, type MedialAxis } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { type CutterPath, packRuns, type Run } from '../paths/cutter-path.ts';

/**
 * Edges of an axis, counted once for each loop that crosses or passes below them, that are planned: about half
 * a minute and a gigabyte (our choice). Signs of a metre stay far below.
 */
export const MOST_CROSSINGS = 2e7;

/** How many edges of the axis all loops of a clearing have to look at: what its planning takes grows with it. */
export function crossingsOf(axis: MedialAxis, radiusMm: number, stepoverMm: number, wideMm: number): number {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const shape = new AxisEdge(axis);
  let sum = 0;
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    const top = Math.min(nodeR[edgeTo[e]], wideMm);
    if (top >= radiusMm && nodeR[edgeFrom[e]] < wideMm && !shape.isSecondary(e)) {
      sum += Math.floor((top - radiusMm) / stepoverMm) + 1;
    }
  }
  return sum;
}

/**
 * A stand-in for the path of a clearing that is too large to plan, in one straight line. Loops a stepover apart
 * that begin a radius inside the outline are together as long as the area that centres go over, about the area
 * less the outline times the radius, over the stepover, and half of the outline more. After an earlier cutter
 * only the outline is left.
 */
export function estimatedPath(
  axis: MedialAxis,
  { radiusMm, stepoverMm }: { readonly radiusMm: number; readonly stepoverMm: number },
  depths: readonly number[],
  isFirst: boolean,
): CutterPath {
  const { x, y, next, length, count } = axis.boundary;
  let [area, outline] = [0, 0];
  for (let i = 0; i < count; i++) {
    const j = next[i];
    area += (x[i] * y[j] - x[j] * y[i]) / 2;
    outline += length[i];
  }
  const overCentres = Math.max(0, Math.abs(area) - outline * radiusMm);
  const lengthMm = isFirst ? overCentres / stepoverMm + outline / 2 : outline;
  // there and back again, so that nothing is added between passes
  return packRuns(
    depths.map(
      (depthMm, k): Run =>
        k % 2 === 0
          ? [0, 0, depthMm, 0, lengthMm, 0, depthMm, 0]
          : [lengthMm, 0, depthMm, 0, 0, 0, depthMm, 0],
    ),
  );
}
