import type { StrokeWidths } from '@pourproof/geometry';
import type { Point } from '@pourproof/plane';
import type { CutShape } from '../cut/cut-shape.ts';
import { clearShare, levelledStroke, type StrokeShop } from './stroke-margin.ts';
import { widthBelow } from './width-below.ts';

/** What levelling leaves of the strokes; lengths in mm. */
export interface LevellingPlan {
  /** What levelling takes off the face. */
  readonly planMm: number;
  /**
   * What may come off before the first stroke is gone: depth less shrinkage, pooled seal and the board's low
   * spots.
   */
  readonly marginMm: number;
  /** Depth of colour that the plan leaves in the narrowest stroke; nothing is left if it is negative. */
  readonly leftMm: number;
  /**
   * Width at the face that the plan leaves of it: between sloping walls it narrows as the face comes down.
   */
  readonly leftWidthMm: number;
  /** Width of the narrowest stroke that is cut; 0 if nothing is cut. */
  readonly narrowestMm: number;
  /** Point at which colour is lost first, in the narrowest stroke that is cut; `null` if nothing is cut. */
  readonly firstLostAt: Point | null;
  /** Strokes narrower than this lose all colour under the plan; 0 if none does, infinite if all do. */
  readonly lostBelowMm: number;
  /** Strokes narrower than this fill with clear seal alone; 0 if none does. */
  readonly ghostBelowMm: number;
  readonly ghostLengthMm: number;
}

/** What the levelling margin of a cut depends on. */
export interface LevellingJob extends StrokeShop {
  readonly shape: CutShape;
  readonly levelMm: number;
}

/**
 * The levelling margin of the strokes and the width below which they are lost; the levelling map tells the
 * length of those strokes.
 *
 * Narrower strokes are no deeper and their seal pools higher, so the narrowest stroke is lost first. Strokes
 * that no bit enters are not cut and do not count.
 */
export function levellingPlan(job: LevellingJob, strokes: StrokeWidths): LevellingPlan {
  const { shape, filmMm, levelMm } = job;
  const entersMm = shape.entersMm;
  const isCut = strokes.narrowestMm !== null && strokes.lengthMm > strokes.lengthNarrowerThan(entersMm);
  const narrowestMm = isCut ? narrowestCut(shape, strokes) : 0;
  const narrowest = shape.sectionAt(narrowestMm);
  const cutNarrowerThan = (width: number): number =>
    width > entersMm
      ? Math.max(0, strokes.lengthNarrowerThan(width) - strokes.lengthNarrowerThan(entersMm))
      : 0;
  const isLost = (widthMm: number): boolean => {
    const section = shape.sectionAt(widthMm);
    return section !== null && levelledStroke(section, job, levelMm).colourDepthMm <= 0;
  };
  const isGhost = (widthMm: number): boolean => {
    const section = shape.sectionAt(widthMm);
    return filmMm > 0 && section !== null && clearShare(section, filmMm) >= 1;
  };
  const lostBelowMm = widthBelow(isLost, entersMm);
  const ghostBelowMm = widthBelow(isGhost, entersMm);
  const left = narrowest === null ? null : levelledStroke(narrowest, job, levelMm);
  return {
    planMm: levelMm,
    narrowestMm,
    marginMm: isCut && left !== null ? Math.max(0, left.colourDepthMm + levelMm) : 0,
    leftMm: left?.colourDepthMm ?? 0,
    leftWidthMm: Math.max(0, left?.widthMm ?? 0),
    firstLostAt: isCut ? strokes.narrowestAt : null,
    lostBelowMm,
    ghostBelowMm,
    ghostLengthMm: isCut ? cutNarrowerThan(ghostBelowMm) : 0,
  };
}

/** Bisection steps for the narrowest stroke that is cut: to rounding. */
const NARROWEST_BISECTIONS = 50;

/**
 * Width of the narrowest stroke that is cut. A V with a flat tip cuts only strokes wider than its flat, so
 * that the next wider one counts.
 */
function narrowestCut(shape: CutShape, strokes: StrokeWidths): number {
  const least = Math.max(shape.entersMm, strokes.narrowestMm ?? shape.entersMm);
  if (shape.sectionAt(least) !== null) {
    return least;
  }
  const standing = strokes.lengthNarrowerThan(least);
  const isCut = (widthMm: number): boolean => strokes.lengthNarrowerThan(widthMm) > standing;
  let low = least;
  let high = 2 * least;
  while (!isCut(high)) {
    high *= 2;
  }
  for (let k = 0; k < NARROWEST_BISECTIONS; k++) {
    const middle = (low + high) / 2;
    if (isCut(middle)) {
      high = middle;
    } else {
      low = middle;
    }
  }
  return high;
}
