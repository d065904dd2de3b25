import type { Cutter, CutterShape, ProfilePiece } from './cutter.ts';

/** What each of the functions that make cutters takes besides its own sizes. */
export interface CutterLimits {
  /** Length of the cutting edges above the tip, mm: the greatest depth. No limit by default. */
  readonly cuttingLengthMm?: number;
}

/** Sizes of a V cutter. */
export interface VeeSizes extends CutterLimits {
  /** Angle between the flanks, above 0 and below π. */
  readonly includedRad: number;
  /** Largest cutting diameter, mm. */
  readonly diameterMm: number;
  /** Width of a flat tip, mm. 0 by default. */
  readonly tipFlatMm?: number;
  /** Radius of a rounded tip, tangent to the flanks, mm. 0 by default. */
  readonly tipRadiusMm?: number;
}

/** Sizes of a tapered ball cutter. */
export interface TaperedBallSizes extends CutterLimits {
  /** Diameter of the ball at the tip, mm. */
  readonly tipDiameterMm: number;
  /** Angle between a flank and the axis, above 0 and below π/2. */
  readonly sideRad: number;
  /** Largest cutting diameter, mm. */
  readonly diameterMm: number;
}

/**
 * A cutter with a flat bottom and upright sides.
 *
 * @example
 * const cutter = flatCutter(3.175, { cuttingLengthMm: 12 });
 * radiusAt(cutter, 5); // 1.5875
 *
 * @throws {RangeError} when a size is not above 0
 */
export function flatCutter(diameterMm: number, limits: CutterLimits = {}): Cutter {
  checkAbove('diameterMm', diameterMm, 0);
  return madeOf('flat', [line(0, 0, 0, diameterMm / 2)], limits);
}

/**
 * A cutter with a hemispherical tip and upright sides.
 *
 * @throws {RangeError} when a size is not above 0
 */
export function ballCutter(diameterMm: number, limits: CutterLimits = {}): Cutter {
  checkAbove('diameterMm', diameterMm, 0);
  const r = diameterMm / 2;
  return madeOf('ball', [arcAround(r, r, 0, 0, 0, r, r)], limits);
}

/**
 * A cutter with a flat bottom, corner radii and upright sides.
 *
 * @param cornerMm corner radius, above 0 and below half the diameter
 * @throws {RangeError} when a size is out of its range
 */
export function bullNoseCutter(diameterMm: number, cornerMm: number, limits: CutterLimits = {}): Cutter {
  checkAbove('diameterMm', diameterMm, 0);
  checkAbove('cornerMm', cornerMm, 0);
  const r = diameterMm / 2;
  if (!(cornerMm < r)) {
    throw new RangeError(`cornerMm is ${cornerMm}; give less than half the diameter, ${r} mm`);
  }
  const pieces = [
    line(0, 0, 0, r - cornerMm),
    arcAround(cornerMm, cornerMm, r - cornerMm, 0, r - cornerMm, cornerMm, r),
  ];
  return madeOf('bull nose', pieces, limits);
}

/**
 * A V cutter with a pointed, a flat or a rounded tip.
 *
 * @example
 * const cutter = veeCutter({ includedRad: Math.PI / 3, diameterMm: 12.7 });
 * heightAt(cutter, 1); // 1.732…: how deep it goes in the middle of a stroke 2 mm wide
 *
 * @throws {RangeError} when a size is out of its range, or both a flat and a rounded tip are given
 */
export function veeCutter(sizes: VeeSizes): Cutter {
  const { includedRad, tipFlatMm = 0, tipRadiusMm = 0 } = sizes;
  if (!(includedRad > 0 && includedRad < Math.PI)) {
    throw new RangeError(`includedRad is ${includedRad}; give an angle above 0 and below π`);
  }
  if (tipFlatMm !== 0 && tipRadiusMm !== 0) {
    throw new RangeError('give tipFlatMm or tipRadiusMm, not both');
  }
  checkFrom0('tipFlatMm', tipFlatMm);
  checkFrom0('tipRadiusMm', tipRadiusMm);
  if (tipRadiusMm > 0) {
    return madeOf('vee', roundedTip(tipRadiusMm, includedRad / 2, sizes.diameterMm), sizes);
  }
  checkAbove('diameterMm', sizes.diameterMm, tipFlatMm);
  const [t, r] = [tipFlatMm / 2, sizes.diameterMm / 2];
  const flank = line(0, t, (r - t) / Math.tan(includedRad / 2), r);
  return madeOf('vee', t > 0 ? [line(0, 0, 0, t), flank] : [flank], sizes);
}

