import { bitSize } from '@pourproof/job';
import { type LengthUnit, type Point, packRings, type Rings } from '@pourproof/plane';
import type { Picture, PicturedGradeId, PicturedLevelling } from '@pourproof/proof';
import { isolatedText } from '../bidi-parts.ts';
import { GRADE_WORDS } from '../facts/grade-words.ts';
import { findingEntries } from '../findings/finding-entries.ts';
import { OUTPUT_MARK } from '../output-mark.ts';
import type { Vetted } from '../vetted.ts';
import { escapeXml } from './escape-xml.ts';
import { gradePath } from './levelling-figure.ts';
import { obstacleShapes } from './obstacle-shapes.ts';
import { digits, linePath, ringsPath } from './path-data.ts';
import { type Mark, placeMarks } from './place-marks.ts';

/** Free room around the artwork for marks, mm. */
const MARGIN_MM = 12;
/** Radius of a numbered disc, mm. */
const DISC_MM = 2.4;
/** Face that colour may reach, widest first so that the likelier lies on top. */
const BLEED = [
  ['high', 'Face that colour reaches on one board in forty', 0.12],
  ['median', 'Face that colour reaches on every second board', 0.25],
  ['low', 'Face that colour reaches on nearly every board', 0.45],
] as const;
/** Weight and pattern tell the grades apart; what holds is a hairline. */
const LEVEL_PAINT: Readonly<Record<PicturedGradeId, string>> = {
  lost: 'stroke="#000000" stroke-width="0.9" stroke-dasharray="0.5 0.4"',
  spoilt: 'stroke="#000000" stroke-width="0.6" stroke-dasharray="2 0.6"',
  close: 'stroke="#000000" stroke-width="0.3" stroke-dasharray="1 0.6"',
  holds: 'stroke="#000000" stroke-width="0.08"',
  uncut: 'stroke="#b3400a" stroke-width="0.3" stroke-dasharray="0.15 0.5" stroke-linecap="round"',
};
/**
 * Places of one finding that get a numbered disc; more would cover the artwork, so the rest are dots that
 * carry their number as a title.
 */
const MAX_DISCS = 12;

/**
 * A drawing in real size (one user unit is one millimetre, in the artwork's own coordinates) with one named
 * group each for the artwork, the cut, what is left standing, narrow strokes, walls at risk, and numbered
 * marks.
 */
