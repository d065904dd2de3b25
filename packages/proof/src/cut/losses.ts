import { leftStanding, type StandingPiece } from '@pourproof/geometry';
import { limits } from '@pourproof/materials';
import type { Measured } from '../measured.ts';
import type { Severity } from '../report/finding-schema.ts';
import { fits } from './bits-that-fit.ts';

/** Part of the artwork that the bits do not cut: lost as a whole, or an end of it. */
export interface Loss {
  readonly piece: StandingPiece;
  readonly severity: Severity;
  /** Of an end, the length that it loses more than, mm. */
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

/**
 * What a flat bit leaves of the artwork, graded by its size.
 *
 * @param factor of the artwork's size
 */
export function lossesOf(measured: Measured, diameterMm: number, factor = 1): Losses {
  const { axis, job, bitMm, standing } = measured;
  // scaling the artwork up is the same as scaling the bit down
  const entersMm = (): number => fits(axis, diameterMm / factor, job.toleranceMm / factor);
  const pieces =
    diameterMm === bitMm && factor === 1
      ? standing
      : leftStanding(axis, entersMm() / 2, job.toleranceMm / factor).pieces;
  const lost: StandingPiece[] = [];
  const ends: Loss[] = [];
  for (const piece of pieces) {
    if (isRounding(piece, job.toleranceMm, factor)) {
      continue;
    }
    if (piece.kind === 'part' || piece.kind === 'stroke') {
      if (lostMm(piece) * factor >= limits.endSeen.value) {
        lost.push(piece);
      }
    } else {
      ends.push(...endLoss(piece, factor));
    }
  }
  return { lost, ends };
}

function isRounding({ areaMm2, lengthMm }: StandingPiece, toleranceMm: number, factor: number): boolean {
  return areaMm2 * factor ** 2 <= Math.max(MIN_PIECE_MM2, 2 * toleranceMm * lengthMm * factor);
}

/** Size of a part that is lost: of a waist its width, since nothing leads through it. */
function lostMm({ kind, mouths, shortMm, lengthMm, widestMm }: StandingPiece): number {
  if (kind === 'part') {
    return Math.max(lengthMm, widestMm);
  }
  return Math.max(shortMm ?? 0, mouths > 1 ? widestMm : 0);
}

/** An end that is seen to be short. A rounded corner, as every round bit leaves, is not told before it shows as such. */
function endLoss(piece: StandingPiece, factor: number): readonly Loss[] {
  const { kind, shortMm, branch } = piece;
  const short = (shortMm ?? 0) * factor;
  if (short < limits.endSeen.value || branch === null) {
    return [];
  }
  const exceeds = (limitMm: number): boolean => short > limitMm + ROUNDING_MM;
  const whole = limits.tipToReach.value * (kind === 'cusp' ? branch.widthMm : branch.reachMm) * factor;
  if (kind !== 'corner' && exceeds(whole)) {
    return [{ piece, severity: 'stop', limitMm: whole }];
  }
  const seen = Math.min(
    (kind === 'tip' ? limits.tipShort : limits.cornerShort).value,
    limits.endToWidth.value * branch.widthMm * factor,
  );
  if (exceeds(seen)) {
    return [{ piece, severity: 'caution', limitMm: seen }];
  }
  return kind === 'tip' ? [{ piece, severity: 'note', limitMm: limits.endSeen.value }] : [];
}
