import { eulerTrails } from './euler-trails.ts';

/** An open strand between two wide places, each named by its axis edge. */
export interface OpenStrand {
  readonly id: number;
  readonly points: readonly number[];
  readonly startEdge: number;
  readonly endEdge: number;
}

/** Closed rings made of open strands; strand `id` begins at point `offset` of ring `ring`, walked backwards where `isBack`. */
export interface MouthCircuits {
  readonly rings: number[][];
  /** Axis edge of the wide place at which each ring both starts and ends; -1 where it ends elsewhere. */
  readonly hubs: number[];
  readonly places: ReadonlyMap<number, { ring: number; offset: number; isBack: boolean }>;
}

/**
 * Open strands joined by straight moves between their ends at the same wide place, each strand walked once. Where a place has an odd number of
 * ends, its part becomes more than one ring.
 */
export function mouthCircuits(strands: readonly OpenStrand[]): MouthCircuits {
  const nodeOf = new Map<number, number>();
  const node = (edge: number): number => {
    const known = nodeOf.get(edge) ?? nodeOf.size;
    nodeOf.set(edge, known);
    return known;
  };
  const from = strands.map((strand) => node(strand.startEdge));
  const to = strands.map((strand) => node(strand.endEdge));
  const rings: number[][] = [];
  const hubs: number[] = [];
  const places = new Map<number, { ring: number; offset: number; isBack: boolean }>();
  for (const trail of eulerTrails(nodeOf.size, from, to)) {
    const ring: number[] = [];
    for (const step of trail) {
      const strand = strands[step >> 1];
      const isBack = (step & 1) === 1;
      places.set(strand.id, { ring: rings.length, offset: ring.length / 3, isBack });
      const points = isBack ? backwards(strand.points) : strand.points;
      for (let i = 0; i < points.length; i++) {
        ring.push(points[i]);
      }
      ring[ring.length - 1] = 0;
    }
    rings.push(ring);
    const [start, end] = [endsOf(strands, trail[0])[0], endsOf(strands, trail[trail.length - 1])[1]];
    hubs.push(start === end ? start : -1);
  }
  return { rings, hubs, places };
}

/** The wide places from and to which a step of a trail leads. */
function endsOf(strands: readonly OpenStrand[], step: number): [number, number] {
  const { startEdge, endEdge } = strands[step >> 1];
  return (step & 1) === 0 ? [startEdge, endEdge] : [endEdge, startEdge];
}

/** An open strand walked the other way. */
function backwards(points: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = points.length - 3; i >= 0; i -= 3) {
    out.push(points[i], points[i + 1], i > 0 ? -points[i - 1] : 0);
  }
  return out;
}
