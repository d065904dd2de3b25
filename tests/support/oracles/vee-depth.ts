/** Depth in mm at which a V with a true point stands where the distance to the artwork's edge is `clearanceMm`: its flanks touch the edge. */
export function veeDepth(
  clearanceMm: number,
  { includedRad, depthMm }: { readonly includedRad: number; readonly depthMm: number },
): number {
  return Math.min(depthMm, Math.max(0, clearanceMm) / Math.tan(includedRad / 2));
}
