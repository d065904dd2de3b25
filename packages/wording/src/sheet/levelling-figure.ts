import { levelMethods } from '@pourproof/materials';
import { formatLength, type LengthUnit } from '@pourproof/plane';
import type { LevellingGrade, LevellingMap, Picture } from '@pourproof/proof';
import { GRADE_WORDS } from '../facts/grade-words.ts';
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

/** The gravest first; each is drawn by weight and pattern, so that it reads without colour. */
const GRADES = Object.keys(GRADE_WORDS) as readonly LevellingGrade[];

/**
 * A figure of every stroke by what the planned levelling leaves of it, with its legend and lengths; nothing
 * where every stroke holds twice the plan.
 */
export function levellingFigure({ picture, report, job }: Vetted): string {
  const { levelling } = picture;
  const { lost, spoilt, close } = levelling.lengthMm;
  if (lost + spoilt + close === 0) {
    return '';
  }
  return [
    '<h2>What levelling leaves</h2>',
    `<figure>${drawing(picture)}`,
    `<ul class="key">${GRADES.map((grade) => keyItem(grade, levelling, job.units)).join('')}${firstItem(levelling)}</ul>`,
    `<figcaption>Strokes along their middle, under ${formatLength(levelling.planMm, job.units)} off the face (${levelMethods[report.levelling.method].name}). Not to scale.</figcaption></figure>`,
  ].join('');
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
    `<svg class="picture" xmlns="http://www.w3.org/2000/svg" width="${digits(width * ratio)}mm" height="${digits(height * ratio)}mm" viewBox="${[left - pad, top - pad, width, height].map(digits).join(' ')}" role="img" aria-label="The strokes by what levelling leaves of them">`,
    `<path class="pale" fill-rule="evenodd" d="${ringsPath(artwork)}"/>`,
    // the gravest last, so that it lies on top
    ...GRADES.toReversed().map((grade) => lines(grade, gradePath(levelling, grade))),
    at === null ? '' : flag(at[0], at[1], 1 / ratio),
    '</svg>',
  ].join('');
}

/** All stretches of one grade as path data. */
export function gradePath({ stretches }: LevellingMap, grade: LevellingGrade): string {
  return stretches
    .filter((stretch) => stretch.grade === grade)
    .map(({ path }) => linePath(path))
    .join('');
}

function lines(grade: LevellingGrade, path: string): string {
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

function keyItem(grade: LevellingGrade, levelling: LevellingMap, unit: LengthUnit): string {
  const length = levelling.lengthMm[grade];
  return length === 0
    ? ''
    : keySample(lines(grade, 'M3 9.5H31'), `${GRADE_WORDS[grade]}: ${formatLength(length, unit)} of stroke`);
}

function firstItem({ goesFirstAt }: LevellingMap): string {
  return goesFirstAt === null ? '' : keySample(flag(14, 17, 2.4), 'colour goes here first');
}
