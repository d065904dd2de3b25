import type { SeparatePart, StrokeLine } from '@pourproof/geometry';
import type { Point } from '@pourproof/plane';
import { levelledDot } from './round-section.ts';
import {
  type LevelledStroke,
  levelledStroke,
  marginOf,
  type StrokeMargin,
  type StrokeNeeds,
  type StrokeShop,
} from './stroke-margin.ts';
import { type StrokeSection, sectionWidth } from './stroke-section.ts';

/**
 * What the planned levelling does to a part: no colour worth the name is left (`lost`); it gets too narrow or too shallow
 * (`spoilt`); it would at twice the plan (`close`); none of these (`holds`).
 */
export type LevellingGrade = 'lost' | 'spoilt' | 'close' | 'holds';

/** A stroke is judged by its section, a part without one as a round pocket as wide as its largest inscribed disc. */
export type LevelledForm = 'stroke' | 'dot';

/** A place of the cut with what may come off the face there. Lengths in mm. */
export interface LevelledPlace extends StrokeMargin {
  readonly atMm: Point;
  readonly form: LevelledForm;
  /** Width at the face. */
  readonly widthMm: number;
  /** Least of what may come off before it is gone, too narrow or too shallow. */
  readonly holdsMm: number;
  /** Depth of colour that the plan leaves with the seal drained to the bottom; nothing is left if it is negative. */
  readonly leftMm: number;
  /** The same where the seal stays on floor and walls. */
  readonly mostLeftMm: number;
  /** Width that the plan leaves: between sloping walls it narrows as the face comes down. */
  readonly leftWidthMm: number;
  /** What colour must keep here. */
  readonly needs: StrokeNeeds;
}

/** A stretch of stroke of one grade, along its centre line. */
export interface GradedStretch {
  readonly grade: LevellingGrade;
  readonly kind: StrokeLine['kind'];
  /** Number of the separate part that it is in. */
  readonly part: number;
  /** `[x0, y0, x1, y1, …]`, open, mm. */
  readonly path: Float64Array;
  readonly lengthMm: number;
  readonly narrowestMm: number;
  /** Where colour goes first. */
  readonly first: LevelledPlace;
}

/** A separate part without a stroke that is cut: a dot, a square, a heart; judged at its widest place. */
export interface GradedArea {
  readonly grade: LevellingGrade;
  readonly first: LevelledPlace;
}

/** A separate part of the artwork with the place at which colour goes first. */
export interface LevelledPart {
  /** Its number. */
  readonly part: number;
  /** Middle of its largest inscribed disc. */
  readonly atMm: Point;
  /** `null` for a part that no bit enters: nothing can be said of what may come off. */
  readonly first: LevelledPlace | null;
  /** Where colour goes last: its widest place, as a round pocket; `null` where no bit enters. */
  readonly last: LevelledPlace | null;
}

/** A cut graded by how much levelling it stands: its strokes, and its parts that have none. */
export interface LevellingMap {
  readonly planMm: number;
  readonly stretches: readonly GradedStretch[];
  readonly areas: readonly GradedArea[];
  readonly parts: readonly LevelledPart[];
  /** Length of stroke by grade, mm. */
  readonly lengthMm: Readonly<Record<LevellingGrade, number>>;
  /** Strokes that no bit enters, along their middle: they are never cut. */
  readonly uncut: readonly Float64Array[];
  readonly uncutMm: number;
  /** Where colour goes first; `null` if nothing is cut. */
  readonly first: LevelledPlace | null;
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
  /** What a stroke must keep at a point: it depends on its colour. */
  readonly needsAt: (at: Point) => StrokeNeeds;
}

/** Up to this multiple of the plan a stretch counts as close (our choice: a second pass of the same tool). */
const CLOSE_FACTOR = 2;
/** Changes of grade are located to this share of the distance between two points. */
const CHANGE_SHARE = 1e-6;
/** Margins closer than this are equal, mm: rounding. */
const EQUAL_MARGINS_TOL_MM = 1e-9;

