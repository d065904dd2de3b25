import { radians } from '@pourproof/plane';
import { type CitedRange, citedRange } from './cited.ts';

/** Ways to bring a filled face level. */
export type LevelMethodId = 'planer' | 'drum' | 'hand' | 'cutter';

/** A way of levelling. */
export interface LevelMethod {
  readonly name: string;
  /** What it takes off the face in mm (for the planer in one pass): the usual figure and its range. */
  readonly removalMm: CitedRange;
  /** One sentence of advice. */
  readonly advice: string;
}

/** Ways of levelling with their usual removal. */
export const levelMethods: Readonly<Record<LevelMethodId, LevelMethod>> = {
  planer: {
    name: 'thickness planer',
    removalMm: citedRange(0.8, [0.4, 1.6], 'seen', 'planer-trade-pages'),
    advice:
      'One pass of 1/32 in, the last one shallower: resin chips on planer knives, so many use a drum sander instead.',
  },
  drum: {
    name: 'drum or belt sander',
    removalMm: citedRange(0.5, [0.5, 1], 'memory', 'grit-trade-pages', 'from-memory'),
    advice: 'Start at 80 grit, keep it cool, and let only cold resin under the drum.',
  },
  hand: {
    name: 'hand sanding with a block',
    removalMm: citedRange(0.5, [0.5, 1], 'memory', 'grit-trade-pages', 'from-memory'),
    advice: 'Use a hard block from 80 to 220 grit; a soft pad dishes wood beside resin.',
  },
  cutter: {
    name: 'surfacing cutter on the router',
    removalMm: citedRange(0.5, [0.3, 1], 'inference', 'own-inference'),
    advice:
      'Surface the board flat before carving with the same setup, so that cut and levelling share one plane.',
  },
};

/** Width in mm that a V stroke loses when `removedMm` come off the face: 2 s tan(A/2). */
export function veeWidthLossMm(removedMm: number, angleDeg: number): number {
  return 2 * removedMm * Math.tan(radians(angleDeg) / 2);
}
