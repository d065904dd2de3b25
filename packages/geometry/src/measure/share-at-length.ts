import type { AxisEdge } from './axis-edge.ts';

/** Relative tolerance of a way along an edge, and the steps at most to find it. */
const WAY_REL_TOL = 1e-13;
const WAY_STEPS = 60;

/**
 * Share of an edge at a length along it from the share `first`, whose length up to the high end is `whole`, mm.
 */
export function shareAtLength(shape: AxisEdge, first: number, wanted: number, whole: number): number {
  if (!(whole > 0)) {
    return first;
  }
  if (shape.kind !== 'segment-vertex') {
    return first + (1 - first) * Math.min(1, Math.max(0, wanted / whole));
  }
  // the length along a parabola grows with the share, at a rate that changes little
  let low = first;
  let high = 1;
  let share = first + ((1 - first) * wanted) / whole;
  for (let k = 0; k < WAY_STEPS && high - low > WAY_REL_TOL; k++) {
    const off = shape.lengthBetween(first, share) - wanted;
    if (Math.abs(off) <= WAY_REL_TOL * whole) {
      break;
    }
    if (off > 0) {
      high = share;
    } else {
      low = share;
    }
    const next = share - ((1 - first) * off) / whole;
    share = next > low && next < high ? next : (low + high) / 2;
  }
  return share;
}
