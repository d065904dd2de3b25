import { levelMethods } from '@pourproof/materials';
import { formatLength, type LengthUnit } from '@pourproof/plane';
import type { Picture, PicturedGrade, PicturedGradeId, PicturedLevelling } from '@pourproof/proof';
import { GRADE_WORDS } from '../facts/grade-words.ts';
import { counted } from '../findings/parts-of-sentences.ts';
import type { Vetted } from '../vetted.ts';
import { keySample } from './key-sample.ts';
import { digits, linePath, ringsPath } from './path-data.ts';

/** Room for the figure inside the margins, mm on paper. */
const ROOM_MM: readonly [number, number] = [182, 80];
/** Free room around the artwork, mm on paper. */
const MARGIN_MM = 5;
/** A drawing without extent is scaled as if it had this, mm. */
const MIN_EXTENT_MM = 1e-9;
/** Never drawn larger than this times real size. */
const LARGEST = 3;

/**
 * A figure of every stroke and every area by what the planned levelling leaves of it, with its legend; nothing
 * where all of them hold twice the plan. Each grade is drawn by weight and pattern, so that it reads without colour.
 */
export function levellingFigure({ picture, report, job }: Vetted): string {
  const { levelling } = picture;
  if (levelling.grades.every((each) => each.grade === 'holds' || each.grade === 'uncut' || isEmpty(each))) {
    return '';
  }
  return [
    '<h2>What levelling leaves</h2>',
    `<figure>${drawing(picture)}`,
    `<ul class="key">${levelling.grades.map((each) => keyItem(each, job.units)).join('')}${firstItem(levelling)}</ul>`,
    `<figcaption>Strokes along their middle and areas by their outline, under ${formatLength(levelling.planMm, job.units)} off the face (${levelMethods[report.levelling.method].name}). Not to scale.</figcaption></figure>`,
  ].join('');
}

function isEmpty({ lines, outlines }: PicturedGrade): boolean {
  return lines.length + outlines.length === 0;
}

function drawing({ artwork, levelling, boundsMm: [left, top, right, bottom] }: Picture): string {
  const ratio = Math.min(
    LARGEST,
    (ROOM_MM[0] - 2 * MARGIN_MM) / Math.max(right - left, MIN_EXTENT_MM),
    (ROOM_MM[1] - 2 * MARGIN_MM) / Math.max(bottom - top, MIN_EXTENT_MM),
  );
  const pad = MARGIN_MM / ratio;
  const width = right - left + 2 * pad;
  const height = bottom - top + 2 * pad;
  const at = levelling.goesFirstAt;
  return [
    `<svg class="picture" xmlns="http://www.w3.org/2000/svg" width="${digits(width * ratio)}mm" height="${digits(height * ratio)}mm" viewBox="${[left - pad, top - pad, width, height].map(digits).join(' ')}" role="img" aria-label="Strokes and areas by what levelling leaves of them">`,
    `<path class="pale" fill-rule="evenodd" d="${ringsPath(artwork)}"/>`,
    // the gravest last, so that it lies on top
    ...levelling.grades.toReversed().map((each) => lines(each.grade, gradePath(each))),
    at === null ? '' : flag(at[0], at[1], 1 / ratio),
    '</svg>',
  ].join('');
}

/** All lines and outlines of one grade as path data. */
export function gradePath({ lines: open, outlines }: PicturedGrade): string {
  return [...open.map(linePath), ...outlines.map(ringsPath)].join('');
}

function lines(grade: PicturedGradeId, path: string): string {
  if (path === '') {
    return '';
  }
  const ground = grade === 'lost' || grade === 'spoilt' ? `<path class="level-ground" d="${path}"/>` : '';
  return `${ground}<path class="level-${grade}" d="${path}"/>`;
}

/** A pennant on a pole that stands on the place. */
function flag(x: number, y: number, paper: number): string {
  const tip = y - 6 * paper;
  return `<path class="level-flag" d="M${digits(x)} ${digits(y)}V${digits(tip)}L${digits(x + 3.2 * paper)} ${digits(tip + 1.4 * paper)}L${digits(x)} ${digits(tip + 2.8 * paper)}"/>`;
}

function keyItem(each: PicturedGrade, unit: LengthUnit): string {
  return isEmpty(each)
    ? ''
    : keySample(
        lines(each.grade, 'M3 9.5H31'),
        `${GRADE_WORDS[each.grade]}: ${gradeSize(each.lengthMm, each.outlines.length, unit)}`,
      );
}

/** How much there is of a grade: `12 mm of stroke and 3 areas`. */
export function gradeSize(lengthMm: number, areaCount: number, unit: LengthUnit): string {
  return [
    ...(lengthMm > 0 ? [`${formatLength(lengthMm, unit)} of stroke`] : []),
    ...(areaCount > 0 ? [counted(areaCount, 'area')] : []),
  ].join(' and ');
}

function firstItem({ goesFirstAt }: PicturedLevelling): string {
  return goesFirstAt === null ? '' : keySample(flag(14, 17, 2.4), 'colour goes here first');
}
