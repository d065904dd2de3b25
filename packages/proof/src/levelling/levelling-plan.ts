import type { StrokeWidths } from '@pourproof/geometry';
import { levelDropMm } from '@pourproof/materials';
import type { Point } from '@pourproof/plane';

/** What levelling leaves of flat-bottomed strokes; lengths in mm. */
export interface LevellingPlan {
  /** What levelling takes off the face. */
  readonly planMm: number;
  /** What can come off before the first stroke is gone: depth, less fallen level, pooled seal and the board's low spots. */
  readonly marginMm: number;
  /** Depth of colour that the plan leaves in the narrowest stroke; below 0 nothing is left. */
  readonly leftMm: number;
  /** Where colour is lost first: the narrowest stroke that is cut; `null` where nothing is cut. */
  readonly firstLostAt: Point | null;
  /** Strokes narrower than this lose all colour under the plan; 0 when none does, infinite when all do. */
  readonly lostBelowMm: number;
  readonly lostLengthMm: number;
  /** Strokes narrower than this fill with clear seal alone. */
  readonly ghostBelowMm: number;
  readonly ghostLengthMm: number;
}

/** What decides the levelling margin of a flat cut. */
export interface LevellingJob {
  readonly depthMm: number;
  readonly levelMm: number;
  readonly filmMm: number;
  readonly shrinkagePct: number;
  /** How much shallower the pocket is at the lowest spot of the face under the cut, 0 or more. */
  readonly shallowByMm: number;
  readonly bitMm: number;
}

/**
 * The levelling margin of flat-bottomed strokes and the length of stroke that is lost, by the closed forms of the drained film:
 * a film t on floor and two walls of a stroke of width w and depth D pools to t (w + 2 D) / w.
 *
 * Narrower strokes pool deeper, so the narrowest stroke is lost first. Strokes narrower than the bit are not cut and not counted.
 */
export function levellingPlan(job: LevellingJob, strokes: StrokeWidths): LevellingPlan {
  const { depthMm, filmMm, levelMm, bitMm } = job;
  const isCut = strokes.narrowestMm !== null && strokes.lengthMm > strokes.lengthNarrowerThan(bitMm);
  const narrowest = Math.max(bitMm, strokes.narrowestMm ?? bitMm);
  const open = depthMm - job.shallowByMm - levelDropMm(depthMm, job.shrinkagePct);
  const marginMm = Math.max(0, open - pooledMm(narrowest, depthMm, filmMm));
  const cutNarrowerThan = (width: number): number =>
    width > bitMm ? Math.max(0, strokes.lengthNarrowerThan(width) - strokes.lengthNarrowerThan(bitMm)) : 0;
  const lostBelowMm = emptyBelow(open - levelMm, depthMm, filmMm);
  const ghostBelowMm = emptyBelow(depthMm, depthMm, filmMm);
  return {
    planMm: levelMm,
    marginMm: isCut ? marginMm : 0,
    leftMm: open - levelMm - pooledMm(narrowest, depthMm, filmMm),
    firstLostAt: isCut ? strokes.narrowestAt : null,
    lostBelowMm,
    lostLengthMm: isCut ? cutNarrowerThan(lostBelowMm) : 0,
    ghostBelowMm,
    ghostLengthMm: isCut ? cutNarrowerThan(ghostBelowMm) : 0,
  };
}

function pooledMm(widthMm: number, depthMm: number, filmMm: number): number {
  return Math.min(depthMm, (filmMm * (widthMm + 2 * depthMm)) / widthMm);
}

/** Width at which the drained film alone fills `roomMm` of depth: t (w + 2 D) / w = room. */
function emptyBelow(roomMm: number, depthMm: number, filmMm: number): number {
  if (roomMm <= filmMm) {
    return Number.POSITIVE_INFINITY;
  }
  return (2 * filmMm * depthMm) / (roomMm - filmMm);
}
