import Delaunator from 'delaunator';

/** Among so few discs each pair is taken. */
const FEW = 16;

/**
 * For each of some discs of one radius those that may bound its share of their union, in rising order. A point of a disc's rim that no other
 * covers is nearest to that disc: it ends at a side of its Voronoi cell, so at a neighbour in Delaunay's triangulation of the centres. Where four centres
 * lie on one circle both pairs that lie across are taken. O(m log m) for m discs.
 *
 * @param x where the centres are, mm; of several at one place only the first is anybody's neighbour
 */
export function neighbouringDiscs(x: readonly number[], y: readonly number[]): readonly number[][] {
  if (x.length <= FEW) {
    return x.map((_, k) => x.flatMap((_other, l) => (l === k ? [] : [l])));
  }
  const { firsts, placeOf } = places(x, y);
  const coords = Float64Array.from(firsts.flatMap((k) => [x[k] - x[0], y[k] - y[0]]));
  const found = firsts.map(() => new Set<number>());
  const join = (a: number, b: number): void => {
    found[a].add(b);
    found[b].add(a);
  };
  const { triangles, halfedges, hull } = new Delaunator(coords);
  // collinear centres have no triangle, and lie in order on the hull
  for (let i = 1; i < hull.length; i++) {
    join(hull[i - 1], hull[i]);
  }
  for (let side = 0; side < triangles.length; side++) {
    join(triangles[side], triangles[nextSide(side)]);
    const other = halfedges[side];
    if (other > side) {
      join(triangles[nextSide(nextSide(side))], triangles[nextSide(nextSide(other))]);
    }
  }
  const lists = found.map((set) => Array.from(set, (place) => firsts[place]).sort((a, b) => a - b));
  return placeOf.map((place) => lists[place]);
}

/** The next side of the same triangle. */
function nextSide(side: number): number {
  return side % 3 === 2 ? side - 2 : side + 1;
}

/** The first disc at each place, in their order, and the place of each disc. */
function places(x: readonly number[], y: readonly number[]): { firsts: number[]; placeOf: number[] } {
  const order = x.map((_, k) => k).sort((a, b) => x[a] - x[b] || y[a] - y[b] || a - b);
  const firstOf = new Int32Array(x.length);
  for (const [i, k] of order.entries()) {
    const before = order[i - 1];
    firstOf[k] = i > 0 && x[before] === x[k] && y[before] === y[k] ? firstOf[before] : k;
  }
  const firsts = [...firstOf.keys()].filter((k) => firstOf[k] === k);
  const number = new Map(firsts.map((k, place) => [k, place]));
  return { firsts, placeOf: Array.from(firstOf, (k) => number.get(k) ?? 0) };
}
