import { fibreVector } from '@pourproof/geometry';
import { absCosineIntegral } from '../integrals/abs-cosine-integral.ts';

/** Fibre direction. */
export interface FibreSetting {
  /** Azimuth of the fibre, counter-clockwise from the artwork's x axis as seen on the face. */
  readonly grainRad: number;
  /**
   * Slope of grain: angle of the fibre out of the face, −π/2 … π/2; π/2 is an end-grain board. 0 by default.
   */
  readonly diveRad?: number;
}

/** Surfaces of a cut as elements: plane, part of an upright cylinder, or part of a cone. */
export interface CarvedWalls {
  readonly count: number;
  /** A point of the face above each element, `[x, y, …]`, absolute. */
  readonly points: Float64Array;
  /**
   * Unit normals into the wood, `[x, y, z, …]`, z up out of the face; the middle one of a turning element.
   */
  readonly normals: Float64Array;
  /** Area of each along its slope. */
  readonly areasMm2: Float64Array;
  /** Mean exposure |n·f| of each, 0 (side grain) to 1 (end grain): area times this is ∫E dA. */
  readonly exposures: Float64Array;
  /** 1 for a level floor. */
  readonly isFloor: Uint8Array;
  readonly areaMm2: number;
  /** ∫E dA over all elements. */
  readonly exposedMm2: number;
}

/**
 * Collects elements and their exposures. Directions (nx, ny) are horizontal unit vectors into the wood; lean
 * is the angle of the wall from the vertical.
 */
export class WallCollector {
  readonly #fx: number;
  readonly #fy: number;
  /** Horizontal and vertical part of the fibre. */
  readonly #level: number;
  readonly #rise: number;
  readonly #points: number[] = [];
  readonly #normals: number[] = [];
  readonly #areas: number[] = [];
  readonly #exposures: number[] = [];
  readonly #isFloor: number[] = [];

  /** @throws {RangeError} when the dive is out of its range */
  constructor({ grainRad, diveRad = 0 }: FibreSetting) {
    if (!(Math.abs(diveRad) <= Math.PI / 2) || !Number.isFinite(grainRad)) {
      throw new RangeError(
        `diveRad must lie from −π/2 to π/2, not ${diveRad}, and grainRad be finite, not ${grainRad}`,
      );
    }
    [this.#fx, this.#fy] = fibreVector(grainRad);
    this.#level = Math.cos(diveRad);
    this.#rise = Math.sin(diveRad);
  }

  /** Exposure |n·f| of a surface. */
  exposure(nx: number, ny: number, leanRad: number): number {
    return Math.abs(this.along(nx, ny, leanRad));
  }

  /** Dot product of a vector, z up out of the face, with the fibre. */
  dot(x: number, y: number, z: number): number {
    return this.#level * (x * this.#fx + y * this.#fy) + this.#rise * z;
  }

  /** n·f of a surface. */
  along(nx: number, ny: number, leanRad: number): number {
    const cos = Math.cos(leanRad);
    return this.dot(nx * cos, ny * cos, -Math.sin(leanRad));
  }

  flat(x: number, y: number, nx: number, ny: number, leanRad: number, areaMm2: number): void {
    this.#add(x, y, nx, ny, leanRad, areaMm2, areaMm2 * this.exposure(nx, ny, leanRad), false);
  }

  floor(x: number, y: number, areaMm2: number): void {
    this.#add(x, y, 0, 0, Math.PI / 2, areaMm2, areaMm2 * Math.abs(this.#rise), true);
  }

  /**
   * Adds an element whose horizontal direction turns evenly over `areaMm2`, from one angle to a larger one;
   * angles from +x towards +y.
   */
  turning(x: number, y: number, fromRad: number, toRad: number, leanRad: number, areaMm2: number): void {
    const middle = (fromRad + toRad) / 2;
    const fibre = Math.atan2(this.#fy, this.#fx);
    const a = this.#level * Math.cos(leanRad);
    const b = -this.#rise * Math.sin(leanRad);
    // two arcs that meet may leave an element whose turn is lost to rounding: its mean is its value
    const mean =
      toRad > fromRad
        ? absCosineIntegral(a, b, fromRad - fibre, toRad - fibre) / (toRad - fromRad)
        : this.exposure(Math.cos(middle), Math.sin(middle), leanRad);
    this.#add(x, y, Math.cos(middle), Math.sin(middle), leanRad, areaMm2, areaMm2 * mean, false);
  }

  /** Adds an element whose ∫E dA is known. */
  known(
    x: number,
    y: number,
    nx: number,
    ny: number,
    leanRad: number,
    areaMm2: number,
    exposedMm2: number,
  ): void {
    this.#add(x, y, nx, ny, leanRad, areaMm2, exposedMm2, false);
  }

  collected(): CarvedWalls {
    const areasMm2 = Float64Array.from(this.#areas);
    const exposures = Float64Array.from(this.#exposures);
    return {
      count: areasMm2.length,
      points: Float64Array.from(this.#points),
      normals: Float64Array.from(this.#normals),
      areasMm2,
      exposures,
      isFloor: Uint8Array.from(this.#isFloor),
      areaMm2: areasMm2.reduce((sum, area) => sum + area, 0),
      exposedMm2: areasMm2.reduce((sum, area, k) => sum + area * exposures[k], 0),
    };
  }

  #add(
    x: number,
    y: number,
    nx: number,
    ny: number,
    leanRad: number,
    areaMm2: number,
    exposedMm2: number,
    isFloor: boolean,
  ): void {
    if (areaMm2 > 0) {
      this.#points.push(x, y);
      this.#normals.push(nx * Math.cos(leanRad), ny * Math.cos(leanRad), -Math.sin(leanRad));
      this.#areas.push(areaMm2);
      this.#exposures.push(exposedMm2 / areaMm2);
      this.#isFloor.push(isFloor ? 1 : 0);
    }
  }
}
