import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { type BoxIndex, pollStep } from '@pourproof/plane';
import { edgeIndex } from './edge-index.ts';

/** Where a point lies in the artwork. */
export interface CellPlace {
  /** Distance to the artwork's edge, mm. */
  readonly distanceMm: number;
  /**
   * Clearance at the point's contact with that edge: radius of the largest disc that touches it there, mm.
   */
  readonly clearanceMm: number;
}

/**
 * Rounding of distances, relative to them: by up to this, the nearest boundary point may seem nearer than the
 * nearest one from inside.
 */
const NEAREST_REL_TOL = 1e-9;

/** Finds the cell of the axis that contains a point; O(log n) per point on ordinary artwork. */
export class CellFinder {
  readonly #axis: MedialAxis;
  readonly #index: BoxIndex;
  readonly #edge: AxisEdge;
  /** Cells sorted by site and contact: twice the axis edge, plus 1 for its left site. */
  readonly #cells: Int32Array;
  readonly #contact: Float64Array;
  /** First cell of each site, with the total at the end. */
  readonly #first: Int32Array;

  constructor(axis: MedialAxis) {
    this.#axis = axis;
    this.#edge = new AxisEdge(axis);
    this.#index = edgeIndex(axis.boundary);
    const { cells, contact, first } = sortedCells(axis, this.#edge);
    this.#cells = cells;
    this.#contact = contact;
    this.#first = first;
  }

  /** Place of a point given relative to the axis' origin; undefined outside the artwork. */
  find(px: number, py: number): CellPlace | undefined {
    const { count, x, y, tx, ty, length, previous, isReflex } = this.#axis.boundary;
    let nearest = Infinity;
    let inner = Infinity;
    let site = -1;
    const look = (i: number): void => {
      const [dx, dy] = [px - x[i], py - y[i]];
      const along = dx * tx[i] + dy * ty[i];
      const off = dy * tx[i] - dx * ty[i];
      const beyond = along < 0 ? along : Math.max(0, along - length[i]);
      nearest = Math.min(nearest, Math.hypot(beyond, off));
      if (Math.abs(beyond) <= NEAREST_REL_TOL * (off + length[i]) && off >= 0 && off < inner) {
        inner = off;
        site = i;
      }
      const h = previous[i];
      if (isReflex[i] !== 0 && along <= 0 && dx * tx[h] + dy * ty[h] >= 0 && Math.hypot(dx, dy) < inner) {
        inner = Math.hypot(dx, dy);
        site = count + i;
      }
    };
    this.#index.visitNear(px, py, (distance) => distance <= nearest * (1 + NEAREST_REL_TOL), look);
    if (site < 0 || inner > nearest * (1 + NEAREST_REL_TOL)) {
      return undefined;
    }
    return { distanceMm: inner, clearanceMm: Math.max(inner, this.#clearanceOver(site, px, py)) };
  }

  #clearanceOver(site: number, px: number, py: number): number {
    const { boundary } = this.#axis;
    const contact = contactOf(this.#axis, site, px, py);
    let low = this.#first[site];
    let high = this.#first[site + 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (this.#contact[middle] <= contact) {
        low = middle;
      } else {
        high = middle;
      }
    }
    const cell = this.#cells[low];
    const edge = this.#edge;
    edge.load(cell >> 1);
    const other = (cell & 1) === 1 ? edge.right : edge.left;
    return Math.min(edge.r1, Math.max(edge.r0, touching(boundary, site, other, px, py)));
  }
}

/** Radius of the disc that touches a site at a point's contact, on the point's side, and another site. */
function touching(
  { count, x, y, tx, ty }: MedialAxis['boundary'],
  site: number,
  other: number,
  px: number,
  py: number,
): number {
  let [fx, fy, nx, ny] = [0, 0, 0, 0];
  if (site < count) {
    const along = (px - x[site]) * tx[site] + (py - y[site]) * ty[site];
    [fx, fy, nx, ny] = [x[site] + along * tx[site], y[site] + along * ty[site], -ty[site], tx[site]];
  } else {
    [fx, fy] = [x[site - count], y[site - count]];
    const d = Math.hypot(px - fx, py - fy);
    [nx, ny] = d > 0 ? [(px - fx) / d, (py - fy) / d] : [0, 0];
  }
  if (other < count) {
    const off = (fy - y[other]) * tx[other] - (fx - x[other]) * ty[other];
    return ratio(off, 1 - (ny * tx[other] - nx * ty[other]));
  }
  const [dx, dy] = [x[other - count] - fx, y[other - count] - fy];
  return ratio(dx * dx + dy * dy, 2 * (dx * nx + dy * ny));
}

/** Discs of any size touch both sites where these lie on one line through the contact. */
function ratio(a: number, b: number): number {
  return b === 0 ? Infinity : a / b;
}

/**
 * Position of a point's contact on its site: along an edge, mm; around a vertex, radians from the normal of
 * the edge that ends there.
 */
function contactOf({ boundary }: MedialAxis, site: number, px: number, py: number): number {
  const { count, x, y, tx, ty, previous } = boundary;
  if (site < count) {
    return (px - x[site]) * tx[site] + (py - y[site]) * ty[site];
  }
  const p = site - count;
  const h = previous[p];
  const [dx, dy] = [px - x[p], py - y[p]];
  // inside a reflex vertex the direction turns back from the normal of the edge before to that of the edge
  // after
  return Math.atan2(dx * tx[h] + dy * ty[h], dy * tx[h] - dx * ty[h]);
}

function sortedCells(
  axis: MedialAxis,
  edge: AxisEdge,
): { cells: Int32Array; contact: Float64Array; first: Int32Array } {
  const { edgeFrom, edgeTo, edgeLeft, edgeRight, nodeX, nodeY, boundary } = axis;
  const list: { site: number; contact: number; middle: number; cell: number }[] = [];
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    if (edge.isSecondary(e)) {
      continue;
    }
    for (const [side, site] of [edgeRight[e], edgeLeft[e]].entries()) {
      const [a, b] = [edgeFrom[e], edgeTo[e]].map((node) => contactOf(axis, site, nodeX[node], nodeY[node]));
      list.push({ site, contact: Math.min(a, b), middle: (a + b) / 2, cell: 2 * e + side });
    }
  }
  // by their middles: where one is no wider than rounding, that decides which of two begins first
  list.sort((p, q) => p.site - q.site || p.middle - q.middle);
  const first = new Int32Array(2 * boundary.count + 1);
  for (const { site } of list) {
    first[site + 1]++;
  }
  for (let s = 0; s < 2 * boundary.count; s++) {
    first[s + 1] += first[s];
  }
  return {
    cells: Int32Array.from(list, ({ cell }) => cell),
    contact: Float64Array.from(list, ({ contact }) => contact),
    first,
  };
}
