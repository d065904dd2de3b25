import type { StrokeLine } from '@pourproof/geometry';
import type { Point } from '@pourproof/plane';
import { type StrokeMargin, type StrokeNeeds, type StrokeShop, strokeMargin } from './stroke-margin.ts';
import type { StrokeSection } from './stroke-section.ts';

/**
 * What the planned levelling does to a stretch: all colour goes (`lost`); it gets too narrow or too shallow
 * (`spoilt`); it would at twice the plan (`close`); none of these (`holds`).
 */
export type LevellingGrade = 'lost' | 'spoilt' | 'close' | 'holds';

/** A stretch of stroke of one grade, along its centre line. */
export interface GradedStretch {
  readonly grade: LevellingGrade;
  /** `[x0, y0, x1, y1, …]`, open, mm. */
  readonly path: Float64Array;
  /** At each point, what may come off before all colour is gone, mm. */
  readonly goneMm: Float64Array;
  /** At each point, what may come off before the stroke is gone, too narrow or too shallow, mm. */
  readonly holdsMm: Float64Array;
}

/** The strokes of a cut, graded by how much levelling they stand. */
export interface LevellingMap {
  readonly planMm: number;
  readonly stretches: readonly GradedStretch[];
  /** Length of stroke by grade, mm. */
  readonly lengthMm: Readonly<Record<LevellingGrade, number>>;
  /** Point at which colour goes first; `null` if nothing is cut. */
  readonly goesFirstAt: Point | null;
  /** What may come off there, mm; 0 if nothing is cut. */
  readonly goesFirstMm: number;
}

/** What a map depends on. */
export interface MapSetting {
  /** What levelling takes off, mm. */
  readonly planMm: number;
  /** Section that the bits cut in a stroke of a width at the face; `null` if none enters. */
  readonly sectionAt: (widthMm: number) => StrokeSection | null;
  readonly shop: Omit<StrokeShop, 'shallowByMm'>;
  /** How much lower the face is at a point than where the bit was set, mm, 0 or more. */
  readonly shallowAt: (at: Point) => number;
  readonly needs: StrokeNeeds;
}

/** Up to this multiple of the plan a stretch counts as close (our choice: a second pass of the same tool). */
const CLOSE_FACTOR = 2;
/** Changes of grade are located to this share of the distance between two points. */
const CHANGE_SHARE = 1e-6;
/** Margins closer than this are equal, mm: rounding. */
const EQUAL_MARGINS_TOL_MM = 1e-9;

/**
 * Grades every stroke by what levelling leaves of it, split where the grade changes. Margins are exact at the
 * points; between them the width is taken as linear, as it is between straight walls. Strokes that no bit
 * enters are left out.
 */
export function levellingMap(lines: readonly StrokeLine[], setting: MapSetting): LevellingMap {
  const stretches: GradedStretch[] = [];
  const lengthMm = { lost: 0, spoilt: 0, close: 0, holds: 0 };
  // a taper always ends in nothing: it decides what goes first only if there is nothing else
  const firsts: Partial<Record<StrokeLine['kind'], Sample>> = {};
  for (const line of lines) {
    for (const stretch of gradedParts(line, setting)) {
      const [sample] = stretch;
      if (sample?.grade === null || sample === undefined) {
        continue;
      }
      for (const each of stretch) {
        const first = firsts[line.kind];
        firsts[line.kind] = first === undefined || goesBefore(each, first) ? each : first;
      }
      lengthMm[sample.grade] += lengthOf(stretch);
      stretches.push({
        grade: sample.grade,
        path: Float64Array.from(stretch.flatMap(({ at }) => at)),
        goneMm: Float64Array.from(stretch, ({ goneMm }) => goneMm),
        holdsMm: Float64Array.from(stretch, ({ holdsMm }) => holdsMm),
      });
    }
  }
  const first = firsts.stroke ?? firsts.taper;
  return {
    planMm: setting.planMm,
    stretches,
    lengthMm,
    goesFirstAt: first?.at ?? null,
    goesFirstMm: first?.goneMm ?? 0,
  };
}

/** A point on a stroke. */
interface Sample {
  readonly at: Point;
  readonly widthMm: number;
  /** `null` where nothing is cut. */
  readonly grade: LevellingGrade | null;
  readonly goneMm: number;
  readonly holdsMm: number;
}

/** Of two that stand the same, the narrower one goes first. */
function goesBefore(a: Sample, b: Sample): boolean {
  const difference = a.goneMm - b.goneMm;
  return Math.abs(difference) > EQUAL_MARGINS_TOL_MM ? difference < 0 : a.widthMm < b.widthMm;
}

/** The samples of a line, split where the grade changes; both parts contain that point. */
function gradedParts({ path, widths }: StrokeLine, setting: MapSetting): readonly (readonly Sample[])[] {
  const sample = (k: number): Sample =>
    sampleAt([path[2 * k] as number, path[2 * k + 1] as number], widths[k] as number, setting);
  const parts: Sample[][] = [];
  let before = sample(0);
  let part: Sample[] = [before];
  for (let k = 1; k < widths.length; k++) {
    const end = sample(k);
    // the grade may change several times between two points
    while (before.grade !== end.grade) {
      const [stays, changes] = changeBetween(before, end, setting);
      parts.push([...part, stays]);
      part = [changes];
      before = changes;
    }
    part.push(end);
    before = end;
  }
  return [...parts, part].filter((each) => each.length > 1);
}

/** The last sample of the first grade and the first one of the next, between two samples. */
function changeBetween(from: Sample, to: Sample, setting: MapSetting): readonly [Sample, Sample] {
  let [low, high] = [from, to];
  for (let gap = 1; gap > CHANGE_SHARE; gap /= 2) {
    const middle = sampleAt(
      [(low.at[0] + high.at[0]) / 2, (low.at[1] + high.at[1]) / 2],
      (low.widthMm + high.widthMm) / 2,
      setting,
    );
    if (middle.grade === from.grade) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return [low, high];
}

function sampleAt(at: Point, widthMm: number, setting: MapSetting): Sample {
  const section = widthMm > 0 ? setting.sectionAt(widthMm) : null;
  if (section === null) {
    return { at, widthMm, grade: null, goneMm: 0, holdsMm: 0 };
  }
  const shop: StrokeShop = { ...setting.shop, shallowByMm: setting.shallowAt(at) };
  const margin = strokeMargin(section, shop, setting.needs);
  const holdsMm = Math.min(margin.goneMm, margin.thinMm, margin.shallowMm);
  return { at, widthMm, grade: gradeOf(margin, holdsMm, setting.planMm), goneMm: margin.goneMm, holdsMm };
}

function gradeOf({ goneMm }: StrokeMargin, holdsMm: number, planMm: number): LevellingGrade {
  if (goneMm <= planMm) {
    return 'lost';
  }
  if (holdsMm < planMm) {
    return 'spoilt';
  }
  return holdsMm < CLOSE_FACTOR * planMm ? 'close' : 'holds';
}

function lengthOf(stretch: readonly Sample[]): number {
  let sum = 0;
  for (let k = 1; k < stretch.length; k++) {
    const [a, b] = [stretch[k - 1]?.at ?? [0, 0], stretch[k]?.at ?? [0, 0]];
    sum += Math.hypot(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
}
