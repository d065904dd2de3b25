/** The tip of a V-shaped cutter: a point, a flat or a ball. */
export interface Tip {
  /** Angle between both flanks, radians, above 0 and below π. */
  readonly includedRad: number;
  /** Radius of the rounded tip, into which the flanks run smoothly; mm, 0 for none. */
  readonly tipRadiusMm: number;
  /** Width of the flat tip, mm, 0 for none. Not together with a rounded one. */
  readonly tipFlatMm: number;
}

/**
 * Depth in mm at which the cutter is as wide at the face as a disc of radius `clearanceMm`; 0 where a flat
 * tip does not fit.
 */
export function tipDepth(tip: Tip, clearanceMm: number): number {
  const { includedRad, tipRadiusMm: rho, tipFlatMm } = tip;
  const half = includedRad / 2;
  const joint = rho * Math.cos(half);
  if (clearanceMm < joint) {
    // the height of a circle's cap over half its chord, in the form that keeps the digits of small caps
    return clearanceMm ** 2 / (rho + Math.sqrt((rho - clearanceMm) * (rho + clearanceMm)));
  }
  return rho * (1 - Math.sin(half)) + Math.max(0, clearanceMm - joint - tipFlatMm / 2) / Math.tan(half);
}

/**
 * Half the width in mm that the cutter has at the face when its tip is `depthMm` below; infinity for an
 * infinite depth.
 */
export function widthAtDepth(tip: Tip, depthMm: number): number {
  const { includedRad, tipRadiusMm: rho, tipFlatMm } = tip;
  const half = includedRad / 2;
  const jointDepth = rho * (1 - Math.sin(half));
  if (depthMm < jointDepth) {
    return Math.sqrt(depthMm * (2 * rho - depthMm));
  }
  return rho * Math.cos(half) + tipFlatMm / 2 + (depthMm - jointDepth) * Math.tan(half);
}

/** How fast the depth grows with the clearance where the tip fits, mm per mm. */
export function tipSlope({ includedRad, tipRadiusMm: rho }: Tip, clearanceMm: number): number {
  const half = includedRad / 2;
  if (clearanceMm < rho * Math.cos(half)) {
    return clearanceMm / Math.sqrt((rho - clearanceMm) * (rho + clearanceMm));
  }
  return 1 / Math.tan(half);
}
