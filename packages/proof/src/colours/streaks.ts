import { type Lab, limits, streakDifference } from '@pourproof/materials';
import type { Point } from '@pourproof/plane';
import { clipSegment } from '../board/clip-segment.ts';
import type { PlacedBlock } from '../board/place-board.ts';
import type { ColourCut } from './colour-cuts.ts';
import type { DrawnColour } from './drawn-colours.ts';

type InWood = Pick<PlacedBlock, 'row'>;

/** Colour difference ΔE00 of a streak against the bare wood; `null` where either colour is not known. */
export function differenceIn({ lab }: DrawnColour, { row }: InWood): number | null {
  const wood: Lab | undefined = row.lab?.value;
  return lab === null || wood === undefined ? null : streakDifference(wood, lab, limits.streakTint.value);
}

/** Whether a streak of this colour differs too little to be seen on plain wood; never where a colour is not known. */
export function hidesIn(colour: DrawnColour, block: InWood): boolean {
  const difference = differenceIn(colour, block);
  return difference !== null && difference < limits.colourDifferencePlain.value;
}

/** How far behind a wall its colour is looked up, mm: less than any stroke is wide. */
const BEHIND_MM = 0.01;

/**
 * The colour that stands behind a wall; `null` where none is cut.
 *
 * @param at a point of the wall
 * @param towardsWood direction from the pocket to the wood, of any length
 */
export function colourBehind(cuts: readonly ColourCut[], [x, y]: Point, [nx, ny]: Point): DrawnColour | null {
  const [first, second] = cuts;
  if (second === undefined) {
    return first?.colour ?? null;
  }
  const step = BEHIND_MM / Math.hypot(nx, ny);
  const behind = [x - 2 * step * nx, y - 2 * step * ny, x - step * nx, y - step * ny] as const;
  return cuts.find(({ cut }) => clipSegment(cut, behind, [-nx, -ny]).length > 0)?.colour ?? null;
}

/** The colour behind a stretch of wall of a clean ring, by its longest edge. */
export function colourBehindPath(cuts: readonly ColourCut[], path: Float64Array): DrawnColour | null {
  let longest = 0;
  let found: readonly [Point, Point] | null = null;
  for (let i = 0; i + 3 < path.length; i += 2) {
    const [ax, ay, bx, by] = path.subarray(i, i + 4) as unknown as [number, number, number, number];
    const length = Math.hypot(bx - ax, by - ay);
    if (length > longest) {
      longest = length;
      // the inside of a clean ring is on the side of (−ey, ex)
      found = [
        [(ax + bx) / 2, (ay + by) / 2],
        [by - ay, ax - bx],
      ];
    }
  }
  return found === null ? null : colourBehind(cuts, ...found);
}
