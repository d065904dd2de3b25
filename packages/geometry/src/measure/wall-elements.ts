import { type Rings, ringStart } from '@pourproof/plane';
import { fibreVector } from './fibre-vector.ts';

/** Where the walls of a cut stand and how the fibre runs. */
export interface WallSetting {
  /** Depth of the walls, 0 or more. */
  readonly depthMm: number;
  /** Azimuth of the fibre, see {@link fibreVector}. */
  readonly grainRad: number;
  /** Angle at which the fibre leaves the face towards its azimuth, −π/2 to π/2; π/2 is an end-grain board. Default 0. */
  readonly diveRad?: number;
  /** How far walls lean back from upright, 0 to below π/2: half the included angle of a V cutter. Default 0. */
  readonly leanRad?: number;
}

/** Walls of a cut as flat pieces, one for each edge of the outline, in the order of its points. */
export interface WallElements {
  /** Unit normals out of the cut into the wood, `[x, y, z, …]`, z up out of the face. */
  readonly normals: Float64Array;
  readonly areasMm2: Float64Array;
  /** Exposure |n·f| of each, 0 (side grain) to 1 (end grain). */
  readonly exposures: Float64Array;
  readonly areaMm2: number;
  /** Sum of area times exposure. */
  readonly exposedMm2: number;
  /** Exposure |f·z| of a level floor. */
  readonly floorExposure: number;
}

/**
 * The walls of a cut in three dimensions with their exposure of end grain, areas in mm².
 *
 * For upright walls areas are exact. For leaning ones each edge carries a strip of its length and of slant height depth / cos(lean):
 * right along straight walls of one depth, without what corners add or take.
 *
 * @throws {RangeError} when the depth is negative or not finite, or an angle is out of its range
 */
export function wallElements(outline: Rings, setting: WallSetting): WallElements {
  const { depthMm, grainRad, diveRad = 0, leanRad = 0 } = setting;
  if (!(depthMm >= 0 && Number.isFinite(depthMm))) {
    throw new RangeError(`depthMm must be a finite depth of 0 or more, not ${depthMm}`);
  }
  if (!(Math.abs(diveRad) <= Math.PI / 2)) {
    throw new RangeError(`diveRad must lie from −π/2 to π/2, not ${diveRad}`);
  }
  if (!(leanRad >= 0 && leanRad < Math.PI / 2)) {
    throw new RangeError(`leanRad must be from 0 to below π/2, not ${leanRad}`);
  }
  const { coords, ringEnds } = outline;
  const count = coords.length / 2;
  const normals = new Float64Array(3 * count);
  const areasMm2 = new Float64Array(count);
  const exposures = new Float64Array(count);
  const [fx, fy] = fibreVector(grainRad);
  const [level, rise] = [Math.cos(diveRad), Math.sin(diveRad)];
  const [upright, sloped] = [Math.cos(leanRad), Math.sin(leanRad)];
  let areaMm2 = 0;
  let exposedMm2 = 0;
  for (let k = 0; k < ringEnds.length; k++) {
    const from = ringStart(outline, k);
    for (let i = from; i < ringEnds[k]; i++) {
      const j = i + 1 === ringEnds[k] ? from : i + 1;
      const dx = coords[2 * j] - coords[2 * i];
      const dy = coords[2 * j + 1] - coords[2 * i + 1];
      const length = Math.hypot(dx, dy);
      if (length === 0) {
        continue;
      }
      // the inside of an outline lies on the +y side of an edge along +x
      normals[3 * i] = (upright * dy) / length;
      normals[3 * i + 1] = (-upright * dx) / length;
      normals[3 * i + 2] = -sloped;
      areasMm2[i] = (length * depthMm) / upright;
      exposures[i] = Math.abs(
        level * (normals[3 * i] * fx + normals[3 * i + 1] * fy) + rise * normals[3 * i + 2],
      );
      areaMm2 += areasMm2[i];
      exposedMm2 += areasMm2[i] * exposures[i];
    }
  }
  return { normals, areasMm2, exposures, areaMm2, exposedMm2, floorExposure: Math.abs(rise) };
}
