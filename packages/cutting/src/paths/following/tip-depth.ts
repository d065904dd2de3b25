/** The tip of a V cutter: a point, a flat or a ball. */
export interface Tip {
  /** Angle between both flanks, radians, above 0 and below π. */
  readonly includedRad: number;
  /** Radius of a rounded tip, tangent to the flanks, mm; 0 for none. */
  readonly tipRadiusMm: number;
  /** Width of a flat tip, mm; 0 for none. Not together with a rounded one. */
  readonly tipFlatMm: number;
}

/**
 * Depth of the tip at which the cutter's radius at the face is `clearanceMm`, mm; 0 where a flat tip does not
 * fit.
 */
export function tipDepth(tip: Tip, clearanceMm: number): number {
  const { includedRad, tipRadiusMm: rho, tipFlatMm } = tip;
  const half = includedRad / 2;
  const joint = rho * Math.cos(half);
  if (clearanceMm < joint) {
    // height of a circle's cap from half its chord, in the form that keeps the digits of small caps
    return clearanceMm ** 2 / (rho + Math.sqrt((rho - clearanceMm) * (rho + clearanceMm)));
  }
  return rho * (1 - Math.sin(half)) + Math.max(0, clearanceMm - joint - tipFlatMm / 2) / Math.tan(half);
}

/** Radius of the cutter at the face when its tip is `depthMm` below, mm; Infinity for an infinite depth. */
export function radiusAtDepth(tip: Tip, depthMm: number): number {
  const { includedRad, tipRadiusMm: rho, tipFlatMm } = tip;
  const half = includedRad / 2;
  const jointDepth = rho * (1 - Math.sin(half));
  if (depthMm < jointDepth) {
    return Math.sqrt(depthMm * (2 * rho - depthMm));
  }
  return rho * Math.cos(half) + tipFlatMm / 2 + (depthMm - jointDepth) * Math.tan(half);
}

/** Depth gained per mm of clearance where the tip fits. */
export function tipSlope({ includedRad, tipRadiusMm: rho }: Tip, clearanceMm: number): number {
  const half = includedRad / 2;
  if (clearanceMm < rho * Math.cos(half)) {
    return clearanceMm / Math.sqrt((rho - clearanceMm) * (rho + clearanceMm));
  }
  return 1 / Math.tan(half);
}
