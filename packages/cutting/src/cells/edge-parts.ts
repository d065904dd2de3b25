import type { AxisEdge } from '@pourproof/geometry';

/** A stretch of an axis edge. */
export interface EdgePart {
  /** Clearances between which it lies. */
  readonly from: number;
  readonly to: number;
  /** Share of what lies between these clearances that belongs to this stretch: below 1 on level edges. */
  readonly share: number;
  /** Its midpoint, relative to the axis' origin, and the clearance there. */
  readonly x: number;
  readonly y: number;
  readonly clearance: number;
}

/**
 * Below this relative difference of its clearances an axis edge counts as level: its stretches are told apart
 * by share, not by clearance.
 */
const LEVEL_STRETCH_REL_TOL = 1e-9;

/** The part of the loaded edge with at least a clearance, in equal stretches no longer than `longestMm`. */
export function edgeParts(edge: AxisEdge, minMm: number, longestMm: number): EdgePart[] {
  const low = Math.max(edge.r0, minMm);
  const first = low > edge.r0 ? edge.shareOf(low) : 0;
  if (longestMm === Infinity) {
    edge.atShare((1 + first) / 2);
    return [{ from: low, to: edge.r1, share: 1, x: edge.x, y: edge.y, clearance: edge.clearance }];
  }
  const count = Math.max(1, Math.ceil(edge.length(low, edge.r1) / longestMm));
  const isLevel = edge.kind === 'segments' && edge.r1 - low <= LEVEL_STRETCH_REL_TOL * edge.r1;
  const clearanceAt = (k: number): number => {
    if (k === 0 || k === count) {
      return k === 0 ? low : edge.r1;
    }
    edge.atShare(first + ((1 - first) * k) / count);
    return edge.clearance;
  };
  return Array.from({ length: count }, (_, k) => {
    const [from, to] = isLevel ? [low, edge.r1] : [clearanceAt(k), clearanceAt(k + 1)];
    edge.atShare(first + ((1 - first) * (k + 0.5)) / count);
    const { x, y, clearance } = edge;
    return { from, to, share: isLevel ? 1 / count : 1, x, y, clearance };
  });
}
