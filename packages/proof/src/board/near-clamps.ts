import { radiusAt } from '@pourproof/cutting';
import { axisChords } from '@pourproof/geometry';
import type { Bit, HeldDown } from '@pourproof/job';
import { applyTransform, type Point, ringCoords, transformRings } from '@pourproof/plane';
import { cutterOf } from '../cut/cutter-of.ts';
import type { CutMeasures } from '../cut/measure-cut.ts';
import type { PlacedBoard } from './place-board.ts';

/** How near a bit comes to a clamp; lengths in mm, places in the artwork's frame. */
export interface NearClamp {
  readonly clamp: HeldDown;
  /** Room between the side of the bit and the clamp; negative where the bit runs into it, by that much. */
  readonly roomMm: number;
  /** Place of the cut, or of a V's axis, that is nearest. */
  readonly atMm: Point;
}

/** A place with its room, both in the frame of the board. */
interface Room {
  readonly roomMm: number;
  readonly at: Point;
}

/**
 * The room between the bits on their way and each clamp. A bit sweeps more than it cuts where it is wider above the face than at it: a V, a ball, a
 * taper. Its full diameter counts, as the height of a clamp is not known.
 *
 * Exact for the flattened outline: a bit that clears goes round the cut at the distance by which it is wider; a V also runs into every corner, with
 * its axis on the middle of the stroke.
 */
export function nearClamps(
  { axis, cutRegion }: Pick<CutMeasures, 'axis' | 'cutRegion'>,
  { bits, depthMm }: { readonly bits: readonly Bit[]; readonly depthMm: number },
  clamps: readonly HeldDown[],
  { toBoard, toArtwork }: PlacedBoard,
): readonly NearClamp[] {
  if (clamps.length === 0 || cutRegion.ringEnds.length === 0) {
    return [];
  }
  const cut = transformRings(toBoard, cutRegion);
  const outline = Array.from(cut.ringEnds, (_, k) => edgesOf(ringCoords(cut, k))).flat();
  const wider = Math.max(...bits.map((bit) => fullRadiusMm(bit) - radiusAt(cutterOf(bit), depthMm)));
  const vees = bits.filter(({ kind }) => kind === 'vee').map(fullRadiusMm);
  const middles: readonly Edge[] =
    vees.length === 0
      ? []
      : axisChords(axis).map(({ from, to }) => [applyTransform(toBoard, from), applyTransform(toBoard, to)]);
  return clamps.map((clamp) => {
    const inCut = isInside(clamp.atMm, outline) ? [deepest(clamp)] : [];
    const rooms = [
      ...inCut.map((room) => less(room, wider)),
      less(nearestOf(clamp, outline), wider),
      less(nearestOf(clamp, middles), Math.max(0, ...vees)),
    ];
    const { roomMm, at } = rooms.reduce((least, each) => (each.roomMm < least.roomMm ? each : least));
    return { clamp, roomMm, atMm: applyTransform(toArtwork, at) };
  });
}

/** How far the side of a bit is from its axis at its widest, mm. */
function fullRadiusMm(bit: Bit): number {
  return Math.max(...cutterOf(bit).pieces.map(({ toRadiusMm }) => toRadiusMm));
}

function less({ roomMm, at }: Room, byMm: number): Room {
  return { roomMm: roomMm - byMm, at };
}

type Edge = readonly [Point, Point];

function edgesOf(ring: Float64Array): readonly Edge[] {
  const count = ring.length / 2;
  const at = (k: number): Point => [ring[2 * (k % count)] as number, ring[2 * (k % count) + 1] as number];
  return Array.from({ length: count }, (_, k) => [at(k), at(k + 1)]);
}

/** Steps of the search along an edge: to rounding. */
const SEARCH_STEPS = 80;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The place of some edges that is nearest to a clamp, or deepest in it; infinitely far if there are none. */
function nearestOf(clamp: HeldDown, edges: readonly Edge[]): Room {
  let best: Room = { roomMm: Number.POSITIVE_INFINITY, at: [0, 0] };
  for (const [from, to] of edges) {
    const [a, b] = [distanceTo(clamp, from), distanceTo(clamp, to)];
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    // no distance falls faster than the way to it
    if ((a + b - length) / 2 < best.roomMm) {
      const nearest = nearestOn(clamp, from, to);
      best = nearest.roomMm < best.roomMm ? nearest : best;
    }
  }
  return best;
}

/** The distance to a convex shape, negative within, is convex along an edge: golden sections find its least. */
function nearestOn(clamp: HeldDown, [ax, ay]: Point, [bx, by]: Point): Room {
  const at = (share: number): Point => [ax + share * (bx - ax), ay + share * (by - ay)];
  const room = (share: number): Room => ({ roomMm: distanceTo(clamp, at(share)), at: at(share) });
  let [low, high] = [0, 1];
  for (let k = 0; k < SEARCH_STEPS; k++) {
    const [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    if (room(left).roomMm <= room(right).roomMm) {
      high = right;
    } else {
      low = left;
    }
  }
  return [room(0), room((low + high) / 2), room(1)].reduce((best, each) =>
    each.roomMm < best.roomMm ? each : best,
  );
}

/** Distance of a place on the board to the edge of a clamp, negative within it, mm. */
function distanceTo(clamp: HeldDown, [x, y]: Point): number {
  const [dx, dy] = [Math.abs(x - clamp.atMm[0]), Math.abs(y - clamp.atMm[1])];
  if (clamp.kind === 'hold-down') {
    return Math.hypot(dx, dy) - clamp.diameterMm / 2;
  }
  const [u, v] = [dx - clamp.sizeMm[0] / 2, dy - clamp.sizeMm[1] / 2];
  return Math.max(u, v) > 0 ? Math.hypot(Math.max(u, 0), Math.max(v, 0)) : Math.max(u, v);
}

/** The middle of a clamp is as deep in it as any place. */
function deepest(clamp: HeldDown): Room {
  return { roomMm: distanceTo(clamp, clamp.atMm), at: clamp.atMm };
}

/** Whether a place lies within closed outlines: an odd number of edges cross the ray to its right. */
function isInside([x, y]: Point, edges: readonly Edge[]): boolean {
  const crossings = edges.filter(
    ([[ax, ay], [bx, by]]) => ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax),
  );
  return crossings.length % 2 === 1;
}
