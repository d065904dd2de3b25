import {
  type Cutter,
  flankMoments,
  heightAt,
  heightMoments,
  type ProfilePiece,
  radiusAt,
} from '@pourproof/cutting';

/**
 * Cross-section of a stroke before levelling: its walls have the profile of the bit, with a floor between
 * them if the stroke is wider than the bit. Lengths in mm.
 */
export interface StrokeSection {
  /** Width at the face. */
  readonly widthMm: number;
  /** Depth in the middle. */
  readonly depthMm: number;
  /** The bit whose profile, from the tip up to `depthMm`, the walls have. */
  readonly cutter: Cutter;
}

/** Upper bound on Newton steps for a height within an arc; from above they converge monotonically. */
const MAX_NEWTON_STEPS = 60;

/** Width of a section at a height above its deepest point, mm; that of the floor for negative heights. */
export function sectionWidth(section: StrokeSection, heightMm: number): number {
  return 2 * (besideBit(section) + radiusAt(section.cutter, Math.max(0, heightMm)));
}

/**
 * Least height above the deepest point at which a section has a width, mm: 0 if its floor has it, infinite if
 * it has it nowhere.
 */
export function heightOfWidth(section: StrokeSection, widthMm: number): number {
  const radiusMm = widthMm / 2 - besideBit(section);
  return radiusMm <= radiusAt(section.cutter, 0) ? 0 : heightAt(section.cutter, radiusMm);
}

/** Area of a section, mm². */
export function sectionArea(section: StrokeSection): number {
  return areaBelow(section, section.depthMm);
}

/** Length of a section's floor, ledges and both walls along their slope, mm. */
export function sectionSurface(section: StrokeSection): number {
  const { cutter, depthMm } = section;
  const levelMm = cutter.pieces.reduce(
    (sum, { fromHeightMm, toHeightMm, fromRadiusMm, toRadiusMm }) =>
      fromHeightMm === toHeightMm && fromHeightMm < depthMm ? sum + toRadiusMm - fromRadiusMm : sum,
    0,
  );
  return 2 * (besideBit(section) + levelMm + flankMoments(cutter, depthMm).flankMm);
}

/**
 * Height to which an area of liquid fills a section, mm, at most its depth: in closed form between straight
 * walls, by iteration to rounding between curved ones.
 */
export function poolHeight(section: StrokeSection, areaMm2: number): number {
  if (areaMm2 <= 0) {
    return 0;
  }
  const { cutter, depthMm } = section;
  const beside = besideBit(section);
  let low = 0;
  let below = 0;
  for (const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, arc } of cutter.pieces) {
    const high = Math.min(depthMm, toHeightMm);
    if (high <= fromHeightMm) {
      continue;
    }
    const area = areaBelow(section, high);
    if (area >= areaMm2) {
      const tan = (toRadiusMm - fromRadiusMm) / (toHeightMm - fromHeightMm);
      return arc === undefined
        ? fromHeightMm + heightBetween(areaMm2 - below, 2 * (beside + fromRadiusMm), tan)
        : heightInArc(section, areaMm2, high);
    }
    low = high;
    below = area;
  }
  // above its profile a bit is upright
  return Math.min(depthMm, low + heightBetween(areaMm2 - below, sectionWidth(section, low), 0));
}

/**
 * Height in the middle of a section up to which a film of even thickness lies on floor and walls, mm, at most the depth: the film's own thickness on
 * a floor wide enough, t/sin(A/2) at the point of a V.
 */
export function filmHeight(section: StrokeSection, filmMm: number): number {
  if (filmMm <= 0) {
    return 0;
  }
  // only walls nearer to the middle than the film is thick lift it above the floor
  const narrowTo = Math.min(section.depthMm, heightOfWidth(section, 2 * filmMm));
  const beside = besideBit(section);
  const above = (heightMm: number, halfMm: number): number =>
    heightMm + Math.sqrt(Math.max(0, filmMm * filmMm - halfMm * halfMm));
  let height = filmMm;
  for (const piece of section.cutter.pieces) {
    if (piece.fromHeightMm >= narrowTo) {
      break;
    }
    const [half, at] = touched(piece, filmMm, beside);
    if (at > piece.fromHeightMm && at < Math.min(narrowTo, piece.toHeightMm)) {
      height = Math.max(height, above(at, half));
    }
    height = Math.max(height, above(piece.fromHeightMm, beside + piece.fromRadiusMm));
  }
  if (narrowTo > 0) {
    height = Math.max(height, above(narrowTo, Math.min(filmMm, sectionWidth(section, narrowTo) / 2)));
  }
  return Math.min(section.depthMm, height);
}

/**
 * Where on a piece of a wall the film, measured along the normal, meets the middle: half the width and the height there. On a straight wall
 * that leans by α from upright half of the width is t cos α. On an arc the normal runs through its centre.
 */
function touched(piece: ProfilePiece, filmMm: number, beside: number): readonly [number, number] {
  const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, arc } = piece;
  if (arc !== undefined) {
    // the foot of the normal lies as far above the centre, over the radius, as half the width over the film
    const half = (filmMm * (beside + arc.centreRadiusMm)) / (filmMm - arc.radiusMm);
    const out = half - beside - arc.centreRadiusMm;
    const down = Math.sqrt(Math.max(0, arc.radiusMm ** 2 - out * out));
    return [half, half > 0 && half <= filmMm ? arc.centreHeightMm - down : Number.NaN];
  }
  const [rise, run] = [toHeightMm - fromHeightMm, toRadiusMm - fromRadiusMm];
  const half = (filmMm * rise) / Math.hypot(rise, run);
  return [half, run > 0 ? fromHeightMm + (rise * (half - beside - fromRadiusMm)) / run : Number.NaN];
}

/**
 * How much wider than the bit the groove is at the face, on each side, mm; rounding could make it slightly
 * negative.
 */
function besideBit({ widthMm, depthMm, cutter }: StrokeSection): number {
  return Math.max(0, widthMm / 2 - radiusAt(cutter, depthMm));
}

function areaBelow(section: StrokeSection, heightMm: number): number {
  return 2 * (besideBit(section) * heightMm + heightMoments(section.cutter, heightMm).radiusMm2);
}

/** Height h of a pool of an area on a floor between walls that open: floor · h + tan · h² = area. */
function heightBetween(area: number, floorMm: number, tan: number): number {
  // the stable form of the root, without cancellation
  return (2 * area) / (floorMm + Math.sqrt(floorMm * floorMm + 4 * tan * area));
}

/** Newton's method: the area is convex in the height, so that from above it never passes the root. */
function heightInArc(section: StrokeSection, areaMm2: number, fromMm: number): number {
  let height = fromMm;
  for (let k = 0; k < MAX_NEWTON_STEPS; k++) {
    const step = (areaBelow(section, height) - areaMm2) / sectionWidth(section, height);
    if (!(step > 0) || height - step >= height) {
      break;
    }
    height = Math.max(0, height - step);
  }
  return height;
}
