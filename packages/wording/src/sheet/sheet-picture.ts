import type { Bounds, Rings } from '@pourproof/plane';
import type { Picture, PicturedBlock } from '@pourproof/proof';
import type { FindingEntry } from '../findings/finding-entries.ts';
import type { Vetted } from '../vetted.ts';
import { escapeXml } from './escape-xml.ts';
import { obstacleShapes } from './obstacle-shapes.ts';
import { digits, linePath, ringsPath } from './path-data.ts';
import { type Mark, placeMarks } from './place-marks.ts';
import { scaleBar } from './scale-bar.ts';

/** Room for the picture on A4 and on Letter inside the margins, mm on paper. */
const ROOM_MM: readonly [number, number] = [182, 124];
/** Ratios that are easy to measure with, the largest first. */
const RATIOS: readonly number[] = [
  10,
  5,
  4,
  3,
  2,
  1.5,
  1,
  1 / 2,
  1 / 3,
  1 / 4,
  1 / 5,
  1 / 8,
  1 / 10,
  1 / 20,
  1 / 50,
];
/** Free room around the artwork, mm on paper. */
const MARGIN_MM = 9.5;
/** Radius of a numbered disc, mm on paper. */
const DISC_MM = 2.5;
/** Places marked in the picture for one finding; more would hide what they mark. */
const MAX_MARKS = 8;
const MAX_NOTE_MARKS = 3;
/** Height under the artwork for the scale bar, mm on paper. */
const BAR_ROOM_MM = 9;

/** The picture of a sheet and what its caption has to say. */
export interface SheetPicture {
  readonly svg: string;
  readonly ratioText: string;
  /** Places that got no mark for want of room. */
  readonly unmarked: number;
}

/**
 * The artwork, cut and all places at risk as inline SVG, drawn in a round ratio to real size.
 *
 * @param id unique in the document; the drawn shapes are reused by the enlargements as `#<id>-shapes`
 */
export function sheetPicture(
  { picture, job }: Vetted,
  entries: readonly FindingEntry[],
  id: string,
): SheetPicture {
  const ratio = ratioFor(picture.boundsMm);
  const paper = 1 / ratio;
  const [left, top, right, bottom] = picture.boundsMm;
  const pad = MARGIN_MM * paper;
  const box: Bounds = [left - pad, top - pad, right + pad, bottom + pad];
  const width = box[2] - box[0];
  const height = box[3] - box[1] + BAR_ROOM_MM * paper;
  const shown = entries.flatMap((entry) =>
    entry.places.slice(0, entry.severity === 'note' ? MAX_NOTE_MARKS : MAX_MARKS),
  );
  const marks = placeMarks(shown, DISC_MM * paper, { bounds: box, drawn: picture.artwork });
  const svg = [
    `<svg class="picture" xmlns="http://www.w3.org/2000/svg" width="${digits(width * ratio)}mm" height="${digits(height * ratio)}mm" viewBox="${[box[0], box[1], width, height].map(digits).join(' ')}" role="img" aria-label="The artwork with what is cut, what stays wood and the marked places">`,
    patterns(id, paper),
    `<rect x="${digits(box[0])}" y="${digits(box[1])}" width="${digits(width)}" height="${digits(box[3] - box[1])}" fill="#fff"/>`,
    ...picture.blocks.map((block, k) =>
      fibres(box, block, { paper, id: `${id}-${k}`, dots: `${id}-fibre-ends` }),
    ),
    frame(box, paper),
    `<g id="${id}-shapes">${shapes(picture, id)}</g>`,
    obstacles(box, picture, id),
    marks.map((mark) => markSvg(mark, paper)).join(''),
    bar(box, { paper, unit: job.units }),
    '</svg>',
  ].join('\n');
  const all = entries.reduce((sum, entry) => sum + entry.places.length, 0);
  return { svg, ratioText: ratioText(ratio), unmarked: all - shown.length };
}

