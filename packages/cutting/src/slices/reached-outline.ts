import type { MedialAxis } from '@pourproof/geometry';
import {
  type ArcRings,
  checkRadius,
  enteringRadius,
  findLevelCrossings,
  type LevelCrossings,
  type OpenArcs,
  openArcs,
  packArcRings,
} from '@pourproof/geometry';
import { COINCIDENT_REL_TOL, invariant, pollStep, ringCoords } from '@pourproof/plane';

/**
 * Outline of the points within `reachMm` of those where a disc of radius `centreMm` fits: what a cutter with
 * radius `centreMm` at the face cuts at the height where its radius is `reachMm`. Straight along straight
 * walls, true arcs around reflex vertices and in corners. Outer rings have positive area, holes negative; no
 * rings where nothing is cut.
 *
 * Where a stroke is exactly as wide as the cutter, or a corner of the artwork holds just its disc, the centres keep to a line or a point. They
 * count, see `enteringRadius`: with a reach of 0 the outline there is a loop around that line or point, about 4e-9 of the radius wide, with a
 * length of twice the line's and next to no area. It never is missing on one stretch and there on the next.
 *
 * @param reachMm 0 … centreMm; 0 gives the offset curve of `centreMm`, on which the centres stop
 * @throws {RangeError} when a radius is out of its range
 */
export function reachedOutline(axis: MedialAxis, centreMm: number, reachMm: number): ArcRings {
  checkRadius(centreMm);
  checkRadius(reachMm);
  if (reachMm > centreMm) {
    throw new RangeError(`reachMm is ${reachMm}; give at most centreMm, ${centreMm}`);
  }
  if (centreMm === 0) {
    return packArcRings(Array.from(axis.region.ringEnds, (_, k) => withoutArcs(ringCoords(axis.region, k))));
  }
  const centre = enteringRadius(axis, centreMm);
  const crossings = findLevelCrossings(axis, centre);
  const reach = { ...crossings, radius: Math.min(reachMm, centre) };
  const tracer = new InsetTracer(axis, reach, openArcs(reach), centre - reach.radius);
  const loops: number[][] = [];
  for (let k = 0; k < crossings.edge.length; k++) {
    pollStep();
    tracer.traceFromCrossing(k, loops);
  }
  for (let e = 0; e < axis.edgeFrom.length; e++) {
    pollStep();
    if (crossings.ofEdge[e] < 0 && axis.nodeR[axis.edgeTo[e]] >= centre) {
      tracer.traceWhole(2 * e, loops);
      tracer.traceWhole(2 * e + 1, loops);
    }
  }
  for (let k = 0; k < crossings.edge.length; k++) {
    pollStep();
    tracer.traceBetweenDiscs(k, loops);
  }
  return packArcRings(loops);
}

function withoutArcs(ring: Float64Array): number[] {
  const out: number[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    out.push(ring[i], ring[i + 1], 0);
  }
  return out;
}

/** Walks around the parts of the axis where the centre fits, at a fixed distance inside the boundary. */
class InsetTracer {
  readonly #axis: MedialAxis;
  readonly #crossings: LevelCrossings;
  readonly #arcs: OpenArcs;
  readonly #inset: number;
  readonly #closeness: number;
  readonly #seen: Uint8Array;
  readonly #isLeft: Uint8Array;
  /** 1 for open arcs that a loop runs along. */
  readonly #isArcPassed: Uint8Array;
  #points: number[] = [];
  /**
   * Whether the piece after the last point turns around a reflex vertex, and the direction in which it
   * starts.
   */
  #isAroundVertex = false;
  #arcX = 0;
  #arcY = 0;
  /** Direction from its site to the first point of a walk that meets no crossing. */
  #first: readonly [number, number] | undefined;
  /** Upper bound on the half-edges still to walk: each is walked once. */
  #stepsLeft: number;

  constructor(axis: MedialAxis, crossings: LevelCrossings, arcs: OpenArcs, inset: number) {
    this.#axis = axis;
    this.#crossings = crossings;
    this.#arcs = arcs;
    this.#inset = inset;
    this.#closeness = axis.boundary.extent * COINCIDENT_REL_TOL;
    this.#seen = new Uint8Array(axis.nextHalf.length);
    this.#isLeft = new Uint8Array(crossings.edge.length);
    this.#isArcPassed = new Uint8Array(arcs.from.length);
    this.#stepsLeft = axis.nextHalf.length;
  }

  /** Traces the loop that leaves crossing k along its right wall. */
  traceFromCrossing(k: number, loops: number[][]): void {
    if (this.#isLeft[k] !== 0) {
      return;
    }
    this.#points = [];
    let crossing = k;
    do {
      this.#isLeft[crossing] = 1;
      const reached = this.#followBoundary(crossing);
      crossing = this.#followArcs(reached, this.#arcs.first[reached]);
    } while (this.#isLeft[crossing] === 0);
    this.#close(loops);
  }

  /** Traces the loops along arcs of crossing k that no wall belongs to: what several discs enclose where short waists meet. */
  traceBetweenDiscs(k: number, loops: number[][]): void {
    const { first, from } = this.#arcs;
    for (let arc = first[k]; arc < first[k + 1]; arc++) {
      if (this.#isArcPassed[arc] === 0) {
        this.#points = [];
        this.#isAroundVertex = false;
        this.#pushOnArc(k, from[arc]);
        this.#followArcs(k, arc);
        this.#close(loops);
      }
    }
  }

  /** Traces the loop along half-edge h unless it is seen; no crossing lies on that loop. */
  traceWhole(h: number, loops: number[][]): void {
    if (this.#seen[h] !== 0) {
      return;
    }
    this.#points = [];
    this.#isAroundVertex = false;
    this.#first = undefined;
    let at = h;
    do {
      at = this.#step(at);
    } while (at !== h);
    if (this.#isAroundVertex && this.#first !== undefined) {
      this.#endArc(this.#first[0], this.#first[1]);
    }
    this.#close(loops);
  }

  #followBoundary(crossing: number): number {
    const { edge, ofEdge } = this.#crossings;
    this.#pushContact(crossing, this.#axis.edgeRight[edge[crossing]]);
    let h = this.#step(2 * edge[crossing]);
    while ((h & 1) === 0 || ofEdge[h >> 1] < 0) {
      h = this.#step(h);
    }
    this.#seen[h] = 1;
    const reached = ofEdge[h >> 1];
    this.#pushContact(reached, this.#axis.edgeLeft[edge[reached]]);
    this.#isAroundVertex = false;
    return reached;
  }

