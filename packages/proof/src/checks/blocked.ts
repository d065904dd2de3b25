import { leftStanding, type NarrowStretch, type StandingPiece } from '@pourproof/geometry';
import { boundsOf, radians } from '@pourproof/plane';
import type { Measured } from '../measured.ts';

/**
 * Pieces smaller than this are left out, in mm²: what flattening alone can leave where a stroke is as wide as the bit.
 */
const LEAST_PIECE_MM2 = 0.01;
/**
 * A tip that loses no more than this many diameters of the bit is a corner to a maker's eye: every round bit leaves it,
 * and a smaller one only leaves less. Tips sharper than 39° lose more (1/sin 19.5° − 1 = 2 radii). Our choice.
 */
const TIP_DIAMETERS = 1;
/** Width that a tip gains over its length when its sides meet at 39°: 2 sin 19.5°. A serif that thins towards its end gains less. */
const STEEP = 2 * Math.sin(radians(19.5));

/**
 * Parts of strokes that a flat bit of this diameter can't enter, largest first; corners that any round bit leaves are not among them.
 */
export function blockedPieces(measured: Measured, diameterMm: number): readonly StandingPiece[] {
  const { axis, job, bitMm, standing } = measured;
  const all = diameterMm === bitMm ? standing : leftStanding(axis, diameterMm / 2, job.toleranceMm);
  const blocked = all.filter(
    (piece) =>
      !piece.isCorner && piece.areaMm2 > Math.max(LEAST_PIECE_MM2, 2 * job.toleranceMm * piece.lengthMm),
  );
  const short = blocked.filter((piece) => piece.lengthMm <= TIP_DIAMETERS * diameterMm);
  if (short.length === 0) {
    return sorted(blocked);
  }
  const stretches = measured.narrowerThan(diameterMm);
  return sorted(
    blocked.filter((piece) => !short.includes(piece) || !isTip(piece, stretches, job.toleranceMm)),
  );
}

function sorted(pieces: readonly StandingPiece[]): readonly StandingPiece[] {
  return pieces.toSorted((a, b) => b.areaMm2 - a.areaMm2);
}

/** Whether nothing but steep tapers, pointed or blunt, lie in the piece. */
function isTip(piece: StandingPiece, stretches: readonly NarrowStretch[], slackMm: number): boolean {
  const [minX, minY, maxX, maxY] = boundsOf(piece.outline.coords);
  const inside = stretches.filter(
    ({ atMm: [x, y] }) =>
      x >= minX - slackMm && x <= maxX + slackMm && y >= minY - slackMm && y <= maxY + slackMm,
  );
  return inside.length > 0 && inside.every(isSteep);
}

function isSteep({ kind, widths, narrowestMm, lengthMm }: NarrowStretch): boolean {
  return kind === 'taper' && Math.max(...widths) - narrowestMm >= STEEP * lengthMm;
}
