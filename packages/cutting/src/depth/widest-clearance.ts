import type { MedialAxis } from '@pourproof/geometry';

/** Radius of the largest disc that fits into the artwork, mm; 0 for an empty one. */
export function widestClearance({ nodeR }: MedialAxis): number {
  return nodeR.reduce((most, r) => Math.max(most, r), 0);
}
