import { leftStanding, type StandingPiece } from '@pourproof/geometry';
import type { Measured } from '../measured.ts';

/**
 * Pieces smaller than this are left out, in mm²: what flattening alone can leave where a stroke is as wide as the bit.
 */
const LEAST_PIECE_MM2 = 0.01;

/**
 * Parts of strokes that a flat bit of this diameter can't enter, largest first; corners that any round bit leaves are not among them, nor are
 * steep tips, which lose no more than the bit's diameter.
 */
export function blockedPieces(measured: Measured, diameterMm: number): readonly StandingPiece[] {
  const { axis, job, bitMm, standing } = measured;
  const all = diameterMm === bitMm ? standing : leftStanding(axis, diameterMm / 2, job.toleranceMm).pieces;
  return all
    .filter(
      (piece) =>
        !piece.isCorner && piece.areaMm2 > Math.max(LEAST_PIECE_MM2, 2 * job.toleranceMm * piece.lengthMm),
    )
    .toSorted((a, b) => b.areaMm2 - a.areaMm2);
}
