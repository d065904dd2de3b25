import { radiusAt } from '@pourproof/cutting';
import {
  type HardlyNarrower,
  hardlyNarrower,
  leftStanding,
  type MedialAxis,
  type StandingPiece,
} from '@pourproof/geometry';
import type { Bit, Job } from '@pourproof/job';

import { isInside } from '../board/is-inside.ts';
import { cutterOf } from './cutter-of.ts';

/** The bits of a job as they enter a flattened artwork. */
export interface FittedBits {
  readonly bits: readonly Bit[];
  /** What none of them is to enter although it is hardly narrower than the finest of them. */
  readonly tooNarrow: readonly StandingPiece[];
}

/**
 * The bits of a job as they enter a flattened artwork. Curves that become short straight lines waver by the tolerance on either side: a
 * stroke or dot drawn exactly as wide as a bit is narrower here and there, and would be cut in shreds or not at all. Where the artwork has
 * such a one, the bit is taken as narrower by as much; elsewhere bits are as given. Straight walls do not waver: strokes between them that
 * are narrower than the bit, by however little, are told, so that they stay. Beside a V other bits only clear its floor.
 */
export function bitsThatFit(
  axis: MedialAxis,
  { bits, depthMm, toleranceMm }: Pick<Job, 'bits' | 'depthMm' | 'toleranceMm'>,
): FittedBits {
  if (bits.some(({ kind }) => kind === 'vee')) {
    return { bits, tooNarrow: [] };
  }
  const widths = bits.map((bit) => {
    const cutter = cutterOf(bit);
    return 2 * radiusAt(cutter, Math.min(depthMm, cutter.cuttingLengthMm));
  });
  const finest = Math.min(...widths);
  const fitted = widths.map((widthMm) => entering(axis, widthMm, toleranceMm));
  return {
    bits: bits.map((bit, k) => (fitted[k]?.entersMm === widths[k] ? bit : narrower(bit, 2 * toleranceMm))),
    tooNarrow: fitted[widths.indexOf(finest)]?.tooNarrow ?? [],
  };
}

/** How a flat bit enters a flattened artwork. */
interface Entering {
  /** The width with which it does, see {@link bitsThatFit}. */
  readonly entersMm: number;
  /** What it is not to enter although it is no narrower than that. */
  readonly tooNarrow: readonly StandingPiece[];
}

/**
 * What a flat bit of a width leaves standing of one part of a flattened artwork.
 *
 * @param isNarrower whether the bit is taken as narrower for the sake of any part of the artwork
 */
export function leftBy(
  part: MedialAxis,
  widthMm: number,
  toleranceMm: number,
  isNarrower: boolean,
): readonly StandingPiece[] {
  if (!isNarrower) {
    return leftStanding(part, widthMm / 2, toleranceMm).pieces;
  }
  const { entersMm, tooNarrow } = enteringNarrower(
    part,
    widthMm,
    toleranceMm,
    hardlyNarrower(part, widthMm / 2, toleranceMm),
  );
  return [...leftStanding(part, entersMm / 2, toleranceMm).pieces, ...tooNarrow];
}

function entering(axis: MedialAxis, widthMm: number, toleranceMm: number): Entering {
  const found = hardlyNarrower(axis, widthMm / 2, toleranceMm);
  return found.fitsAsDrawn
    ? enteringNarrower(axis, widthMm, toleranceMm, found)
    : { entersMm: widthMm, tooNarrow: [] };
}

function enteringNarrower(
  axis: MedialAxis,
  widthMm: number,
  toleranceMm: number,
  { tooNarrow }: HardlyNarrower,
): Entering {
  const pieces = tooNarrow.length === 0 ? [] : leftStanding(axis, widthMm / 2, toleranceMm).pieces;
  return {
    entersMm: widthMm - 2 * toleranceMm,
    tooNarrow: pieces.filter(
      ({ kind, outline }) =>
        (kind === 'stroke' || kind === 'part') &&
        tooNarrow.some(({ atMm: [x, y] }) => isInside(outline, x, y)),
    ),
  };
}

function narrower(bit: Bit, byMm: number): Bit {
  switch (bit.kind) {
    case 'flat':
    case 'ball':
    case 'bull':
      return { ...bit, diameterMm: bit.diameterMm - byMm };
    case 'taper':
      return { ...bit, tipDiameterMm: bit.tipDiameterMm - byMm };
    default:
      return bit;
  }
}
