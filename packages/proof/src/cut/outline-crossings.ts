import { type Crossing, combineShapes, resolveRegions } from '@pourproof/arrangement';
import {
  type Bounds,
  type CleanRegion,
  type DrawnShape,
  packRings,
  perimeter,
  type Region,
  type Rings,
  ringCoords,
  ringsBounds,
  signedArea,
} from '@pourproof/plane';

/** Where outlines of a drawing cross, and what comes of it. */
export interface OutlineCrossings {
  /** Places, by x; of a drawing with very many the first. */
  readonly crossings: readonly Crossing[];
  readonly count: number;
  /** Whether a shape crosses itself, one of its outlines another or itself. */
  readonly isOwn: boolean;
  /** What outlines that cross enclose both and the fill rule leaves as wood, the largest first. */
  readonly leftAsWood: readonly CleanRegion[];
}

const NONE: OutlineCrossings = { crossings: [], count: 0, isOwn: false, leftAsWood: [] };

/** More crossings than this are line work, which is taken as it is (our choice). */
const MOST_LISTED = 1000;
/** Pairs of outlines are compared as long as they have at most this many times the points of the drawing. */
const MOST_WORK = 40;

/**
 * Where the outlines of shapes cross. Outlines that touch, so that only their flattening crosses, do not: what they
 * have in common, or what one has alone, is nowhere thicker than that.
 *
 * @param filled what all shapes together paint
 * @param toleranceMm largest distance of the outlines from the curves that they stand for
 */
export function outlineCrossings(
  shapes: readonly DrawnShape[],
  filled: CleanRegion,
  toleranceMm: number,
): OutlineCrossings {
  const outlines = shapes.flatMap(({ region }, shape) => ringsOf(region).map((ring) => ({ ring, shape })));
  const { crossings, crossingCount } = resolveRegions(
    outlines.map(({ ring }) => ring),
    { listedPlaces: MOST_LISTED },
  );
  if (crossingCount === 0) {
    return NONE;
  }
  const pairs = new Pairs(
    outlines.map(({ ring }) => ring),
    toleranceMm,
  );
  const real = crossings.filter(({ regions: [a, b] }) => a === b || pairs.doCross(a, b));
  const common = [...new Map(real.map(({ regions }) => [regions.join(), regions])).values()].map(([a, b]) =>
    pairs.common(a, b),
  );
  return {
    crossings: real,
    // those that are not listed are taken for real
    count: crossingCount - crossings.length + real.length,
    isOwn: real.some(({ regions: [a, b] }) => outlines[a]?.shape === outlines[b]?.shape),
    leftAsWood: partsLeft(common, filled, toleranceMm),
  };
}

/** Compares outlines two by two, each pair once. */
class Pairs {
  readonly #rings: readonly Region[];
  readonly #toleranceMm: number;
  readonly #known = new Map<string, boolean>();
  #workLeft: number;

  constructor(rings: readonly Region[], toleranceMm: number) {
    this.#rings = rings;
    this.#toleranceMm = toleranceMm;
    this.#workLeft = MOST_WORK * rings.reduce((sum, { coords }) => sum + coords.length, 0);
  }

  doCross(a: number, b: number): boolean {
    const key = `${a},${b}`;
    let known = this.#known.get(key);
    if (known === undefined) {
      known = this.#areThick(a, b);
      this.#known.set(key, known);
    }
    return known;
  }

  /** What both outlines enclose; of one and the same what it encloses. */
  common(a: number, b: number): CleanRegion {
    return combineShapes([this.#ring(a)], [this.#ring(b)], 'intersect');
  }

  #areThick(a: number, b: number): boolean {
    const [one, other] = [this.#ring(a), this.#ring(b)];
    this.#workLeft -= 3 * (one.coords.length + other.coords.length);
    if (this.#workLeft < 0) {
      return true;
    }
    return (
      hasThickPart(combineShapes([one], [other], 'intersect'), this.#toleranceMm) &&
      hasThickPart(combineShapes([one], [other], 'subtract'), this.#toleranceMm) &&
      hasThickPart(combineShapes([other], [one], 'subtract'), this.#toleranceMm)
    );
  }

  #ring(index: number): Region {
    return this.#rings[index] as Region;
  }
}

/**
 * Whether some part is thicker than two flattened curves that touch can overlap. They lie within the tolerance of
 * their curves each, and a lens of that thickness has a third of it as area by perimeter at most.
 */
function hasThickPart(region: CleanRegion, toleranceMm: number): boolean {
  return ringsOf(region).some((ring) => signedArea(ring) > toleranceMm * perimeter(ring));
}

/** Where outlines overlap and the fill rule leaves wood: what is common to some pair and not filled. */
function partsLeft(
  common: readonly CleanRegion[],
  filled: CleanRegion,
  toleranceMm: number,
): readonly CleanRegion[] {
  if (common.length === 0) {
    return [];
  }
  const asRegion = (region: CleanRegion): Region => ({ ...region, fillRule: 'nonzero' });
  const left = combineShapes(common.map(asRegion), [asRegion(filled)], 'subtract');
  return partsOf(left)
    .filter((part) => signedArea(part) > toleranceMm * perimeter(part))
    .toSorted((a, b) => signedArea(b) - signedArea(a));
}

/** Each outer ring of a clean region with the holes in it. */
function partsOf(region: CleanRegion): readonly CleanRegion[] {
  const rings = ringsOf(region);
  const outer = rings.filter((ring) => signedArea(ring) > 0);
  return outer.map((ring) => {
    const holes = rings.filter(
      (hole) => signedArea(hole) < 0 && isWithin(ringsBounds(hole), ringsBounds(ring)),
    );
    const inside = combineShapes([ring], holes, 'subtract');
    return inside;
  });
}

function isWithin(inner: Bounds, outer: Bounds): boolean {
  return inner[0] >= outer[0] && inner[1] >= outer[1] && inner[2] <= outer[2] && inner[3] <= outer[3];
}

/** Each ring as a region of its own, which covers what it winds around. */
function ringsOf(rings: Rings): Region[] {
  return Array.from(rings.ringEnds, (_, k) => ({
    ...packRings([ringCoords(rings, k)]),
    fillRule: 'nonzero',
  }));
}
