import { combineShapes } from '@pourproof/arrangement';
import { leftStanding, medialAxis, outsideOf, type StandingPiece } from '@pourproof/geometry';
import { boundsOf, type CleanRegion, type Point, type Region } from '@pourproof/plane';

/** A region with corners rounded. */
export interface RoundedRegion {
  readonly region: CleanRegion;
  /** What is narrower than twice the radius, and stays as it is drawn. */
  readonly narrow: readonly { readonly atMm: Point; readonly widthMm: number }[];
}

/** Arcs of the pieces taken off have chords this much nearer than the tolerance, since those keep no area. */
const FINER = 1 / 20;

/**
 * A region with its outward corners and the tips of tapers rounded to a radius: what no disc of that radius within it reaches is taken off there
 * (an opening). Strokes and parts that such a disc does not enter stay whole.
 *
 * @param toleranceMm the farthest that chords lie from their curves, mm
 */
export function roundedTips(region: CleanRegion, radiusMm: number, toleranceMm: number): RoundedRegion {
  if (region.ringEnds.length === 0 || radiusMm === 0) {
    return { region, narrow: [] };
  }
  const { pieces } = leftStanding(medialAxis(region), radiusMm, FINER * toleranceMm);
  return {
    region: combineShapes([filled(region)], pieces.filter(isCorner).map(outlineOf), 'subtract'),
    narrow: pieces.filter(isStroke).map(placeOf),
  };
}

/** The same for inward corners (a closing): they are filled to the radius, but no gap that is narrower than twice that is. */
export function roundedCorners(region: CleanRegion, radiusMm: number, toleranceMm: number): RoundedRegion {
  if (region.ringEnds.length === 0 || radiusMm === 0) {
    return { region, narrow: [] };
  }
  const [minX, minY, maxX, maxY] = boundsOf(region.coords);
  const wood = outsideOf(region, 4 * radiusMm + 1);
  const { pieces } = leftStanding(medialAxis(wood), radiusMm, FINER * toleranceMm);
  // the corners of the frame are left, too
  const inside = pieces.filter(({ atMm: [x, y] }) => x > minX && x < maxX && y > minY && y < maxY);
  return {
    region: combineShapes([filled(region), ...inside.filter(isCorner).map(outlineOf)], [], 'union'),
    narrow: inside.filter(isStroke).map(placeOf),
  };
}

function isCorner({ kind }: StandingPiece): boolean {
  return kind === 'corner' || kind === 'tip';
}

function isStroke({ kind }: StandingPiece): boolean {
  return kind === 'part' || kind === 'stroke';
}

function outlineOf({ outline }: StandingPiece): Region {
  return { ...outline, fillRule: 'nonzero' };
}

function placeOf({ atMm, widestMm }: StandingPiece): { atMm: Point; widthMm: number } {
  return { atMm, widthMm: widestMm };
}

function filled(region: CleanRegion): Region {
  return { ...region, fillRule: 'nonzero' };
}
