import { booleans, resolveRegions } from '@pourproof/arrangement';
import {
  type Bounds,
  BoxIndex,
  boundsOf,
  type CleanRegion,
  type Drawing,
  type Region,
  ringArea,
  ringsBounds,
  signedArea,
  transformRings,
  translation,
} from '@pourproof/plane';
import type { LookChange } from './remedies.ts';

/** How far a changed drawing differs from the one before, both laid on one middle. */
export function lookChange(before: Drawing, after: Drawing): LookChange {
  if (before.shapes === after.shapes) {
    return unchanged(resolved(before, null));
  }
  const [one, other] = [resolved(before, null), resolved(after, middleOf(before))];
  const removedMm2 = signedArea(booleans(one, other, 'subtract'));
  const drawnMm2 = signedArea(one);
  const addedMm2 = Math.max(0, signedArea(other) - drawnMm2 + removedMm2);
  const areaMm2 = addedMm2 + removedMm2;
  return {
    areaMm2,
    addedMm2,
    removedMm2,
    share: areaMm2 / drawnMm2,
    sizeMm: { before: sizeOf(one), after: sizeOf(other) },
    shiftMm: areaMm2 === 0 ? 0 : Math.max(farthest(one, other), farthest(other, one)),
    smallestHoleMm2: { before: smallestHole(one), after: smallestHole(other) },
  };
}

function unchanged(region: CleanRegion): LookChange {
  const [size, hole] = [sizeOf(region), smallestHole(region)];
  return {
    areaMm2: 0,
    addedMm2: 0,
    removedMm2: 0,
    share: 0,
    sizeMm: { before: size, after: size },
    shiftMm: 0,
    smallestHoleMm2: { before: hole, after: hole },
  };
}

function sizeOf({ coords }: CleanRegion): readonly [number, number] {
  const [left, top, right, bottom] = boundsOf(coords);
  return [right - left, bottom - top];
}

/** The union of all shapes, moved to a middle where one is given. */
function resolved(drawing: Drawing, to: readonly [number, number] | null): CleanRegion {
  const regions: readonly Region[] = drawing.shapes.map(({ region }) => region);
  if (to === null) {
    return resolveRegions(regions).region;
  }
  const [x, y] = middleOf(drawing);
  const by = translation(to[0] - x, to[1] - y);
  return resolveRegions(
    regions.map((region) => ({ ...transformRings(by, region), fillRule: region.fillRule })),
  ).region;
}

function middleOf({ shapes }: Drawing): readonly [number, number] {
  const all = shapes.map(({ region }) => ringsBounds(region));
  const [left, top] = [Math.min(...all.map((each) => each[0])), Math.min(...all.map((each) => each[1]))];
  const [right, bottom] = [Math.max(...all.map((each) => each[2])), Math.max(...all.map((each) => each[3]))];
  return [(left + right) / 2, (top + bottom) / 2];
}

/** Holes turn the other way round than what they lie in. */
function smallestHole({ coords, ringEnds }: CleanRegion): number | null {
  let least: number | null = null;
  let from = 0;
  for (const to of ringEnds) {
    const area = ringArea(coords, from, to);
    if (area < 0 && (least === null || -area < least)) {
      least = -area;
    }
    from = to;
  }
  return least;
}

/** Farthest that a corner of one outline lies from the other, mm. */
function farthest(from: CleanRegion, to: CleanRegion): number {
  const edges = edgesOf(to);
  const index = new BoxIndex(boxesOf(edges));
  let most = 0;
  for (let k = 0; k < from.coords.length; k += 2) {
    const [x = 0, y = 0] = from.coords.subarray(k, k + 2);
    let least = Number.POSITIVE_INFINITY;
    index.visitNear(
      x,
      y,
      (boxDistance) => boxDistance < least,
      (at) => {
        const [ax = 0, ay = 0, bx = 0, by = 0] = edges.subarray(4 * at, 4 * at + 4);
        least = Math.min(least, toEdge(x, y, [ax, ay, bx, by]));
      },
    );
    most = Math.max(most, least);
  }
  return most;
}

/** `[ax,ay,bx,by]` of each edge. */
function edgesOf({ coords, ringEnds }: CleanRegion): Float64Array {
  const edges = new Float64Array(2 * coords.length);
  let from = 0;
  for (const to of ringEnds) {
    for (let k = from; k < to; k++) {
      const next = k + 1 === to ? from : k + 1;
      edges.set([...coords.subarray(2 * k, 2 * k + 2), ...coords.subarray(2 * next, 2 * next + 2)], 4 * k);
    }
    from = to;
  }
  return edges;
}

function boxesOf(edges: Float64Array): Float64Array {
  return edges.map((_, k) => {
    const [first, ofOther] = [4 * Math.floor(k / 4) + (k % 2), k % 4 < 2 ? Math.min : Math.max];
    return ofOther(edges[first] ?? 0, edges[first + 2] ?? 0);
  });
}

function toEdge(x: number, y: number, [ax, ay, bx, by]: Bounds): number {
  const [dx, dy] = [bx - ax, by - ay];
  const squared = dx * dx + dy * dy;
  const share = squared === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / squared));
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}
