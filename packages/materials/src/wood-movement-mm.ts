/**
 * Change of a board's width in mm with its moisture: width × coefficient × change, positive when it swells.
 *
 * Valid between 6 and 14 % moisture; boards differ by about a tenth.
 * @param coefficientPerPct change per unit width and percent of moisture, see `Movement`
 * @see handbook-movement-table
 */
export function woodMovementMm(
  widthMm: number,
  coefficientPerPct: number,
  moistureChangePct: number,
): number {
  return widthMm * coefficientPerPct * moistureChangePct;
}
