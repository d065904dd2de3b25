import { type WallRunOptions, wallRuns } from '@pourproof/geometry';
import { type Point, radians } from '@pourproof/plane';
import type { BlockMeasures } from './block-measures.ts';
import { clipPath } from './clip-path.ts';

/** A stretch of wall in one block: an open line and a place on it, mm. */
export interface BlockWallRun {
  readonly path: Float64Array;
  readonly atMm: Point;
}

/** The stretches of wall in a block that its fibres meet squarely enough, see `wallRuns`; cut at the block's edge. */
export function blockWallRuns(
  { block, near }: BlockMeasures,
  options: WallRunOptions,
): readonly BlockWallRun[] {
  const { region } = block;
  return wallRuns(near, radians(block.grainDeg), options).flatMap((run) =>
    clipPath(run.path, region).map((path) => ({
      path,
      atMm: region === null ? run.atMm : middleOf(path),
    })),
  );
}

/** The point half-way along the longest edge of a line. */
function middleOf(path: Float64Array): Point {
  let best: Point = [path[0] ?? 0, path[1] ?? 0];
  let longest = -1;
  for (let i = 0; i + 3 < path.length; i += 2) {
    const [ax, ay, bx, by] = path.subarray(i, i + 4) as unknown as [number, number, number, number];
    const length = Math.hypot(bx - ax, by - ay);
    if (length > longest) {
      longest = length;
      best = [(ax + bx) / 2, (ay + by) / 2];
    }
  }
  return best;
}
