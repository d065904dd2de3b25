import { fibreVector } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
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

/** Numbers of an element, and elements of a chunk. */
const STRIDE = 8;
const CHUNK = 4096;

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
  /** Of each element, {@link STRIDE} numbers: point, normal, area, exposure, and 1 for a floor. There are millions, and one list of them would be moved as it grows. */
  readonly #chunks: Float64Array[] = [];
  #count = 0;

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
    const count = this.#count;
    const points = new Float64Array(2 * count);
    const normals = new Float64Array(3 * count);
    const areasMm2 = new Float64Array(count);
    const exposures = new Float64Array(count);
    const isFloor = new Uint8Array(count);
    let areaMm2 = 0;
    let exposedMm2 = 0;
    for (let k = 0; k < count; k++) {
      pollStep();
      const chunk = this.#chunks[Math.floor(k / CHUNK)];
      const at = STRIDE * (k % CHUNK);
      points[2 * k] = chunk[at];
      points[2 * k + 1] = chunk[at + 1];
      normals[3 * k] = chunk[at + 2];
      normals[3 * k + 1] = chunk[at + 3];
      normals[3 * k + 2] = chunk[at + 4];
      areasMm2[k] = chunk[at + 5];
      exposures[k] = chunk[at + 6];
      isFloor[k] = chunk[at + 7];
      areaMm2 += areasMm2[k];
      exposedMm2 += areasMm2[k] * exposures[k];
    }
    return { count, points, normals, areasMm2, exposures, isFloor, areaMm2, exposedMm2 };
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
      const place = this.#count++ % CHUNK;
      if (place === 0) {
        this.#chunks.push(new Float64Array(STRIDE * CHUNK));
      }
      const chunk = this.#chunks[this.#chunks.length - 1];
      const at = STRIDE * place;
      chunk[at] = x;
      chunk[at + 1] = y;
      chunk[at + 2] = nx * Math.cos(leanRad);
      chunk[at + 3] = ny * Math.cos(leanRad);
      chunk[at + 4] = -Math.sin(leanRad);
      chunk[at + 5] = areaMm2;
      chunk[at + 6] = exposedMm2 / areaMm2;
      chunk[at + 7] = isFloor ? 1 : 0;
    }
  }
}
