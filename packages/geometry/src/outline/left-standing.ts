import { type Point, poll, pollStep, type Rings } from '@pourproof/plane';
import { checkRadius } from '../measure/check-radius.ts';
import { enteringRadius } from '../measure/entering-radius.ts';
import { strokeParts } from '../measure/stroke-parts.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { type ArcRings, arcRingArea, arcRingsArea, pickArcRings, polygonFromArcs } from './arc-rings.ts';
import { type Branch, branchAbove } from './branch-above.ts';
import { deepestInCusp } from './deepest-in-cusp.ts';
import { farthestFromDiscs } from './farthest-from-discs.ts';
import { findLevelCrossings, type LevelCrossings } from './level-crossings.ts';
import { NarrowParts } from './narrow-parts.ts';
import { openArcs } from './open-arcs.ts';
import { type Loops, traceLoops } from './trace-loops.ts';
import { type UncutAxis, uncutAxis } from './uncut-axis.ts';
import { WaysUp } from './ways-up.ts';
import { withoutFacets } from './without-facets.ts';

/**
 * What a flat cutter leaves standing: a separate `part` none of which it cuts; a `stroke` that it does not enter, or a waist between wider
 * parts; the `tip` of a taper; a `corner`, as any round bit leaves; a `cusp` between two of its discs and a wall, where a waist is so
 * short that they overlap, or among several discs and away from all walls, where such waists meet.
 */
export type StandingKind = 'part' | 'stroke' | 'tip' | 'corner' | 'cusp';

/** One connected piece of artwork that a flat cutter leaves standing. */
export interface StandingPiece {
  readonly kind: StandingKind;
  readonly areaMm2: number;
  /**
   * Twice the largest clearance on the axis that the cutter does not cover; of a cusp, how far it stands off the wall, or, away from
   * walls, how far it reaches beyond the discs around it.
   */
  readonly widestMm: number;
  /** Where that is: a point of the artwork that is left. */
  readonly atMm: Point;
  /**
   * Length of the strokes and tapers that the cutter does not cover, along the axis, mm; of what is only a corner, how far
   * along it the cut ends short of the tip.
   */
  readonly lengthMm: number;
  /** Mean width of the stroke on it, or of all of it where there is none, mm; 0 for a cusp. */
  readonly meanWidthMm: number;
  /** Least width of the stroke on it, or of a waist; `null` where there is neither. */
  readonly narrowestMm: number | null;
  /** Places at which it borders on what is cut. */
  readonly mouths: number;
  /**
   * How far the piece reaches beyond the nearest disc of the cutter beside it, mm: by so much the cut ends short; for a cusp, by how much
   * it keeps the cutter off the wall. `null` for a separate part.
   */
  readonly shortMm: number | null;
  /**
   * Of a tip or corner its branch of the axis; of a cusp the least width of the waist, with no reach; else `null`.
   */
  readonly branch: Branch | null;
  /** Outline with arcs flattened; outer rings have positive area. */
  readonly outline: Rings;
}

