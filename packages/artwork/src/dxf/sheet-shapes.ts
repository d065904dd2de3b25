import { type DrawnShape, type Notice, type Point, packRings } from '@pourproof/plane';
import { distinctRings, nearTwins } from '../chains/distinct-rings.ts';
import { type JoinedChains, joinChains, type OpenChain } from '../chains/join-chains.ts';
import { MAX_PLACES } from '../max-places.ts';
import { type DxfNotices, dxfNotice } from './dxf-notices.ts';
import type { OpenPiece, Sheet } from './dxf-pen.ts';
import { noticeOverlaps } from './notice-overlaps.ts';

/**
 * Makes shapes of what is drawn on each sheet: one even-odd region of all its closed outlines, one of its
 * solids and wide lines, and one for each hatch. Lines of one sheet are joined into outlines first; doubled
 * lines and outlines are taken once.
 */
export function sheetShapes(
  sheets: readonly Sheet[],
  log: DxfNotices,
  joinToleranceMm: number,
): { shapes: DrawnShape[]; notices: Notice[] } {
  const shapes: DrawnShape[] = [];
  const open: { chain: OpenChain; from: OpenPiece }[] = [];
  const outlinesOf: (readonly (readonly number[])[])[] = [];
  let gaps: JoinedChains['gaps'] = { count: 0, largestMm: 0, atMm: [0, 0] };
  for (const sheet of sheets) {
    const joined = joinChains(sheet.open, joinToleranceMm);
    gaps = widerOf(gaps, joined.gaps);
    for (const chain of joined.open) {
      open.push({ chain, from: sheet.open[chain.piece] as OpenPiece });
    }
    noticeMerges(sheet, joined, log);
    const outlines = [
      ...sheet.closed.map(({ coords }) => coords),
      ...joined.rings.map(({ coords }) => coords),
    ];
    const { rings, doubled } = distinctRings(outlines, joinToleranceMm);
    for (const atMm of doubled) {
      log.add('doubled-outline', { atMm });
    }
    for (const atMm of nearTwins(rings)) {
      log.add('nearly-doubled-outline', { atMm });
    }
    outlinesOf.push(rings);
    pushShapes(shapes, sheet, rings);
  }
  noticeOverlaps(sheets, outlinesOf, log);
  const notices = [...gapNotice(gaps, joinToleranceMm), ...openNotice(open, joinToleranceMm)];
  return { shapes, notices };
}

function widerOf(a: JoinedChains['gaps'], b: JoinedChains['gaps']): JoinedChains['gaps'] {
  const wider = b.largestMm > a.largestMm ? b : a;
  return { ...wider, count: a.count + b.count };
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

function gapNotice({ count, largestMm, atMm }: JoinedChains['gaps'], toleranceMm: number): Notice[] {
  return count === 0
    ? []
    : [dxfNotice('gap-closed', { count, largestMm, toleranceMm }, [{ atMm, gapMm: largestMm }])];
}

function openNotice(open: readonly { chain: OpenChain; from: OpenPiece }[], toleranceMm: number): Notice[] {
  if (open.length === 0) {
    return [];
  }
  // the smallest gaps first: they are the likeliest to be slips
  const rank = ({ chain }: { chain: OpenChain }): number => chain.gapMm || Number.POSITIVE_INFINITY;
  const ranked = open.toSorted((a, b) => (rank(a) < rank(b) ? -1 : rank(a) > rank(b) ? 1 : 0));
  const places = ranked.slice(0, MAX_PLACES).map(({ chain, from }) => ({
    ...placeOf(from, chain.atMm),
    ...(chain.gapMm > 0 ? { gapMm: chain.gapMm } : {}),
    element: `${from.type}, ${chain.gapMm > 0 ? `open by ${chain.gapMm.toPrecision(3)} mm` : 'loose end'}`,
  }));
  const smallestGapMm = ranked[0]?.chain.gapMm ?? 0;
  return [dxfNotice('open-outline', { count: open.length, toleranceMm, smallestGapMm }, places)];
}
