import { type Point, transformRings } from '@pourproof/plane';
import { escapeXml } from '../sheet/escape-xml.ts';
import { htmlHead } from '../sheet/html-head.ts';
import { digits, ringsPath } from '../sheet/path-data.ts';
import type { Vetted } from '../vetted.ts';
import { checksum } from './checksum.ts';
import {
  FOOT_MM,
  MARGIN_MM,
  PAPER_MM,
  type Paper,
  paperTiles,
  type Tile,
  type Tiling,
} from './paper-tiles.ts';
import { type PlacementFrame, placementFrame } from './placement-frame.ts';
import { placementNumbers } from './placement-numbers.ts';

/** What stands on the sheets besides the job. */
export interface PlacementOptions {
  /** Of pourproof. */
  readonly version: string;
  /** When the sheets were made, as it is to be printed. */
  readonly date: string;
  /** Letter where the job answers in inches, else A4. */
  readonly paper?: Paper;
}

/** Length of the bar on every sheet, mm, by which the print is measured. */
const BAR_MM = 100;

/**
 * Sheets to print in real size and lay on the board, as one HTML document that needs nothing else: first the numbers to type, then the drawing in tiles
 * that overlap, with crosses to lay them by, marks to find zero again, and a bar of 100 mm on each.
 */
export function placementHtml(vetted: Vetted, options: PlacementOptions): string {
  const { version, date, paper = vetted.job.units === 'in' ? 'letter' : 'a4' } = options;
  const frame = placementFrame(vetted);
  const tiling = paperTiles(frame.boundsMm, paper);
  const [width, height] = PAPER_MM[paper];
  const { file } = vetted.report.artwork;
  const count = tiling.tiles.length + 1;
  const sum = jobChecksum(vetted);
  const foot = (page: number): string => `${file}, job ${sum}, ${date}, page ${page} of ${count}`;
  const size = `width:${digits(width)}mm;height:${digits(height)}mm`;
  return [
    ...htmlHead(
      `${file}: placement in real size`,
      `@page{size:${digits(width)}mm ${digits(height)}mm;margin:0}html,body{margin:0;padding:0;background:#fff;color:#000;font:11pt/1.45 sans-serif}section{box-sizing:border-box;${size};overflow:hidden;break-after:page;position:relative}section:last-child{break-after:auto}svg{display:block}.first{padding:14mm 14mm 0}h1{font-size:17pt;margin:0 0 4mm}h2{font-size:12pt;margin:5mm 0 1.5mm}table{border-collapse:collapse}th,td{text-align:left;padding:1mm 5mm 1mm 0;border-bottom:0.2mm solid #000;font-variant-numeric:tabular-nums}td,th+th{text-align:right}ol{margin:0;padding-left:6mm}.foot{position:absolute;left:14mm;right:14mm;bottom:10mm;font-size:9pt}`,
      version,
    ),
    '<body>',
    `<section class="first">${placementNumbers(vetted, frame, tiling)}<p class="foot">${escapeXml(foot(1))}</p></section>`,
    ...tiling.tiles.map((tile, k) => {
      const label = `${escapeXml(foot(k + 2))}, ${tileName(tile, tiling)}`;
      return `<section><svg xmlns="http://www.w3.org/2000/svg" width="${digits(width)}mm" height="${digits(height)}mm" viewBox="0 0 ${digits(width)} ${digits(height)}" font-family="sans-serif">${tileSvg(vetted, { frame, tiling, tile, k, size: [width, height] })}${bar(height)}<text x="${MARGIN_MM}" y="${digits(height - 8)}" font-size="3">${label}</text></svg></section>`;
    }),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

/** Tells papers of one job and artwork from those of another. */
export function jobChecksum({ job, report }: Vetted): string {
  const { areaMm2, perimeterMm, boundsMm } = report.artwork;
  const settings = Object.entries(job.input)
    .filter(([, value]) => value !== undefined)
    .toSorted(([a], [b]) => (a < b ? -1 : 1));
  return checksum(JSON.stringify([settings, areaMm2, perimeterMm, boundsMm]));
}

function tileName({ column, row }: Tile, { columns, rows }: Tiling): string {
  return `column ${column + 1} of ${columns}, row ${row + 1} of ${rows}`;
}

interface Drawn {
  readonly frame: PlacementFrame;
  readonly tiling: Tiling;
  readonly tile: Tile;
  readonly k: number;
  readonly size: readonly [number, number];
}

/** What a sheet shows of the drawing, at its place on the paper. */
function tileSvg({ picture }: Vetted, { frame, tiling, tile, k, size: [width, height] }: Drawn): string {
  const [left, top] = tile.boundsMm;
  const [dx, dy] = [MARGIN_MM - left, MARGIN_MM - top];
  const inside = `<clipPath id="tile-${k}"><rect x="${MARGIN_MM}" y="${MARGIN_MM}" width="${digits(width - 2 * MARGIN_MM)}" height="${digits(height - 2 * MARGIN_MM - FOOT_MM)}"/></clipPath>`;
  const [zx, zy] = frame.zero.atMm;
  const map = frame.fromArtwork;
  const path = (rings: typeof picture.artwork, paint: string): string =>
    `<path d="${ringsPath(transformRings(map, rings))}" fill-rule="evenodd" ${paint}/>`;
  return [
    inside,
    `<g clip-path="url(#tile-${k})"><g transform="translate(${digits(dx)} ${digits(dy)})" fill="none" stroke="#000" stroke-width="0.2">`,
    ...picture.blocks.flatMap(({ outline }) =>
      outline === null ? [] : [path(outline, 'stroke-width="0.35"')],
    ),
    ...picture.obstacles.map(({ outline }) => path(outline, 'stroke-dasharray="2 1"')),
    path(picture.artwork, 'fill="#e3e3e3" stroke-width="0.25"'),
    middleLines(frame),
    ...frame.marks.map(({ name, atMm }) => markSvg(atMm, name)),
    zeroSvg([zx, zy]),
    ...joints(tiling, frame),
    '</g></g>',
  ].join('');
}

/** Dash-dotted lines through the middle of the artwork. */
function middleLines({ artworkMm: [left, top, right, bottom] }: PlacementFrame): string {
  const [x, y] = [(left + right) / 2, (top + bottom) / 2];
  return `<path d="M${digits(left - 4)} ${digits(y)}L${digits(right + 4)} ${digits(y)}M${digits(x)} ${digits(top - 4)}L${digits(x)} ${digits(bottom + 4)}" stroke-dasharray="4 1 0.5 1" stroke-width="0.15"/>`;
}

function markSvg([x, y]: Point, name: string): string {
  return `<g class="mark"><circle cx="${digits(x)}" cy="${digits(y)}" r="3"/><path d="M${digits(x - 5)} ${digits(y)}H${digits(x + 5)}M${digits(x)} ${digits(y - 5)}V${digits(y + 5)}"/><text x="${digits(x + 3.6)}" y="${digits(y - 1.6)}" font-size="3.4" fill="#000" stroke="none">${name}</text></g>`;
}

/** Both axes of the machine from zero on. */
function zeroSvg([x, y]: Point): string {
  return `<g class="zero"><path d="M${digits(x - 4)} ${digits(y)}H${digits(x + 14)}M${digits(x)} ${digits(y + 4)}V${digits(y - 14)}" stroke-width="0.4"/><text x="${digits(x + 11)}" y="${digits(y + 3.4)}" font-size="3" fill="#000" stroke="none">X</text><text x="${digits(x - 3.2)}" y="${digits(y - 11)}" font-size="3" fill="#000" stroke="none">Y</text><text x="${digits(x + 1)}" y="${digits(y - 1)}" font-size="3" fill="#000" stroke="none">0</text></g>`;
}

/** A cross in each strip that two sheets share, twice along each sheet, with a letter that is the same on both; and lines to cut along. */
function joints({ jointsX, jointsY, tiles }: Tiling, { boundsMm }: PlacementFrame): readonly string[] {
  const along = (ends: readonly (readonly [number, number])[]): number[] =>
    ends.flatMap(([from, to]) => [from + (to - from) * 0.3, from + (to - from) * 0.7]);
  const columns = tiles.filter(({ row }) => row === 0).map(({ boundsMm: [x0, , x1] }) => [x0, x1] as const);
  const rows = tiles
    .filter(({ column }) => column === 0)
    .map(({ boundsMm: [, y0, , y1] }) => [y0, y1] as const);
  const places: Point[] = [
    ...jointsX.flatMap((x) => along(rows).map((y): Point => [x, y])),
    ...jointsY.flatMap((y) => along(columns).map((x): Point => [x, y])),
  ];
  const [left, top, right, bottom] = boundsMm;
  const cuts = [
    ...jointsX.map((x) => `M${digits(x)} ${digits(top)}V${digits(bottom)}`),
    ...jointsY.map((y) => `M${digits(left)} ${digits(y)}H${digits(right)}`),
  ].join('');
  return [
    cuts === '' ? '' : `<path d="${cuts}" stroke-width="0.1" stroke-dasharray="0.5 2"/>`,
    ...places.map(
      ([x, y], k) =>
        `<g class="cross"><path d="M${digits(x - 4)} ${digits(y)}H${digits(x + 4)}M${digits(x)} ${digits(y - 4)}V${digits(y + 4)}" stroke-width="0.15"/><text x="${digits(x + 0.8)}" y="${digits(y - 0.8)}" font-size="2.6" fill="#000" stroke="none">${crossName(k)}</text></g>`,
    ),
  ];
}

function crossName(k: number): string {
  const letter = String.fromCharCode(65 + (k % 26));
  return k < 26 ? letter : `${letter}${Math.floor(k / 26)}`;
}

/** The bar by which a print is measured, in the foot of the sheet. */
function bar(height: number): string {
  const y = height - MARGIN_MM - FOOT_MM + 12;
  const ticks = Array.from(
    { length: BAR_MM / 10 - 1 },
    (_, k) => `M${MARGIN_MM + 10 * (k + 1)} ${digits(y)}v-1.5`,
  );
  return `<path id="bar" d="M${MARGIN_MM} ${digits(y)}h${BAR_MM}" stroke="#000" stroke-width="0.3" fill="none"/><path d="M${MARGIN_MM} ${digits(y - 3)}v6M${MARGIN_MM + BAR_MM} ${digits(y - 3)}v6${ticks.join('')}" stroke="#000" stroke-width="0.2" fill="none"/><text x="${MARGIN_MM + BAR_MM + 3}" y="${digits(y + 1)}" font-size="3">100 mm: measure it. Print at 100 %, without fitting to the page.</text>`;
}