export function overlaySvg({ report, picture, job }: Vetted): string {
  const [left, top, right, bottom] = picture.boundsMm;
  const box = [left - MARGIN_MM, top - MARGIN_MM, right + MARGIN_MM, bottom + MARGIN_MM] as const;
  const width = box[2] - box[0];
  const height = box[3] - box[1];
  const entries = findingEntries(report, job);
  const discs = entries.flatMap((entry) => entry.places.slice(0, MAX_DISCS));
  const dots = entries.flatMap((entry) => entry.places.slice(MAX_DISCS));
  const marks = placeMarks(discs, DISC_MM, { bounds: box, drawn: picture.artwork });
  return [
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<!-- ${OUTPUT_MARK} -->`,
    `<svg xmlns="http://www.w3.org/2000/svg" width="${digits(width)}mm" height="${digits(height)}mm" viewBox="${[box[0], box[1], width, height].map(digits).join(' ')}" fill="none">`,
    `<title>${escapeXml(isolatedText(`${report.artwork.file}: ${report.verdict}`))}</title>`,
    '<desc>Real size: one unit is one millimetre. Made to look at, not to carve from.</desc>',
    group('artwork', 'Artwork as drawn', 'stroke="#14213d" stroke-width="0.15"', area(picture.artwork)),
    group(
      'blocks',
      'Blocks of the board',
      'stroke="#6b7280" stroke-width="0.15" stroke-dasharray="2 1"',
      picture.blocks.flatMap(({ outline }) => (outline === null ? [] : [area(outline)])).join('\n'),
    ),
    ...bleedGroups(picture),
    group(
      'cut',
      'What the bits cut',
      'fill="#9fb4cc" fill-opacity="0.55" stroke="#3d5a80" stroke-width="0.1"',
      area(picture.cut),
    ),
    ...depthGroups(picture, job.units),
    group('left-standing', 'Artwork that stays wood', 'fill="#b3400a"', area(joined(picture.standing))),
    group(
      'narrow-strokes',
      'Strokes narrower than the smallest bit, along their middle',
      'stroke="#000000" stroke-width="0.3" stroke-dasharray="0.9 0.6"',
      lines(picture.narrow.map((each) => each.path)),
    ),
    group(
      'bleed-walls',
      'Walls where colour may run into the wood',
      'stroke="#b3400a" stroke-width="1" stroke-dasharray="0.25 0.5"',
      lines(picture.bleedWalls),
    ),
    ...levellingGroups(picture.levelling),
    ...obstacleGroup(picture),
    group(
      'marks',
      'Numbers of the findings',
      'font-family="sans-serif" font-size="2.4" text-anchor="middle"',
      marks.map(markSvg).join('\n'),
    ),
    dotsSvg(dots),
    '</svg>',
    '',
  ].join('\n');
}

function group(id: string, title: string, paint: string, content: string): string {
  return `<g id="${id}" ${paint}>\n<title>${escapeXml(title)}</title>${content === '' ? '' : `\n${content}`}\n</g>`;
}

function dotsSvg(places: readonly { readonly label: string; readonly atMm: Point }[]): string {
  return group(
    'more-places',
    'Further places of the findings, numbers as titles',
    'fill="#000000"',
    places
      .map(
        ({ label, atMm: [x, y] }) =>
          `<circle id="place-${label}" cx="${digits(x)}" cy="${digits(y)}" r="0.4"><title>${label}</title></circle>`,
      )
      .join('\n'),
  );
}

function area(rings: Rings): string {
  return rings.ringEnds.length === 0 ? '' : `<path fill-rule="evenodd" d="${ringsPath(rings)}"/>`;
}

function joined(pieces: readonly Rings[]): Rings {
  return packRings(
    pieces.flatMap(({ coords, ringEnds }) =>
      Array.from(ringEnds, (end, k) => coords.subarray(2 * (k === 0 ? 0 : (ringEnds[k - 1] ?? 0)), 2 * end)),
    ),
  );
}

function lines(paths: readonly Float64Array[]): string {
  return paths.map((path) => `<path d="${linePath(path)}"/>`).join('\n');
}

function bleedGroups({ bleed }: Picture): readonly string[] {
  return BLEED.map(([end, title, opacity]) =>
    group(
      `bleed-${end}`,
      title,
      `fill="#b3400a" fill-opacity="${opacity}"`,
      bleed.map((block) => area(block[end])).join('\n'),
    ),
  );
}

/** One group, where the board has any. */
function obstacleGroup(picture: Picture): readonly string[] {
  const shapes = obstacleShapes(picture);
  const paint = 'stroke="#14213d" stroke-width="0.3" fill="#14213d" fill-opacity="0.12"';
  return shapes === '' ? [] : [group('keep-clear', 'Holes, grooves and clamps of the board', paint, shapes)];
}

/** Lines of equal depth in the walls of a V, one group for each. */
function depthGroups({ depths }: Picture, unit: LengthUnit): readonly string[] {
  return depths.map(({ depthMm, outline }) =>
    group(
      `depth-${digits(depthMm)}`,
      `Line of equal depth: ${bitSize(depthMm, unit)}`,
      'stroke="#3d5a80" stroke-width="0.05"',
      area(outline),
    ),
  );
}

function levellingGroups(levelling: PicturedLevelling): readonly string[] {
  return [
    ...levelling.grades.map((each) =>
      group(
        `levelling-${each.grade}`,
        `Strokes and areas after levelling: ${GRADE_WORDS[each.grade]}`,
        LEVEL_PAINT[each.grade],
        pathOf(gradePath(each)),
      ),
    ),
    group(
      'goes-first',
      'Where levelling takes colour first',
      'fill="#ffffff" stroke="#000000" stroke-width="0.25"',
      goesFirst(levelling.goesFirstAt),
    ),
  ];
}

function pathOf(data: string): string {
  return data === '' ? '' : `<path d="${data}"/>`;
}

/** A diamond on the place. */
function goesFirst(at: Point | null): string {
  return at === null
    ? ''
    : `<path d="M${digits(at[0])} ${digits(at[1] - 1.1)}l0.8 1.1l-0.8 1.1l-0.8 -1.1Z"/>`;
}

function markSvg({ label, atMm, discMm }: Mark): string {
  const [x, y] = atMm.map(digits);
  const [cx, cy] = discMm.map(digits);
  return [
    `<g id="mark-${label}">`,
    `<path d="M${x} ${y}L${cx} ${cy}" stroke="#000000" stroke-width="0.2"/>`,
    `<circle cx="${x}" cy="${y}" r="0.4" fill="#000000"/>`,
    `<circle cx="${cx}" cy="${cy}" r="${DISC_MM}" fill="#ffffff" stroke="#000000" stroke-width="0.25"/>`,
    `<text x="${cx}" y="${digits(discMm[1] + 0.85)}" fill="#000000">${label}</text>`,
    '</g>',
  ].join('');
}
