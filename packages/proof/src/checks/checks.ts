import { batchTooSmall } from './batch-too-small.ts';
import { bitCannotEnter } from './bit-cannot-enter.ts';
import { bleedReachesBlock } from './bleed-reaches-block.ts';
import { bleedReachesEdge } from './bleed-reaches-edge.ts';
import { bleedReachesNeighbour } from './bleed-reaches-neighbour.ts';
import { boardNotFlat } from './board-not-flat.ts';
import type { Check } from './check.ts';
import { clampInTheWay } from './clamp-in-the-way.ts';
import { colourHidesOrShows } from './colour-hides-or-shows.ts';
import { coloursTouch } from './colours-touch.ts';
import { cupTooLarge } from './cup-too-large.ts';
import { cutEndsShort } from './cut-ends-short.ts';
import { floorDrinks } from './floor-drinks.ts';
import { floorLeftRidged } from './floor-left-ridged.ts';
import { floorTooThin } from './floor-too-thin.ts';
import { ghostStroke } from './ghost-stroke.ts';
import { highBleedWall } from './high-bleed-wall.ts';
import { holeUnderPocket } from './hole-under-pocket.ts';
import { islandTooSmall } from './island-too-small.ts';
import { mixTooSmall } from './mix-too-small.ts';
import { offTheBoard } from './off-the-board.ts';
import { oilInWood } from './oil-in-wood.ts';
import { outlineCrosses } from './outline-crosses.ts';
import { outlineOpen } from './outline-open.ts';
import { pigmentTooMuch } from './pigment-too-much.ts';
import { pourFlush } from './pour-flush.ts';
import { pourHurried } from './pour-hurried.ts';
import { pourTooDeep } from './pour-too-deep.ts';
import { ratioMistaken } from './ratio-mistaken.ts';
import { resinLeftThin } from './resin-left-thin.ts';
import { resinTooCold } from './resin-too-cold.ts';
import { resinTooWarm } from './resin-too-warm.ts';
import { rimTooThin } from './rim-too-thin.ts';
import { sandsThrough } from './sands-through.ts';
import { sealNotCured } from './seal-not-cured.ts';
import { sealPastBond } from './seal-past-bond.ts';
import { shortGrainWillBreak } from './short-grain-will-break.ts';
import { strokeNearBitWidth } from './stroke-near-bit-width.ts';
import { strokeTooNarrowToLevel } from './stroke-too-narrow-to-level.ts';
import { veeEndsEarly } from './vee-ends-early.ts';
import { visibleBleedLikely } from './visible-bleed-likely.ts';

/** All checks, in the order in which a maker should read them. */
export const checks: readonly Check[] = [
  oilInWood,
  offTheBoard,
  clampInTheWay,
  floorTooThin,
  holeUnderPocket,
  rimTooThin,
  coloursTouch,
  bitCannotEnter,
  cutEndsShort,
  strokeNearBitWidth,
  floorLeftRidged,
  veeEndsEarly,
  strokeTooNarrowToLevel,
  ghostStroke,
  sandsThrough,
  boardNotFlat,
  highBleedWall,
  bleedReachesNeighbour,
  bleedReachesEdge,
  bleedReachesBlock,
  floorDrinks,
  sealNotCured,
  sealPastBond,
  shortGrainWillBreak,
  islandTooSmall,
  resinLeftThin,
  pourTooDeep,
  cupTooLarge,
  pourHurried,
  pourFlush,
  resinTooCold,
  resinTooWarm,
  pigmentTooMuch,
  ratioMistaken,
  batchTooSmall,
  mixTooSmall,
  visibleBleedLikely,
  colourHidesOrShows,
  outlineOpen,
  outlineCrosses,
];
