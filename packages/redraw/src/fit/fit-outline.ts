import { curvedEdges } from '@pourproof/geometry';
import { packRings, type Rings, ringArea, ringCoords } from '@pourproof/plane';
import { outlineCorners, outlineTurns } from '../change/outline-corners.ts';
import { withoutStraightPoints } from '../change/straight-points.ts';
import { type FitTolerance, fitRun } from './fit-run.ts';
import type { OutlinePath, OutlinePiece, XY } from './outline-path.ts';
import { direction, Polyline } from './polyline.ts';
import { withSmoothJoints } from './smooth-joints.ts';

/** Share of the tolerance by which joints of arcs may move to become smooth; fitting has the rest (our choice). */
const SMOOTH_SHARE = 0.1;

/**
 * Outlines of lines, arcs and cubic Béziers for rings of chords: corners stay corners, at their place; straight edges stay as they are; where a curve was
 * drawn, curves that are tangent to one another lie within `fitMm` of the chords, and the chords of them. Each has the area of its ring.
 */
export function fitOutlines(rings: Rings, { chordMm, fitMm }: FitTolerance): readonly OutlinePath[] {
  const own = { chordMm, fitMm: (1 - SMOOTH_SHARE) * fitMm };
  return Array.from(rings.ringEnds, (_, k) =>
    withSmoothJoints(fitRing(withoutStraightPoints(ringCoords(rings, k)), own), SMOOTH_SHARE * fitMm),
  );
}

function fitRing(ring: Float64Array, tolerance: FitTolerance): OutlinePath {
  const n = ring.length / 2;
  const at = (i: number): XY => [ring[2 * (i % n)], ring[2 * (i % n) + 1]];
  const rings = packRings([ring]);
  const isCorner = outlineCorners(rings, outlineTurns(rings), tolerance.chordMm);
  const isCurved = curvedEdges(rings, tolerance.chordMm);
  const before = (i: number): number => (i + n - 1) % n;
  // straight edges and corners bound the runs of chords
  const isBreak = (i: number): boolean => isCorner[i] === 1 || isCurved[i] === 0 || isCurved[before(i)] === 0;
  const first = Array.from({ length: n }, (_, i) => i).find(isBreak);
  if (first === undefined) {
    return circleOf(ring, tolerance) ?? closedRun(ring, tolerance);
  }
  const pieces: OutlinePiece[] = [];
  let off = 0;
  const tangentOf = (i: number, edge: number): XY | null =>
    isCorner[i] === 1 || isCurved[edge] === 1 ? null : direction(at(edge), at(edge + 1));
  for (let done = 0; done < n; ) {
    const i = (first + done) % n;
    if (isCurved[i] === 0) {
      pieces.push({ kind: 'line', to: at(i + 1) });
      done++;
      continue;
    }
    let count = 1;
    while (!isBreak((i + count) % n)) {
      count++;
    }
    const end = (i + count) % n;
    const run = new Polyline(Array.from({ length: count + 1 }, (_, k) => at(i + k)));
    const fitted = fitRun(run, [tangentOf(i, before(i)), tangentOf(end, end)], tolerance);
    pieces.push(...fitted.pieces);
    off = Math.max(off, fitted.offMm);
    done += count;
  }
  return { start: at(first), pieces, offMm: off };
}

/** Two half circles, where the ring is one. */
function circleOf(ring: Float64Array, { chordMm }: FitTolerance): OutlinePath | null {
  const n = ring.length / 2;
  const area = ringArea(ring);
  const radius = Math.sqrt(Math.abs(area) / Math.PI);
  const [cx, cy] = centreOf(ring, area);
  let off = 0;
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    const [px, py] = [ring[2 * i] - cx, ring[2 * i + 1] - cy];
    const [dx, dy] = [ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]];
    const share = Math.max(0, Math.min(1, -(px * dx + py * dy) / (dx * dx + dy * dy)));
    const foot = Math.hypot(px + share * dx, py + share * dy);
    off = Math.max(off, Math.abs(Math.hypot(px, py) - radius), Math.abs(foot - radius));
    // each chord goes on around the centre
    if ((px * dy - py * dx) * area <= 0) {
      return null;
    }
  }
  // chords of a circle weave about it by their height
  if (!(off <= 2 * chordMm)) {
    return null;
  }
  const bulge = Math.sign(area);
  const [left, right]: [XY, XY] = [
    [cx - radius, cy],
    [cx + radius, cy],
  ];
  return {
    start: right,
    pieces: [
      { kind: 'arc', to: left, bulge },
      { kind: 'arc', to: right, bulge },
    ],
    offMm: off,
  };
}

function centreOf(ring: Float64Array, area: number): XY {
  const [x0, y0] = ring;
  let [mx, my] = [0, 0];
  for (let i = 0; i < ring.length; i += 2) {
    const j = i + 2 === ring.length ? 0 : i + 2;
    const [ax, ay, bx, by] = [ring[i] - x0, ring[i + 1] - y0, ring[j] - x0, ring[j + 1] - y0];
    const cross = ax * by - ay * bx;
    mx += cross * (ax + bx);
    my += cross * (ay + by);
  }
  return [x0 + mx / (6 * area), y0 + my / (6 * area)];
}

/** A ring without corners and straight edges, from the point on that lies farthest from its middle: turned outlines begin at the same place. */
function closedRun(ring: Float64Array, tolerance: FitTolerance): OutlinePath {
  const n = ring.length / 2;
  const [cx, cy] = centreOf(ring, ringArea(ring));
  let first = 0;
  let farthest = 0;
  for (let i = 0; i < n; i++) {
    const d = Math.hypot(ring[2 * i] - cx, ring[2 * i + 1] - cy);
    if (d > farthest * (1 + 1e-9)) {
      farthest = d;
      first = i;
    }
  }
  const at = (i: number): XY => [ring[2 * ((i + n) % n)], ring[2 * ((i + n) % n) + 1]];
  const tangent = new Polyline([at(first - 1), at(first), at(first + 1)]).tangentAt(1);
  const run = new Polyline(Array.from({ length: n + 1 }, (_, k) => at(first + k)));
  const { pieces, offMm } = fitRun(run, [tangent, tangent], tolerance);
  return { start: at(first), pieces, offMm };
}
