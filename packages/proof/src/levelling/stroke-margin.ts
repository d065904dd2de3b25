/** A stroke's section before levelling: flat-bottomed, V, or a V that stops at a level floor. Lengths in mm. */
export interface StrokeSection {
  /** Width at the face. */
  readonly widthMm: number;
  /** Depth at its middle. */
  readonly depthMm: number;
  /** Included angle of both walls; `null` for upright walls. */
  readonly includedRad: number | null;
}

/** What takes room or height from the colour before anything is levelled; lengths in mm. */
export interface StrokeShop {
  /** Film of seal on walls and floor, drained to the bottom in the worst case. */
  readonly filmMm: number;
  /** Share of its volume that the colour loses on curing, percent; all of it shows at the face. */
  readonly shrinkagePct: number;
  /** How much lower the face lies here than where the bit was set: the cut is shallower by it, and a V narrower. */
  readonly shallowByMm: number;
}

/** What a stroke must keep to be worth looking at; lengths in mm. */
export interface StrokeNeeds {
  readonly narrowestMm: number;
  /** Colour shallower than this lets the floor show through. */
  readonly shallowestMm: number;
}

/** How much may come off the face before something happens to a stroke, mm; 0 where it has happened already. */
export interface StrokeMargin {
  /** All colour is gone. */
  readonly goneMm: number;
  /** It is narrower than it needs to be; infinite for upright walls, which keep their width. */
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
 * How much may come off the face before a stroke is gone, too narrow or too shallow. Exact for the section: it solves
 * {@link levelledStroke} for what is removed.
 *
 * @throws {RangeError} when a width or depth is not above 0, or the angle not between 0 and π
 */
export function strokeMargin(section: StrokeSection, shop: StrokeShop, needs: StrokeNeeds): StrokeMargin {
  const { widthMm, colourDepthMm } = levelledStroke(section, shop, 0);
  const lossPerMm = 2 * tangent(section);
  const spare = widthMm - needs.narrowestMm;
  return {
    goneMm: Math.max(0, colourDepthMm),
    thinMm: spare <= 0 ? 0 : lossPerMm === 0 ? Number.POSITIVE_INFINITY : spare / lossPerMm,
    shallowMm: Math.max(0, colourDepthMm - needs.shallowestMm),
  };
}

/**
 * Width and depth of colour of a stroke once `removedMm` have come off the face.
 *
 * With walls at half the included angle A/2 against upright, width falls by 2 s tan(A/2). The seal film of walls and floor pools at the bottom
 * to the height h for which floor × h + h² tan(A/2) is the film's area: t (w + 2 D)/w for upright walls, √(t w/(sin(A/2) tan(A/2))) for a V.
 * @throws {RangeError} when a width or depth is not above 0, or the angle not between 0 and π
 */
export function levelledStroke(section: StrokeSection, shop: StrokeShop, removedMm: number): LevelledStroke {
  const { widthMm, depthMm, includedRad } = section;
  if (!(widthMm > 0 && depthMm > 0)) {
    throw new RangeError(`a stroke of width ${widthMm} and depth ${depthMm} mm is no cut; both are above 0.`);
  }
  if (includedRad !== null && !(includedRad > 0 && includedRad < Math.PI)) {
    throw new RangeError(`includedRad is ${includedRad}; it lies between 0 and π.`);
  }
  const tan = tangent(section);
  const wall = includedRad === null ? 1 : Math.cos(includedRad / 2);
  // rounding may leave a tip a little below 0
  const floorMm = Math.max(0, widthMm - 2 * depthMm * tan);
  const filmArea = shop.filmMm * (floorMm + (2 * depthMm) / wall);
  const pooledMm = Math.min(depthMm, poolHeight(filmArea, floorMm, tan));
  // volume over the width at which it shows: half of the depth for a V
  const dropMm = (((widthMm + floorMm) / 2) * depthMm * shop.shrinkagePct) / 100 / widthMm;
  return {
    widthMm: widthMm - 2 * (removedMm + shop.shallowByMm) * tan,
    colourDepthMm: depthMm - pooledMm - dropMm - shop.shallowByMm - removedMm,
  };
}

/**
 * Share of a stroke's section that its film of seal takes, drained to the bottom or not; above 1 where there is more film than room.
 *
 * t (w + 2 D)/(w D) for upright walls, 4 t/(w cos(A/2)) for a V.
 */
export function clearShare(section: StrokeSection, filmMm: number): number {
  const { widthMm, depthMm, includedRad } = section;
  const floorMm = Math.max(0, widthMm - 2 * depthMm * tangent(section));
  const wall = includedRad === null ? 1 : Math.cos(includedRad / 2);
  return (filmMm * (floorMm + (2 * depthMm) / wall)) / (((widthMm + floorMm) / 2) * depthMm);
}

function tangent({ includedRad }: StrokeSection): number {
  return includedRad === null ? 0 : Math.tan(includedRad / 2);
}

/** Height h of a pool of this area over a floor between walls that open: floor × h + h² tan = area. */
function poolHeight(area: number, floorMm: number, tan: number): number {
  if (area === 0) {
    return 0;
  }
  // the stable form of the root: no difference of nearly equal numbers
  return (2 * area) / (floorMm + Math.sqrt(floorMm * floorMm + 4 * tan * area));
}
