import { booleans, resolveRegions } from '@pourproof/arrangement';
import { type Board, isHollow, isThrough, type Obstacle } from '@pourproof/job';
import { type CleanRegion, type Point, packRings, transformRings } from '@pourproof/plane';
import { hollowOutlines } from './obstacle-outline.ts';
import type { PlacedBoard } from './place-board.ts';

/** Where the cut may go, in the artwork's frame: the board less its margin, and holes and grooves through it. Clamps stand on it and are judged by the bit's way. */
export function clearFace(
  board: Board,
  marginMm: number,
  obstacles: readonly Obstacle[],
  placed: PlacedBoard,
): CleanRegion {
  const { widthMm, heightMm, thicknessMm } = board;
  const inner =
    2 * marginMm >= Math.min(widthMm, heightMm)
      ? []
      : [
          [
            [marginMm, marginMm],
            [widthMm - marginMm, marginMm],
            [widthMm - marginMm, heightMm - marginMm],
            [marginMm, heightMm - marginMm],
          ] satisfies Point[],
        ];
  const region = (outlines: readonly (readonly Point[])[]): CleanRegion =>
    resolveRegions(
      outlines.map((outline) => ({
        ...transformRings(placed.toArtwork, packRings([outline.flat()])),
        fillRule: 'nonzero' as const,
      })),
    ).region;
  const face = region(inner);
  const hollows = obstacles.filter(isHollow).filter((each) => isThrough(each, thicknessMm));
  return hollows.length === 0 ? face : booleans(face, region(hollows.flatMap(hollowOutlines)), 'subtract');
}
