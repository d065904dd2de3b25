import {
  type DrawnShape,
  type Notice,
  type OpenOutlines,
  type OutlineGap,
  type Point,
  packRings,
} from '@pourproof/plane';
import { distinctRings, nearTwins, sameOutlineMm } from '../chains/distinct-rings.ts';
import { type JoinedChains, joinChains } from '../chains/join-chains.ts';
import { type DxfNotices, dxfNotice } from './dxf-notices.ts';
import type { OpenPiece, Sheet } from './dxf-pen.ts';
import { noticeOverlaps } from './notice-overlaps.ts';
import { type OpenLines, openLinesOf, openNotices, openPart } from './open-part.ts';

/**
 * Makes shapes of what is drawn on each sheet: one even-odd region of all its closed outlines, one of its
 * solids and wide lines, and one for each hatch. Lines of one sheet are joined into outlines first; doubled
 * lines and outlines are taken once.
 */
export function sheetShapes(
  sheets: readonly Sheet[],
  log: DxfNotices,
  joinToleranceMm: number,
): { shapes: DrawnShape[]; notices: Notice[]; open: OpenOutlines | null } {
  const shapes: DrawnShape[] = [];
  const outlinesOf: (readonly (readonly number[])[])[] = [];
  const gaps: OutlineGap[] = [];
  const open: OpenLines[] = [];
  for (const sheet of sheets) {
    const joined = joinChains(sheet.open, joinToleranceMm);
    gaps.push(...joined.gaps);
    noticeMerges(sheet, joined, log);
    const outlines = [
      ...sheet.closed.map(({ coords }) => coords),
      ...joined.rings.map(({ coords }) => coords),
    ];
    const { rings, doubled } = distinctRings(outlines, sameOutlineMm(joinToleranceMm));
    for (const atMm of doubled) {
      log.add('doubled-outline', { atMm });
    }
    for (const atMm of nearTwins(rings)) {
      log.add('nearly-doubled-outline', { atMm });
    }
    outlinesOf.push(rings);
    pushShapes(shapes, sheet, rings);
    open.push(...openLinesOf(sheet, joined, rings, joinToleranceMm));
  }
  noticeOverlaps(sheets, outlinesOf, log);
  const notices = [...gapNotice(gaps, joinToleranceMm), ...openNotices(open, joinToleranceMm)];
  return { shapes, notices, open: openPart(open, joinToleranceMm) };
}

function noticeMerges(sheet: Sheet, joined: JoinedChains, log: DxfNotices): void {
  for (const { atMm, piece } of joined.doubled) {
    log.add('doubled-line', placeOf(sheet.open[piece] as OpenPiece, atMm));
  }
  for (const atMm of joined.branches) {
    log.add('branching-outline', { atMm });
  }
}

function placeOf({ type, line }: OpenPiece, atMm: Point): { atMm: Point; line: number; element: string } {
  return { atMm, line, element: type };
}

function pushShapes(shapes: DrawnShape[], sheet: Sheet, rings: readonly (readonly number[])[]): void {
  const { layer, colour, patches, areas } = sheet;
  const of = layer === '' ? '' : ` of layer ${layer}`;
  if (rings.length > 0) {
    shapes.push({
      region: { ...packRings(rings), fillRule: 'evenodd' },
      layer,
      colour,
      source: `closed outlines${of}`,
    });
  }
  if (patches.length > 0) {
    shapes.push({
      region: { ...packRings(patches), fillRule: 'nonzero' },
      layer,
      colour,
      source: `solids and wide lines${of}`,
      isPieced: true,
    });
  }
  for (const area of areas) {
    shapes.push({
      region: { ...packRings(area.rings), fillRule: area.fillRule },
      layer,
      colour,
      source: `${area.type}${of}, line ${area.line}`,
    });
  }
}

function gapNotice(gaps: readonly OutlineGap[], toleranceMm: number): Notice[] {
  const [first, ...rest] = gaps;
  if (first === undefined) {
    return [];
  }
  const widest = rest.reduce((most, gap) => (gap.widthMm > most.widthMm ? gap : most), first);
  const mid = (k: 0 | 1): number => (widest.fromMm[k] + widest.toMm[k]) / 2;
  const largestMm = widest.widthMm;
  return [
    dxfNotice('gap-closed', { count: gaps.length, largestMm, toleranceMm }, [
      { atMm: [mid(0), mid(1)], gapMm: largestMm },
    ]),
  ];
}
