import {
  heightOfWidth,
  poolHeight,
  type StrokeSection,
  sectionArea,
  sectionSurface,
  sectionWidth,
} from './stroke-section.ts';

/** What takes room or height from the colour before anything is levelled; lengths in mm. */
export interface StrokeShop {
  /** Film of seal on walls and floor, drained to the bottom in the worst case. */
  readonly filmMm: number;
  /** Share of its volume that the colour loses on curing, percent; all of it shows at the face. */
  readonly shrinkagePct: number;
  /**
   * How much lower the face lies here than where the bit was set: the cut is shallower by it, and narrower
   * where walls slope.
   */
  readonly shallowByMm: number;
}

/** What a stroke must keep to be worth looking at; lengths in mm. */
export interface StrokeNeeds {
  readonly narrowestMm: number;
  /** Colour shallower than this lets the floor show through. */
  readonly shallowestMm: number;
}

/**
 * How much may come off the face before a stroke is lost, too narrow or too shallow, mm; 0 where it already
 * is.
 */
export interface StrokeMargin {
  /** All colour is gone. */
  readonly goneMm: number;
  /** It is narrower than it needs to be; infinite where its floor is wide enough. */
  readonly thinMm: number;
  /** Its colour is too shallow to hide the floor. */
  readonly shallowMm: number;
}

/** A stroke after levelling; lengths in mm. */
export interface LevelledStroke {
  readonly widthMm: number;
  /** Colour above the pooled seal at the stroke's middle; below 0 nothing is left. */
  readonly colourDepthMm: number;
}

/**
 * How much may come off the face before a stroke is gone, too narrow or too shallow. Exact for the section:
 * it solves {@link levelledStroke} for what is removed.
 *
 * @throws {RangeError} when a width or depth is not above 0
 */
export function strokeMargin(section: StrokeSection, shop: StrokeShop, needs: StrokeNeeds): StrokeMargin {
  const { colourDepthMm } = levelledStroke(section, shop, 0);
  const wideFromMm = heightOfWidth(section, needs.narrowestMm);
  return {
    goneMm: Math.max(0, colourDepthMm),
    thinMm:
      wideFromMm === 0
        ? Number.POSITIVE_INFINITY
        : Math.max(0, section.depthMm - wideFromMm - shop.shallowByMm),
    shallowMm: Math.max(0, colourDepthMm - needs.shallowestMm),
  };
}

/**
 * Width and depth of colour of a stroke once `removedMm` have come off the face.
 *
 * The width is that of the bit's profile as deep as the new face lies: a V of angle A loses 2 s tan(A/2), a
 * ball of radius R keeps its chord 2 √(2 R z − z²) at the height z that is left. The seal film of floor and
 * walls pools at the bottom: to t (w + 2 D)/w between upright walls, √(t w/(sin(A/2) tan(A/2))) in a V.
 * @throws {RangeError} when a width or depth is not above 0
 */
export function levelledStroke(section: StrokeSection, shop: StrokeShop, removedMm: number): LevelledStroke {
  const { widthMm, depthMm } = section;
  if (!(widthMm > 0 && depthMm > 0)) {
    throw new RangeError(`a stroke of width ${widthMm} and depth ${depthMm} mm is no cut; both are above 0.`);
  }
  const pooledMm = poolHeight(section, shop.filmMm * sectionSurface(section));
  // volume over the width at which it shows: half of the depth for a V
  const dropMm = (sectionArea(section) * shop.shrinkagePct) / 100 / widthMm;
  const lowerMm = removedMm + shop.shallowByMm;
  return {
    widthMm: sectionWidth(section, depthMm - lowerMm),
    colourDepthMm: depthMm - pooledMm - dropMm - lowerMm,
  };
}

/**
 * Share of a stroke's section that its film of seal takes up, drained or not; above 1 where there is more
 * film than room.
 *
 * t (w + 2 D)/(w D) for upright walls, 4 t/(w cos(A/2)) for a V, 2 t/R for half a ball.
 */
export function clearShare(section: StrokeSection, filmMm: number): number {
  return (filmMm * sectionSurface(section)) / sectionArea(section);
}