function ratioFor([left, top, right, bottom]: Bounds): number {
  const fits = (ratio: number): boolean =>
    (right - left) * ratio + 2 * MARGIN_MM <= ROOM_MM[0] &&
    (bottom - top) * ratio + 2 * MARGIN_MM <= ROOM_MM[1];
  return (
    RATIOS.find(fits) ??
    Math.min((ROOM_MM[0] - 2 * MARGIN_MM) / (right - left), (ROOM_MM[1] - 2 * MARGIN_MM) / (bottom - top))
  );
}

function ratioText(ratio: number): string {
  if (!RATIOS.includes(ratio)) {
    return 'Not to a round scale: the artwork is larger than the sheet can show.';
  }
  if (ratio === 1) {
    return 'Printed at 100 % this picture is in real size.';
  }
  return ratio > 1
    ? `Printed at 100 % this picture is ${ratio} times real size.`
    : `Printed at 100 % this picture is 1/${Math.round(1 / ratio)} of real size.`;
}

/** Fine lines for what is cut; spacing in mm on paper. */
function patterns(id: string, paper: number): string {
  const step = 1.15 * paper;
  return [
    '<defs>',
    `<pattern id="${id}-cut" width="${digits(step)}" height="${digits(step)}" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">`,
    `<rect width="${digits(step)}" height="${digits(step)}" fill="#e6ecf3"/><path d="M0 ${digits(step / 2)}H${digits(step)}" stroke="#3d5a80" stroke-width="${digits(0.16 * paper)}"/>`,
    '</pattern>',
    `<pattern id="${id}-fibre-ends" width="${digits(6 * paper)}" height="${digits(6 * paper)}" patternUnits="userSpaceOnUse"><circle cx="${digits(2 * paper)}" cy="${digits(2 * paper)}" r="${digits(0.5 * paper)}" fill="none" stroke="#cdbfa6" stroke-width="${digits(0.2 * paper)}"/></pattern>`,
    '</defs>',
  ].join('');
}

/** Faint lines along the fibres of a block behind the artwork; rings where the face shows their ends. */
function fibres(
  [left, top, right, bottom]: Bounds,
  { outline, grainDeg, diveDeg }: PicturedBlock,
  { paper, id, dots }: { readonly paper: number; readonly id: string; readonly dots: string },
): string {
  const whole = `<path d="M${digits(left)} ${digits(top)}H${digits(right)}V${digits(bottom)}H${digits(left)}Z"/>`;
  const edge =
    outline === null
      ? ''
      : `<path d="${ringsPath(outline)}" fill="none" stroke="#7c715a" stroke-width="${digits(0.3 * paper)}"/>`;
  const face = outline === null ? whole : `<path d="${ringsPath(outline)}"/>`;
  const [cx, cy] = [(left + right) / 2, (top + bottom) / 2];
  const reach = Math.hypot(right - left, bottom - top) / 2;
  const step = 4.5 * paper;
  let path = '';
  for (let y = -Math.floor(reach / step) * step; y <= reach; y += step) {
    path += `M${digits(-reach)} ${digits(y)}H${digits(reach)}`;
  }
  const lines =
    diveDeg >= 45
      ? `<g fill="url(#${dots})">${whole}</g>`
      : // y points down, so a counter-clockwise turn as seen is a negative one here
        `<path class="fibres" transform="translate(${digits(cx)} ${digits(cy)}) rotate(${digits(-grainDeg)})" d="${path}" stroke-width="${digits(0.2 * paper)}" stroke-dasharray="${digits(22 * paper)} ${digits(1.5 * paper)} ${digits(9 * paper)} ${digits(1.5 * paper)}"/>`;
  // a block may reach beyond the picture
  return [
    `<clipPath id="${id}-window">${whole}</clipPath><clipPath id="${id}-block">${face}</clipPath>`,
    `<g clip-path="url(#${id}-window)"><g clip-path="url(#${id}-block)">${lines}</g>${edge}</g>`,
  ].join('');
}

