import { pollStep } from '@pourproof/plane';
import { eulerTrails } from '../euler-trails.ts';

/** An open curve between two wide places, each identified by its axis edge. */
export interface OpenCurve {
  readonly id: number;
  readonly points: readonly number[];
  readonly startEdge: number;
  readonly endEdge: number;
}

/**
 * Closed loops made of open curves; curve `id` begins at point `offset` of loop `loop`, walked backwards
 * where `isBack`.
 */
export interface CurveCircuits {
  readonly loops: number[][];
  /** Axis edge of the wide place at which each loop starts and ends; -1 where it ends at another one. */
  readonly hubs: number[];
  readonly places: ReadonlyMap<number, { loop: number; offset: number; isBack: boolean }>;
}

/**
 * Joins open curves into loops by straight moves between ends at the same wide place: Euler trails, on which
 * each curve is walked once. Where a wide place has an odd number of ends, its part becomes more than one
 * loop.
 */
export function curveCircuits(curves: readonly OpenCurve[]): CurveCircuits {
  const nodeOf = new Map<number, number>();
  const node = (edge: number): number => {
    const known = nodeOf.get(edge) ?? nodeOf.size;
    nodeOf.set(edge, known);
    return known;
  };
  const from = curves.map((curve) => node(curve.startEdge));
  const to = curves.map((curve) => node(curve.endEdge));
  const loops: number[][] = [];
  const hubs: number[] = [];
  const places = new Map<number, { loop: number; offset: number; isBack: boolean }>();
  for (const trail of eulerTrails(nodeOf.size, from, to)) {
    const loop: number[] = [];
    for (const step of trail) {
      pollStep();
      const curve = curves[step >> 1];
      const isBack = (step & 1) === 1;
      places.set(curve.id, { loop: loops.length, offset: loop.length / 3, isBack });
      const points = isBack ? backwards(curve.points) : curve.points;
      for (let i = 0; i < points.length; i++) {
        loop.push(points[i]);
      }
      loop[loop.length - 1] = 0;
    }
    loops.push(loop);
    const [start, end] = [endsOf(curves, trail[0])[0], endsOf(curves, trail[trail.length - 1])[1]];
    hubs.push(start === end ? start : -1);
  }
  return { loops, hubs, places };
}

/** The wide places at which a step of a trail starts and ends. */
function endsOf(curves: readonly OpenCurve[], step: number): [number, number] {
  const { startEdge, endEdge } = curves[step >> 1];
  return (step & 1) === 0 ? [startEdge, endEdge] : [endEdge, startEdge];
}

/** An open curve in the opposite direction. */
function backwards(points: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = points.length - 3; i >= 0; i -= 3) {
    out.push(points[i], points[i + 1], i > 0 ? -points[i - 1] : 0);
  }
  return out;
}
