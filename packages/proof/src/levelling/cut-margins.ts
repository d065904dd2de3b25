import type { SeparatePart, StrokeLine } from '@pourproof/geometry';
import { type Point, poll } from '@pourproof/plane';
import { levelledDot } from './round-section.ts';
import {
  levelledStroke,
  type SectionMargin,
  type StrokeShop,
  sectionMargin,
  type WidthNeeds,
} from './stroke-margin.ts';
import type { StrokeSection } from './stroke-section.ts';

/** What the margins of a cut depend on: neither its colours nor how much is levelled. */
export interface MarginSetting {
  /** Section that the bits cut in a stroke of a width at the face; `null` if none enters. */
  readonly sectionAt: (widthMm: number) => StrokeSection | null;
  readonly shop: Omit<StrokeShop, 'shallowByMm'>;
  /** How much lower the face is at a point than where the bit was set, mm, 0 or more. */
  readonly shallowAt: (at: Point) => number;
  readonly keeps: WidthNeeds;
}

/** A stroke is judged by its section, a part without one as a round pocket as wide as its largest inscribed disc. */
export type LevelledForm = 'stroke' | 'dot';

/** The margins at the points of a line, mm: NaN throughout where nothing is cut. */
export interface LineMargins {
  readonly colourDepthMm: Float64Array;
  readonly mostDepthMm: Float64Array;
  readonly unseenMm: Float64Array;
  readonly thinMm: Float64Array;
}

/** What strokes and dots of a cut keep before anything comes off, line by line and part by part. */
export interface CutMargins {
  readonly lines: readonly LineMargins[];
  /** Of the widest place of each part, as a round pocket; `null` where no bit enters. */
  readonly dots: readonly (SectionMargin | null)[];
}

/**
 * The margins of all points of strokes and of all parts.
 */
export function cutMargins(
  lines: readonly StrokeLine[],
  parts: readonly SeparatePart[],
  setting: MarginSetting,
): CutMargins {
  return {
    lines: lines.map((line) => lineMargins(line, setting)),
    dots: parts.map(({ atMm, widthMm }) => marginAt(atMm, widthMm, 'dot', setting)),
  };
}

function lineMargins({ path, widths }: StrokeLine, setting: MarginSetting): LineMargins {
  const count = widths.length;
  const [colourDepthMm, mostDepthMm, unseenMm, thinMm] = [0, 1, 2, 3].map(() =>
    new Float64Array(count).fill(Number.NaN),
  ) as [Float64Array, Float64Array, Float64Array, Float64Array];
  for (let k = 0; k < count; k++) {
    const at: Point = [path[2 * k] as number, path[2 * k + 1] as number];
    const margin = marginAt(at, widths[k] as number, 'stroke', setting);
    if (margin !== null) {
      colourDepthMm[k] = margin.colourDepthMm;
      mostDepthMm[k] = margin.mostDepthMm;
      unseenMm[k] = margin.unseenMm;
      thinMm[k] = margin.thinMm;
    }
  }
  return { colourDepthMm, mostDepthMm, unseenMm, thinMm };
}

/** The margin of a place of a width; `null` where no bit enters. */
export function marginAt(
  atMm: Point,
  widthMm: number,
  form: LevelledForm,
  { sectionAt, shop, shallowAt, keeps }: MarginSetting,
): SectionMargin | null {
  // each takes as long as many steps of other loops
  poll();
  const section = widthMm > 0 ? sectionAt(widthMm) : null;
  if (section === null) {
    return null;
  }
  const here = { filmMm: shop.filmMm, shrinkagePct: shop.shrinkagePct, shallowByMm: shallowAt(atMm) };
  const before = form === 'dot' ? levelledDot(section, here, 0) : levelledStroke(section, here, 0);
  return sectionMargin(before, section, here, keeps);
}
