import type { MedialAxis } from '@pourproof/geometry';
import {
  type CleanRegion,
  type Point,
  packRings,
  type Region,
  ringCoords,
  ringStart,
  UnionFind,
} from '@pourproof/plane';
import { type NarrowPath, narrowPaths } from './narrow-paths.ts';
import { StripPen } from './strip-pen.ts';

/** A place at which two sides are kept apart. */
export interface KeptPlace {
  readonly atMm: Point;
  /** How far apart they stay, mm. */
  readonly widthMm: number;
}

/** What is kept from closing when its sides move towards each other. */
export interface KeptOpen {
  /** Strips along what is long and narrow; they may reach beyond what they are part of. */
  readonly strips: readonly Region[];
  /** Whole parts that would vanish, with how far their outline may move in all the same. */
  readonly parts: readonly { readonly region: CleanRegion; readonly insetMm: number }[];
  readonly places: readonly KeptPlace[];
}

/**
 * What would close where the outline of a region moves in by `insetMm`, and is kept `widthMm` wide instead, or as wide as it is drawn where that is less.
 *
 * What is narrow is told by the medial axis: where a disc of the inset and half the kept width does not fit. Strips run along it
 * wherever it leads from one wide place to another, around something, or is a stroke that ends; what only runs into a corner closes.
 */
export function keptOpen(
  axis: MedialAxis,
  {
    insetMm,
    widthMm,
    toleranceMm,
  }: { readonly insetMm: number; readonly widthMm: number; readonly toleranceMm: number },
): KeptOpen {
  const level = insetMm + widthMm / 2;
  const paths = narrowPaths(axis, level);
  const half = widthMm / 2;
  const pen = new StripPen(axis, { half, level, toleranceMm });
  const parts = partsOf(axis).filter(({ widest }) => widest < level);
  const lone = parts.filter(({ isStruck }) => !isStruck(paths));
  return {
    strips: paths.map((path) => pen.along(path)),
    parts: parts.map(({ region, widest }) => ({ region, insetMm: Math.max(0, widest - half) })),
    places: [
      ...paths.map((path) => ({ atMm: path.atMm, widthMm: Math.min(widthMm, path.widthMm) })),
      ...lone.map(({ widest, atMm }) => ({ atMm, widthMm: Math.min(widthMm, 2 * widest) })),
    ],
  };
}

interface Part {
  readonly region: CleanRegion;
  /** Its greatest clearance, mm, and where that is. */
  readonly widest: number;
  readonly atMm: Point;
  /** Whether one of some paths runs through it. */
  readonly isStruck: (paths: readonly NarrowPath[]) => boolean;
}

/** The connected parts of the region of an axis. */
function partsOf(axis: MedialAxis): readonly Part[] {
  const { region, boundary, edgeFrom, edgeTo, edgeLeft, edgeRight, nodeR, nodeX, nodeY } = axis;
  const joined = new UnionFind();
  for (let n = 0; n < nodeR.length; n++) {
    joined.add();
  }
  for (let e = 0; e < edgeFrom.length; e++) {
    joined.join(edgeFrom[e], edgeTo[e]);
  }
  const widest = new Map<number, number>();
  for (let n = 0; n < nodeR.length; n++) {
    const root = joined.find(n);
    const best = widest.get(root);
    if (best === undefined || nodeR[n] > nodeR[best]) {
      widest.set(root, n);
    }
  }
  const ringOf = ringsOfPoints(region);
  const rings = new Map<number, Set<number>>();
  for (let e = 0; e < edgeFrom.length; e++) {
    const root = joined.find(edgeFrom[e]);
    const own = rings.get(root) ?? new Set();
    rings.set(root, own);
    for (const site of [edgeLeft[e], edgeRight[e]]) {
      own.add(ringOf[site % boundary.count]);
    }
  }
  return [...rings].map(([root, own]) => {
    const top = widest.get(root) ?? root;
    return {
      // rings of a clean region that belong together are one
      region: packRings([...own].sort((a, b) => a - b).map((k) => ringCoords(region, k))) as CleanRegion,
      widest: nodeR[top],
      atMm: [boundary.originX + nodeX[top], boundary.originY + nodeY[top]],
      isStruck: (paths) => paths.some(({ edges }) => joined.find(edgeFrom[edges[0]?.[0] ?? 0]) === root),
    };
  });
}

function ringsOfPoints(region: CleanRegion): Uint32Array {
  const ringOf = new Uint32Array(region.coords.length / 2);
  for (let k = 0; k < region.ringEnds.length; k++) {
    ringOf.fill(k, ringStart(region, k), region.ringEnds[k]);
  }
  return ringOf;
}
