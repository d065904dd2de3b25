/**
 * A length in mm with at most three digits behind the point: inches turned into millimetres have many more.
 */
export function roundedMm(mm: number | undefined): number {
  return Number((mm ?? 0).toFixed(3));
}
