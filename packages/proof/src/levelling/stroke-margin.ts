import {
  filmHeight,
  heightOfWidth,
  poolHeight,
  type StrokeSection,
  sectionArea,
  sectionSurface,
  sectionWidth,
} from './stroke-section.ts';

/** What takes room or depth from the colour before levelling; lengths in mm. */
export interface StrokeShop {
  /** Seal film on walls and floor, drained to the bottom in the worst case. */
  readonly filmMm: number;
  /** Share of its volume that the colour loses on curing, percent; all of it lowers the surface. */
  readonly shrinkagePct: number;
  /**
   * How much lower the face is here than where the bit was set: the cut is shallower by that, and narrower
   * between sloping walls.
   */
  readonly shallowByMm: number;
}

/** Least widths that a stroke must keep; mm. */
export interface WidthNeeds {
  readonly narrowestMm: number;
  /** Narrower colour is not seen. */
  readonly faintWidthMm: number;
}

/** Least depths of colour that a stroke must keep; mm. */
export interface DepthNeeds {
  /** Shallower colour lets the floor show through. */
  readonly shallowestMm: number;
  /** Shallower colour is none. */
  readonly faintMm: number;
}

/** Least width and depth that a stroke must keep. */
export interface StrokeNeeds extends WidthNeeds, DepthNeeds {}

/** What a stroke keeps before anything comes off, whatever its colour; mm. */
export interface SectionMargin extends Pick<LevelledStroke, 'colourDepthMm' | 'mostDepthMm'> {
  /** How much may come off before it is too narrow to be seen, and before it is too narrow; infinite if its floor is wide enough. */
  readonly unseenMm: number;
  readonly thinMm: number;
}

/** How much may come off the face before something happens to a stroke, mm; 0 if it has happened already. */
export interface StrokeMargin {
  /** All colour is gone, with the seal drained to the bottom. */
  readonly goneMm: number;
  /** No colour worth the name is left even where the seal stays on the walls, or it is too narrow to be seen. */
  readonly lostMm: number;
  /** It is too narrow to be seen; infinite if its floor is wide enough. */
  readonly unseenMm: number;
  /** It is too narrow; infinite if its floor is wide enough. */
  readonly thinMm: number;
  /** Its colour is too shallow to hide the floor. */
  readonly shallowMm: number;
}

/** A stroke after levelling; lengths in mm. */
export interface LevelledStroke {
  readonly widthMm: number;
  /** Colour above the pooled seal in the middle of the stroke; nothing is left if it is negative. */
  readonly colourDepthMm: number;
  /** The same where the seal stays on floor and walls instead: the most that can be left. */
  readonly mostDepthMm: number;
}

/**
 * How much may come off the face before a stroke or a dot is gone, too narrow or too shallow: {@link levelledStroke} or its like of dots, solved for
 * what is removed; exact for the section.
 *
 * @param before what stands before anything comes off
 */
export function marginOf(
  before: LevelledStroke,
  section: StrokeSection,
  shop: StrokeShop,
  needs: StrokeNeeds,
): StrokeMargin {
  return marginFor(sectionMargin(before, section, shop, needs), needs);
}

/** What a stroke or a dot keeps, whatever its colour. */
export function sectionMargin(
  { colourDepthMm, mostDepthMm }: Pick<LevelledStroke, 'colourDepthMm' | 'mostDepthMm'>,
  section: StrokeSection,
  shop: StrokeShop,
  { faintWidthMm, narrowestMm }: WidthNeeds,
): SectionMargin {
  return {
    colourDepthMm,
    mostDepthMm,
    unseenMm: keepsWidthFor(faintWidthMm, section, shop),
    thinMm: keepsWidthFor(narrowestMm, section, shop),
  };
}

function keepsWidthFor(widthMm: number, section: StrokeSection, shop: StrokeShop): number {
  const wideFromMm = heightOfWidth(section, widthMm);
  return wideFromMm === 0
    ? Number.POSITIVE_INFINITY
    : Math.max(0, section.depthMm - wideFromMm - shop.shallowByMm);
}

/** The margin of a stroke whose colour has to keep some depths. */
export function marginFor(
  { colourDepthMm, mostDepthMm, unseenMm, thinMm }: SectionMargin,
  needs: DepthNeeds,
): StrokeMargin {
  return {
    goneMm: Math.max(0, colourDepthMm),
    lostMm: Math.min(unseenMm, Math.max(0, mostDepthMm - needs.faintMm)),
    unseenMm,
    thinMm,
    shallowMm: Math.max(0, colourDepthMm - needs.shallowestMm),
  };
}

/**
 * Width and depth of colour of a stroke after `removedMm` have come off the face.
 *
 * The width is that of the bit's profile at the new face: a V of angle A loses 2 s tan(A/2) for s removed, a
 * ball of radius R keeps the chord 2 √(2 R z − z²) at the height z that is left. The seal film t of floor and
 * walls pools at the bottom: to t (w + 2 D)/w between upright walls, √(t w/(sin(A/2) tan(A/2))) in a V.
 * @throws {RangeError} when a width or depth is not above 0
 */
export function levelledStroke(section: StrokeSection, shop: StrokeShop, removedMm: number): LevelledStroke {
  const { widthMm, depthMm } = section;
  if (!(widthMm > 0 && depthMm > 0)) {
    throw new RangeError(`a stroke of width ${widthMm} and depth ${depthMm} mm is no cut; both are above 0.`);
  }
  const pooledMm = poolHeight(section, shop.filmMm * sectionSurface(section));
  // volume over the width of the surface: half of the depth for a V
  const dropMm = (sectionArea(section) * shop.shrinkagePct) / 100 / widthMm;
  const lowerMm = removedMm + shop.shallowByMm;
  return {
    widthMm: sectionWidth(section, depthMm - lowerMm),
    colourDepthMm: depthMm - pooledMm - dropMm - lowerMm,
    mostDepthMm: depthMm - filmHeight(section, shop.filmMm) - dropMm - lowerMm,
  };
}

/**
 * Share of a stroke's section that its seal film takes, drained or not; above 1 if there is more film than
 * room.
 *
 * t (w + 2 D)/(w D) between upright walls, 4 t/(w cos(A/2)) in a V, 2 t/R in a semicircle.
 */
export function clearShare(section: StrokeSection, filmMm: number): number {
  return (filmMm * sectionSurface(section)) / sectionArea(section);
}
