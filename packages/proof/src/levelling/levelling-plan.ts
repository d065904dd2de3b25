import type { StrokeWidths } from '@pourproof/geometry';
import type { Point } from '@pourproof/plane';
import type { CutShape } from '../cut/cut-shape.ts';
import type { LevelledForm } from './cut-margins.ts';
import type { LevellingMap } from './levelling-map.ts';
import { clearShare } from './stroke-margin.ts';
import { widthBelow } from './width-below.ts';

/** What levelling leaves where it leaves least, and what the seal takes; lengths in mm. */
export interface LevellingPlan {
  /** What levelling takes off the face. */
  readonly planMm: number;
  /**
   * What may come off before colour is gone somewhere: depth less shrinkage, pooled seal and the board's low
   * spots; `null` if nothing is cut.
   */
  readonly marginMm: number | null;
  /** Depth of colour that the plan leaves there; nothing is left if it is negative. */
  readonly leftMm: number | null;
  /**
   * Width at the face that the plan leaves there: between sloping walls it narrows as the face comes down.
   */
  readonly leftWidthMm: number | null;
  /** Width at the face there; 0 if nothing is cut. */
  readonly narrowestMm: number;
  /** Whether that is a stroke or a dot. */
  readonly form: LevelledForm;
  /** Point at which colour is lost first; `null` if nothing is cut. */
  readonly firstLostAt: Point | null;
  /** Strokes narrower than this fill with clear seal alone; 0 if none does. */
  readonly ghostBelowMm: number;
  readonly ghostLengthMm: number;
}

/** The levelling margin of a cut, from its map, and the strokes that its seal fills. Strokes that no bit enters are not cut and do not count. */
export function levellingPlan(
  { planMm, first }: Pick<LevellingMap, 'planMm' | 'first'>,
  { shape, filmMm }: { readonly shape: CutShape; readonly filmMm: number },
  strokes: StrokeWidths,
): LevellingPlan {
  const { entersMm } = shape;
  const isGhost = (widthMm: number): boolean => {
    const section = shape.sectionAt(widthMm);
    return filmMm > 0 && section !== null && clearShare(section, filmMm) >= 1;
  };
  const ghostBelowMm = widthBelow(isGhost, entersMm);
  const ghostLengthMm =
    ghostBelowMm > entersMm
      ? Math.max(0, strokes.lengthNarrowerThan(ghostBelowMm) - strokes.lengthNarrowerThan(entersMm))
      : 0;
  return {
    planMm,
    marginMm: first?.goneMm ?? null,
    leftMm: first?.leftMm ?? null,
    leftWidthMm: first === null ? null : Math.max(0, first.leftWidthMm),
    narrowestMm: first?.widthMm ?? 0,
    form: first?.form ?? 'stroke',
    firstLostAt: first?.atMm ?? null,
    ghostBelowMm,
    ghostLengthMm,
  };
}
