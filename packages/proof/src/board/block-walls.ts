import { fibreVector } from '@pourproof/geometry';
import { type CleanRegion, pollStep, radians, ringStart } from '@pourproof/plane';
import { blockIndex } from './block-index.ts';
import { clipSegment } from './clip-segment.ts';
import type { PlacedBlock } from './place-board.ts';

/** Walls of a cut in one block, seen from above, mm. */
export interface BlockWalls {
  readonly lengthMm: number;
  /** ∫ |n·f| ds for the fibre's azimuth; times cos(dive) it is the exposed length of upright walls. */
  readonly exposedMm: number;
}

/**
 * Divides the walls of a cut among the blocks that they are in: one entry per block.
 *
 * Exact for polygons. A wall along a joint belongs to the block behind it, on the side of the wood.
 */
export function blockWalls(
  cut: CleanRegion,
  blocks: readonly Pick<PlacedBlock, 'region' | 'grainDeg'>[],
): readonly BlockWalls[] {
  const index = blockIndex(blocks);
  const fibres = blocks.map(({ grainDeg }) => fibreVector(radians(grainDeg)));
  const lengths = new Float64Array(blocks.length);
  const exposed = new Float64Array(blocks.length);
  forEachEdge(cut, (ax, ay, bx, by) => {
    const length = Math.hypot(bx - ax, by - ay);
    const box = [Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by)] as const;
    for (const b of index.near(box)) {
      const region = blocks[b]?.region ?? null;
      let share = 1;
      if (region !== null) {
        // the inside of a clean ring is on the side of (−ey, ex), the wood on the other
        const parts = clipSegment(region, [ax, ay, bx, by], [by - ay, ax - bx]);
        share = parts.reduce((sum, [from, to]) => sum + to - from, 0);
      }
      const [fx, fy] = fibres[b] as readonly [number, number];
      lengths[b] = (lengths[b] as number) + share * length;
      exposed[b] = (exposed[b] as number) + share * Math.abs((bx - ax) * fy - (by - ay) * fx);
    }
  });
  return blocks.map((_, b) => ({ lengthMm: lengths[b] as number, exposedMm: exposed[b] as number }));
}

function forEachEdge(
  region: CleanRegion,
  visit: (ax: number, ay: number, bx: number, by: number) => void,
): void {
  const { coords } = region;
  for (let k = 0; k < region.ringEnds.length; k++) {
    const start = ringStart(region, k);
    const end = region.ringEnds[k] as number;
    for (let i = start; i < end; i++) {
      pollStep();
      const j = i + 1 === end ? start : i + 1;
      visit(
        coords[2 * i] as number,
        coords[2 * i + 1] as number,
        coords[2 * j] as number,
        coords[2 * j + 1] as number,
      );
    }
  }
}
