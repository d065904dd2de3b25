import type { XY } from './outline-path.ts';
import { type Polyline, unit } from './polyline.ts';

/** An arc by its bulge, and how far it lies from what it stands for at most. */
export interface FittedArc {
  readonly bulge: number;
  readonly offMm: number;
  /** Unit tangents at its ends. */
  readonly tangents: readonly [XY, XY];
}

/** Arcs turn by at most this, radians: beyond half a circle their chord says little. */
const MOST_TURN = Math.PI * 1.05;

/** Turn of an arc found by halving, radians. */
const TURN_PRECISION = 1e-13;

/** The arc from point i to point j of a run that has its area; `null` where that leaves `toleranceMm`, or the points do not follow one another along it. */
export function fitArc(
  run: Polyline,
  [i, j]: readonly [number, number],
  toleranceMm: number,
): FittedArc | null {
  const { area } = run.underChord(i, j);
  const turn = turnOfArea(area);
  if (turn === null) {
    return null;
  }
  const [ax, ay, bx, by] = [run.x[i], run.y[i], run.x[j], run.y[j]];
  const bulge = Math.tan(turn / 4);
  const up = (1 - bulge * bulge) / (4 * bulge);
  const [cx, cy] = [(ax + bx) / 2 - (by - ay) * up, (ay + by) / 2 + (bx - ax) * up];
  const radius = Math.hypot(ax - cx, ay - cy);
  let off = 0;
  for (let k = i; k < j; k++) {
    const [px, py] = [run.x[k] - cx, run.y[k] - cy];
    const [qx, qy] = [run.x[k + 1] - cx, run.y[k + 1] - cy];
    const [dx, dy] = [qx - px, qy - py];
    if ((px * qy - py * qx) * turn <= 0) {
      return null;
    }
    const share = -(px * dx + py * dy) / (dx * dx + dy * dy);
    const foot = share > 0 && share < 1 ? Math.hypot(px + share * dx, py + share * dy) : radius;
    off = Math.max(off, Math.abs(Math.hypot(qx, qy) - radius), Math.abs(foot - radius));
    if (!(off <= toleranceMm)) {
      return null;
    }
  }
  const sign = Math.sign(turn);
  return {
    bulge,
    offMm: off,
    tangents: [unit(-sign * (ay - cy), sign * (ax - cx)), unit(-sign * (by - cy), sign * (bx - cx))],
  };
}

/** Turn of the arc over a chord of length 1 with an area between; `null` where it turns by nothing or by too much. */
function turnOfArea(area: number): number | null {
  const areaOf = (turn: number): number => (turn - Math.sin(turn)) / (4 * (1 - Math.cos(turn)));
  const wanted = Math.abs(area);
  if (!(wanted > 1e-9 && wanted < areaOf(MOST_TURN))) {
    return null;
  }
  let [low, high] = [0, MOST_TURN];
  while (high - low > TURN_PRECISION) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) {
      break;
    }
    if (areaOf(middle) < wanted) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return (Math.sign(area) * (low + high)) / 2;
}
