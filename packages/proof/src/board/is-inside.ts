import { type Rings, ringStart } from '@pourproof/plane';

/** Whether a point lies within rings that do not cross, as those of a clean region do: a ray from it to the right crosses the outline an odd number of times. */
export function isInside(region: Rings, x: number, y: number): boolean {
  let isIn = false;
  const { coords } = region;
  for (let k = 0; k < region.ringEnds.length; k++) {
    const start = ringStart(region, k);
    const end = region.ringEnds[k] as number;
    for (let i = start, j = end - 1; i < end; j = i++) {
      const yi = coords[2 * i + 1] as number;
      const yj = coords[2 * j + 1] as number;
      if (yi > y !== yj > y) {
        const xi = coords[2 * i] as number;
        const xj = coords[2 * j] as number;
        if (x < xi + ((y - yi) / (yj - yi)) * (xj - xi)) {
          isIn = !isIn;
        }
      }
    }
  }
  return isIn;
}
