import type { Lab } from './colour-difference.ts';
import { type Limit, limits } from './limits.ts';

/** What colours the resin: a paste, a powder or mica, which hide, or a dye or ink, which only tints. */
export type Colourant = 'pigment' | 'dye';

/** Depths of a resin colour that the floor shows through. */
export interface Opacity {
  /** Below this the floor shows through; of a dye, below this its tint is not the full one. */
  readonly opaque: Limit;
  /** Below this it is no colour any more. */
  readonly faint: Limit;
}

/** Lightness L* from which a colour is white or pale: it hides by scattering (our choice). */
const PALE_FROM = 80;
/** Lightness and chroma up to which a colour counts as black (our choice). */
const BLACK_TO = 25;
const BLACK_CHROMA_TO = 10;

/**
 * The depths for a colour of resin, by what hides in it: black absorbs most, white and pale colours only scatter, and every other colour is taken as
 * a paste. A colour that is not known is taken as a paste too. Dyes, whatever
 * their colour, never hide.
 *
 * @param lab CIE L*a*b* of the opaque resin; `null` where it is not known
 */
export function opacityOf(lab: Lab | null, colourant: Colourant = 'pigment'): Opacity {
  if (colourant === 'dye') {
    return { opaque: limits.tintDepth, faint: limits.faintTintDepth };
  }
  if (lab === null) {
    return { opaque: limits.opaqueDepth, faint: limits.faintDepth };
  }
  const [lightness, a, b] = lab;
  if (lightness >= PALE_FROM) {
    return { opaque: limits.opaqueDepthPale, faint: limits.faintDepthPale };
  }
  return lightness <= BLACK_TO && Math.hypot(a, b) <= BLACK_CHROMA_TO
    ? { opaque: limits.opaqueDepthBlack, faint: limits.faintDepthBlack }
    : { opaque: limits.opaqueDepth, faint: limits.faintDepth };
}