/**
 * Grades every stroke by what levelling leaves of it, split where the grade changes, and every part without a stroke. Margins are exact at the
 * points; between them the width is taken as linear, as it is between straight walls. What no bit enters is told apart.
 *
 * @param poll called at every line; what it throws ends the work
 */
export function levellingMap(
  lines: readonly StrokeLine[],
  parts: readonly SeparatePart[],
  setting: MapSetting,
  poll: () => void = () => undefined,
): LevellingMap {
  const stretches: GradedStretch[] = [];
  const uncut: Float64Array[] = [];
  for (const line of lines) {
    poll();
    for (const samples of gradedParts(line, setting)) {
      const path = Float64Array.from(samples.flatMap(({ at }) => at));
      const cut = samples.flatMap(({ place }) => (place === null ? [] : [place]));
      const [start] = cut;
      const grade = samples[0]?.grade ?? null;
      if (start === undefined || grade === null) {
        uncut.push(path);
        continue;
      }
      stretches.push({
        grade,
        kind: line.kind,
        part: line.part,
        path,
        lengthMm: lengthOf(path),
        narrowestMm: Math.min(...cut.map(({ widthMm }) => widthMm)),
        first: cut.reduce(goesFirst, start),
      });
    }
  }
  const firsts = partsOf(stretches, parts, setting);
  const cutFirsts = firsts.flatMap(({ first }) => (first === null ? [] : [first]));
  const lengthIn = (grade: LevellingGrade): number =>
    stretches.reduce((sum, each) => sum + (each.grade === grade ? each.lengthMm : 0), 0);
  return {
    planMm: setting.planMm,
    stretches,
    areas: cutFirsts
      .filter(({ form }) => form === 'dot')
      .map((first) => ({ grade: gradeOf(first, setting.planMm), first })),
    parts: firsts,
    lengthMm: {
      lost: lengthIn('lost'),
      spoilt: lengthIn('spoilt'),
      close: lengthIn('close'),
      holds: lengthIn('holds'),
    },
    uncut,
    uncutMm: uncut.reduce((sum, path) => sum + lengthOf(path), 0),
    first: cutFirsts.length === 0 ? null : cutFirsts.reduce(goesFirst),
  };
}

/** Of each part, where colour goes first: on a stroke, for a taper always ends in nothing; at its widest place where it has none. */
function partsOf(
  stretches: readonly GradedStretch[],
  parts: readonly SeparatePart[],
  setting: MapSetting,
): readonly LevelledPart[] {
  const ofStrokes = new Map<number, LevelledPlace>();
  for (const { kind, part, first } of stretches) {
    if (kind === 'stroke') {
      const known = ofStrokes.get(part);
      ofStrokes.set(part, known === undefined ? first : goesFirst(known, first));
    }
  }
  return parts.map(({ part, atMm, widthMm }) => {
    const last = placeAt(atMm, widthMm, 'dot', setting);
    return { part, atMm, first: ofStrokes.get(part) ?? last, last };
  });
}

/** The one of two places where colour goes first; of two that stand the same, the narrower one. */
function goesFirst(a: LevelledPlace, b: LevelledPlace): LevelledPlace {
  const difference = b.goneMm - a.goneMm;
  const isFirst =
    Math.abs(difference) > EQUAL_MARGINS_TOL_MM
      ? difference < 0
      : b.widthMm < a.widthMm - EQUAL_MARGINS_TOL_MM;
  return isFirst ? b : a;
}

