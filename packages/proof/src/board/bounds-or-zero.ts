import { type Bounds, type Rings, ringsBounds } from '@pourproof/plane';

/** The bounds of rings; an empty box at the origin where there are none. */
export function boundsOrZero(rings: Rings): Bounds {
  return rings.ringEnds.length === 0 ? [0, 0, 0, 0] : ringsBounds(rings);
}
