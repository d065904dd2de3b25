import type { TriedJoin } from '@pourproof/plane';
import { type ChainPiece, joinChains } from './join-chains.ts';
import { closedOnlyWithin, type FoundOutline, REACH_MM, sameOutlines } from './open-outlines.ts';

/** Most tolerances that are tried, spread over all that could serve, the largest among them. */
const MAX_TRIED = 12;

/** Most lines that are joined again for that: about a second. */
const MAX_LINES = 200_000;

/** Lines that are joined among themselves, with the outlines that they leave open. */
export interface OpenGroup {
  readonly pieces: readonly ChainPiece[];
  readonly outlines: readonly FoundOutline[];
}

/**
 * The least joining tolerance that closes the most open outlines, each tried by joining the lines with it. One that also joins
 * lines which make no outline is of no use.
 *
 * @returns `null` where none closes any
 */
export function bestJoin(groups: readonly OpenGroup[], joinToleranceMm: number): TriedJoin | null {
  let best: TriedJoin | null = null;
  // the least first, so that a wider one must close more
  for (const toleranceMm of tolerancesToTry(groups)) {
    const tried = tryJoin(groups, joinToleranceMm, toleranceMm);
    if (tried !== null && tried.closes > (best?.closes ?? 0)) {
      best = tried;
    }
  }
  return best;
}

/** Widest gaps of the outlines in whole hundredths of a millimetre, ascending. */
function tolerancesToTry(groups: readonly OpenGroup[]): readonly number[] {
  const widest = groups.flatMap(({ outlines }) => outlines.map(({ gaps }) => gaps[0]?.widthMm ?? 0));
  const slips = widest.filter((mm) => mm <= REACH_MM);
  const all = [...new Set(slips.map(upToHundredth))].sort((a, b) => a - b);
  const lines = groups.reduce((sum, { pieces }) => sum + pieces.length, 0);
  const length = Math.min(all.length, MAX_TRIED, Math.max(1, Math.floor(MAX_LINES / lines)));
  const step = all.length / length;
  return Array.from({ length }, (_, k) => all[Math.ceil((k + 1) * step) - 1] as number);
}

function upToHundredth(mm: number): number {
  // what rounding adds to a decimal is no hundredth more
  return Math.ceil(mm * 100 - 1e-6) / 100;
}

function tryJoin(groups: readonly OpenGroup[], nowMm: number, toleranceMm: number): TriedJoin | null {
  let closes = 0;
  let areaMm2 = 0;
  for (const { pieces, outlines } of groups) {
    const known = sameOutlines(outlines);
    for (const each of closedOnlyWithin(joinChains(pieces, toleranceMm), nowMm)) {
      if (known(each) === undefined) {
        return null;
      }
      closes++;
      areaMm2 += each.areaMm2;
    }
  }
  return closes === 0 ? null : { toleranceMm, closes, areaMm2 };
}
