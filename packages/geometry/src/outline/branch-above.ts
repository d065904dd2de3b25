import { type StrokeParts, TAPER_GROWTH } from '../measure/stroke-parts.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { risingFrom } from './narrow-parts.ts';

/** The branch of the axis to which an end belongs, up to its root: where it meets strokes or is as wide as it gets. */
export interface Branch {
  /** How far it reaches, along the axis, beyond the largest disc at its root, mm. */
  readonly reachMm: number;
  /** Diameter of that disc, mm. */
  readonly widthMm: number;
}

/**
 * The branch of a corner or tip that the cutter leaves, from its end on the boundary up past axis edge `e`. From a corner the way ends at
 * the stroke or pocket whose corner it is, from a tip where strokes meet, or where doubling the way widens it by no more than a taper's
 * least growth.
 */
export function branchAbove(axis: MedialAxis, e: number, strokes: StrokeParts): Branch {
  const { ways, radii } = wayUp(axis, e, strokes);
  const whole = ways[ways.length - 1];
  let root = 1;
  while (
    root < ways.length - 1 &&
    (2 * ways[root] > whole || radiusAt({ ways, radii }, 2 * ways[root]) > TAPER_GROWTH * radii[root])
  ) {
    root++;
  }
  return { reachMm: ways[root] - radii[root], widthMm: 2 * radii[root] };
}

/** Distance from the boundary and clearance at the nodes from the low end of an edge up, mm. */
interface WayUp {
  readonly ways: readonly number[];
  readonly radii: readonly number[];
}

/** Clearance at a distance from the boundary, linear between nodes; that of the last node beyond it. */
function radiusAt({ ways, radii }: WayUp, way: number): number {
  const after = ways.findIndex((each) => each > way);
  if (after <= 0) {
    return radii[after < 0 ? radii.length - 1 : 0];
  }
  const share = (way - ways[after - 1]) / (ways[after] - ways[after - 1]);
  return radii[after - 1] + share * (radii[after] - radii[after - 1]);
}

function wayUp(
  { edgeFrom, edgeTo, nodeR, ...axis }: MedialAxis,
  e: number,
  { reach, degree, same, length }: StrokeParts,
): WayUp {
  // a path that carries stroke goes on through nodes of two such edges, one of a corner ends at any
  const most = degree[same[edgeFrom[e]]] === 0 ? 0 : 2;
  const ways = [reach[edgeFrom[e]]];
  const radii = [nodeR[edgeFrom[e]]];
  for (let up = e; up >= 0; up = risingFrom(axis, up)) {
    const node = edgeTo[up];
    ways.push(ways[ways.length - 1] + Math.max(0, length[up]));
    radii.push(nodeR[node]);
    if (degree[same[node]] > most) {
      break;
    }
  }
  return { ways, radii };
}
