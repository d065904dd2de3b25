import type { ArcRings } from '@pourproof/geometry';
import { pollStep, ringStart } from '@pourproof/plane';
import type { WallCollector } from './wall-collector.ts';

/** The walls along one outline. */
export interface OutlineWall {
  readonly leanRad: number;
  /** Height of the wall along its slope, mm. */
  readonly slantMm: number;
  /** Longest straight element, mm. */
  readonly longestMm: number;
}

/** Adds the walls along an outline: straight edges as flat elements, arcs as turning ones. */
export function addOutlineWalls(walls: WallCollector, outline: ArcRings, wall: OutlineWall): void {
  const { coords, bulges, ringEnds } = outline;
  for (let k = 0; k < ringEnds.length; k++) {
    const from = ringStart(outline, k);
    for (let i = from; i < ringEnds[k]; i++) {
      pollStep();
      const j = i + 1 === ringEnds[k] ? from : i + 1;
      const ends: [number, number, number, number] = [
        coords[2 * i],
        coords[2 * i + 1],
        coords[2 * j],
        coords[2 * j + 1],
      ];
      if (bulges[i] === 0) {
        addStraight(walls, ends, wall);
      } else {
        addArc(walls, ends, bulges[i], wall);
      }
    }
  }
}

function addStraight(
  walls: WallCollector,
  [ax, ay, bx, by]: [number, number, number, number],
  { leanRad, slantMm, longestMm }: OutlineWall,
): void {
  const [dx, dy] = [bx - ax, by - ay];
  const length = Math.hypot(dx, dy);
  const parts = Math.max(1, Math.ceil(length / longestMm));
  for (let p = 0; p < parts && length > 0; p++) {
    const share = (p + 0.5) / parts;
    // the inside of an outline is on the +y side of an edge along +x
    walls.flat(
      ax + share * dx,
      ay + share * dy,
      dy / length,
      -dx / length,
      leanRad,
      (length * slantMm) / parts,
    );
  }
}

function addArc(
  walls: WallCollector,
  [ax, ay, bx, by]: [number, number, number, number],
  bulge: number,
  { leanRad, slantMm }: OutlineWall,
): void {
  const turn = 4 * Math.atan(bulge);
  const [dx, dy] = [bx - ax, by - ay];
  const radius = (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const up = (1 - bulge * bulge) / (4 * bulge);
  const [cx, cy] = [(ax + bx) / 2 - dy * up, (ay + by) / 2 + dx * up];
  // the wood is outside the circle of an arc in a corner, inside that of one around a reflex vertex
  const inward = bulge > 0 ? 0 : Math.PI;
  const start = Math.atan2(ay - cy, ax - cx);
  const [low, high] = turn > 0 ? [start, start + turn] : [start + turn, start];
  const middle = (low + high) / 2;
  const [x, y] = [cx + radius * Math.cos(middle), cy + radius * Math.sin(middle)];
  walls.turning(x, y, low + inward, high + inward, leanRad, radius * Math.abs(turn) * slantMm);
}
