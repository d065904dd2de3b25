import { type Cutter, flankMoments, heightAt, heightMoments, radiusAt } from '@pourproof/cutting';

/**
 * A stroke's section before levelling: each wall has the profile of the bit that cuts it, up to where that is
 * as wide as the groove or, where the stroke is wider than the bit, on both sides of a floor. Lengths in mm.
 */
export interface StrokeSection {
  /** Width at the face. */
  readonly widthMm: number;
  /** Depth at its middle. */
  readonly depthMm: number;
  /** The bit whose profile the walls have, from the tip up to `depthMm`. */
  readonly cutter: Cutter;
}

/** Newton steps to a height within an arc; from above they converge monotonically. */
const STEPS = 60;

/** Width in mm of a section at a height over its deepest place; below that the width of its floor. */
export function sectionWidth(section: StrokeSection, heightMm: number): number {
  return 2 * (besideBit(section) + radiusAt(section.cutter, Math.max(0, heightMm)));
}

/**
 * Height in mm over the deepest place from which on a section is as wide as asked for: 0 where its floor is,
 * infinite where it is nowhere.
 */
export function heightOfWidth(section: StrokeSection, widthMm: number): number {
  const radiusMm = widthMm / 2 - besideBit(section);
  return radiusMm <= radiusAt(section.cutter, 0) ? 0 : heightAt(section.cutter, radiusMm);
}

/** Area of a section in mm². */
export function sectionArea(section: StrokeSection): number {
  return areaBelow(section, section.depthMm);
}

/** Length in mm of a section's floor, ledges and both walls, as they slope. */
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
 * Height in mm to which an area of liquid stands in a section, at most its depth; exact beside straight
 * walls, to rounding beside round ones.
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
  // above its profile a bit has upright sides
  return Math.min(depthMm, low + heightBetween(areaMm2 - below, sectionWidth(section, low), 0));
}

/**
 * How much wider than the bit at the face a groove is, on each side, mm; rounding may leave a tip slightly
 * below 0.
 */
function besideBit({ widthMm, depthMm, cutter }: StrokeSection): number {
  return Math.max(0, widthMm / 2 - radiusAt(cutter, depthMm));
}

function areaBelow(section: StrokeSection, heightMm: number): number {
  return 2 * (besideBit(section) * heightMm + heightMoments(section.cutter, heightMm).radiusMm2);
}

/** Height h of a pool of this area over a floor between walls that open: floor × h + h² tan = area. */
function heightBetween(area: number, floorMm: number, tan: number): number {
  // the stable form of the root: no difference of nearly equal numbers
  return (2 * area) / (floorMm + Math.sqrt(floorMm * floorMm + 4 * tan * area));
}

/** The area is convex in the height, so that Newton's method from above never passes the root. */
function heightInArc(section: StrokeSection, areaMm2: number, fromMm: number): number {
  let height = fromMm;
  for (let k = 0; k < STEPS; k++) {
    const step = (areaBelow(section, height) - areaMm2) / sectionWidth(section, height);
    if (!(step > 0) || height - step >= height) {
      break;
    }
    height = Math.max(0, height - step);
  }
  return height;
}
