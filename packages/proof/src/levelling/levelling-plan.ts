import type { SeparatePart, StrokeWidths } from '@pourproof/geometry';
import type { Point } from '@pourproof/plane';
import type { CutShape } from '../cut/cut-shape.ts';
import { levelledDot } from './round-section.ts';
import { clearShare, type LevelledStroke, levelledStroke, type StrokeShop } from './stroke-margin.ts';
import type { StrokeSection } from './stroke-section.ts';
import { widthBelow } from './width-below.ts';

/** A stroke, or a part without one, which is taken as a round pocket as wide as its largest inscribed disc. */
export type LevelledForm = 'stroke' | 'dot';

/** What levelling leaves of the strokes and of the parts without one; lengths in mm. */
export interface LevellingPlan {
  /** What levelling takes off the face. */
  readonly planMm: number;
  /**
   * What may come off before the first stroke is gone: depth less shrinkage, pooled seal and the board's low
   * spots.
   */
  readonly marginMm: number;
  /** Depth of colour that the plan leaves where it leaves least; nothing is left if it is negative. */
  readonly leftMm: number;
  /**
   * Width at the face that the plan leaves of it: between sloping walls it narrows as the face comes down.
   */
  readonly leftWidthMm: number;
  /** Width at the face of the stroke or dot that keeps least; 0 if nothing is cut. */
  readonly narrowestMm: number;
  /** Whether that is a stroke or a dot. */
  readonly form: LevelledForm;
  /** Parts without a stroke that is cut, of which the plan leaves no colour, widest first. */
  readonly lostDots: readonly SeparatePart[];
  /** Point at which colour is lost first; `null` if nothing is cut. */
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
 * Narrower strokes are no deeper and their seal pools higher, so the narrowest stroke is lost first, unless a dot is. Strokes and dots
 * that no bit enters are not cut and do not count.
 *
 * @param parts the separate parts of the artwork: one without a stroke that is cut is judged at its widest place
 */
export function levellingPlan(
  job: LevellingJob,
  strokes: StrokeWidths,
  parts: readonly SeparatePart[] = [],
): LevellingPlan {
  const { shape, filmMm, levelMm } = job;
  const entersMm = shape.entersMm;
  const isCut = strokes.narrowestMm !== null && strokes.lengthMm > strokes.lengthNarrowerThan(entersMm);
  const narrowestMm = isCut ? narrowestCut(shape, strokes) : 0;
  const narrowest = isCut ? shape.sectionAt(narrowestMm) : null;
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
  const candidates: Candidate[] =
    narrowest === null
      ? []
      : [
          {
            form: 'stroke',
            atMm: strokes.narrowestAt,
            widthMm: narrowestMm,
            strokeMm: narrowestMm,
            left: levelledStroke(narrowest, job, levelMm),
          },
        ];
  for (const part of parts) {
    const section = shape.sectionAt(part.widthMm);
    // where a stroke of it is cut, that one is narrower and says more
    if (section !== null && part.strokeMm <= entersMm) {
      candidates.push({ ...part, form: 'dot', left: levelledDot(section, job, levelMm) });
    }
  }
  const worst = candidates.reduce<Candidate | null>(
    (least, each) =>
      least === null || each.left.colourDepthMm < least.left.colourDepthMm - SAME_DEPTH_TOL_MM ? each : least,
    null,
  );
  const left = worst?.left;
  return {
    planMm: levelMm,
    narrowestMm: worst?.widthMm ?? 0,
    form: worst?.form ?? 'stroke',
    marginMm: Math.max(0, (left?.colourDepthMm ?? -levelMm) + levelMm),
    leftMm: left?.colourDepthMm ?? 0,
    leftWidthMm: Math.max(0, left?.widthMm ?? 0),
    firstLostAt: worst?.atMm ?? null,
    lostDots: candidates
      .filter((each) => each.form === 'dot' && each.left.colourDepthMm <= 0)
      .toSorted((a, b) => b.widthMm - a.widthMm),
    lostBelowMm,
    ghostBelowMm,
    ghostLengthMm: isCut ? cutNarrowerThan(ghostBelowMm) : 0,
  };
}

/** A stroke or dot that is cut, with what the plan leaves of it. */
interface Candidate extends SeparatePart {
  readonly form: LevelledForm;
  readonly left: LevelledStroke;
}

/** Depths that differ by less are the same: then the stroke is named. */
const SAME_DEPTH_TOL_MM = 1e-9;

/** What levelling leaves of a stroke or a dot with this section. */
export function levelledAs(
  form: LevelledForm,
  section: StrokeSection,
  shop: StrokeShop,
  removedMm: number,
): LevelledStroke {
  return form === 'dot' ? levelledDot(section, shop, removedMm) : levelledStroke(section, shop, removedMm);
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