/** A point on a stroke. */
interface Sample {
  readonly at: Point;
  readonly widthMm: number;
  /** `null` where nothing is cut. */
  readonly grade: LevellingGrade | null;
  readonly place: LevelledPlace | null;
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
  let [lowX, lowY, lowMm] = [from.at[0], from.at[1], from.widthMm];
  let [highX, highY, highMm] = [to.at[0], to.at[1], to.widthMm];
  for (let gap = 1; gap > CHANGE_SHARE; gap /= 2) {
    const [x, y, widthMm] = [(lowX + highX) / 2, (lowY + highY) / 2, (lowMm + highMm) / 2];
    if (gradeAt([x, y], widthMm, setting) === from.grade) {
      [lowX, lowY, lowMm] = [x, y, widthMm];
    } else {
      [highX, highY, highMm] = [x, y, widthMm];
    }
  }
  return [sampleAt([lowX, lowY], lowMm, setting), sampleAt([highX, highY], highMm, setting)];
}

function sampleAt(at: Point, widthMm: number, setting: MapSetting): Sample {
  const place = widthMm > 0 ? placeAt(at, widthMm, 'stroke', setting) : null;
  return { at, widthMm, grade: place === null ? null : gradeOf(place, setting.planMm), place };
}

/** The grade of a stroke of a width alone; `null` where nothing is cut. */
function gradeAt(at: Point, widthMm: number, setting: MapSetting): LevellingGrade | null {
  const section = widthMm > 0 ? setting.sectionAt(widthMm) : null;
  if (section === null) {
    return null;
  }
  const { filmMm, shrinkagePct } = setting.shop;
  const shop = { filmMm, shrinkagePct, shallowByMm: setting.shallowAt(at) };
  const margin = marginOf(levelledStroke(section, shop, 0), section, shop, setting.needsAt(at));
  return gradeOf({ lostMm: margin.lostMm, holdsMm: holdsOf(margin) }, setting.planMm);
}

function holdsOf({ goneMm, thinMm, shallowMm }: StrokeMargin): number {
  return Math.min(goneMm, thinMm, shallowMm);
}

/** What may come off at a place; `null` where no bit enters. */
function placeAt(
  atMm: Point,
  widthMm: number,
  form: LevelledForm,
  { planMm, sectionAt, shop, shallowAt, needsAt }: MapSetting,
): LevelledPlace | null {
  const section = sectionAt(widthMm);
  if (section === null) {
    return null;
  }
  // a place has many fields and there are many places: copies of them all would take longer than the rest
  const here = { filmMm: shop.filmMm, shrinkagePct: shop.shrinkagePct, shallowByMm: shallowAt(atMm) };
  const before = levelledAs(form, section, here, 0);
  const needs = needsAt(atMm);
  const margin = marginOf(before, section, here, needs);
  return {
    goneMm: margin.goneMm,
    lostMm: margin.lostMm,
    unseenMm: margin.unseenMm,
    thinMm: margin.thinMm,
    shallowMm: margin.shallowMm,
    atMm,
    form,
    widthMm,
    holdsMm: holdsOf(margin),
    leftMm: before.colourDepthMm - planMm,
    mostLeftMm: before.mostDepthMm - planMm,
    leftWidthMm: sectionWidth(section, section.depthMm - planMm - here.shallowByMm),
    needs,
  };
}

/** What levelling leaves of a stroke or a dot with this section. */
export function levelledAs(
  form: LevelledForm,
  section: StrokeSection,
  shop: StrokeShop,
  removedMm: number,
): LevelledStroke {
  return form === 'dot' ? levelledDot(section, shop, removedMm) : levelledStroke(section, shop, removedMm);
}

/** What is at a limit but for rounding is at it, mm. */
export const ROUNDING_MM = 1e-9;

/** What a plan does to a place. */
export function gradeOf(
  { lostMm, holdsMm }: Pick<LevelledPlace, 'lostMm' | 'holdsMm'>,
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

function lengthOf(path: Float64Array): number {
  let sum = 0;
  for (let i = 0; i + 3 < path.length; i += 2) {
    sum += Math.hypot(
      (path[i + 2] as number) - (path[i] as number),
      (path[i + 3] as number) - (path[i + 1] as number),
    );
  }
  return sum;
}
