import { packRings, type Rings, ringCoords } from '@pourproof/plane';

/**
 * The rings of several shapes as one list, with the shape of each edge (an edge is numbered by its first
 * point).
 */
export interface JoinedRings {
  readonly rings: Rings;
  readonly shapeOfEdge: Uint32Array;
}

/** Joins the rings of shapes; shapes are numbered in their order. */
export function joinedRings(shapes: readonly Rings[]): JoinedRings {
  const list: Float64Array[] = [];
  for (const shape of shapes) {
    for (let k = 0; k < shape.ringEnds.length; k++) {
      list.push(ringCoords(shape, k));
    }
  }
  const rings = packRings(list);
  const shapeOfEdge = new Uint32Array(rings.coords.length / 2);
  let at = 0;
  shapes.forEach((shape, number) => {
    const n = shape.ringEnds.at(-1) ?? 0;
    shapeOfEdge.fill(number, at, at + n);
    at += n;
  });
  return { rings, shapeOfEdge };
}