/** Everything that a flat cutter leaves. */
export interface Standing {
  readonly pieces: readonly StandingPiece[];
  /**
   * Corners that the cutter misses by less than the tolerance are not pieces, as a flattened arc has one at
   * every point, nor are specks smaller than its square. Their number and their total area.
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
  const strokes = strokeParts(axis);
  const apart = withoutFacets(axis, findLevelCrossings(axis, radius), strokes, toleranceMm);
  const { crossings } = apart;
  const parts = new NarrowParts(axis, radius);
  const arcs = openArcs(crossings);
  const loops = traceLoops(axis, crossings, arcs);
  const ways = new WaysUp(axis, strokes);
  const uncut = uncutAxis(axis, apart, parts, strokes);
  const pieces: StandingPiece[] = [];
  let { facetCount, facetAreaMm2 } = apart;
  for (const [part, group] of byPart(loops, (edge) => parts.of(edge))) {
    poll();
    const isTrimmed = group.some((loop) => loops.crossings[loop].some((k) => arcs.isTrimmed[k] !== 0));
    const left = uncut.get(part);
    for (const some of isTrimmed ? separated(loops, group) : [group]) {
      const kind = isTrimmed || left === undefined ? 'cusp' : kindOf(mouthsOf(loops, some), left);
      const areaMm2 = areaOf(loops, some);
      const isSpeck = areaMm2 < toleranceMm ** 2;
      if (isSpeck || (kind === 'corner' && (left?.cornerLength ?? 0) < toleranceMm)) {
        facetCount++;
        facetAreaMm2 += areaMm2;
      } else {
        const piece = { kind, rings: pickArcRings(loops.rings, some), mouths: mouthsOf(loops, some) };
        pieces.push(
          left === undefined || kind === 'cusp'
            ? cuspOf(crossings, axis, piece, waistOf(left), toleranceMm)
            : pieceOf(axis, { crossings, ways }, piece, left, toleranceMm),
        );
      }
    }
  }
  return { pieces, facetCount, facetAreaMm2 };
}

/** The level crossings at which some loops border on what is cut. */
function mouthsOf(loops: Loops, some: readonly number[]): readonly number[] {
  return [...new Set(some.flatMap((loop) => loops.crossings[loop]))];
}

/** What is left beside these crossings, by the axis that the cutter does not cover. */
function kindOf(
  mouths: readonly number[],
  { strokeLength, taperLength, narrowest }: UncutAxis,
): StandingKind {
  if (mouths.length === 0) {
    return 'part';
  }
  // shorter than it is wide, a stroke before a taper is part of the taper (our choice)
  const hasStroke = strokeLength > (taperLength > 0 ? 2 * narrowest : 0);
  return mouths.length > 1 || hasStroke ? 'stroke' : taperLength > 0 ? 'tip' : 'corner';
}

function areaOf({ rings }: Loops, some: readonly number[]): number {
  return some.reduce((sum, loop) => sum + arcRingArea(rings, loop), 0);
}

/** The loops of each narrow part. */
function byPart({ edge }: Loops, partOf: (edge: number) => number): Map<number, number[]> {
  const groups = new Map<number, number[]>();
  for (let loop = 0; loop < edge.length; loop++) {
    pollStep();
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
  const isOuter = (loop: number): boolean => arcRingArea(rings, loop) >= 0;
  const outer = group.filter(isOuter);
  const holes = group.filter((loop) => !isOuter(loop));
  return outer.map((loop, k) => (k === 0 ? [loop, ...holes] : [loop]));
}

/** Outline of a piece and where it borders on what is cut. */
interface Outlined {
  readonly kind: StandingKind;
  readonly rings: ArcRings;
  readonly mouths: readonly number[];
}

/** What the walk around the narrow parts has found. */
interface Found {
  readonly crossings: LevelCrossings;
  readonly ways: WaysUp;
}

function pieceOf(
  axis: MedialAxis,
  { crossings, ways }: Found,
  { kind, rings, mouths }: Outlined,
  uncut: UncutAxis,
  toleranceMm: number,
): StandingPiece {
  const { originX, originY } = axis.boundary;
  const outline = polygonFromArcs(rings, toleranceMm);
  const strokeLength = uncut.strokeLength + uncut.taperLength;
  const [length, swept] = strokeLength > 0 ? [strokeLength, uncut.strokeSwept] : [uncut.length, uncut.swept];
  const isEnd = kind === 'tip' || kind === 'corner';
  return {
    kind,
    areaMm2: arcRingsArea(rings),
    widestMm: 2 * uncut.clearance,
    atMm: [originX + uncut.x, originY + uncut.y],
    lengthMm: strokeLength > 0 ? strokeLength : uncut.cornerLength,
    meanWidthMm: length > 0 ? (2 * swept) / length : 0,
    narrowestMm: narrowestOf(uncut, mouths.length),
    mouths: mouths.length,
    shortMm: kind === 'part' ? null : reachBeyond(axis, crossings, mouths, outline),
    branch: isEnd ? branchAbove(ways, crossings.edge[mouths[0]], crossings.radius) : null,
    outline,
  };
}

/** Width of the waist where a cusp is; 0 where there is none. */
function waistOf(uncut: UncutAxis | undefined): number {
  return uncut !== undefined && Number.isFinite(uncut.least) ? 2 * uncut.least : 0;
}

function narrowestOf({ narrowest, least }: UncutAxis, mouths: number): number | null {
  if (Number.isFinite(narrowest)) {
    return 2 * narrowest;
  }
  return mouths > 1 && Number.isFinite(least) ? 2 * least : null;
}

function cuspOf(
  crossings: LevelCrossings,
  axis: MedialAxis,
  { kind, rings, mouths }: Outlined,
  waistMm: number,
  toleranceMm: number,
): StandingPiece {
  const outline = polygonFromArcs(rings, toleranceMm);
  const { atMm, offMm } = deepestInCusp(rings, outline, discsAt(axis, crossings, mouths), crossings.radius);
  return {
    kind,
    areaMm2: arcRingsArea(rings),
    widestMm: offMm,
    atMm,
    lengthMm: 0,
    meanWidthMm: 0,
    narrowestMm: null,
    mouths: mouths.length,
    shortMm: Math.max(offMm, reachBeyond(axis, crossings, mouths, outline)),
    branch: { reachMm: 0, widthMm: waistMm },
    outline,
  };
}

/** Centres of the discs at some level crossings. */
function discsAt({ boundary }: MedialAxis, { x, y }: LevelCrossings, mouths: readonly number[]): Point[] {
  return mouths.map((k) => [x[k] + boundary.originX, y[k] + boundary.originY]);
}

/** How far an outline reaches beyond the nearest of the cutter's discs beside it, mm. */
function reachBeyond(
  axis: MedialAxis,
  crossings: LevelCrossings,
  mouths: readonly number[],
  outline: Rings,
): number {
  const { radius } = crossings;
  return farthestFromDiscs(outline, discsAt(axis, crossings, mouths), radius) - radius;
}
