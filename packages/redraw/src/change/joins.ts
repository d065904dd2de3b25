import { combineShapes } from '@pourproof/arrangement';
import type { ArcRings } from '@pourproof/geometry';
import { BoxIndex, type CleanRegion, packRings, type Region, type Rings, ringStart } from '@pourproof/plane';
import { outlineCorners, outlineTurns } from './outline-corners.ts';

/** What a corner becomes where an outline moves away from it: an arc around it, the corner where its sides meet, or cut off across. */
export type Joins = 'round' | 'mitre' | 'bevel';

/** A mitre that would reach farther than this many offsets from its corner stays round: the limit of strokes in SVG 2 §13.5.5. */
const MITRE_LIMIT = 4;

/** An arc around a corner of the outline from which another one was moved away, whole: nothing else comes near there. */
export interface CornerArc {
  /** Point of the moved outline at which it begins. */
  readonly edge: number;
  readonly corner: readonly [number, number];
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

/** Lengths in the moved outline that differ by less are the same, as a share of the offset. */
const SAME_REL_TOL = 1e-6;

/** The whole arcs of a moved outline around corners of the old one. */
export function cornerArcs(
  moved: ArcRings,
  rings: Rings,
  { offsetMm, toleranceMm }: { readonly offsetMm: number; readonly toleranceMm: number },
): readonly CornerArc[] {
  const turns = outlineTurns(rings);
  const isCorner = outlineCorners(rings, turns, toleranceMm);
  const corners = new PointGrid(rings, isCorner, offsetMm * SAME_REL_TOL);
  const { coords, bulges, ringEnds } = moved;
  const found: CornerArc[] = [];
  for (let k = 0; k < ringEnds.length; k++) {
    const from = ringStart(moved, k);
    for (let i = from; i < ringEnds[k]; i++) {
      if (bulges[i] === 0) {
        continue;
      }
      const j = i + 1 === ringEnds[k] ? from : i + 1;
      const [ax, ay, bx, by] = [coords[2 * i], coords[2 * i + 1], coords[2 * j], coords[2 * j + 1]];
      const up = (1 - bulges[i] * bulges[i]) / (4 * bulges[i]);
      const p = corners.at((ax + bx) / 2 - (by - ay) * up, (ay + by) / 2 + (bx - ax) * up);
      if (p >= 0 && Math.abs(Math.abs(4 * Math.atan(bulges[i])) - Math.abs(turns[p])) < SAME_REL_TOL) {
        found.push({
          edge: i,
          corner: [rings.coords[2 * p], rings.coords[2 * p + 1]],
          from: [ax, ay],
          to: [bx, by],
        });
      }
    }
  }
  return found;
}

/** A moved outline with straight edges for the arcs around corners. */
export function bevelled(moved: ArcRings, arcs: readonly CornerArc[]): ArcRings {
  const bulges = moved.bulges.slice();
  for (const { edge } of arcs) {
    bulges[edge] = 0;
  }
  return { ...moved, bulges };
}

/**
 * A moved region with the corners of its outline filled up to where their sides meet, or, of a region that became smaller, emptied. A corner that would
 * run into another part stays round.
 */
export function mitred(
  moved: CleanRegion,
  arcs: readonly CornerArc[],
  way: 'union' | 'subtract',
): CleanRegion {
  const tips = arcs.flatMap(tipOf);
  if (tips.length === 0) {
    return moved;
  }
  const made = joined(moved, tips, way);
  return made.ringEnds.length === moved.ringEnds.length ? made : joined(moved, clearTips(moved, tips), way);
}

function joined(moved: CleanRegion, tips: readonly Tip[], way: 'union' | 'subtract'): CleanRegion {
  const shape: Region = { ...moved, fillRule: 'nonzero' };
  const added: Region = { ...packRings(tips.map(quadOf)), fillRule: 'nonzero' };
  return way === 'union'
    ? combineShapes([shape, added], [], 'union')
    : combineShapes([shape], [added], 'subtract');
}

interface Tip extends CornerArc {
  readonly tip: readonly [number, number];
}

function tipOf(arc: CornerArc): readonly Tip[] {
  const { corner, from, to } = arc;
  const [ux, uy] = [from[0] - corner[0], from[1] - corner[1]];
  const [vx, vy] = [to[0] - corner[0], to[1] - corner[1]];
  const square = ux * ux + uy * uy;
  const k = square / (square + ux * vx + uy * vy);
  const [tx, ty] = [k * (ux + vx), k * (uy + vy)];
  return k > 0 && Math.hypot(tx, ty) <= MITRE_LIMIT * Math.sqrt(square)
    ? [{ ...arc, tip: [corner[0] + tx, corner[1] + ty] }]
    : [];
}

function quadOf({ corner, from, tip, to }: Tip): number[] {
  const ring = [...corner, ...from, ...tip, ...to];
  const turn = (from[0] - corner[0]) * (to[1] - corner[1]) - (from[1] - corner[1]) * (to[0] - corner[0]);
  return turn > 0 ? ring : [...corner, ...to, ...tip, ...from];
}

/** The tips that meet neither the outline nor one another. */
function clearTips(moved: Rings, tips: readonly Tip[]): readonly Tip[] {
  const outline = segmentsOf(moved);
  const sides = tips.flatMap(({ from, tip, to }) => [
    [...from, ...tip],
    [...tip, ...to],
  ]);
  const index = new BoxIndex(Float64Array.from([...outline, ...sides].flatMap(boxOf)));
  return tips.filter((_, k) =>
    [sides[2 * k], sides[2 * k + 1]].every((side) => {
      const [minX, minY, maxX, maxY] = boxOf(side);
      return !index.someIn(minX, minY, maxX, maxY, (item) => {
        const isOwn = item - outline.length === 2 * k || item - outline.length === 2 * k + 1;
        return !isOwn && doCross(side, item < outline.length ? outline[item] : sides[item - outline.length]);
      });
    }),
  );
}

function segmentsOf(rings: Rings): number[][] {
  const out: number[][] = [];
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const from = ringStart(rings, k);
    for (let i = from; i < rings.ringEnds[k]; i++) {
      const j = i + 1 === rings.ringEnds[k] ? from : i + 1;
      out.push([...rings.coords.subarray(2 * i, 2 * i + 2), ...rings.coords.subarray(2 * j, 2 * j + 2)]);
    }
  }
  return out;
}

