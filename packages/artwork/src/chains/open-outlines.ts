import { type OutlineGap, type Point, ringArea, SPECK_AREA_MM2 } from '@pourproof/plane';
import { type ChainPiece, type JoinedChains, joinChains, type OpenChain } from './join-chains.ts';
import { isOpenLine } from './open-line.ts';

/** Widest gap across which the ends of two lines are looked for, mm (our choice): wider is a missing side, not a slip. */
export const REACH_MM = 10;

/**
 * Largest share of its drawn length that the gaps of an outline have (our choice): half of it, the long side of a rectangle
 * twice as long as wide. What is open wider is a line.
 */
const MAX_GAP_SHARE = 0.5;

/** Drawings with more open chains are line work, in which no ends belong together (our choice). */
const MAX_CHAINS = 2000;

/**
 * A gap between two chains is one only where no third end lies within this many times its width (our choice): the ends of
 * parallel lines have a neighbour on either side.
 */
const CLEAR_OF_OTHERS = 1.5;

/** Two ways to the same outline differ in area by less than this share: the rounding of sums. */
const SAME_AREA_REL_TOL = 1e-9;

/** An outline that lines would make if straight lines closed its gaps. */
export interface FoundOutline {
  /** The ring, not repeating its first point. */
  readonly coords: readonly number[];
  /** The piece that it begins with. */
  readonly piece: number;
  /** The widest first. */
  readonly gaps: readonly OutlineGap[];
  readonly areaMm2: number;
}

/**
 * The outlines that lines leave open. Loose ends within 10 mm of each other are taken to belong together, the nearest first; a
 * chain that finds no other end is closed on itself. What bounds less than a speck then, is open by more than half of its
 * drawn length, or looks like a line (see {@link isOpenLine}), is a line and no outline.
 *
 * Cost: that of joining the lines once more, if any is open.
 *
 * @param joined what joining the pieces within `joinToleranceMm` made of them
 * @param isBoundary whether the lines can only be meant as outlines, however wide their gaps are
 */
export function openOutlines(
  pieces: readonly ChainPiece[],
  joined: JoinedChains,
  joinToleranceMm: number,
  isBoundary = false,
): readonly FoundOutline[] {
  const maxShare = isBoundary ? Number.POSITIVE_INFINITY : MAX_GAP_SHARE;
  const isLine = ({ coords, gaps: [gap, ...more] }: FoundOutline): boolean =>
    !isBoundary && gap !== undefined && more.length === 0 && isOpenLine(coords, gap);
  const isOutline = (outline: FoundOutline): boolean =>
    outline.areaMm2 >= SPECK_AREA_MM2 && gapShare(outline) <= maxShare && !isLine(outline);
  const chains = joined.open.filter((chain) => chain.gapMm > 0);
  if (chains.length === 0) {
    return [];
  }
  const isSearched = chains.length <= MAX_CHAINS && joinToleranceMm < REACH_MM;
  const found = isSearched ? closedOnlyWithin(joinChains(pieces, REACH_MM), joinToleranceMm) : [];
  const loose = chains.flatMap(({ atMm, otherMm }) => [atMm, otherMm]);
  const outlines = found.filter(
    (outline) => isOutline(outline) && outline.gaps.every((gap) => isClear(gap, loose)),
  );
  const ends = new Set(
    outlines.flatMap(({ gaps }) => gaps.flatMap((gap) => [key(gap.fromMm), key(gap.toMm)])),
  );
  for (const chain of chains) {
    const alone = closedAlone(chain);
    if (!ends.has(key(chain.atMm)) && !ends.has(key(chain.otherMm)) && isOutline(alone)) {
      outlines.push(alone);
    }
  }
  return outlines;
}

/** The rings of a wider joining that a narrower one leaves open. */
export function closedOnlyWithin({ rings }: JoinedChains, joinToleranceMm: number): FoundOutline[] {
  return rings
    .filter(({ gaps }) => gaps.some(({ widthMm }) => widthMm > joinToleranceMm))
    .map(({ coords, piece, gaps }) => ({
      coords,
      piece,
      gaps: gaps.filter(({ widthMm }) => widthMm > joinToleranceMm).toSorted((a, b) => b.widthMm - a.widthMm),
      areaMm2: Math.abs(ringArea(coords)),
    }));
}

/** Outlines to look others up in: two are one where their widest gap is the same and their area is. */
export function sameOutlines(
  outlines: readonly FoundOutline[],
): (outline: FoundOutline) => FoundOutline | undefined {
  const byGap = new Map(outlines.map((outline) => [gapKey(outline), outline]));
  return (outline) => {
    const same = byGap.get(gapKey(outline));
    const area = same?.areaMm2 ?? 0;
    return Math.abs(area - outline.areaMm2) <= SAME_AREA_REL_TOL * (area + outline.areaMm2)
      ? same
      : undefined;
  };
}

/** The same from either end. */
function gapKey({ gaps: [gap] }: FoundOutline): string {
  return gap === undefined ? '' : key([gap.fromMm[0] + gap.toMm[0], gap.fromMm[1] + gap.toMm[1]]);
}

/** Width of all gaps as a share of the drawn length. */
function gapShare({ coords, gaps }: FoundOutline): number {
  const open = gaps.reduce((sum, { widthMm }) => sum + widthMm, 0);
  return open / (lengthAround(coords) - open);
}

/** Whether no third loose end is about as near to one end of a gap as the other end is. */
function isClear({ fromMm, toMm, widthMm }: OutlineGap, loose: readonly Point[]): boolean {
  const isNear = (a: Point, b: Point): boolean =>
    Math.hypot(a[0] - b[0], a[1] - b[1]) < CLEAR_OF_OTHERS * widthMm;
  const near = loose.filter((end) => isNear(end, fromMm) || isNear(end, toMm));
  return near.every((end) => key(end) === key(fromMm) || key(end) === key(toMm));
}

function closedAlone({ atMm, otherMm, gapMm, coords, piece }: OpenChain): FoundOutline {
  return {
    coords,
    piece,
    gaps: [{ fromMm: otherMm, toMm: atMm, widthMm: gapMm }],
    areaMm2: Math.abs(ringArea(coords)),
  };
}

function lengthAround(ring: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    sum += Math.hypot(
      (ring[j] as number) - (ring[i] as number),
      (ring[j + 1] as number) - (ring[i + 1] as number),
    );
  }
  return sum;
}

/** Points are kept as they are drawn, so that equal ones are the same to the last bit. */
function key(point: readonly number[]): string {
  return point.join(' ');
}
