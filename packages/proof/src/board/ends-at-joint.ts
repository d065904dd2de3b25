import { fibreVector } from '@pourproof/geometry';
import { type Point, radians, ringCoords } from '@pourproof/plane';
import { blockAt } from './block-at.ts';
import type { BlockMeasures } from './block-measures.ts';
import { clipSegment } from './clip-segment.ts';
import type { PlacedBlock } from './place-board.ts';

/** Wood along the fibres from a pocket to a joint, mm, with its ends in the artwork's frame. */
export interface EndAtJoint {
  readonly gapMm: number;
  readonly from: Point;
  readonly to: Point;
  /** The block behind the joint. */
  readonly into: PlacedBlock;
}

/** A way shorter than this is none: the pocket is open at the joint there, mm. */
const MIN_GAP_MM = 1e-6;
/** Share of a way that may lie in the cut: rounding. */
const SHARE_TOL = 1e-6;
/** How far behind a joint its block is looked up, mm: less than any block is wide. */
const BEHIND_MM = 0.01;

/**
 * For every outline of the cut in a block and each sense of its fibres, the shortest way through wood to a joint, if it is shorter than a reach. The
 * fibres of the face decide: a joint along them is never reached.
 *
 * From the corners of the flattened outline, so that of a joint that is not straight a nearer point may be missed.
 */
export function endsAtJoint(
  { block, cut, near }: BlockMeasures,
  reachMm: number,
  blocks: readonly PlacedBlock[],
): readonly EndAtJoint[] {
  const { region } = block;
  if (region === null || !(reachMm > 0)) {
    return [];
  }
  const [fx, fy] = fibreVector(radians(block.grainDeg));
  const under = blockAt(blocks);
  const found: EndAtJoint[] = [];
  for (let k = 0; k < cut.ringEnds.length; k++) {
    const ring = ringCoords(cut, k);
    for (const sense of [1, -1]) {
      let nearest: EndAtJoint | null = null;
      for (let i = 0; i < ring.length; i += 2) {
        const from: Point = [ring[i] as number, ring[i + 1] as number];
        const at = (mm: number): Point => [from[0] + sense * mm * fx, from[1] + sense * mm * fy];
        const gapMm = wayWithin(region, from, at(reachMm)) * reachMm;
        if (gapMm > MIN_GAP_MM && gapMm < (nearest?.gapMm ?? reachMm) && isWood(near, from, at(gapMm))) {
          const into = blocks[under(...at(gapMm + BEHIND_MM))];
          nearest = into === undefined || into === block ? nearest : { gapMm, from, to: at(gapMm), into };
        }
      }
      if (nearest !== null) {
        found.push(nearest);
      }
    }
  }
  return found;
}

/** Share of a segment, from its start, that lies in a region; 1 if it does not leave it. */
function wayWithin(region: NonNullable<PlacedBlock['region']>, [ax, ay]: Point, [bx, by]: Point): number {
  // a way along a joint has wood on either side
  const ends = [1, -1].map((side) => {
    const [first] = clipSegment(region, [ax, ay, bx, by], [side * (ay - by), side * (bx - ax)]);
    return first !== undefined && first[0] <= SHARE_TOL ? first[1] : 0;
  });
  return Math.max(...ends);
}

/** Whether a way leads through wood, not through the cut or along its wall. */
function isWood(cut: BlockMeasures['near'], [ax, ay]: Point, [bx, by]: Point): boolean {
  return [1, -1].every((side) => {
    const parts = clipSegment(cut, [ax, ay, bx, by], [side * (ay - by), side * (bx - ax)]);
    return parts.reduce((sum, [from, to]) => sum + to - from, 0) < SHARE_TOL;
  });
}
