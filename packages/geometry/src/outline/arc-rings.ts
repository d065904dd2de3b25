import { pollStep, type Rings, ringStart } from '@pourproof/plane';

/** Rings whose edges may be circular arcs. */
export interface ArcRings extends Rings {
  /**
   * Bulge of the edge from each point to the next: the tangent of a quarter of the arc's angle, 0 for a
   * straight edge, positive where the arc turns from +x towards +y.
   */
  readonly bulges: Float64Array;
}

/** Packs rings given as flat `[x, y, bulge, …]` lists. */
export function packArcRings(rings: readonly (readonly number[])[]): ArcRings {
  const count = rings.reduce((n, ring) => n + ring.length / 3, 0);
  const coords = new Float64Array(2 * count);
  const bulges = new Float64Array(count);
  const ringEnds = new Uint32Array(rings.length);
  let at = 0;
  rings.forEach((ring, k) => {
    for (let i = 0; i < ring.length; i += 3) {
      pollStep();
      coords[2 * at] = ring[i];
      coords[2 * at + 1] = ring[i + 1];
      bulges[at] = ring[i + 2];
      at++;
    }
    ringEnds[k] = at;
  });
  return { coords, ringEnds, bulges };
}

/** Some of the rings, in the order given. */
export function pickArcRings(rings: ArcRings, which: readonly number[]): ArcRings {
  const ends = new Uint32Array(which.length);
  let count = 0;
  which.forEach((k, i) => {
    count += rings.ringEnds[k] - ringStart(rings, k);
    ends[i] = count;
  });
  const coords = new Float64Array(2 * count);
  const bulges = new Float64Array(count);
  which.forEach((k, i) => {
    const from = ringStart(rings, k);
    const to = rings.ringEnds[k];
    const at = ends[i] - (to - from);
    coords.set(rings.coords.subarray(2 * from, 2 * to), 2 * at);
    bulges.set(rings.bulges.subarray(from, to), at);
  });
  return { coords, bulges, ringEnds: ends };
}

/**
 * Signed area in mm² with true arcs, positive for rings that turn from +x to +y. Exact up to rounding; 0 for
 * no rings.
 */
export function arcRingsArea(rings: ArcRings): number {
  let sum = 0;
  for (let k = 0; k < rings.ringEnds.length; k++) {
    sum += arcRingArea(rings, k);
  }
  return sum;
}

/** Total length of all rings with true arcs, closed, mm. */
export function arcRingsLength(rings: ArcRings): number {
  const { coords, bulges, ringEnds } = rings;
  let sum = 0;
  for (let k = 0; k < ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const to = ringEnds[k];
    for (let i = from; i < to; i++) {
      pollStep();
      const j = i + 1 === to ? from : i + 1;
      const chord = Math.hypot(coords[2 * j] - coords[2 * i], coords[2 * j + 1] - coords[2 * i + 1]);
      const half = 2 * Math.atan(bulges[i]);
      sum += half === 0 ? chord : chord * (half / Math.sin(half));
    }
  }
  return sum;
}

/** Signed area of ring k in mm². */
export function arcRingArea(rings: ArcRings, k: number): number {
  const { coords, bulges } = rings;
  const from = ringStart(rings, k);
  const to = rings.ringEnds[k];
  const ox = coords[2 * from];
  const oy = coords[2 * from + 1];
  let sum = 0;
  for (let i = from; i < to; i++) {
    pollStep();
    const j = i + 1 === to ? from : i + 1;
    const ax = coords[2 * i] - ox;
    const ay = coords[2 * i + 1] - oy;
    const bx = coords[2 * j] - ox;
    const by = coords[2 * j + 1] - oy;
    sum += (ax * by - ay * bx) / 2;
    if (bulges[i] !== 0) {
      sum += ((bx - ax) * (bx - ax) + (by - ay) * (by - ay)) * segmentShare(bulges[i]);
    }
  }
  return sum;
}

/**
 * Below this bulge, an arc of 14°, the area of the segment is a series whose next term is below 1e-17 of it.
 */
const FLAT_BULGE = 1 / 16;

/** Area between an arc and its chord of length 1, with the sign of the bulge. */
function segmentShare(bulge: number): number {
  const b2 = bulge * bulge;
  if (b2 < FLAT_BULGE * FLAT_BULGE) {
    // the closed form loses digits here; the term of b^(2k+1), k ≥ 1, is 1/((2k+1)(2k−1)(2k−3)) with
    // alternating sign
    return bulge * (1 / 3 + b2 * (1 / 15 - b2 * (1 / 105 - b2 * (1 / 315 - b2 * (1 / 693 - b2 / 1287)))));
  }
  const square = 1 + b2;
  return (square * square * Math.atan(bulge) - bulge * (1 - b2)) / (8 * b2);
}

/**
 * The rings with each arc replaced by chords within `toleranceMm` of it, whose end points lie on the arc.
 *
 * @throws {RangeError} when the tolerance is not positive
 */
export function polygonFromArcs(rings: ArcRings, toleranceMm: number): Rings {
  if (!(toleranceMm > 0)) {
    throw new RangeError(`toleranceMm is ${toleranceMm}; give a positive number of millimetres`);
  }
  const points: number[] = [];
  const ringEnds = new Uint32Array(rings.ringEnds.length);
  const { coords, bulges } = rings;
  for (let k = 0; k < ringEnds.length; k++) {
    const from = ringStart(rings, k);
    const to = rings.ringEnds[k];
    for (let i = from; i < to; i++) {
      pollStep();
      const j = i + 1 === to ? from : i + 1;
      points.push(coords[2 * i], coords[2 * i + 1]);
      if (bulges[i] !== 0) {
        pushArc(
          points,
          coords[2 * i],
          coords[2 * i + 1],
          coords[2 * j],
          coords[2 * j + 1],
          bulges[i],
          toleranceMm,
        );
      }
    }
    ringEnds[k] = points.length / 2;
  }
  return { coords: Float64Array.from(points), ringEnds };
}

/** Adds the points between the ends of an arc. */
function pushArc(
  points: number[],
  ax: number,
  ay: number,
  bx: number,
  by: number,
  bulge: number,
  tolerance: number,
): void {
  const turn = 4 * Math.atan(bulge);
  const dx = bx - ax;
  const dy = by - ay;
  const radius = (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const step = radius > tolerance ? 2 * Math.acos(1 - tolerance / radius) : Math.PI;
  const parts = Math.ceil(Math.abs(turn) / step);
  // the centre lies to the left of the chord where the turn is positive and less than π
  const up = (1 - bulge * bulge) / (4 * bulge);
  const cx = (ax + bx) / 2 - dy * up;
  const cy = (ay + by) / 2 + dx * up;
  for (let p = 1; p < parts; p++) {
    const t = (turn * p) / parts;
    const c = Math.cos(t);
    const s = Math.sin(t);
    points.push(cx + (ax - cx) * c - (ay - cy) * s, cy + (ax - cx) * s + (ay - cy) * c);
  }
}
