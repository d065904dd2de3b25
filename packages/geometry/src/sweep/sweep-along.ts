import { arrange, cleanRegionFrom, labelSides } from '@pourproof/arrangement';
import {
  type CleanRegion,
  packRings,
  pollStep,
  type Rings,
  ringCoords,
  ringStart,
  signedArea,
} from '@pourproof/plane';
import { fibreVector } from '../measure/fibre-vector.ts';
import { checkLength } from './wood-along.ts';

/** The wood beside a cut within a given length of it along the fibre. */
export interface SweptBand {
  readonly region: CleanRegion;
  readonly areaMm2: number;
}

/**
 * The region, in mm, that a cut covers when moved along the fibre by up to a given length to either side,
 * less the cut itself: its Minkowski sum with a segment.
 *
 * Its area is `lengthMm · endGrainLength` where the bands of different walls neither overlap nor reach
 * another part of the cut, and less elsewhere.
 *
 * @example
 * const bar = resolveRegions([{ ...packRings([[0, 0, 40, 0, 40, 5, 0, 5]]), fillRule: 'nonzero' }]).region;
 * sweepAlong(bar, 0, 2).areaMm2; // 20
 *
 * @param grainRad azimuth of the fibre, see {@link fibreVector}
 * @param lengthMm length to each side, mm, 0 or more; 0 gives the empty region
 * @throws {RangeError} when the length is negative or not finite
 */
export function sweepAlong(region: CleanRegion, grainRad: number, lengthMm: number): SweptBand {
  checkLength(lengthMm);
  const [fx, fy] = fibreVector(grainRad);
  const bands = wallBands(region, fx * lengthMm, fy * lengthMm);
  const cutRings = Array.from(region.ringEnds, (_, k) => ringCoords(region, k));
  const rings = packRings([...bands, ...cutRings]);
  const bandPoints = bands.reduce((n, band) => n + band.length / 2, 0);
  const shapeOfEdge = new Uint32Array(rings.coords.length / 2).fill(1, bandPoints);
  const arrangement = arrange(rings, shapeOfEdge, () => () => undefined);
  const sides = labelSides(arrangement, {
    shapeOfEdge,
    fillRules: ['nonzero', 'nonzero'],
    groupOfShape: Uint8Array.of(0, 1),
    keeps: [false, true, false, false],
  });
  const swept = cleanRegionFrom(arrangement, sides).region;
  return { region: swept, areaMm2: signedArea(swept) };
}

/**
 * One polygon for each maximal stretch of boundary that faces one way along the fibre: the stretch and its
 * copy moved away from the cut. A stretch is monotone across the fibre, so its polygon is simple, and all
 * polygons run the same way.
 */
function wallBands(region: Rings, dx: number, dy: number): number[][] {
  const bands: number[][] = [];
  const { coords } = region;
  for (let k = 0; k < region.ringEnds.length; k++) {
    const from = ringStart(region, k);
    const n = region.ringEnds[k] - from;
    const facing = new Int8Array(n);
    for (let i = 0; i < n; i++) {
      pollStep();
      const a = 2 * (from + i);
      const b = 2 * (from + ((i + 1) % n));
      // the outward normal of an edge (ex, ey) with the inside on its +y side is (ey, −ex)
      facing[i] = Math.sign((coords[b + 1] - coords[a + 1]) * dx - (coords[b] - coords[a]) * dy);
    }
    let start = 0;
    while (start < n && facing[start] === facing[(start + n - 1) % n]) {
      start++;
    }
    for (let step = 0; step < n; ) {
      pollStep();
      const sign = facing[(start + step) % n];
      let end = step;
      while (end < n && facing[(start + end) % n] === sign) {
        end++;
      }
      if (sign !== 0) {
        bands.push(bandOf(coords, from, n, start + step, start + end, sign * dx, sign * dy));
      }
      step = end;
    }
  }
  return bands;
}

function bandOf(
  coords: Float64Array,
  from: number,
  n: number,
  start: number,
  end: number,
  dx: number,
  dy: number,
): number[] {
  const band: number[] = [];
  for (let i = end; i >= start; i--) {
    const at = 2 * (from + (i % n));
    band.push(coords[at], coords[at + 1]);
  }
  for (let i = start; i <= end; i++) {
    const at = 2 * (from + (i % n));
    band.push(coords[at] + dx, coords[at + 1] + dy);
  }
  return band;
}
