import type { Drawing, DrawnShape, Rings } from '@pourproof/plane';
import polygonClipping, { type MultiPolygon, type Polygon } from 'polygon-clipping';

/**
 * Area of a drawing in mm² by an independent engine: each shape by its fill rule (even-odd as a chain of symmetric differences,
 * non-zero as a union, since all rings of such shapes turn one way), all shapes united.
 */
export function drawingArea(drawing: Drawing): number {
  return unionArea(drawing.shapes);
}

/** Area of the union of shapes, as {@link drawingArea}. */
export function unionArea(shapes: readonly DrawnShape[]): number {
  const parts = shapes.map(({ region }) => {
    const polygons = polygonsOf(region);
    const [first, ...rest] = polygons;
    return region.fillRule === 'evenodd'
      ? polygonClipping.xor(first, ...rest)
      : polygonClipping.union(first, ...rest);
  });
  const [first, ...rest] = parts;
  return first === undefined ? 0 : areaOf(polygonClipping.union(first, ...rest));
}

function polygonsOf({ coords, ringEnds }: Rings): Polygon[] {
  return [...ringEnds].map((end, k) => {
    const ring: [number, number][] = [];
    for (let i = k === 0 ? 0 : ringEnds[k - 1]; i < end; i++) {
      ring.push([coords[2 * i], coords[2 * i + 1]]);
    }
    return [ring];
  });
}

function areaOf(polygons: MultiPolygon): number {
  let sum = 0;
  for (const polygon of polygons) {
    polygon.forEach((ring, k) => {
      let twice = 0;
      const [x0, y0] = ring[0];
      for (let i = 0; i + 1 < ring.length; i++) {
        twice += (ring[i][0] - x0) * (ring[i + 1][1] - y0) - (ring[i + 1][0] - x0) * (ring[i][1] - y0);
      }
      sum += ((k === 0 ? 1 : -1) * Math.abs(twice)) / 2;
    });
  }
  return sum;
}
