import type { StandingPiece } from '@pourproof/geometry';
import { limits } from '@pourproof/materials';
import type { Measured } from '../measured.ts';
import type { Severity } from '../report/finding-schema.ts';

/** An end of the artwork that the bits do not cut. */
export interface Loss {
  readonly piece: StandingPiece;
  readonly severity: Severity;
  /** How far short the cut ends, and the length that this exceeds, mm. */
  readonly shortMm: number;
  readonly limitMm: number;
}

/** Everything that a bit leaves and that an eye sees, at the size of the artwork. */
export interface Losses {
  /** Strokes, dots and other parts that are lost: each is a stop. */
  readonly lost: readonly StandingPiece[];
  /** Tips, corners and waists whose cut ends short. */
  readonly ends: readonly Loss[];
}

/**
 * Pieces smaller than this are left out, in mm²: flattening alone can leave them where a stroke is as wide as
 * the bit.
 */
const MIN_PIECE_MM2 = 0.01;
/** Lengths that exceed a limit by less are at it: rounding. */
const ROUNDING_MM = 1e-6;

/** What the bits of a job leave of the artwork, graded by its size. */
export function lossesOf({ standing, job, cutArea }: Measured): Losses {
  return graded(standing, { toleranceMm: job.toleranceMm, isAllLost: cutArea === 0 });
}

/** What pieces are graded by. */
interface Grading {
  readonly toleranceMm: number;
  /** Whether nothing at all is cut: then the smallest speck is why. */
  readonly isAllLost: boolean;
  /** How much larger the artwork is than the pieces; 1 if left out. */
  readonly factor?: number;
}

/** What is left of an artwork or a part of it, graded by its size. */
export function graded(
  pieces: readonly StandingPiece[],
  { toleranceMm, isAllLost, factor = 1 }: Grading,
): Losses {
  const lost: StandingPiece[] = [];
  const ends: Loss[] = [];
  for (const piece of pieces) {
    const isTold = piece.kind === 'part' && isAllLost;
    if (!isTold && isRounding(piece, toleranceMm, factor)) {
      continue;
    }
    if (piece.kind === 'part' || (piece.kind === 'stroke' && isSeen(piece, factor))) {
      lost.push(piece);
    } else {
      ends.push(...(piece.kind === 'stroke' ? closedWaist(piece, factor) : endLoss(piece, factor)));
    }
  }
  return { lost, ends };
}

function isRounding({ areaMm2, lengthMm }: StandingPiece, toleranceMm: number, factor: number): boolean {
  return areaMm2 * factor ** 2 <= Math.max(MIN_PIECE_MM2, 2 * toleranceMm * lengthMm * factor);
}

/** Whether a lost stroke is seen: an arm by how far it reaches beyond the bit, what leads from one part to another by its length. */
function isSeen({ mouths, shortMm, lengthMm }: StandingPiece, factor: number): boolean {
  return (mouths > 1 ? lengthMm : (shortMm ?? 0)) * factor >= limits.endSeen.value;
}

/** A waist that closes over a length too short to be seen: the bit comes from both sides and keeps half of the width off each wall. */
function closedWaist(piece: StandingPiece, factor: number): readonly Loss[] {
  const widthMm = (piece.mouths > 1 ? (piece.narrowestMm ?? 0) : 0) * factor;
  return widthMm / 2 < limits.endSeen.value
    ? []
    : [
        {
          piece,
          severity: 'caution',
          shortMm: widthMm / 2,
          limitMm: limits.endToWidth.value * widthMm,
        },
      ];
}

/** An end that is seen to be short. A rounded corner, as every round bit leaves, is not told before it shows as such. */
function endLoss(piece: StandingPiece, factor: number): readonly Loss[] {
  const { kind, shortMm, branch } = piece;
  const short = (shortMm ?? 0) * factor;
  const loss = { piece, shortMm: short };
  if (short < limits.endSeen.value || branch === null) {
    return [];
  }
  const exceeds = (limitMm: number): boolean => short > limitMm + ROUNDING_MM;
  const whole = limits.tipToReach.value * (kind === 'cusp' ? branch.widthMm : branch.reachMm) * factor;
  if (kind !== 'corner' && exceeds(whole)) {
    return [{ ...loss, severity: 'stop', limitMm: whole }];
  }
  const seen = Math.min(
    (kind === 'tip' ? limits.tipShort : limits.cornerShort).value,
    limits.endToWidth.value * branch.widthMm * factor,
  );
  if (exceeds(seen)) {
    return [{ ...loss, severity: 'caution', limitMm: seen }];
  }
  return kind === 'tip' ? [{ ...loss, severity: 'note', limitMm: limits.endSeen.value }] : [];
}