/**
 * A cutter with a ball tip and straight flanks tangent to the ball.
 *
 * @throws {RangeError} when a size is out of its range
 */
export function taperedBallCutter(sizes: TaperedBallSizes): Cutter {
  const { tipDiameterMm, sideRad } = sizes;
  checkAbove('tipDiameterMm', tipDiameterMm, 0);
  if (!(sideRad > 0 && sideRad < Math.PI / 2)) {
    throw new RangeError(`sideRad is ${sideRad}; give an angle above 0 and below π/2`);
  }
  return madeOf('tapered ball', roundedTip(tipDiameterMm / 2, sideRad, sizes.diameterMm), sizes);
}

/**
 * A cutter whose profile is given as points joined by straight lines.
 *
 * @param points height above the tip and radius there, mm; the first at height 0; neither may decrease
 * @throws {RangeError} when there are fewer than two points, the first is not at height 0, or heights or
 * radii decrease
 */
export function profileCutter(
  points: readonly (readonly [heightMm: number, radiusMm: number])[],
  limits: CutterLimits = {},
): Cutter {
  if (points.length < 2) {
    throw new RangeError(
      'the profile has fewer than two points; give height and radius at the tip and above it',
    );
  }
  const [first] = points;
  if (first[0] !== 0 || !(first[1] >= 0 && Number.isFinite(first[1]))) {
    throw new RangeError('the profile must start at height 0 with a radius of 0 or more');
  }
  const pieces: ProfilePiece[] = first[1] > 0 ? [line(0, 0, 0, first[1])] : [];
  points.slice(1).forEach(([height, radius], k) => {
    const [below, narrower] = points[k];
    if (!(height >= below && radius >= narrower && Number.isFinite(height) && Number.isFinite(radius))) {
      throw new RangeError(`the profile falls after point ${k}; heights and radii must rise or stay`);
    }
    if (height > below || radius > narrower) {
      pieces.push(line(below, narrower, height, radius));
    }
  });
  checkAbove('the largest radius', points[points.length - 1][1], 0);
  return madeOf('profile', pieces, limits);
}

function roundedTip(ball: number, side: number, diameterMm: number): ProfilePiece[] {
  const [touchHeight, touchRadius] = [ball * (1 - Math.sin(side)), ball * Math.cos(side)];
  if (!(diameterMm / 2 > touchRadius && Number.isFinite(diameterMm))) {
    throw new RangeError(
      `diameterMm is ${diameterMm}; give more than where the flanks leave the tip, ${2 * touchRadius} mm`,
    );
  }
  const top = touchHeight + (diameterMm / 2 - touchRadius) / Math.tan(side);
  return [
    arcAround(ball, ball, 0, 0, 0, touchHeight, touchRadius),
    line(touchHeight, touchRadius, top, diameterMm / 2),
  ];
}

function madeOf(shape: CutterShape, pieces: readonly ProfilePiece[], limits: CutterLimits): Cutter {
  const { cuttingLengthMm = Infinity } = limits;
  if (!(cuttingLengthMm > 0)) {
    throw new RangeError(`cuttingLengthMm is ${cuttingLengthMm}; give a number of millimetres above 0`);
  }
  return { shape, pieces, diameterMm: 2 * pieces[pieces.length - 1].toRadiusMm, cuttingLengthMm };
}

function line(
  fromHeightMm: number,
  fromRadiusMm: number,
  toHeightMm: number,
  toRadiusMm: number,
): ProfilePiece {
  return { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm };
}

function arcAround(
  radiusMm: number,
  centreHeightMm: number,
  centreRadiusMm: number,
  ...[fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm]: [number, number, number, number]
): ProfilePiece {
  return {
    ...line(fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm),
    arc: { radiusMm, centreHeightMm, centreRadiusMm },
  };
}

function checkAbove(name: string, value: number, least: number): void {
  if (!(value > least && Number.isFinite(value))) {
    throw new RangeError(`${name} is ${value}; give a number of millimetres above ${least}`);
  }
}

function checkFrom0(name: string, value: number): void {
  if (!(value >= 0 && Number.isFinite(value))) {
    throw new RangeError(`${name} is ${value}; give a number of millimetres, 0 or more`);
  }
}
