import { leftStanding, type MedialAxis, narrowStretches } from '@pourproof/geometry';

/** A place that a rule calls too thin: lines along it, and what it takes it for if it can tell. */
export interface ThinPlace {
  readonly lines: readonly (readonly [x0: number, y0: number, x1: number, y1: number])[];
  readonly kind?: 'stroke' | 'taper';
}

/** A way to tell strokes from corners, given an axis and the width that is too thin. */
export interface StrokeRule {
  readonly name: string;
  readonly thinPlaces: (axis: MedialAxis, limitMm: number) => readonly ThinPlace[];
}

/** Ours, and rules in use elsewhere for pruning a medial axis. */
export const strokeRules: readonly StrokeRule[] = [
  {
    name: 'ours',
    thinPlaces: (axis, limitMm) =>
      narrowStretches(axis, limitMm).map(({ path, kind }) => ({
        kind,
        lines: linesAlong(path, false),
      })),
  },
  ...[120, 150, 170].map((deg) => objectAngle(deg)),
  ...[60, 40].map((deg) => residueArea(deg)),
];

/** Axis points where both contacts are seen at an angle above a threshold are stroke: 180° between parallel walls. */
function objectAngle(deg: number): StrokeRule {
  return {
    name: `object angle above ${deg}°`,
    thinPlaces: (axis, limitMm) => {
      const { edgeFrom, edgeTo, nodeR, nodeX, nodeY, boundary } = axis;
      const least = (deg * Math.PI) / 180;
      const chosen: number[] = [];
      for (let e = 0; e < edgeFrom.length; e++) {
        if (nodeR[edgeFrom[e]] < limitMm / 2 && contactAngle(axis, e) >= least) {
          chosen.push(e);
        }
      }
      const groups = joined(
        chosen,
        (e) => [edgeFrom[e], edgeTo[e]],
        (node) => nodeR[node] < limitMm / 2,
      );
      return groups.map((edges) => ({
        lines: edges.map((e) => {
          const [a, b] = [edgeFrom[e], edgeTo[e]];
          const end = nodeR[b] <= limitMm / 2 ? 1 : (limitMm / 2 - nodeR[a]) / (nodeR[b] - nodeR[a]);
          const [ax, ay] = [nodeX[a] + boundary.originX, nodeY[a] + boundary.originY];
          return [ax, ay, ax + end * (nodeX[b] - nodeX[a]), ay + end * (nodeY[b] - nodeY[a])];
        }),
      }));
    },
  };
}

/** Angle at the middle of an axis edge between the directions to both contacts. */
function contactAngle(axis: MedialAxis, e: number): number {
  const { edgeFrom, edgeTo, edgeLeft, edgeRight, nodeX, nodeY, boundary } = axis;
  const px = (nodeX[edgeFrom[e]] + nodeX[edgeTo[e]]) / 2;
  const py = (nodeY[edgeFrom[e]] + nodeY[edgeTo[e]]) / 2;
  const towards = (site: number): number => {
    const { count, x, y, tx, ty } = boundary;
    if (site < count) {
      return Math.atan2(-tx[site], ty[site]);
    }
    const p = site - count;
    return Math.atan2(y[p] - py, x[p] - px);
  };
  const turn = Math.abs(towards(edgeLeft[e]) - towards(edgeRight[e]));
  return Math.min(turn, 2 * Math.PI - turn);
}

/** What a bit as wide as the limit leaves is more than a corner where its area is more than what a corner of the given angle keeps. */
function residueArea(deg: number): StrokeRule {
  const half = (deg * Math.PI) / 360;
  // a corner of angle φ keeps r² (cot φ/2 − (π − φ)/2)
  const share = 1 / Math.tan(half) - (Math.PI / 2 - half);
  return {
    name: `area left of more than a corner of ${deg}° keeps`,
    thinPlaces: (axis, limitMm) =>
      leftStanding(axis, limitMm / 2, 0.001)
        .pieces.filter((piece) => piece.areaMm2 > share * 1.001 * (limitMm / 2) ** 2)
        .map(({ outline }) => ({
          lines: linesAlong(outline.coords.subarray(0, 2 * outline.ringEnds[0]), true),
        })),
  };
}

function linesAlong(coords: ArrayLike<number>, isClosed: boolean): [number, number, number, number][] {
  const count = coords.length / 2;
  return Array.from({ length: isClosed ? count : count - 1 }, (_, i) => {
    const j = (i + 1) % count;
    return [coords[2 * i], coords[2 * i + 1], coords[2 * j], coords[2 * j + 1]];
  });
}

/** Edges in groups that hang together at nodes that pass. */
function joined(
  edges: readonly number[],
  nodesOf: (edge: number) => readonly number[],
  passes: (node: number) => boolean,
): number[][] {
  const parent = new Map<number, number>();
  const find = (node: number): number => {
    let at = node;
    for (let up = parent.get(at); up !== undefined && up !== at; up = parent.get(at)) {
      at = up;
    }
    return at;
  };
  for (const e of edges) {
    const [a, b] = nodesOf(e);
    if (passes(b)) {
      parent.set(find(a), find(b));
    }
  }
  const groups = new Map<number, number[]>();
  for (const e of edges) {
    const key = find(nodesOf(e)[0]);
    groups.set(key, [...(groups.get(key) ?? []), e]);
  }
  return [...groups.values()];
}
