import { type Bounds, packRings, type Region, ringCoords } from '@pourproof/plane';

/**
 * The box is grown by this, in mm, so that nothing left out lies within the resolver's tolerance of it (1 µm
 * for artwork of a kilometre).
 */
const MARGIN_MM = 1e-3;

/**
 * A region that has the same winding numbers in a box and fewer points around it, so that a boolean against
 * something inside the box costs what lies there, not all of the region. Points in the box, and edges that
 * may reach into it, stay bit for bit.
 *
 * A ring whose own box misses this one winds around none of it. A run of points beyond one side of the box
 * may be cut short by a straight line, since that stays beyond the same side.
 */
export function nearRings(region: Region, [minX, minY, maxX, maxY]: Bounds): Region {
  const left = minX - MARGIN_MM;
  const top = minY - MARGIN_MM;
  const right = maxX + MARGIN_MM;
  const bottom = maxY + MARGIN_MM;
  const kept: ArrayLike<number>[] = [];
  let isWhole = true;
  for (let k = 0; k < region.ringEnds.length; k++) {
    const ring = ringCoords(region, k);
    const near = shortened(ring, left, top, right, bottom);
    isWhole &&= near === ring;
    if (near !== undefined) {
      kept.push(near);
    }
  }
  return isWhole ? region : { ...packRings(kept), fillRule: region.fillRule };
}

/** Sides of the box beyond which a point lies, as bits; 0 inside (Cohen and Sutherland's outcode). */
function outcode(x: number, y: number, left: number, top: number, right: number, bottom: number): number {
  return (x < left ? 1 : x > right ? 2 : 0) | (y < top ? 4 : y > bottom ? 8 : 0);
}

/**
 * The ring without the inner points of runs beyond one side; the ring itself where nothing is left out,
 * `undefined` where all of it is.
 */
function shortened(
  ring: Float64Array,
  left: number,
  top: number,
  right: number,
  bottom: number,
): ArrayLike<number> | undefined {
  const n = ring.length;
  const out: number[] = [];
  // sides shared by the last point kept, all that were left out since, and the point before this one
  let shared = 0;
  let all = 15;
  for (let i = 0; i < n; i += 2) {
    const code = outcode(ring[i], ring[i + 1], left, top, right, bottom);
    all &= code;
    const next = i + 2 === n ? 0 : i + 2;
    const nextCode = outcode(ring[next], ring[next + 1], left, top, right, bottom);
    if (i > 0 && next !== 0 && (shared & code & nextCode) !== 0) {
      shared &= code;
      continue;
    }
    out.push(ring[i], ring[i + 1]);
    shared = code;
  }
  if (all !== 0) {
    return undefined;
  }
  return out.length === n ? ring : out;
}
