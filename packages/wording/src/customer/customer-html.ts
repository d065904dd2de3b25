import { type Bounds, type Rings, ringsBounds, transformRings } from '@pourproof/plane';
import { type PaperOptions, paperName, paperPages } from '../placement/paper-pages.ts';
import { paperTiles } from '../placement/paper-tiles.ts';
import { type PlacementFrame, placementFrame } from '../placement/placement-frame.ts';
import { jobChecksum, usualPaper } from '../placement/placement-html.ts';
import { escapeXml } from '../sheet/escape-xml.ts';
import { digits, ringsPath } from '../sheet/path-data.ts';
import type { Vetted } from '../vetted.ts';
import { customerWords } from './customer-words.ts';
import { fillOf, fillPatterns } from './fill-patterns.ts';
import { readBack } from './read-back.ts';

/** Free room around what is drawn, mm (our choice). */
const ROOM_MM = 4;
/** Height of the words on the drawing, mm (our choice). */
const WORDS_MM = 3;

/** What the sheets need beside the job. */
export interface CustomerOptions extends PaperOptions {
  /** What is lettered; `null` for artwork from a file. */
  readonly text: string | null;
}

const STYLE = [
  '.read{font-size:20pt;line-height:1.25;margin:0;overflow-wrap:anywhere}',
  '.spelled{font:10pt/1.5 monospace;margin:0 0 2mm;overflow-wrap:anywhere}',
  '.banner{border:0.7mm solid #000;padding:2mm 3mm;font-weight:bold;margin:0 0 4mm}',
  '.ticks{list-style:none;padding:0;margin:0;columns:2}.ticks li{margin:0 0 1mm}.box{display:inline-block;width:3.4mm;height:3.4mm;border:0.3mm solid #000;margin-right:2.5mm;vertical-align:-0.4mm}',
  '.know{margin:0;padding-left:6mm;font-size:10pt}.key{list-style:none;padding:0;margin:0;columns:2}.key svg{display:inline-block;vertical-align:-1mm;margin-right:2.5mm}',
  '.signing{position:absolute;left:14mm;right:14mm;bottom:20mm;display:flex;gap:8mm}.signing span{flex:1;border-top:0.3mm solid #000;padding-top:1mm;font-size:9pt}',
].join('');

/**
 * Sheets for a customer to read, to lay a ruler on and to sign, as one HTML document that needs nothing else: first the texts, large, and what is
 * agreed, then in real size what the bits really cut, each colour with a fill of its own that a printer without colours shows.
 */
export function customerHtml(vetted: Vetted, options: CustomerOptions): string {
  const { version, date, paper = usualPaper(vetted), text } = options;
  const frame = customerFrame(vetted);
  const file = paperName(vetted.report);
  const read = readBack(text);
  return paperPages({
    title: `${file}: to read and to sign`,
    version,
    paper,
    words: [
      `<svg width="0" height="0" style="position:absolute" aria-hidden="true">${fillPatterns(vetted.picture.colours.length)}</svg>${customerWords(vetted, read.first)}`,
      ...read.pages,
    ],
    style: STYLE,
    tiling: paperTiles(frame.boundsMm, paper),
    boundsMm: frame.boundsMm,
    drawing: customerSvg(vetted, frame),
    name: file,
    foot: `job ${jobChecksum(vetted)}, ${date}`,
  });
}

/** The board, or without one the artwork; a customer needs no marks. */
function customerFrame(vetted: Vetted): PlacementFrame {
  const frame = placementFrame(vetted);
  const [left, top, right, bottom] = frame.artworkMm;
  const bare: Bounds = [left - ROOM_MM, top - ROOM_MM, right + ROOM_MM, bottom + ROOM_MM];
  return vetted.job.board === null ? { ...frame, boundsMm: bare } : frame;
}

function customerSvg({ picture }: Vetted, { fromArtwork }: PlacementFrame): string {
  const placed = (rings: Rings): Rings => transformRings(fromArtwork, rings);
  const path = (rings: Rings, paint: string): string =>
    rings.ringEnds.length === 0
      ? ''
      : `<path d="${ringsPath(placed(rings))}" fill-rule="evenodd" ${paint} stroke="#000"/>`;
  return [
    ...picture.blocks.flatMap(({ outline, species }) =>
      outline === null
        ? []
        : [path(outline, 'fill="none" stroke-width="0.35"'), woodName(placed(outline), species)],
    ),
    ...picture.obstacles.flatMap(({ kind, outline, isInBack }) =>
      (kind !== 'hole' && kind !== 'groove') || isInBack
        ? []
        : [path(outline, 'fill="#fff" stroke-width="0.25"')],
    ),
    ...picture.colours.map(({ cut }, k) => path(cut, `fill="${fillOf(k)}" stroke-width="0.15"`)),
  ].join('');
}

/** In the lower left corner of a block. */
function woodName(outline: Rings, species: string): string {
  const [left, , , bottom] = ringsBounds(outline);
  return `<text x="${digits(left + 1.5)}" y="${digits(bottom - 1.5)}" font-size="${WORDS_MM}">${escapeXml(species)}</text>`;
}
