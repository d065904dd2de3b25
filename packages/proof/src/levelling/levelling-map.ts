import type { SeparatePart, StrokeLine } from '@pourproof/geometry';
import { type Point, poll } from '@pourproof/plane';
import { type CutMargins, cutMargins, type LevelledForm, type LineMargins, marginAt } from './cut-margins.ts';
import {
  goesFirst,
  gradedParts,
  gradeOf,
  holdsOf,
  type LevellingGrade,
  type MapSetting,
} from './graded-parts.ts';
import { levelledDot } from './round-section.ts';
import {
  type LevelledStroke,
  levelledStroke,
  marginFor,
  type SectionMargin,
  type StrokeMargin,
  type StrokeNeeds,
  type StrokeShop,
} from './stroke-margin.ts';
import { type StrokeSection, sectionWidth } from './stroke-section.ts';

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

/**
 * Grades every stroke by what levelling leaves of it, split where the grade changes, and every part without a stroke. Margins are exact at the
 * points; between them the width is taken as linear, as it is between straight walls. What no bit enters is told apart.
 *
 * @param margins those of the lines and parts, with the same setting
 */
export function levellingMap(
  lines: readonly StrokeLine[],
  parts: readonly SeparatePart[],
  setting: MapSetting,
  margins: CutMargins = cutMargins(lines, parts, setting),
): LevellingMap {
  const stretches: GradedStretch[] = [];
  const uncut: Float64Array[] = [];
  for (const [k, line] of lines.entries()) {
    poll();
    for (const { grade, points, narrowestMm, first } of gradedParts(
      line,
      margins.lines[k] as LineMargins,
      setting,
    )) {
      const path = Float64Array.from(points);
      const place = grade === null ? null : placeAt(first.at, first.widthMm, 'stroke', setting);
      if (grade === null || place === null) {
        uncut.push(path);
        continue;
      }
      stretches.push({
        grade,
        kind: line.kind,
        part: line.part,
        path,
        lengthMm: lengthOf(path),
        narrowestMm,
        first: place,
      });
    }
  }
  const firsts = partsOf(stretches, parts, margins, setting);
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
  margins: CutMargins,
  setting: MapSetting,
): readonly LevelledPart[] {
  const ofStrokes = new Map<number, LevelledPlace>();
  for (const { kind, part, first } of stretches) {
    if (kind === 'stroke') {
      const known = ofStrokes.get(part);
      ofStrokes.set(part, known === undefined ? first : goesFirst(known, first));
    }
  }
  return parts.map(({ part, atMm, widthMm }, k) => {
    const last = placeAt(atMm, widthMm, 'dot', setting, margins.dots[k]);
    return { part, atMm, first: ofStrokes.get(part) ?? last, last };
  });
}

/** What may come off at a place; `null` where no bit enters. */
function placeAt(
  atMm: Point,
  widthMm: number,
  form: LevelledForm,
  setting: MapSetting,
  known: SectionMargin | null = marginAt(atMm, widthMm, form, setting),
): LevelledPlace | null {
  const { planMm, sectionAt, shallowAt, needsAt, keeps } = setting;
  const section = known === null ? null : sectionAt(widthMm);
  if (known === null || section === null) {
    return null;
  }
  // a place has many fields, and copies of them all by spreading would take longer than the rest
  const { shallowestMm, faintMm } = needsAt(atMm);
  const { narrowestMm, faintWidthMm } = keeps;
  const needs = { narrowestMm, shallowestMm, faintMm, faintWidthMm };
  const margin = marginFor(known, needs);
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
    leftMm: known.colourDepthMm - planMm,
    mostLeftMm: known.mostDepthMm - planMm,
    leftWidthMm: sectionWidth(section, section.depthMm - planMm - shallowAt(atMm)),
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
