import { radians } from '@pourproof/plane';

/** What clear seal takes of a stroke's cross-section. */
export interface ClearFill {
  /** Share of the cross-section that is clear, 0 to 1. */
  readonly clearShare: number;
  /** Depth in mm of clear film on the floor in the worst case, when all of it drains down; at most the depth of the cut. */
  readonly pooledMm: number;
  /** Depth in mm left for colour above the drained film. */
  readonly colourDepthMm: number;
  /** Width in mm left for colour at the face: film that stays on both walls where it does not drain. */
  readonly colourWidthMm: number;
}

/**
 * Clear share of a flat-bottomed stroke with a seal film on two walls and the floor: t (w + 2D) / (w D).
 *
 * @param widthMm stroke width, above 0
 * @param depthMm depth of cut, above 0
 * @param filmMm thickness of the seal film on every surface, from 0
 * @throws {RangeError} when width or depth are not above 0, or the film is negative
 */
export function flatClearFill(widthMm: number, depthMm: number, filmMm: number): ClearFill {
  checkSizes({ widthMm, depthMm }, filmMm);
  const pooledMm = Math.min(depthMm, (filmMm * (widthMm + 2 * depthMm)) / widthMm);
  return {
    clearShare: pooledMm / depthMm,
    pooledMm,
    colourDepthMm: depthMm - pooledMm,
    colourWidthMm: Math.max(0, widthMm - 2 * filmMm),
  };
}

/**
 * Clear share of a V stroke: the film of both walls, drained to the bottom, pools to √(t w / (sin(A/2) tan(A/2))).
 *
 * Wholly clear below a width of 4 t / cos(A/2), see {@link veeGhostWidthMm}.
 * @param angleDeg included angle of the V, above 0 and below 180
 * @throws {RangeError} when the width is not above 0, the angle is out of range or the film is negative
 */
export function veeClearFill(widthMm: number, angleDeg: number, filmMm: number): ClearFill {
  checkSizes({ widthMm }, filmMm);
  const half = halfAngle(angleDeg);
  const depthMm = widthMm / (2 * Math.tan(half));
  const film = (filmMm * widthMm) / (Math.sin(half) * Math.tan(half));
  const pooledMm = Math.min(depthMm, Math.sqrt(film));
  return {
    clearShare: (pooledMm / depthMm) ** 2,
    pooledMm,
    colourDepthMm: depthMm - pooledMm,
    colourWidthMm: Math.max(0, widthMm - (2 * filmMm) / Math.cos(half)),
  };
}

/** Width in mm below which a V stroke fills with clear seal alone: 4 t / cos(A/2). */
export function veeGhostWidthMm(angleDeg: number, filmMm: number): number {
  return (4 * filmMm) / Math.cos(halfAngle(angleDeg));
}

/**
 * Width in mm below which a flat-bottomed stroke of this depth fills with clear seal alone when the film drains:
 * 2 t D / (D − t); infinite where the film is as thick as the cut is deep.
 */
export function flatGhostWidthMm(depthMm: number, filmMm: number): number {
  return filmMm < depthMm ? (2 * filmMm * depthMm) / (depthMm - filmMm) : Number.POSITIVE_INFINITY;
}

function halfAngle(angleDeg: number): number {
  if (!(angleDeg > 0 && angleDeg < 180)) {
    throw new RangeError(`angleDeg is ${angleDeg}; it must be above 0 and below 180.`);
  }
  return radians(angleDeg) / 2;
}

function checkSizes(sizes: Readonly<Record<string, number>>, filmMm: number): void {
  for (const [name, value] of Object.entries(sizes)) {
    if (!(value > 0)) {
      throw new RangeError(`${name} is ${value}; it must be above 0.`);
    }
  }
  if (!(filmMm >= 0)) {
    throw new RangeError(`filmMm is ${filmMm}; it must be 0 or more.`);
  }
}
