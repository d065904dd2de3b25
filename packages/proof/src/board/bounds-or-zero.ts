import { type Bounds, type Rings, ringsBounds } from '@pourproof/plane';

/** The box of some rings; at the origin and empty where there are none. */
export function boundsOrZero(rings: Rings): Bounds {
  return rings.ringEnds.length === 0 ? [0, 0, 0, 0] : ringsBounds(rings);
}
