import type { Point, Rings } from '@pourproof/plane';
import { checkRadius } from '../measure/check-radius.ts';
import { enteringRadius } from '../measure/entering-radius.ts';
import { strokeParts } from '../measure/stroke-parts.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { type ArcRings, arcRingArea, pickArcRings, polygonFromArcs } from './arc-rings.ts';
import { findLevelCrossings } from './level-crossings.ts';
import { NarrowParts } from './narrow-parts.ts';
import { openArcs } from './open-arcs.ts';
import { type Loops, traceLoops } from './trace-loops.ts';
import { type UncutAxis, uncutAxis } from './uncut-axis.ts';

/** One connected piece of artwork that a flat cutter leaves standing. */
export interface StandingPiece {
  readonly areaMm2: number;
  /**
   * Twice the largest clearance on the axis that the cutter does not cover; where it covers all of it, how
   * far the piece stands off the wall.
   */
  readonly widestMm: number;
  /** Where that is: a point of the artwork that is left. */
  readonly atMm: Point;
  /** Length of the axis that the cutter does not cover, mm. */
  readonly lengthMm: number;
  /**
   * Whether this is only a corner, as any round bit leaves: beside one level crossing, and no part of a
   * stroke.
   */
  readonly isCorner: boolean;
  /** Outline with arcs flattened; outer rings have positive area. */
  readonly outline: Rings;
}

/** Everything that a flat cutter leaves. */
export interface Standing {
  readonly pieces: readonly StandingPiece[];
  /**
   * Corners that the cutter misses by less than the tolerance are not pieces: a flattened arc has one at
   * every point. Their number and their total area.
   */
  readonly facetCount: number;
  readonly facetAreaMm2: number;
}

/**
 * What a flat cutter of radius `radiusMm` leaves of the artwork, piece by piece: the artwork less its
 * opening. Areas of pieces and facets add up to the artwork's area less `openedArea`; outlines are within
 * `toleranceMm`. None for an empty region or radius 0.
 *
 * @example
 * const bar = resolveRegions([{ ...packRings([[0, 0, 40, 0, 40, 5, 0, 5]]), fillRule: 'nonzero' }]).region;
 * leftStanding(medialAxis(bar), 1.5, 0.005).pieces.length; // 4
 *
 * @throws {RangeError} when the radius is negative or the tolerance not positive
 */
export function leftStanding(axis: MedialAxis, radiusMm: number, toleranceMm: number): Standing {
  checkRadius(radiusMm);
  if (!(toleranceMm > 0)) {
    throw new RangeError(`toleranceMm is ${toleranceMm}; give a number of millimetres above 0`);
  }
  const radius = enteringRadius(axis, radiusMm);
  const crossings = findLevelCrossings(axis, radius);
  const parts = new NarrowParts(axis, radius);
  const arcs = openArcs(crossings);
  const loops = traceLoops(axis, crossings, arcs);
  const uncut = uncutAxis(axis, crossings, parts, strokeParts(axis));
  const pieces: StandingPiece[] = [];
  let facetCount = 0;
  let facetAreaMm2 = 0;
  for (const [part, group] of byPart(loops, (edge) => parts.of(edge))) {
    const isTrimmed = group.some((loop) => loops.crossings[loop].some((k) => arcs.isTrimmed[k] !== 0));
    const left = isTrimmed ? undefined : uncut.get(part);
    for (const piece of isTrimmed ? separated(loops, group) : [group]) {
      if (isCorner(loops, piece, left) && left.length < toleranceMm) {
        facetCount++;
        facetAreaMm2 += areaOf(loops, piece);
      } else {
        pieces.push(pieceOf(axis, loops, piece, left, toleranceMm));
      }
    }
  }
  return { pieces, facetCount, facetAreaMm2 };
}

/**
 * Whether some loops bound only a corner: the uncovered axis leads from one level crossing to the boundary
 * and carries no stroke.
 */
