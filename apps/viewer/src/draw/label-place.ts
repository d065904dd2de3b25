import { type Bounds, type Point, type Rings, ringCoords, ringsBounds } from '@pourproof/plane';

/** Places looked at along each side of the box around an outline. */
const STEPS = 14;

/**
 * A place well inside an outline and a window, and its distance from their edges, mm: the best of a grid, good enough for a letter. No room is
 * left where the outline is out of sight.
 */
export function labelPlace(
  outline: Rings,
  window: Bounds,
): { readonly atMm: Point; readonly roomMm: number } {
  const box = ringsBounds(outline);
  const [left, top] = [Math.max(box[0], window[0]), Math.max(box[1], window[1])];
  const [right, bottom] = [Math.min(box[2], window[2]), Math.min(box[3], window[3])];
  if (right <= left || bottom <= top) {
    return { atMm: [left, top], roomMm: 0 };
  }
  let best = { atMm: [left, top] as Point, roomMm: 0 };
  for (let i = 0; i < STEPS; i++) {
    for (let j = 0; j < STEPS; j++) {
      const at: Point = [
        left + ((right - left) * (i + 0.5)) / STEPS,
        top + ((bottom - top) * (j + 0.5)) / STEPS,
      ];
      const toWindow = Math.min(at[0] - window[0], window[2] - at[0], at[1] - window[1], window[3] - at[1]);
      const roomMm = Math.min(roomAt(outline, at), toWindow);
      best = roomMm > best.roomMm ? { atMm: at, roomMm } : best;
    }
  }
  return best;
}

/** Distance from the edge of a place inside an outline; 0 outside. */
function roomAt(outline: Rings, [x, y]: Point): number {
  let isInside = false;
  let room = Number.POSITIVE_INFINITY;
  for (let k = 0; k < outline.ringEnds.length; k++) {
    const ring = ringCoords(outline, k);
    let [ax, ay] = [ring.at(-2) ?? 0, ring.at(-1) ?? 0];
    for (let i = 0; i + 1 < ring.length; i += 2) {
      const [bx, by] = [ring[i] ?? 0, ring[i + 1] ?? 0];
      if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) {
        isInside = !isInside;
      }
      const length2 = (bx - ax) ** 2 + (by - ay) ** 2;
      const share = length2 === 0 ? 0 : ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length2;
      const along = Math.min(Math.max(share, 0), 1);
      room = Math.min(room, Math.hypot(ax + along * (bx - ax) - x, ay + along * (by - ay) - y));
      [ax, ay] = [bx, by];
    }
  }
  return isInside ? room : 0;
}
