import { booleans } from '@pourproof/arrangement';
import type { CleanRegion, Point } from '@pourproof/plane';
import type { PlacedBlock } from '../board/place-board.ts';
import type { Stages } from '../stages/stages.ts';
import { findSlivers, type Slivers } from './find-slivers.ts';

/**
 * The thin wood that a cut leaves, also between it and pockets of earlier rounds; what was as thin before is not of this round. Cured resin is no wood.
 *
 * @param walls see {@link findSlivers}
 * @param earlier cured resin at the face
 */
export function roundSlivers(
  cut: CleanRegion,
  walls: Parameters<typeof findSlivers>[1],
  blocks: readonly PlacedBlock[],
  earlier: CleanRegion,
  stages: Stages,
): Slivers {
  if (earlier.ringEnds.length === 0 || cut.ringEnds.length === 0) {
    return findSlivers(cut, walls, blocks, stages);
  }
  const before = findSlivers(earlier, walls, blocks, stages);
  const all = findSlivers(booleans(cut, earlier, 'union'), walls, blocks, stages);
  return {
    ...all,
    thin: all.thin.filter((sliver) => isThere(sliver) && !before.thin.some((known) => isSame(sliver, known))),
    islands: all.islands.filter(
      (island) => isThere(island) && !before.islands.some((known) => isSame(island, known)),
    ),
  };
}

/** Wood thinner than this goes with the chips, or lies between flattened curves, mm (our choice: about the run-out of a router). */
const GONE_MM = 0.05;

function isThere({ widthMm }: Thin): boolean {
  return widthMm >= GONE_MM;
}

/** Places and widths nearer than this are the same, mm: far below what a saw or bit repeats. */
const SAME_MM = 0.01;

interface Thin {
  readonly atMm: Point;
  readonly widthMm: number;
}

function isSame(a: Thin, b: Thin): boolean {
  return (
    Math.hypot(a.atMm[0] - b.atMm[0], a.atMm[1] - b.atMm[1]) < SAME_MM &&
    Math.abs(a.widthMm - b.widthMm) < SAME_MM
  );
}
