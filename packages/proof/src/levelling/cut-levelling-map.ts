import { type MedialAxis, strokeLines } from '@pourproof/geometry';
import { limits } from '@pourproof/materials';
import type { FaceHeights } from '../board/face-heights.ts';
import type { Job } from '../job/job.ts';
import { type LevellingMap, levellingMap } from './levelling-map.ts';

/** What a map of the cut is made from; lengths in mm. */
export interface CutToLevel {
  readonly axis: MedialAxis;
  readonly job: Job;
  readonly bitMm: number;
  /** Seal film on walls and floor. */
  readonly filmMm: number;
  readonly heights: FaceHeights | null;
}

/** The strokes that flat bits cut, by how much levelling they stand: upright walls keep their width and lose depth. */
export function cutLevellingMap({ axis, job, bitMm, filmMm, heights }: CutToLevel): LevellingMap {
  return levellingMap(strokeLines(axis), {
    planMm: job.levelMm,
    sectionAt: (widthMm) =>
      widthMm < bitMm - job.toleranceMm ? null : { widthMm, depthMm: job.depthMm, includedRad: null },
    shop: { filmMm, shrinkagePct: job.rows.resin.shrinkagePct.value },
    shallowAt: (at) => Math.max(0, -(heights?.heightAt(at) ?? 0)),
    needsAt: ({ includedRad }) => ({
      narrowestMm: (includedRad === null ? limits.narrowestStrokeFlat : limits.narrowestStrokeVee).value,
      shallowestMm: limits.opaqueDepth.value,
    }),
  });
}
