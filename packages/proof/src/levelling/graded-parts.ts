import type { StrokeLine } from '@pourproof/geometry';
import { type Point, pollStep } from '@pourproof/plane';
import { type LineMargins, type MarginSetting, marginAt } from './cut-margins.ts';
import { type DepthNeeds, marginFor, type SectionMargin, type StrokeMargin } from './stroke-margin.ts';

/**
 * What the planned levelling does to a part: no colour worth the name is left (`lost`); it gets too narrow or too shallow
 * (`spoilt`); it would at twice the plan (`close`); none of these (`holds`).
 */
export type LevellingGrade = 'lost' | 'spoilt' | 'close' | 'holds';

/** What a map depends on. */
export interface MapSetting extends MarginSetting {
  /** What levelling takes off, mm. */
  readonly planMm: number;
  /** How deep colour must stay at a point: it depends on the colour. */
  readonly needsAt: (at: Point) => DepthNeeds;
}

/** Up to this multiple of the plan a stretch counts as close (our choice: a second pass of the same tool). */
const CLOSE_FACTOR = 2;
/** Changes of grade are located to this share of the distance between two points (our choice). */
const CHANGE_SHARE = 1e-6;
/** Margins closer than this are equal, mm: rounding. */
const EQUAL_MARGINS_TOL_MM = 1e-9;

/** Where colour goes and how wide it is there. */
interface Going {
  readonly goneMm: number;
  readonly widthMm: number;
}

/** The one of two places where colour goes first; of two that stand the same, the narrower one. */
export function goesFirst<T extends Going>(a: T, b: T): T {
  return goesBefore(b.goneMm, b.widthMm, a) ? b : a;
}

function goesBefore(goneMm: number, widthMm: number, known: Going): boolean {
  const difference = goneMm - known.goneMm;
  return Math.abs(difference) > EQUAL_MARGINS_TOL_MM
    ? difference < 0
    : widthMm < known.widthMm - EQUAL_MARGINS_TOL_MM;
}

/** A point on a stroke. */
interface Sample {
  readonly at: Point;
  readonly widthMm: number;
  /** `null` where nothing is cut. */
  readonly grade: LevellingGrade | null;
  readonly goneMm: number;
  readonly lostMm: number;
  readonly holdsMm: number;
}

/** A stretch of a line whose points have one grade, `null` where nothing is cut. */
export interface GradedPart {
  readonly grade: LevellingGrade | null;
  readonly points: number[];
  narrowestMm: number;
  first: Sample;
}

/** The points of a line, split where the grade changes; both parts contain that point. */
export function gradedParts(
  line: StrokeLine,
  margins: LineMargins,
  setting: MapSetting,
): readonly GradedPart[] {
  const { widths } = line;
  const parts: GradedPart[] = [];
  let before = sampleOf(line, margins, 0, setting);
  let part = begunAt(before);
  for (let k = 1; k < widths.length; k++) {
    pollStep();
    const end = sampleOf(line, margins, k, setting);
    // the grade may change several times between two points
    while (before.grade !== end.grade) {
      const [stays, changes] = changeBetween(before, end, setting);
      extend(part, stays);
      parts.push(part);
      part = begunAt(changes);
      before = changes;
    }
    extend(part, end);
    before = end;
  }
  return [...parts, part].filter(({ points }) => points.length > 2);
}

function begunAt(first: Sample): GradedPart {
  return { grade: first.grade, points: [...first.at], narrowestMm: first.widthMm, first };
}

function extend(part: GradedPart, sample: Sample): void {
  part.points.push(sample.at[0], sample.at[1]);
  part.narrowestMm = Math.min(part.narrowestMm, sample.widthMm);
  part.first = goesFirst(part.first, sample);
}

/** Point k of a line. */
function sampleOf(
  { path, widths }: StrokeLine,
  margins: LineMargins,
  k: number,
  setting: MapSetting,
): Sample {
  const at: Point = [path[2 * k] as number, path[2 * k + 1] as number];
  const colourDepthMm = margins.colourDepthMm[k] as number;
  const mostDepthMm = margins.mostDepthMm[k] as number;
  const unseenMm = margins.unseenMm[k] as number;
  const thinMm = margins.thinMm[k] as number;
  const isCut = !Number.isNaN(colourDepthMm);
  return graded(
    at,
    widths[k] as number,
    isCut ? { colourDepthMm, mostDepthMm, unseenMm, thinMm } : null,
    setting,
  );
}

