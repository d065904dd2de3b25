import { BoxIndex, type CleanRegion, type Point, ringStart, ringsBounds } from '@pourproof/plane';
import type { CutShape } from './cut-shape.ts';

/** Shares of an edge at which the stroke beside it is measured; its ends lie in corners. */
const SHARES = [0.02, 0.25, 0.5, 0.75, 0.98];

/**
 * A function that gives the greatest depth beside an edge of a cut's outline, mm. Bits that clear cut at full depth everywhere; a V is as deep as the
 * stroke is wide there: twice the radius of the disc within the cut that touches the edge.
 *
 * @param mostMm greatest depth of the whole cut
 */
export function depthAlong(
  cut: CleanRegion,
  { includedRad, sectionAt }: CutShape,
  mostMm: number,
): (from: Point, to: Point) => number {
  if (includedRad === null) {
    return () => mostMm;
  }
  const outline = new Outline(cut);
  const depthOf = (radius: number): number => Math.min(mostMm, sectionAt(2 * radius)?.depthMm ?? 0);
  const isEnough = (radius: number): boolean => depthOf(radius) >= mostMm;
  return ([ax, ay], [bx, by]) => {
    const [dx, dy] = [bx - ax, by - ay];
    const length = Math.hypot(dx, dy);
    let depth = 0;
    for (const share of SHARES) {
      // the inside of a clean ring is on the side of (−ey, ex)
      outline.setOn(ax + share * dx, ay + share * dy, -dy / length, dx / length);
      const radius = outline.touchingRadius(isEnough);
      depth = Math.max(depth, Number.isFinite(radius) ? depthOf(radius) : mostMm);
      if (depth === mostMm) {
        break;
      }
    }
    return depth;
  };
}

/** Cosines this near to 1 are those of walls that run alike, whose disc has no end. */
const PARALLEL_TOL = 1e-9;
/** Radius of the disc that is tried first, mm (our choice); one that nothing touches is doubled. */
const FIRST_MM = 1;
/** Walls this far outside of a disc's box are looked at too, as a share of its radius: rounding. */
const BOX_SHARE = 1e-6;

/** The edges of an outline, in search of discs within it that touch a point of it from the side of a normal. */
class Outline {
  /** `[px,py,qx,qy]` of each edge. */
  readonly #edges: Float64Array;
  readonly #index: BoxIndex;
  /** A disc so large holds the whole outline in its box, or half a plane, mm. */
  readonly #extentMm: number;
  #x = 0;
  #y = 0;
  #nx = 0;
  #ny = 0;

  constructor(region: CleanRegion) {
    this.#edges = edgesOf(region);
    this.#index = new BoxIndex(boxesOf(this.#edges));
    const [left, top, right, bottom] = ringsBounds(region);
    this.#extentMm = right - left + bottom - top;
  }

  /** Sets the point, and the unit normal on whose side the disc lies. */
  setOn(x: number, y: number, nx: number, ny: number): void {
    this.#x = x;
    this.#y = y;
    this.#nx = nx;
    this.#ny = ny;
  }

  /**
   * Radius of the largest disc, infinite where nothing stands opposite, or a smaller one that is enough. What a disc does not meet cannot
   * make it smaller: only walls that the box of the largest so far meets are looked at.
   */
  touchingRadius(isEnough: (radius: number) => boolean): number {
    for (let radius = FIRST_MM; ; radius *= 2) {
      const least = this.#leastIn(radius);
      if (least <= radius || radius > this.#extentMm) {
        return least;
      }
      if (isEnough(radius)) {
        return radius;
      }
    }
  }

  /** The least radius by the walls in the box of a disc; by all where that may reach everywhere. */
  #leastIn(radius: number): number {
    const reach = radius > this.#extentMm ? Infinity : radius * (1 + BOX_SHARE);
    const [x, y] = [this.#x + radius * this.#nx, this.#y + radius * this.#ny];
    let least = Infinity;
    this.#index.someIn(x - reach, y - reach, x + reach, y + reach, (item) => {
      least = Math.min(least, this.#radiusTo(item));
      return false;
    });
    return least;
  }

  #radiusTo(item: number): number {
    const edges = this.#edges;
    const px = edges[4 * item] as number;
    const py = edges[4 * item + 1] as number;
    const qx = edges[4 * item + 2] as number;
    const qy = edges[4 * item + 3] as number;
    return Math.min(this.#radiusToPoint(px, py), this.#radiusToWall(px, py, qx, qy));
  }

  /** The disc that touches at the point and reaches another: |q − p|²/(2 n·(q − p)). */
  #radiusToPoint(qx: number, qy: number): number {
    const [x, y] = [qx - this.#x, qy - this.#y];
    const ahead = this.#nx * x + this.#ny * y;
    return ahead > PARALLEL_TOL ? (x * x + y * y) / (2 * ahead) : Infinity;
  }

  /** The disc that touches at the point and a wall with inward normal m: d/(1 − n·m), where it touches the wall within its ends. */
  #radiusToWall(px: number, py: number, qx: number, qy: number): number {
    const [x, y, nx, ny] = [this.#x, this.#y, this.#nx, this.#ny];
    const length = Math.hypot(qx - px, qy - py);
    const [ux, uy] = [(qx - px) / length, (qy - py) / length];
    const distance = -uy * (x - px) + ux * (y - py);
    const slack = 1 - (nx * -uy + ny * ux);
    if (distance <= PARALLEL_TOL || slack <= PARALLEL_TOL) {
      return Infinity;
    }
    const radius = distance / slack;
    const along = ux * (x + radius * nx - px) + uy * (y + radius * ny - py);
    return along >= 0 && along <= length ? radius : Infinity;
  }
}

function edgesOf(region: CleanRegion): Float64Array {
  const { coords, ringEnds } = region;
  const edges = new Float64Array(2 * coords.length);
  for (let k = 0; k < ringEnds.length; k++) {
    const from = ringStart(region, k);
    const to = ringEnds[k] as number;
    for (let i = from; i < to; i++) {
      const j = i + 1 === to ? from : i + 1;
      edges.set(
        [coords[2 * i], coords[2 * i + 1], coords[2 * j], coords[2 * j + 1]] as [
          number,
          number,
          number,
          number,
        ],
        4 * i,
      );
    }
  }
  return edges;
}

function boxesOf(edges: Float64Array): Float64Array {
  const boxes = new Float64Array(edges.length);
  for (let i = 0; i < edges.length; i += 4) {
    const [px, py, qx, qy] = edges.subarray(i, i + 4) as unknown as [number, number, number, number];
    boxes.set([Math.min(px, qx), Math.min(py, qy), Math.max(px, qx), Math.max(py, qy)], i);
  }
  return boxes;
}
