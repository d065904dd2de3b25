import { type Point, type Rings, transformRings } from '@pourproof/plane';
import { digits, ringsPath } from '../sheet/path-data.ts';
import type { Vetted } from '../vetted.ts';
import { checksum } from './checksum.ts';
import { type PaperOptions, paperName, paperPages } from './paper-pages.ts';
import { type Paper, paperTiles } from './paper-tiles.ts';
import { type PlacementFrame, placementFrame } from './placement-frame.ts';
import { placementNumbers } from './placement-numbers.ts';

/**
 * Sheets to print in real size and lay on the board, as one HTML document that needs nothing else: first the numbers to type, then the drawing in tiles
 * that overlap, with crosses to lay them by, marks to find zero again, and a bar of 100 mm on each.
 */
export function placementHtml(vetted: Vetted, options: PaperOptions): string {
  const { version, date, paper = usualPaper(vetted) } = options;
  const frame = placementFrame(vetted);
  const tiling = paperTiles(frame.boundsMm, paper);
  const file = paperName(vetted.report);
  return paperPages({
    title: `${file}: placement in real size`,
    version,
    paper,
    words: [placementNumbers(vetted, frame, tiling)],
    style: 'td,th+th{text-align:right}',
    tiling,
    boundsMm: frame.boundsMm,
    drawing: placementSvg(vetted, frame),
    name: file,
    foot: `job ${jobChecksum(vetted)}, ${date}`,
  });
}

/** Letter where the job answers in inches, else A4. */
export function usualPaper({ job }: Vetted): Paper {
  return job.units === 'in' ? 'letter' : 'a4';
}

/** Tells papers of one job and artwork from those of another. */
export function jobChecksum({ job, report }: Vetted): string {
  const { areaMm2, perimeterMm, boundsMm } = report.artwork;
  const settings = Object.entries(job.input)
    .filter(([, value]) => value !== undefined)
    .toSorted(([a], [b]) => (a < b ? -1 : 1));
  return checksum(JSON.stringify([settings, areaMm2, perimeterMm, boundsMm]));
}

/** All that is drawn, in the frame of the board. */
function placementSvg({ picture }: Vetted, frame: PlacementFrame): string {
  const map = frame.fromArtwork;
  const path = (rings: Rings, paint: string): string =>
    `<path d="${ringsPath(transformRings(map, rings))}" fill-rule="evenodd" ${paint}/>`;
  return [
    '<g fill="none" stroke="#000" stroke-width="0.2">',
    ...picture.blocks.flatMap(({ outline }) =>
      outline === null ? [] : [path(outline, 'stroke-width="0.35"')],
    ),
    ...picture.obstacles.map(({ outline }) => path(outline, 'stroke-dasharray="2 1"')),
    path(picture.artwork, 'fill="#e3e3e3" stroke-width="0.25"'),
    middleLines(frame),
    ...frame.marks.map(({ name, atMm }) => markSvg(atMm, name)),
    zeroSvg(frame.zero.atMm),
    '</g>',
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
