import type { Bounds, Point } from '@pourproof/plane';

/** The part of the artwork that a sheet shows: the point at its centre, mm, and the scale, px per mm. */
export interface View {
  readonly atMm: Point;
  readonly pxPerMm: number;
}

/** Size of the sheet on screen. */
export interface SheetSize {
  readonly widthPx: number;
  readonly heightPx: number;
  /** How much larger than usual the reader wants letters; 1 where it is left out. */
  readonly lettersBy?: number;
}

/** The part of the artwork's plane that is in sight, mm. */
export function seenBounds({ atMm, pxPerMm }: View, { widthPx, heightPx }: SheetSize): Bounds {
  const [w, h] = [widthPx / 2 / pxPerMm, heightPx / 2 / pxPerMm];
  return [atMm[0] - w, atMm[1] - h, atMm[0] + w, atMm[1] + h];
}

/** Room around the artwork for marks, scale bar and arrow, px. */
const MARGIN_PX = 44;
/** Scale where there is nothing to fit (about a screen's own: 96 px an inch). */
export const USUAL_PX_PER_MM = 4;

/** The view that shows all of a box with a margin; of an empty box, its place at {@link USUAL_PX_PER_MM}. */
export function fittingView([left, top, right, bottom]: Bounds, size: SheetSize): View {
  const width = Math.max(right - left, 0);
  const height = Math.max(bottom - top, 0);
  const room = (px: number): number => Math.max(px - 2 * MARGIN_PX, px / 2, 1);
  const pxPerMm = Math.min(
    width > 0 ? room(size.widthPx) / width : Number.POSITIVE_INFINITY,
    height > 0 ? room(size.heightPx) / height : Number.POSITIVE_INFINITY,
  );
  return {
    atMm: [(left + right) / 2, (top + bottom) / 2],
    pxPerMm: Number.isFinite(pxPerMm) ? pxPerMm : USUAL_PX_PER_MM,
  };
}

/** Where a point of the artwork lies on the sheet, px. */
export function toPx([x, y]: Point, view: View, size: SheetSize): Point {
  return [
    size.widthPx / 2 + (x - view.atMm[0]) * view.pxPerMm,
    size.heightPx / 2 + (y - view.atMm[1]) * view.pxPerMm,
  ];
}

/** A view zoomed by a factor so that the point of the artwork under a place on the sheet stays there. */
export function zoomedView(view: View, factor: number, [x, y]: Point, size: SheetSize): View {
  const pxPerMm = view.pxPerMm * factor;
  const dx = x - size.widthPx / 2;
  const dy = y - size.heightPx / 2;
  return {
    atMm: [view.atMm[0] + dx / view.pxPerMm - dx / pxPerMm, view.atMm[1] + dy / view.pxPerMm - dy / pxPerMm],
    pxPerMm,
  };
}

/** The view at a share of the way from one to another; the scale changes geometrically, which looks even. */
export function viewBetween(from: View, to: View, share: number): View {
  const mix = (a: number, b: number): number => a + (b - a) * share;
  return {
    atMm: [mix(from.atMm[0], to.atMm[0]), mix(from.atMm[1], to.atMm[1])],
    pxPerMm: from.pxPerMm * (to.pxPerMm / from.pxPerMm) ** share,
  };
}
