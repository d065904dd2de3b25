import { type CleanRegion, packRings, ringArea, ringCoords } from '@pourproof/plane';

/** The connected shapes of a region, each its outer ring and its holes. */
export function regionShapes(region: CleanRegion): readonly CleanRegion[] {
  const rings = Array.from(region.ringEnds, (_, k) => ringCoords(region, k));
  const shapes = rings
    .map((outer, k) => ({ outer, k, area: ringArea(outer), holes: [] as Float64Array[] }))
    .filter(({ area }) => area > 0)
    // the smallest that holds a hole is the one that it belongs to
    .sort((a, b) => a.area - b.area || a.k - b.k);
  for (const ring of rings) {
    if (ringArea(ring) < 0) {
      // rings meet in single points at most, so that the middle of an edge lies on no other ring
      const [x, y] = [(ring[0] + ring[2]) / 2, (ring[1] + ring[3]) / 2];
      shapes.find(({ outer, area }) => area > -ringArea(ring) && isWithin(outer, x, y))?.holes.push(ring);
    }
  }
  // rings of a clean region that belong together are one
  return shapes
    .toSorted((a, b) => a.k - b.k)
    .map(({ outer, holes }) => packRings([outer, ...holes]) as CleanRegion);
}

/** Whether a point lies within a ring, by the edges that a ray to the right crosses. */
export function isWithin(ring: ArrayLike<number>, x: number, y: number): boolean {
  let isInside = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [ax, ay, bx, by] = [ring[i], ring[i + 1], ring[j], ring[j + 1]] as [number, number, number, number];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) {
      isInside = !isInside;
    }
  }
  return isInside;
}
