/** The tip of a V-shaped cutter. */
export interface Tip {
  /** Angle between both flanks, radians, above 0 and below π. */
  readonly includedRad: number;
  /** Radius of the rounded tip, into which the flanks run smoothly; mm, 0 for a true point. */
  readonly tipRadiusMm: number;
}

/** Depth in mm at which the cutter is as wide at the face as a disc of radius `clearanceMm`; 0 for 0. */
export function tipDepth({ includedRad, tipRadiusMm: rho }: Tip, clearanceMm: number): number {
  const half = includedRad / 2;
  const joint = rho * Math.cos(half);
  if (clearanceMm < joint) {
    // the height of a circle's cap over half its chord, in the form that keeps the digits of small caps
    return clearanceMm ** 2 / (rho + Math.sqrt((rho - clearanceMm) * (rho + clearanceMm)));
  }
  return rho * (1 - Math.sin(half)) + (clearanceMm - joint) / Math.tan(half);
}

/** Half the width in mm that the cutter has at the face when its tip is `depthMm` below; infinity for an infinite depth. */
export function widthAtDepth({ includedRad, tipRadiusMm: rho }: Tip, depthMm: number): number {
  const half = includedRad / 2;
  const jointDepth = rho * (1 - Math.sin(half));
  if (depthMm < jointDepth) {
    return Math.sqrt(depthMm * (2 * rho - depthMm));
  }
  return rho * Math.cos(half) + (depthMm - jointDepth) * Math.tan(half);
}

/** How fast the depth grows with the clearance, mm per mm. */
export function tipSlope({ includedRad, tipRadiusMm: rho }: Tip, clearanceMm: number): number {
  const half = includedRad / 2;
  if (clearanceMm < rho * Math.cos(half)) {
    return clearanceMm / Math.sqrt((rho - clearanceMm) * (rho + clearanceMm));
  }
  return 1 / Math.tan(half);
}
