import { type Rings, ringStart } from '@pourproof/plane';
import { fibreVector } from './fibre-vector.ts';

/**
 * Length of wall in mm weighted with its exposure of end grain: the sum of |n·f| ds over all edges, n the
 * normal of the edge, f the fibre vector.
 *
 * It is the sum of the extents of all edges across the fibre, exact for polygons. Times the depth it is the
 * end-grain area of upright walls; its mean over all azimuths is 2/π of the perimeter (Cauchy).
 *
 * @example
 * const bar = resolveRegions([{ ...packRings([[0, 0, 40, 0, 40, 5, 0, 5]]), fillRule: 'nonzero' }]).region;
 * endGrainLength(bar, 0); // 10
 *
 * @param grainRad azimuth of the fibre, see {@link fibreVector}
 */
export function endGrainLength(region: Rings, grainRad: number): number {
  const [fx, fy] = fibreVector(grainRad);
  const { coords, ringEnds } = region;
  let sum = 0;
  for (let k = 0; k < ringEnds.length; k++) {
    const from = ringStart(region, k);
    const to = ringEnds[k];
    for (let i = from; i < to; i++) {
      const j = i + 1 === to ? from : i + 1;
      sum += Math.abs((coords[2 * j] - coords[2 * i]) * fy - (coords[2 * j + 1] - coords[2 * i + 1]) * fx);
    }
  }
  return sum;
}