function frame([left, top, right, bottom]: Bounds, paper: number): string {
  return `<rect x="${digits(left)}" y="${digits(top)}" width="${digits(right - left)}" height="${digits(bottom - top)}" fill="none" stroke="#aab0ba" stroke-width="${digits(0.2 * paper)}"/>`;
}

function shapes(picture: Picture, id: string): string {
  const narrow = picture.narrow.map((each) => linePath(each.path)).join('');
  return [
    area(picture.artwork, 'fill="#fff"'),
    area(picture.cut, `fill="url(#${id}-cut)"`),
    area(picture.cut, 'class="cut-edge"'),
    ...picture.depths.map(({ outline }) => area(outline, 'class="depth"')),
    ...picture.standing.map((rings) => area(rings, 'class="standing"')),
    area(picture.artwork, 'class="outline"'),
    picture.bleedWalls.length === 0
      ? ''
      : `<path class="bleed" d="${picture.bleedWalls.map((wall) => linePath(wall)).join('')}"/>`,
    narrow === '' ? '' : `<path class="narrow-ground" d="${narrow}"/><path class="narrow" d="${narrow}"/>`,
  ].join('');
}

/** Holes and clamps over all else, as far as the picture reaches. */
function obstacles([left, top, right, bottom]: Bounds, picture: Picture, id: string): string {
  const drawn = obstacleShapes(picture);
  return drawn === ''
    ? ''
    : `<clipPath id="${id}-face"><path d="M${digits(left)} ${digits(top)}H${digits(right)}V${digits(bottom)}H${digits(left)}Z"/></clipPath><g class="obstacles" clip-path="url(#${id}-face)">${drawn}</g>`;
}

function area(rings: Rings, paint: string): string {
  return rings.ringEnds.length === 0 ? '' : `<path fill-rule="evenodd" ${paint} d="${ringsPath(rings)}"/>`;
}

function markSvg({ label, atMm, discMm }: Mark, paper: number): string {
  const [x, y] = atMm.map(digits);
  const [cx, cy] = discMm.map(digits);
  const r = DISC_MM * paper;
  return [
    `<g class="mark"><path d="M${x} ${y}L${cx} ${cy}" stroke="#14213d" stroke-width="${digits(0.25 * paper)}"/>`,
    `<circle cx="${x}" cy="${y}" r="${digits(0.45 * paper)}" fill="#14213d"/>`,
    `<g class="disc"><circle cx="${cx}" cy="${cy}" r="${digits(r)}" fill="#fffefb" stroke="#14213d" stroke-width="${digits(0.3 * paper)}"/>`,
    `<text x="${cx}" y="${digits(discMm[1] + 0.36 * r)}" font-size="${digits((label.length > 2 ? 2.1 : 2.7) * paper)}" text-anchor="middle" font-weight="600">${escapeXml(label)}</text></g></g>`,
  ].join('');
}

/** A bar of black and white parts, with its length beside it. */
function bar(box: Bounds, { paper, unit }: { readonly paper: number; readonly unit: 'mm' | 'in' }): string {
  const { lengthMm, label, parts } = scaleBar(box[2] - box[0], unit);
  const x = box[0];
  const y = box[3] + 4 * paper;
  const part = lengthMm / parts;
  const height = 1.6 * paper;
  const blocks = Array.from(
    { length: parts },
    (_, k) =>
      `<rect x="${digits(x + k * part)}" y="${digits(y)}" width="${digits(part)}" height="${digits(height)}" fill="${k % 2 === 0 ? '#14213d' : '#fff'}" stroke="#14213d" stroke-width="${digits(0.2 * paper)}"/>`,
  ).join('');
  return `<g class="bar">${blocks}<text x="${digits(x + lengthMm + 2 * paper)}" y="${digits(y + height)}" font-size="${digits(2.9 * paper)}">${label}</text></g>`;
}
