import type { Bounds, Point } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import { escapeXml } from '../sheet/escape-xml.ts';
import { htmlHead } from '../sheet/html-head.ts';
import { digits } from '../sheet/path-data.ts';
import { FOOT_MM, MARGIN_MM, PAPER_MM, type Paper, type Tile, type Tiling } from './paper-tiles.ts';

/** What stands on printed sheets besides the job. */
export interface PaperOptions {
  /** Of pourproof. */
  readonly version: string;
  /** When the sheets were made, as it is to be printed. */
  readonly date: string;
  /** Letter where the job answers in inches, else A4. */
  readonly paper?: Paper;
}

/** Pages of words and a drawing in real size on as many sheets as it takes. */
export interface PaperPages {
  readonly title: string;
  readonly version: string;
  readonly paper: Paper;
  /** The pages of words, in HTML, and what their style adds. */
  readonly words: readonly string[];
  readonly style?: string;
  readonly tiling: Tiling;
  /** All that is drawn, mm. */
  readonly boundsMm: Bounds;
  /** SVG of the whole drawing in its own frame, in mm. */
  readonly drawing: string;
  /** What tells the sheets of one job from those of another, in the foot of each: the artwork's name, as far as it has room, and more. */
  readonly name: string;
  readonly foot: string;
}

/** Length of the bar on every sheet, mm, by which the print is measured. */
const BAR_MM = 100;
/** Letters of a name that the foot has room for (our choice). */
const FOOT_LETTERS = 40;

/**
 * One HTML document that needs nothing else: the pages of words, then the drawing in real size in tiles that overlap, with crosses to lay them by and a
 * bar of 100 mm on each. The drawing stands there once and is used on every sheet.
 */
export function paperPages(pages: PaperPages): string {
  const { title, version, paper, words, style = '', tiling, drawing, boundsMm } = pages;
  const [width, height] = PAPER_MM[paper];
  const count = words.length + tiling.tiles.length;
  const foot = `${short(pages.name)}, ${pages.foot}`;
  const footOf = (page: number): string => escapeXml(`${foot}, page ${page} of ${count}`);
  const size = `width:${digits(width)}mm;height:${digits(height)}mm`;
  const whole = `${drawing}${joints(tiling, boundsMm)}`;
  return [
    ...htmlHead(
      title,
      `@page{size:${digits(width)}mm ${digits(height)}mm;margin:0}html,body{margin:0;padding:0;background:#fff;color:#000;font:11pt/1.45 sans-serif}section{box-sizing:border-box;${size};overflow:hidden;break-after:page;position:relative}section:last-child{break-after:auto}svg{display:block}.words{padding:14mm 14mm 0}h1{font-size:17pt;margin:0 0 4mm}h2{font-size:12pt;margin:5mm 0 1.5mm}table{border-collapse:collapse}th,td{text-align:left;padding:1mm 5mm 1mm 0;border-bottom:0.2mm solid #000;font-variant-numeric:tabular-nums}ol{margin:0;padding-left:6mm}.foot{position:absolute;left:14mm;right:14mm;bottom:10mm;margin:0;font-size:9pt}${style}`,
      version,
    ),
    '<body>',
    ...words.map((page, k) => `<section class="words">${page}<p class="foot">${footOf(k + 1)}</p></section>`),
    ...tiling.tiles.map((tile, k) => {
      const label = `${footOf(words.length + k + 1)}, ${tileName(tile, tiling)}`;
      return `<section><svg xmlns="http://www.w3.org/2000/svg" width="${digits(width)}mm" height="${digits(height)}mm" viewBox="0 0 ${digits(width)} ${digits(height)}" font-family="sans-serif">${tileSvg(whole, tile, k, [width, height])}${bar(height)}<text x="${MARGIN_MM}" y="${digits(height - 8)}" font-size="3">${label}</text></svg></section>`;
    }),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

/** The name of artwork on paper, which goes out of the shop: of a file without its folders. */
export function paperName({ artwork: { file, format } }: Report): string {
  return format === 'lettering' ? file : (file.split(/[\\/]/u).at(-1) ?? file);
}

function short(name: string): string {
  const letters = [...name];
  return letters.length > FOOT_LETTERS ? `${letters.slice(0, FOOT_LETTERS - 1).join('')}…` : name;
}

function tileName({ column, row }: Tile, { columns, rows }: Tiling): string {
  return `column ${column + 1} of ${columns}, row ${row + 1} of ${rows}`;
}

/** What a sheet shows of the drawing, at its place on the paper. */
function tileSvg(
  drawing: string,
  { boundsMm: [left, top] }: Tile,
  k: number,
  [width, height]: readonly [number, number],
): string {
  const window = `<clipPath id="tile-${k}"><rect x="${MARGIN_MM}" y="${MARGIN_MM}" width="${digits(width - 2 * MARGIN_MM)}" height="${digits(height - 2 * MARGIN_MM - FOOT_MM)}"/></clipPath>`;
  const shown = k === 0 ? `<g id="drawing">${drawing}</g>` : '<use href="#drawing"/>';
  return `${window}<g clip-path="url(#tile-${k})"><g transform="translate(${digits(MARGIN_MM - left)} ${digits(MARGIN_MM - top)})">${shown}</g></g>`;
}

/** A cross in each strip that two sheets share, twice along each sheet, with a letter that is the same on both; and lines to cut along. */
function joints({ jointsX, jointsY, tiles }: Tiling, boundsMm: Bounds): string {
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
    cuts === ''
      ? ''
      : `<path d="${cuts}" fill="none" stroke="#000" stroke-width="0.1" stroke-dasharray="0.5 2"/>`,
    ...places.map(
      ([x, y], k) =>
        `<g class="cross" fill="none" stroke="#000"><path d="M${digits(x - 4)} ${digits(y)}H${digits(x + 4)}M${digits(x)} ${digits(y - 4)}V${digits(y + 4)}" stroke-width="0.15"/><text x="${digits(x + 0.8)}" y="${digits(y - 0.8)}" font-size="2.6" fill="#000" stroke="none">${crossName(k)}</text></g>`,
    ),
  ].join('');
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
  return `<path id="bar" d="M${MARGIN_MM} ${digits(y)}h${BAR_MM}" stroke="#000" stroke-width="0.3" fill="none"/><path d="M${MARGIN_MM} ${digits(y - 3)}v6M${MARGIN_MM + BAR_MM} ${digits(y - 3)}v6${ticks.join('')}" stroke="#000" stroke-width="0.2" fill="none"/><text x="${MARGIN_MM}" y="${digits(y + 7.5)}" font-size="3">100 mm: measure it. Print at 100 %, without fitting to the page.</text>`;
}
