import type { Point, Rings } from '@pourproof/plane';
import { checkRadius } from '../measure/check-radius.ts';
import { enteringRadius } from '../measure/entering-radius.ts';
import { strokeParts } from '../measure/stroke-parts.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { type ArcRings, arcRingArea, packArcRings, polygonFromArcs } from './arc-rings.ts';
import { findMouths, type Mouths } from './mouths.ts';
import { openArcs } from './open-arcs.ts';
import { type Loop, traceLoops } from './trace-loops.ts';
import { type UncutAxis, uncutAxis } from './uncut-axis.ts';

/** One connected piece of artwork that a flat cutter leaves standing. */
export interface StandingPiece {
  readonly areaMm2: number;
  /** Twice the largest clearance on the part of the axis that the cutter does not cover; where it covers all, how far the piece stands off the wall. */
  readonly widestMm: number;
  /** Where that is: a point of the artwork that stays. */
  readonly atMm: Point;
  /** Length of the axis that the cutter does not cover, mm. */
  readonly lengthMm: number;
  /** Whether this is just a corner that any round bit leaves: beside one place where the bit stops, and no part of a stroke. */
  readonly isCorner: boolean;
  /** Outline with arcs flattened; outer rings have positive area. */
  readonly outline: Rings;
}

/** All that a flat cutter leaves. */
export interface Standing {
  readonly pieces: readonly StandingPiece[];
  /**
   * Corners that the cutter misses by less than the tolerance, left out of the pieces: between the chords of a flattened arc there is one at every
   * point. How many, and their area together.
   */
  readonly facetCount: number;
  readonly facetAreaMm2: number;
}

/**
 * What a flat cutter of radius `radiusMm` leaves of the artwork, piece by piece; the areas of pieces and facets add up to the artwork's less
 * `openedArea`, the outlines are within `toleranceMm`. None for an empty region or radius 0.
 *
 * @throws {RangeError} when the radius is negative or the tolerance not positive
 */
export function leftStanding(axis: MedialAxis, radiusMm: number, toleranceMm: number): Standing {
  checkRadius(radiusMm);
  if (!(toleranceMm > 0)) {
    throw new RangeError(`toleranceMm is ${toleranceMm}; give a number of millimetres above 0`);
  }
  const mouths = findMouths(axis, enteringRadius(axis, radiusMm));
  const arcs = openArcs(mouths);
  const loops = traceLoops(axis, mouths, arcs, 'left');
  const uncut = uncutAxis(axis, mouths, strokeParts(axis));
  const pieces: StandingPiece[] = [];
  let facetCount = 0;
  let facetAreaMm2 = 0;
  for (const [component, group] of byComponent(axis, mouths, loops)) {
    const isTrimmed = group.some((loop) => loop.mouths.some((k) => arcs.isTrimmed[k] !== 0));
    const left = isTrimmed ? undefined : uncut.get(component);
    for (const part of isTrimmed ? separated(group) : [group]) {
      if (isCorner(part, left) && left.length < toleranceMm) {
        facetCount++;
        facetAreaMm2 += areaOf(part);
      } else {
        pieces.push(pieceOf(axis, part, left, toleranceMm));
      }
    }
  }
  return { pieces, facetCount, facetAreaMm2 };
}

/** Whether the loops bound nothing but a corner: the rest of the axis leads from one mouth into the boundary and carries no stroke. */
function isCorner(loops: readonly Loop[], uncut: UncutAxis | undefined): uncut is UncutAxis {
  return (
    uncut !== undefined &&
    uncut.strokeLength === 0 &&
    new Set(loops.flatMap((loop) => loop.mouths)).size === 1
  );
}

function areaOf(loops: readonly Loop[]): number {
  const rings = packArcRings(loops.map((loop) => loop.points));
  return loops.reduce((sum, _, k) => sum + arcRingArea(rings, k), 0);
}

function byComponent(axis: MedialAxis, mouths: Mouths, loops: readonly Loop[]): Map<number, Loop[]> {
  const groups = new Map<number, Loop[]>();
  for (const loop of loops) {
    const component = mouths.component[axis.edgeFrom[loop.edge]];
    const group = groups.get(component);
    if (group === undefined) {
      groups.set(component, [loop]);
    } else {
      group.push(loop);
    }
  }
  return groups;
}

/** Where overlapping discs cut a narrow part up, each outer loop is a piece; holes stay with the first. */
function separated(group: readonly Loop[]): Loop[][] {
  const outer = group.filter((loop) => arcRingArea(packArcRings([loop.points]), 0) >= 0);
  const holes = group.filter((loop) => !outer.includes(loop));
  return outer.map((loop, k) => (k === 0 ? [loop, ...holes] : [loop]));
}

function pieceOf(
  axis: MedialAxis,
  loops: readonly Loop[],
  uncut: UncutAxis | undefined,
  toleranceMm: number,
): StandingPiece {
  const rings = packArcRings(loops.map((loop) => loop.points));
  const areaMm2 = areaOf(loops);
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
    isCorner: isCorner(loops, uncut),
    outline,
  };
}

/** A point well inside a cusp between two discs and a wall: half way from the crossing of the arcs to the middle of the wall. */
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
