import {
  type Bounds,
  boundsOf,
  joinBounds,
  packRings,
  type Region,
  ringCoords,
  ringsBounds,
} from '@pourproof/plane';
import { Clipper64, ClipType, FillRule, type Path64, type Paths64 } from 'clipper2-ts';

/** Largest grid coordinate: cross products of two differences then still fit a double's 53 bits. */
const GRID_REACH = 2 ** 25;

/** The part of a region inside a clip, in mm; the region itself where the clip plainly holds all of it. */
export function intersectRegions(subject: Region, clip: Region): Region {
  const a = ringsBounds(subject);
  const b = ringsBounds(clip);
  if (a[0] > b[2] || b[0] > a[2] || a[1] > b[3] || b[1] > a[3]) {
    return EMPTY_REGION;
  }
  if (isUprightRectangle(clip) && a[0] >= b[0] && a[1] >= b[1] && a[2] <= b[2] && a[3] <= b[3]) {
    return subject;
  }
  return combine(ClipType.Intersection, subject, [clip], joinBounds(a, b));
}

/** The part of a region outside all the others, in mm, on the grid of `around` where that is given (it must hold the region and those near it). */
export function subtractRegions(subject: Region, others: readonly Region[], around?: Bounds): Region {
  const a = ringsBounds(subject);
  const near = others.filter((other) => {
    const b = ringsBounds(other);
    return a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
  });
  return near.length === 0
    ? subject
    : combine(
        ClipType.Difference,
        subject,
        near,
        around ?? near.reduce((box, other) => joinBounds(box, ringsBounds(other)), a),
      );
}

/** What all the regions cover, each by its own fill rule, as one region, on the grid of `around` where that is given (it must hold them all). */
export function uniteRegions(regions: readonly Region[], around?: Bounds): Region {
  const [first, ...rest] = regions;
  if (first === undefined) {
    return EMPTY_REGION;
  }
  const box = around ?? regions.reduce((sum, r) => joinBounds(sum, ringsBounds(r)), ringsBounds(first));
  return combine(ClipType.Union, first, rest, box);
}

/** A region that covers nothing. */
export const EMPTY_REGION: Region = { ...packRings([]), fillRule: 'nonzero' };

/**
 * One boolean on a grid of a power of two that the box fills: about 10 nm for a board of half a metre.
 * Regions of different fill rules are first resolved by their own, since the library takes one rule for all.
 */
function combine(kind: ClipType, subject: Region, others: readonly Region[], box: Bounds): Region {
  const grid = new Grid(box);
  const subjects = grid.resolved(subject);
  const clips = others.flatMap((other) => grid.resolved(other));
  const clipper = new Clipper64();
  clipper.preserveCollinear = false;
  clipper.addSubject(subjects);
  if (clips.length > 0) {
    clipper.addClip(clips);
  }
  const out: Paths64 = [];
  clipper.execute(kind, FillRule.NonZero, out);
  const made: Region = { ...packRings(out.map((ring) => grid.toMm(ring))), fillRule: 'nonzero' };
  RESOLVED.add(made);
  return made;
}

/** Regions that a boolean has made: their rings are simple and turn the right way already. */
const RESOLVED = new WeakSet<Region>();

class Grid {
  private readonly x: number;
  private readonly y: number;
  private readonly perMm: number;

  constructor(box: Bounds) {
    this.x = (box[0] + box[2]) / 2;
    this.y = (box[1] + box[3]) / 2;
    const reach = Math.max(box[2] - box[0], box[3] - box[1]) / 2;
    this.perMm = reach > 0 ? 2 ** Math.floor(Math.log2(GRID_REACH / reach)) : 1;
  }

  /** Rings whose non-zero fill is the region. */
  resolved(region: Region): Paths64 {
    const paths: Paths64 = [];
    for (let k = 0; k < region.ringEnds.length; k++) {
      paths.push(this.toGrid(ringCoords(region, k)));
    }
    if (RESOLVED.has(region)) {
      return paths;
    }
    const [only] = paths;
    if (paths.length === 1 && only !== undefined && isConvex(only)) {
      return paths;
    }
    const clipper = new Clipper64();
    clipper.addSubject(paths);
    const out: Paths64 = [];
    clipper.execute(ClipType.Union, region.fillRule === 'evenodd' ? FillRule.EvenOdd : FillRule.NonZero, out);
    return out;
  }

  toMm(ring: Path64): number[] {
    const out: number[] = [];
    for (const { x, y } of ring) {
      out.push(this.x + x / this.perMm, this.y + y / this.perMm);
    }
    return out;
  }

  private toGrid(coords: Float64Array): Path64 {
    const out: Path64 = [];
    for (let i = 0; i < coords.length; i += 2) {
      out.push({
        x: Math.round(((coords[i] as number) - this.x) * this.perMm),
        y: Math.round(((coords[i + 1] as number) - this.y) * this.perMm),
      });
    }
    return out;
  }
}

/** Whether a ring turns one way all along and only once round, towards the side that counts as positive: then it is its own fill by both rules. */
function isConvex(ring: Path64): boolean {
  let turns = 0;
  let a = ring[ring.length - 2];
  let b = ring[ring.length - 1];
  for (const c of ring) {
    if (a === undefined || b === undefined || (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) < 0) {
      return false;
    }
    // a convex ring goes up through each height once
    turns += a.y < b.y !== b.y < c.y ? 1 : 0;
    a = b;
    b = c;
  }
  return turns === 2;
}

function isUprightRectangle({ coords, ringEnds }: Region): boolean {
  if (ringEnds.length !== 1 || coords.length !== 8) {
    return false;
  }
  const box = boundsOf(coords);
  return coords.every((value, i) => value === box[i % 2] || value === box[2 + (i % 2)]) && !isBowTie(coords);
}

function isBowTie(c: Float64Array): boolean {
  return !(c[0] !== c[4] && c[1] !== c[5] && c[2] !== c[6] && c[3] !== c[7]);
}
