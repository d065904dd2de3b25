import type { ArcRings } from '@pourproof/geometry';
import { type Rings, ringArea, ringStart } from '@pourproof/plane';

/**
 * An arc whose tangents meet within this share of the tolerance from it is drawn as the corner where they meet: the area between adds a
 * sixtieth of the tolerance to one side, which no measure shows.
 */
const AS_CORNER = 1 / 20;

/** Mean width, mm, below which a ring is the loop around a line on which something fits exactly. */
const LOOP_WIDTH_MM = 1e-6;

/**
 * Rings with chords for arcs, within `toleranceMm` of them and with their area: the ends of an arc stay where they are, and its inner
 * points lie outside it by as much as makes up for what chords cut off. Loops that enclose next to nothing are dropped.
 */
export function flatArcs({ coords, bulges, ringEnds }: ArcRings, toleranceMm: number): Rings {
  const points: number[] = [];
  const ends: number[] = [];
  for (let k = 0; k < ringEnds.length; k++) {
    const first = points.length;
    appendRing(
      points,
      { coords, bulges, from: ringStart({ coords, ringEnds }, k), to: ringEnds[k] },
      toleranceMm,
    );
    if (isLoop(points, first)) {
      points.length = first;
    } else {
      ends.push(points.length / 2);
    }
  }
  return { coords: Float64Array.from(points), ringEnds: Uint32Array.from(ends) };
}

interface ArcRing {
  readonly coords: Float64Array;
  readonly bulges: Float64Array;
  readonly from: number;
  readonly to: number;
}

function appendRing(out: number[], ring: ArcRing, toleranceMm: number): void {
  const { coords, bulges, from, to } = ring;
  const next = (i: number): number => (i + 1 === to ? from : i + 1);
  const before = (i: number): number => (i === from ? to - 1 : i - 1);
  const isCorner = (i: number): boolean =>
    bulges[i] !== 0 &&
    bulges[before(i)] === 0 &&
    bulges[next(i)] === 0 &&
    to - from > 3 &&
    cornerOff(coords, i, next(i), bulges[i]) <= AS_CORNER * toleranceMm;
  for (let i = from; i < to; i++) {
    if (isCorner(i)) {
      out.push(...tangentsMeet(coords, i, next(i), bulges[i]));
    } else if (!isCorner(before(i))) {
      out.push(coords[2 * i], coords[2 * i + 1]);
      if (bulges[i] !== 0) {
        appendArc(out, arcOf(coords, i, next(i), bulges[i]), toleranceMm);
      }
    }
  }
}

/** How far the point in which the tangents at the ends of an arc meet lies from it. */
function cornerOff(coords: Float64Array, i: number, j: number, bulge: number): number {
  const { radius, turn } = arcOf(coords, i, j, bulge);
  return Math.abs(turn) < Math.PI / 2 ? radius * (1 / Math.cos(turn / 2) - 1) : Infinity;
}

function tangentsMeet(coords: Float64Array, i: number, j: number, bulge: number): [number, number] {
  const { cx, cy, radius, turn, start } = arcOf(coords, i, j, bulge);
  const reach = radius / Math.cos(turn / 2);
  return [cx + reach * Math.cos(start + turn / 2), cy + reach * Math.sin(start + turn / 2)];
}

interface Arc {
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  /** Direction from the centre to its first point, radians. */
  readonly start: number;
  /** Positive from +x to +y. */
  readonly turn: number;
}

function arcOf(coords: Float64Array, i: number, j: number, bulge: number): Arc {
  const [ax, ay, bx, by] = [coords[2 * i], coords[2 * i + 1], coords[2 * j], coords[2 * j + 1]];
  // the centre lies to the left of the chord, as seen with y up, where the turn is positive and less than π
  const up = (1 - bulge * bulge) / (4 * bulge);
  const cx = (ax + bx) / 2 - (by - ay) * up;
  const cy = (ay + by) / 2 + (bx - ax) * up;
  return {
    cx,
    cy,
    radius: (Math.hypot(bx - ax, by - ay) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    start: Math.atan2(ay - cy, ax - cx),
    turn: 4 * Math.atan(bulge),
  };
}

/** Adds the points between the ends of an arc. */
function appendArc(out: number[], { cx, cy, radius, start, turn }: Arc, toleranceMm: number): void {
  const most = 2 * Math.acos(1 - Math.min(1, toleranceMm / radius));
  const parts = Math.max(2, Math.ceil(Math.abs(turn) / most));
  const reach = innerReach(turn, parts) * radius;
  for (let p = 1; p < parts; p++) {
    const t = start + (turn * p) / parts;
    out.push(cx + reach * Math.cos(t), cy + reach * Math.sin(t));
  }
}

/**
 * Distance of the inner points from the centre, in radii, with which the chords between ends on the arc have its area: of
 * s·ρ + (n − 2)·s·ρ²/2 = turn/2, s the sine of a part's turn, the positive root.
 */
function innerReach(turn: number, parts: number): number {
  const s = Math.sin(Math.abs(turn) / parts);
  const half = Math.abs(turn) / 2;
  const more = (parts - 2) / 2;
  return more === 0 ? half / s : (Math.sqrt(s * s + 4 * s * more * half) - s) / (2 * s * more);
}

function isLoop(points: readonly number[], from: number): boolean {
  const n = points.length;
  if (n - from < 6) {
    return true;
  }
  let length = 0;
  for (let i = from; i < n; i += 2) {
    const j = i + 2 === n ? from : i + 2;
    length += Math.hypot(points[j] - points[i], points[j + 1] - points[i + 1]);
  }
  return Math.abs(ringArea(points, from / 2, n / 2)) <= (LOOP_WIDTH_MM * length) / 2;
}
