import { AxisEdge, type MedialAxis } from '@pourproof/geometry';
import { type Point, packRings, type Region, ringArea } from '@pourproof/plane';
import type { NarrowPath } from './narrow-paths.ts';

/** How a strip is drawn, lengths in mm. */
export interface StripSetting {
  /** Half of its width. */
  readonly half: number;
  /** Clearance up to which its path is narrow. */
  readonly level: number;
  readonly toleranceMm: number;
}

/** Where the middle of a strip turns by more, radians, its sides meet in an arc (our choice): no curve is drawn so coarsely. */
const BEND = 0.35;

/** Draws strips of one width along paths of an axis. */
export class StripPen {
  readonly #axis: MedialAxis;
  readonly #edge: AxisEdge;
  readonly #setting: StripSetting;

  constructor(axis: MedialAxis, setting: StripSetting) {
    this.#axis = axis;
    this.#edge = new AxisEdge(axis);
    this.#setting = setting;
  }

  /** @param onwardMm how far it goes on straight beyond the ends of strokes */
  along({ edges, isLoose }: NarrowPath, onwardMm = 0): Region {
    const points: Point[] = [];
    for (const [e, isDown] of edges) {
      const own = this.#pointsOn(e);
      points.push(...(isDown ? own.reverse() : own));
    }
    const line = simplified(points, this.#setting.toleranceMm);
    const rings: number[][] = [];
    let from = 0;
    for (let k = 1; k < line.length; k++) {
      if (k === line.length - 1 || Math.abs(turnAt(line, k)) > BEND) {
        rings.push(this.#band(line.slice(from, k + 1)), this.#disc(line[k] as Point));
        from = k;
      }
    }
    rings.push(this.#disc(line[0] as Point), ...this.#onward(line, isLoose, onwardMm));
    return { ...packRings(rings), fillRule: 'nonzero' };
  }

  #onward(line: readonly Point[], [first, last]: NarrowPath['isLoose'], byMm: number): readonly number[][] {
    const from = (end: Point | undefined, before: Point | undefined): number[][] => {
      const along = end === undefined || before === undefined ? null : direction(before, end);
      return end === undefined || along === null
        ? []
        : [this.#band([end, [end[0] + byMm * along[0], end[1] + byMm * along[1]]])];
    };
    return byMm === 0
      ? []
      : [...(first ? from(line[0], line[1]) : []), ...(last ? from(line.at(-1), line.at(-2)) : [])];
  }

  /** Points of an edge, the low end first; a little beyond the level where it rises above that. */
  #pointsOn(e: number): Point[] {
    const edge = this.#edge;
    const { level, half, toleranceMm } = this.#setting;
    const { originX, originY } = this.#axis.boundary;
    edge.load(e);
    // half the strip beyond: there the wide part is wider than the strip
    const top = edge.r1 > level ? edge.shareOf(level + half / 2) : 1;
    // how far it runs across the axis of its parabola: the height over a part is its square by 8 h
    const across = Math.abs(edge.along(edge.x1, edge.y1) - edge.along(edge.x0, edge.y0));
    const parts =
      edge.kind === 'segment-vertex'
        ? Math.max(1, Math.ceil(across / Math.sqrt(8 * toleranceMm * Math.abs(edge.h))))
        : 1;
    return Array.from({ length: parts + 1 }, (_, p) => {
      edge.atShare((top * p) / parts);
      return [originX + edge.x, originY + edge.y];
    });
  }

  /** Both sides of a line that bends gently, at the same distance. */
  #band(line: readonly Point[]): number[] {
    const left: number[] = [];
    const right: number[] = [];
    line.forEach(([x, y], k) => {
      const [nx, ny] = normalAt(line, k);
      left.push(x + this.#setting.half * nx, y + this.#setting.half * ny);
      right.unshift(x - this.#setting.half * nx, y - this.#setting.half * ny);
    });
    return ringArea([...left, ...right]) < 0 ? turned([...left, ...right]) : [...left, ...right];
  }

  /** Where bands meet, and around ends. */
  #disc([x, y]: Point): number[] {
    const { half, toleranceMm } = this.#setting;
    const most = 2 * Math.acos(1 - Math.min(1, toleranceMm / half));
    const sides = Math.max(8, Math.ceil((2 * Math.PI) / most));
    return Array.from({ length: sides }, (_, s) => {
      const t = (2 * Math.PI * s) / sides;
      return [x + half * Math.cos(t), y + half * Math.sin(t)];
    }).flat();
  }
}

/** A line with as few of its points as keep it within a tolerance (Douglas and Peucker). */
function simplified(points: readonly Point[], tolerance: number): Point[] {
  const isKept = new Uint8Array(points.length);
  isKept[0] = 1;
  isKept[points.length - 1] = 1;
  const spans: [number, number][] = [[0, points.length - 1]];
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [i, j] = span;
    let [farthest, off] = [-1, tolerance];
    for (let k = i + 1; k < j; k++) {
      const d = fromSegment(points[k] as Point, points[i] as Point, points[j] as Point);
      if (d > off) {
        [farthest, off] = [k, d];
      }
    }
    if (farthest >= 0) {
      isKept[farthest] = 1;
      spans.push([i, farthest], [farthest, j]);
    }
  }
  return points.filter(
    (point, k) =>
      isKept[k] === 1 && !(k > 0 && isSame(point, points[k - 1] as Point) && k < points.length - 1),
  );
}

function isSame([ax, ay]: Point, [bx, by]: Point): boolean {
  return ax === bx && ay === by;
}

function fromSegment([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

function turnAt(line: readonly Point[], k: number): number {
  const [a, b, c] = [line[k - 1], line[k], line[k + 1]] as [Point, Point, Point];
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]];
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

/** To the side of a line at a point, so long that both sides stay at distance 1. */
function normalAt(line: readonly Point[], k: number): Point {
  const at = line[k] as Point;
  const [before, after] = [line[k - 1] ?? at, line[k + 1] ?? at];
  const [ux, uy] = direction(before, at) ?? direction(at, after) ?? [1, 0];
  const [vx, vy] = direction(at, after) ?? [ux, uy];
  const half = 1 / (1 + ux * vx + uy * vy);
  return [-(uy + vy) * half, (ux + vx) * half];
}

function direction([ax, ay]: Point, [bx, by]: Point): Point | null {
  const d = Math.hypot(bx - ax, by - ay);
  return d > 0 ? [(bx - ax) / d, (by - ay) / d] : null;
}

function turned(ring: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = ring.length - 2; i >= 0; i -= 2) {
    out.push(ring[i] as number, ring[i + 1] as number);
  }
  return out;
}