function isCorner(loops: Loops, some: readonly number[], uncut: UncutAxis | undefined): uncut is UncutAxis {
  return (
    uncut !== undefined &&
    uncut.strokeLength === 0 &&
    new Set(some.flatMap((loop) => loops.crossings[loop])).size === 1
  );
}

function areaOf({ rings }: Loops, some: readonly number[]): number {
  return some.reduce((sum, loop) => sum + arcRingArea(rings, loop), 0);
}

/** The loops of each narrow part. */
function byPart({ edge }: Loops, partOf: (edge: number) => number): Map<number, number[]> {
  const groups = new Map<number, number[]>();
  for (let loop = 0; loop < edge.length; loop++) {
    const part = partOf(edge[loop]);
    const group = groups.get(part);
    if (group === undefined) {
      groups.set(part, [loop]);
    } else {
      group.push(loop);
    }
  }
  return groups;
}

/** Where overlapping discs divide a narrow part, each outer loop is a piece; holes stay with the first. */
function separated({ rings }: Loops, group: readonly number[]): number[][] {
  const outer = group.filter((loop) => arcRingArea(rings, loop) >= 0);
  const holes = group.filter((loop) => !outer.includes(loop));
  return outer.map((loop, k) => (k === 0 ? [loop, ...holes] : [loop]));
}

function pieceOf(
  axis: MedialAxis,
  loops: Loops,
  some: readonly number[],
  uncut: UncutAxis | undefined,
  toleranceMm: number,
): StandingPiece {
  const rings = pickArcRings(loops.rings, some);
  const areaMm2 = areaOf(loops, some);
  const outline = polygonFromArcs(rings, toleranceMm);
  if (uncut === undefined) {
    const { atMm, offMm } = deepest(rings, outline);
    return { areaMm2, widestMm: offMm, atMm, lengthMm: 0, isCorner: false, outline };
  }
  const { originX, originY } = axis.boundary;
  return {
    areaMm2,
    widestMm: 2 * uncut.clearance,
    atMm: [originX + uncut.x, originY + uncut.y],
    lengthMm: uncut.length,
    isCorner: isCorner(loops, some, uncut),
    outline,
  };
}

/** A point well inside a cusp between two discs and a wall: half way from where the arcs meet to the wall. */
function deepest(rings: ArcRings, outline: Rings): { atMm: Point; offMm: number } {
  const { coords, bulges, ringEnds } = rings;
  const count = ringEnds[0];
  for (let i = 0; i < count; i++) {
    const before = (i + count - 1) % count;
    if (bulges[i] !== 0 && bulges[before] !== 0) {
      const foot = nearestOnWall(rings, count, coords[2 * i], coords[2 * i + 1]);
      return {
        atMm: [(coords[2 * i] + foot[0]) / 2, (coords[2 * i + 1] + foot[1]) / 2],
        offMm: Math.hypot(coords[2 * i] - foot[0], coords[2 * i + 1] - foot[1]),
      };
    }
  }
  return { atMm: [outline.coords[0], outline.coords[1]], offMm: 0 };
}

function nearestOnWall(rings: ArcRings, count: number, px: number, py: number): Point {
  const { coords, bulges } = rings;
  let best: Point = [coords[0], coords[1]];
  let least = Infinity;
  for (let i = 0; i < count; i++) {
    if (bulges[i] !== 0) {
      continue;
    }
    const j = (i + 1) % count;
    const dx = coords[2 * j] - coords[2 * i];
    const dy = coords[2 * j + 1] - coords[2 * i + 1];
    const along = (px - coords[2 * i]) * dx + (py - coords[2 * i + 1]) * dy;
    const t = Math.min(1, Math.max(0, along / (dx * dx + dy * dy)));
    const x = coords[2 * i] + t * dx;
    const y = coords[2 * i + 1] + t * dy;
    const d = Math.hypot(px - x, py - y);
    if (d < least) {
      least = d;
      best = [x, y];
    }
  }
  return best;
}
