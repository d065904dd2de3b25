import { radians } from '@pourproof/plane';
import { type CitedRange, citedRange } from './cited.ts';

/** Ways to bring a filled face level. */
export type LevelMethodId = 'planer' | 'drum' | 'hand' | 'cutter';

/** A way of levelling. */
export interface LevelMethod {
  readonly name: string;
  /** What it takes off the face in mm (for the planer in one pass): the usual figure and its range. */
  readonly removalMm: CitedRange;
}

/** Ways of levelling with their usual removal. */
export const levelMethods: Readonly<Record<LevelMethodId, LevelMethod>> = {
  planer: {
    name: 'thickness planer',
    removalMm: citedRange(0.8, [0.4, 1.6], 'seen', 'planer-trade-pages'),
  },
  drum: {
    name: 'drum or belt sander',
    removalMm: citedRange(0.5, [0.5, 1], 'memory', 'grit-trade-pages', 'from-memory'),
  },
  hand: {
    name: 'hand sanding with a block',
    removalMm: citedRange(0.5, [0.5, 1], 'memory', 'grit-trade-pages', 'from-memory'),
  },
  cutter: {
    name: 'surfacing cutter on the router',
    removalMm: citedRange(0.5, [0.3, 1], 'inference', 'own-inference'),
  },
};

/** Width in mm that a V stroke loses when `removedMm` come off the face: 2 s tan(A/2). */
export function veeWidthLossMm(removedMm: number, angleDeg: number): number {
  return 2 * removedMm * Math.tan(radians(angleDeg) / 2);
}