function boxOf([ax, ay, bx, by]: readonly number[]): number[] {
  return [Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by)];
}

/** Whether two segments cross between their ends. */
function doCross([ax, ay, bx, by]: readonly number[], [cx, cy, dx, dy]: readonly number[]): boolean {
  const side = (px: number, py: number, qx: number, qy: number, x: number, y: number): number =>
    (qx - px) * (y - py) - (qy - py) * (x - px);
  const rounding = 1e-9 * (Math.hypot(bx - ax, by - ay) + Math.hypot(dx - cx, dy - cy));
  const [c, d] = [side(ax, ay, bx, by, cx, cy), side(ax, ay, bx, by, dx, dy)];
  const [a, b] = [side(cx, cy, dx, dy, ax, ay), side(cx, cy, dx, dy, bx, by)];
  const areApart = (p: number, q: number): boolean =>
    (p > rounding && q < -rounding) || (p < -rounding && q > rounding);
  return areApart(a, b) && areApart(c, d);
}

/** Finds the marked points at a place. */
class PointGrid {
  readonly #index: BoxIndex;
  readonly #points: readonly number[];
  readonly #reach: number;

  constructor({ coords }: Rings, isMarked: Uint8Array, reach: number) {
    this.#points = [...isMarked.keys()].filter((i) => isMarked[i] !== 0);
    this.#reach = reach;
    this.#index = new BoxIndex(
      Float64Array.from(
        this.#points.flatMap((i) => [coords[2 * i], coords[2 * i + 1], coords[2 * i], coords[2 * i + 1]]),
      ),
    );
  }

  /** The point there; -1 for none. */
  at(x: number, y: number): number {
    let found = -1;
    const r = this.#reach;
    this.#index.someIn(x - r, y - r, x + r, y + r, (item) => {
      found = this.#points[item];
      return true;
    });
    return found;
  }
}