  /** Marks half-edge h, adds a point if the site changes there, and returns the half-edge after it. */
  #step(h: number): number {
    const { nextHalf, edgeLeft, edgeRight, boundary } = this.#axis;
    invariant(this.#stepsLeft-- > 0, 'a walk around the axis comes back to where it began');
    this.#seen[h] = 1;
    const after = nextHalf[h];
    if (after === h - 1 && (h & 1) === 1) {
      // down a secondary edge and up again: on one side a site edge, on the other its reflex end point
      const { count, x, y, tx, ty, originX, originY } = boundary;
      const [from, to] = [edgeLeft[h >> 1], edgeRight[h >> 1]];
      const edge = from < count ? from : to;
      const p = (from < count ? to : from) - count;
      const [nx, ny] = [-ty[edge], tx[edge]];
      this.#push(originX + x[p] + this.#inset * nx, originY + y[p] + this.#inset * ny, nx, ny);
      this.#startArc(to >= count, nx, ny);
    }
    return after;
  }

  /** Adds the point of a crossing's disc that is nearest to one of its two sites. */
  #pushContact(crossing: number, site: number): void {
    const { x, y, radius } = this.#crossings;
    const { count, originX, originY, tx, ty, x: px, y: py } = this.#axis.boundary;
    let [nx, ny] = [-ty[site], tx[site]];
    if (site >= count) {
      const [dx, dy] = [x[crossing] - px[site - count], y[crossing] - py[site - count]];
      const d = Math.hypot(dx, dy);
      [nx, ny] = [dx / d, dy / d];
    }
    this.#push(originX + x[crossing] - radius * nx, originY + y[crossing] - radius * ny, nx, ny);
    this.#startArc(site >= count, nx, ny);
  }

  /**
   * Adds the arcs from one of a crossing's on; returns the crossing at whose other wall they end, or where they come round.
   */
  #followArcs(crossing: number, begin: number): number {
    const { first, from, to, startBy, endBy } = this.#arcs;
    const { radius } = this.#crossings;
    let k = crossing;
    let arc = begin;
    while (this.#isArcPassed[arc] === 0) {
      this.#isArcPassed[arc] = 1;
      this.#bend(radius > this.#closeness ? Math.tan((to[arc] - from[arc]) / 4) : 0);
      const onto = endBy[arc];
      if (onto < 0) {
        return k;
      }
      this.#pushOnArc(k, to[arc]);
      let next = first[onto];
      while (next < first[onto + 1] && startBy[next] !== k) {
        next++;
      }
      invariant(next < first[onto + 1], 'arcs of overlapping discs end on each other');
      k = onto;
      arc = next;
    }
    return k;
  }

  /** Adds a point of a crossing's arc, at an angle from where the arc begins. */
  #pushOnArc(k: number, along: number): void {
    const { x, y, radius, angle } = this.#crossings;
    const { originX, originY } = this.#axis.boundary;
    const [nx, ny] = [Math.cos(angle[k] + along), Math.sin(angle[k] + along)];
    this.#push(originX + x[k] + radius * nx, originY + y[k] + radius * ny, nx, ny);
  }

  #startArc(isAroundVertex: boolean, nx: number, ny: number): void {
    this.#isAroundVertex = isAroundVertex;
    this.#arcX = nx;
    this.#arcY = ny;
  }

  /** Makes the piece after the last point an arc around its reflex vertex, up to a direction. */
  #endArc(nx: number, ny: number): void {
    const turn = Math.atan2(Math.abs(this.#arcX * ny - this.#arcY * nx), this.#arcX * nx + this.#arcY * ny);
    this.#bend(this.#inset > this.#closeness ? -Math.tan(turn / 4) : 0);
  }

  #bend(bulge: number): void {
    this.#points[this.#points.length - 1] = bulge;
  }

  /**
   * Adds a point that lies from its site in the direction (nx, ny), unless it repeats the one before on a
   * straight piece.
   */
  #push(x: number, y: number, nx: number, ny: number): void {
    if (this.#isAroundVertex) {
      this.#endArc(nx, ny);
    }
    this.#first ??= [nx, ny];
    const points = this.#points;
    const n = points.length;
    if (n > 0 && points[n - 1] === 0 && this.#isSame(points[n - 3], points[n - 2], x, y)) {
      return;
    }
    points.push(x, y, 0);
  }

  /** Drops last points that repeat the first, and keeps the loop if two points or more are left. */
  #close(loops: number[][]): void {
    const points = this.#points;
    while (points.length > 3 && points[points.length - 1] === 0) {
      const n = points.length;
      if (!this.#isSame(points[n - 3], points[n - 2], points[0], points[1])) {
        break;
      }
      points.length -= 3;
    }
    if (points.length > 3) {
      loops.push(points);
    }
  }

  #isSame(ax: number, ay: number, bx: number, by: number): boolean {
    return Math.abs(ax - bx) <= this.#closeness && Math.abs(ay - by) <= this.#closeness;
  }
}
