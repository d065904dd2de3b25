import {
  boundsOf,
  type Notice,
  type NoticePlace,
  type OpenOutline,
  type OpenOutlines,
  type Point,
} from '@pourproof/plane';
import { isInside } from '../chains/inner-points.ts';
import { type JoinedChains, joinChains, type OpenChain } from '../chains/join-chains.ts';
import { type FoundOutline, openOutlines } from '../chains/open-outlines.ts';
import { bestJoin } from '../chains/try-joins.ts';
import { OverlapIndex } from '../clip/boxes.ts';
import { MAX_PLACES } from '../max-places.ts';
import { dxfNotice } from './dxf-notices.ts';
import type { OpenPiece, Sheet } from './dxf-pen.ts';

type Ring = readonly number[];

/** Lines that are joined among themselves: all of a sheet, or the boundary of one hatch. */
export interface OpenLines {
  readonly pieces: readonly OpenPiece[];
  readonly outlines: readonly FoundOutline[];
  /** Lines that bound nothing, however they are joined. */
  readonly loose: readonly OpenChain[];
  /** Closed rings that the outlines may lie in. */
  readonly around: readonly Ring[];
  /** The hatch has a notice of its own. */
  readonly isHatch: boolean;
}

/** What the lines of a sheet leave open: those that are joined into outlines, and each hatch boundary that does not close. */
export function openLinesOf(
  sheet: Sheet,
  joined: JoinedChains,
  rings: readonly Ring[],
  joinToleranceMm: number,
): readonly OpenLines[] {
  const areas = sheet.areas.flatMap((area) => area.rings);
  return [
    openLines(sheet.open, joined, rings, joinToleranceMm, false),
    ...sheet.brokenLoops.map((pieces) =>
      openLines(pieces, joinChains(pieces, joinToleranceMm), areas, joinToleranceMm, true),
    ),
  ];
}

function openLines(
  pieces: readonly OpenPiece[],
  joined: JoinedChains,
  around: readonly Ring[],
  joinToleranceMm: number,
  isHatch: boolean,
): OpenLines {
  const outlines = openOutlines(pieces, joined, joinToleranceMm, isHatch);
  const ends = new Set(
    outlines.flatMap(({ gaps }) => gaps.flatMap(({ fromMm, toMm }) => [`${fromMm}`, `${toMm}`])),
  );
  const loose = joined.open.filter(({ atMm, otherMm }) => !ends.has(`${atMm}`) && !ends.has(`${otherMm}`));
  return { pieces, outlines, loose, around, isHatch };
}

/** The open outlines of all sheets as the drawing tells them; `null` where there is none. */
export function openPart(lines: readonly OpenLines[], joinToleranceMm: number): OpenOutlines | null {
  const outlines = lines.flatMap(toldOutlines);
  return outlines.length === 0 ? null : { outlines, join: bestJoin(lines, joinToleranceMm) };
}

function toldOutlines({ outlines, around }: OpenLines): readonly OpenOutline[] {
  const rings = [...outlines.map(({ coords }) => coords), ...around];
  const index = new OverlapIndex(Float64Array.from(rings.flatMap((ring) => boundsOf(ring))));
  return outlines.map(({ gaps, areaMm2, coords }, i) => {
    let isHole = false;
    index.some(i, (k) => {
      isHole = isHole !== isInside(rings[k] as Ring, coords[0] as number, coords[1] as number);
      return false;
    });
    return { gaps, areaMm2, reading: 'left-out', isHole };
  });
}

/** The notices of what is left out since it does not close: outlines, and lines that bound nothing. */
export function openNotices(lines: readonly OpenLines[], toleranceMm: number): Notice[] {
  const ofLines = lines.filter(({ isHatch }) => !isHatch);
  const outlines = ofLines.flatMap(({ pieces, outlines: found }) =>
    found.map((outline) => ({ outline, from: pieces[outline.piece] as OpenPiece })),
  );
  const loose = ofLines.flatMap(({ pieces, loose: chains }) =>
    chains.map((chain) => placeOf(pieces[chain.piece] as OpenPiece, chain.atMm)),
  );
  // the smallest gaps first: they are the likeliest to be slips
  const gaps = outlines
    .flatMap(({ outline, from }) =>
      outline.gaps.map((gap) => ({ ...placeOf(from, gap.fromMm), gapMm: gap.widthMm })),
    )
    .toSorted((a, b) => a.gapMm - b.gapMm);
  const [smallest] = gaps;
  return [
    ...(smallest === undefined
      ? []
      : [
          dxfNotice(
            'open-outline',
            { count: outlines.length, toleranceMm, smallestGapMm: smallest.gapMm },
            gaps.slice(0, MAX_PLACES),
          ),
        ]),
    ...(loose.length === 0
      ? []
      : [dxfNotice('loose-line', { count: loose.length }, loose.slice(0, MAX_PLACES))]),
  ];
}

function placeOf({ type, line }: OpenPiece, atMm: Point): NoticePlace {
  return { atMm, line, element: type };
}
