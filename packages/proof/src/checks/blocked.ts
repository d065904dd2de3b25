import { leftStanding, type StandingPiece } from '@pourproof/geometry';
import type { Measured } from '../measured.ts';

/**
 * Pieces smaller than this are left out, in mm²: flattening alone can leave them where a stroke is as wide as
 * the bit.
 */
const MIN_PIECE_MM2 = 0.01;

/**
 * Parts of strokes that a flat bit of this diameter cannot enter, largest first; corners that any round bit
 * leaves are not among them, nor are steep tips, which lose no more than the bit's diameter.
 */
export function blockedPieces(measured: Measured, diameterMm: number): readonly StandingPiece[] {
  const { axis, job, bitMm, standing } = measured;
  const all = diameterMm === bitMm ? standing : leftStanding(axis, diameterMm / 2, job.toleranceMm).pieces;
  return all
    .filter((piece) => countsAsBlocked(piece, job.toleranceMm, 1))
    .toSorted((a, b) => b.areaMm2 - a.areaMm2);
}

/**
 * Whether the smallest bit of the job enters everywhere once the artwork is scaled by `factor`: what is left
 * of a tip grows with it.
 */
export function entersScaled({ axis, job, bitMm }: Measured, factor: number): boolean {
  // scaling the artwork up is the same as scaling the bit down
  const { pieces } = leftStanding(axis, bitMm / factor / 2, job.toleranceMm / factor);
  return !pieces.some((piece) => countsAsBlocked(piece, job.toleranceMm, factor));
}

function countsAsBlocked(
  { isCorner, areaMm2, lengthMm }: StandingPiece,
  toleranceMm: number,
  factor: number,
): boolean {
  return !isCorner && areaMm2 * factor ** 2 > Math.max(MIN_PIECE_MM2, 2 * toleranceMm * lengthMm * factor);
}
