import { type MedialAxis, strokeLines } from '@pourproof/geometry';
import type { Job } from '@pourproof/job';
import { limits } from '@pourproof/materials';
import type { FaceHeights } from '../board/face-heights.ts';
import type { CutShape } from '../cut/cut-shape.ts';
import { type LevellingMap, levellingMap } from './levelling-map.ts';

/** What the levelling map of a cut is made from; lengths in mm. */
export interface CutToLevel {
  readonly axis: MedialAxis;
  readonly job: Job;
  readonly shape: CutShape;
  /** Seal film on walls and floor. */
  readonly filmMm: number;
  readonly heights: FaceHeights | null;
}

/**
 * Grades the strokes of a cut by how much levelling they stand: between upright walls they keep their width
 * and lose depth, between sloping ones they lose both. A V shows its walls along the edges whatever its
 * depth, so only its width is judged.
 */
export function cutLevellingMap({ axis, job, shape, filmMm, heights }: CutToLevel): LevellingMap {
  const isVee = shape.includedRad !== null;
  return levellingMap(strokeLines(axis), {
    planMm: job.levelMm,
    // a stroke as wide as the bit is cut, even if flattening made it narrower by the tolerance
    sectionAt: (widthMm) => shape.sectionAt(isVee ? widthMm : widthMm + job.toleranceMm),
    shop: { filmMm, shrinkagePct: job.rows.resin.shrinkagePct.value },
    shallowAt: (at) => Math.max(0, -(heights?.heightAt(at) ?? 0)),
    needs: {
      narrowestMm: (isVee ? limits.narrowestStrokeVee : limits.narrowestStrokeFlat).value,
      shallowestMm: isVee ? 0 : limits.opaqueDepth.value,
    },
  });
}