/** Steps of a search after which it halves what is left whatever it knows (our choice). */
const STEPS_TO_HALVING = 3;

/**
 * The last sample of the first grade and the first one of the next, between two samples: where the straight line between what is to spare at both
 * ends says, or half way where that gets nowhere (Dowell and Jarratt 1971).
 */
function changeBetween(from: Sample, to: Sample, setting: MapSetting): readonly [Sample, Sample] {
  const at = (share: number): Sample => {
    const [x, y] = [
      from.at[0] + share * (to.at[0] - from.at[0]),
      from.at[1] + share * (to.at[1] - from.at[1]),
    ];
    return sampleAt([x, y], from.widthMm + share * (to.widthMm - from.widthMm), setting);
  };
  const { planMm } = setting;
  let [low, stays, spareLow] = [0, from, toSpare(from, from.grade, planMm)];
  let [high, changes, spareHigh] = [1, to, toSpare(to, from.grade, planMm)];
  for (let step = 1; high - low > CHANGE_SHARE; step++) {
    const isHalving = step % STEPS_TO_HALVING === 0 || !Number.isFinite(spareLow - spareHigh);
    const guess = isHalving ? (low + high) / 2 : low + ((high - low) * spareLow) / (spareLow - spareHigh);
    // just beyond where it is thought to be, so that both ends come near
    const share = Math.min(high - CHANGE_SHARE / 2, Math.max(low + CHANGE_SHARE / 2, guess));
    const sample = at(share);
    const spare = toSpare(sample, from.grade, planMm);
    if (sample.grade === from.grade) {
      [low, stays, spareLow, spareHigh] = [share, sample, spare, spareHigh / 2];
    } else {
      [high, changes, spareHigh, spareLow] = [share, sample, spare, spareLow / 2];
    }
  }
  return [stays, changes];
}

/** How far what may come off is from where a sample would have a grade no longer, mm; negative where it has another. */
function toSpare(
  { grade: own, lostMm, holdsMm }: Sample,
  grade: LevellingGrade | null,
  planMm: number,
): number {
  if (own === null || grade === null) {
    return Number.NaN;
  }
  const notLost = lostMm - planMm - ROUNDING_MM;
  const notSpoilt = holdsMm - planMm + ROUNDING_MM;
  const notClose = holdsMm - CLOSE_FACTOR * planMm;
  switch (grade) {
    case 'lost':
      return -notLost;
    case 'spoilt':
      return Math.min(notLost, -notSpoilt);
    case 'close':
      return Math.min(notLost, notSpoilt, -notClose);
    default:
      return Math.min(notLost, notSpoilt, notClose);
  }
}

function sampleAt(at: Point, widthMm: number, setting: MapSetting): Sample {
  return graded(at, widthMm, marginAt(at, widthMm, 'stroke', setting), setting);
}

function graded(
  at: Point,
  widthMm: number,
  margin: SectionMargin | null,
  { needsAt, planMm }: MapSetting,
): Sample {
  if (margin === null) {
    return { at, widthMm, grade: null, goneMm: Number.NaN, lostMm: Number.NaN, holdsMm: Number.NaN };
  }
  const full = marginFor(margin, needsAt(at));
  const [lostMm, holdsMm] = [full.lostMm, holdsOf(full)];
  return { at, widthMm, grade: gradeOf({ lostMm, holdsMm }, planMm), goneMm: full.goneMm, lostMm, holdsMm };
}

export function holdsOf({ goneMm, thinMm, shallowMm }: StrokeMargin): number {
  return Math.min(goneMm, thinMm, shallowMm);
}

/** What is at a limit but for rounding is at it, mm. */
export const ROUNDING_MM = 1e-9;

/** What a plan does to a place. */
export function gradeOf(
  { lostMm, holdsMm }: Pick<StrokeMargin, 'lostMm'> & { readonly holdsMm: number },
  planMm: number,
): LevellingGrade {
  if (lostMm <= planMm + ROUNDING_MM) {
    return 'lost';
  }
  if (holdsMm < planMm - ROUNDING_MM) {
    return 'spoilt';
  }
  return holdsMm < CLOSE_FACTOR * planMm ? 'close' : 'holds';
}
