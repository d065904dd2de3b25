import type { MedialAxis } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import type { Run } from '../cutter-path.ts';
import { orderRuns } from '../order-runs.ts';
import { FreeMoves } from './free-moves.ts';

/** A run with its hub. Coordinates are relative to the axis' origin. */
export interface PlacedRun {
  readonly points: Run;
  /** Centre of a disc, cut before, in which the run starts and ends; undefined where there is none. */
  readonly hub: readonly [number, number] | undefined;
}

/**
 * Orders runs so that moves between them are short. Where an earlier cutter of radius `wide` has cut
 * everything between the hubs of one run and the next, and the next is no farther than `limit`, both become
 * one, joined by straight moves over their hubs at the depth at which the first ends.
 */
export function joinRuns(axis: MedialAxis, runs: readonly PlacedRun[], wide: number, limit: number): Run[] {
  const starts = runs.flatMap(({ points }) => [points[0], points[1]]);
  const ends = runs.flatMap(({ points }) => [points[points.length - 4], points[points.length - 3]]);
  if (wide === Infinity || limit === 0) {
    return orderRuns(starts, ends).map((k) => runs[k].points);
  }
  const moves = new FreeMoves(axis, wide);
  const isReachable = (a: number, b: number): boolean => {
    const [from, to] = [runs[a].hub, runs[b].hub];
    return from !== undefined && to !== undefined && moves.isFree(from[0], from[1], to[0], to[1]);
  };
  const joined: number[][] = [];
  let before = -1;
  for (const k of orderRuns(starts, ends, { isReachable, limit })) {
    pollStep();
    const { points, hub } = runs[k];
    const last = joined.at(-1);
    const isClose =
      before >= 0 &&
      Math.hypot(starts[2 * k] - ends[2 * before], starts[2 * k + 1] - ends[2 * before + 1]) <= limit;
    if (last === undefined || !isClose || !isReachable(before, k)) {
      joined.push(points.slice());
    } else {
      const depth = last[last.length - 2];
      last[last.length - 1] = 0;
      for (const place of [runs[before].hub, hub, points]) {
        last.push(place?.[0] ?? 0, place?.[1] ?? 0, depth, 0);
      }
      for (const value of points) {
        last.push(value);
      }
    }
    before = k;
  }
  return joined;
}
