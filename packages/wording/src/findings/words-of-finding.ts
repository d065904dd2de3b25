import { invariant } from '@pourproof/plane';
import type { Finding, FindingCode, FixStep } from '@pourproof/proof';
import { batchTooSmall } from './batch-too-small.ts';
import { bitCannotEnter } from './bit-cannot-enter.ts';
import { bleedReachesBlock } from './bleed-reaches-block.ts';
import { bleedReachesEdge } from './bleed-reaches-edge.ts';
import { bleedReachesNeighbour } from './bleed-reaches-neighbour.ts';
import { boardNotFlat } from './board-not-flat.ts';
import { clampInTheWay } from './clamp-in-the-way.ts';
import { colourHidesOrShows } from './colour-hides-or-shows.ts';
import { coloursTouch } from './colours-touch.ts';
import { cupTooLarge } from './cup-too-large.ts';
import { cutEndsShort } from './cut-ends-short.ts';
import type { FindingWords, Reader } from './finding-words.ts';
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

const WORDS: Readonly<Record<FindingCode, FindingWords>> = {
  'oil-in-wood': oilInWood,
  'off-the-board': offTheBoard,
  'clamp-in-the-way': clampInTheWay,
  'floor-too-thin': floorTooThin,
  'hole-under-pocket': holeUnderPocket,
  'rim-too-thin': rimTooThin,
  'colours-touch': coloursTouch,
  'bit-cannot-enter': bitCannotEnter,
  'cut-ends-short': cutEndsShort,
  'stroke-near-bit-width': strokeNearBitWidth,
  'floor-left-ridged': floorLeftRidged,
  'vee-ends-early': veeEndsEarly,
  'stroke-too-narrow-to-level': strokeTooNarrowToLevel,
  'ghost-stroke': ghostStroke,
  'sands-through': sandsThrough,
  'board-not-flat': boardNotFlat,
  'high-bleed-wall': highBleedWall,
  'bleed-reaches-neighbour': bleedReachesNeighbour,
  'bleed-reaches-edge': bleedReachesEdge,
  'bleed-reaches-block': bleedReachesBlock,
  'floor-drinks': floorDrinks,
  'seal-not-cured': sealNotCured,
  'seal-past-bond': sealPastBond,
  'short-grain-will-break': shortGrainWillBreak,
  'island-too-small': islandTooSmall,
  'resin-left-thin': resinLeftThin,
  'pour-too-deep': pourTooDeep,
  'cup-too-large': cupTooLarge,
  'pour-hurried': pourHurried,
  'pour-flush': pourFlush,
  'resin-too-cold': resinTooCold,
  'resin-too-warm': resinTooWarm,
  'pigment-too-much': pigmentTooMuch,
  'ratio-mistaken': ratioMistaken,
  'batch-too-small': batchTooSmall,
  'mix-too-small': mixTooSmall,
  'visible-bleed-likely': visibleBleedLikely,
  'colour-hides-or-shows': colourHidesOrShows,
  'outline-open': outlineOpen,
  'outline-crosses': outlineCrosses,
};

/** The words of a finding by its code. */
export function wordsOfFinding(code: FindingCode): FindingWords {
  return WORDS[code];
}

/** The title of a finding: a few plain words. */
export function findingTitle(code: FindingCode): string {
  return WORDS[code].title;
}

/** A way out of a finding in one sentence. */
export function fixText({ code }: Pick<Finding, 'code'>, fix: FixStep, reader: Reader): string {
  const text = said(WORDS[code], fix, reader);
  invariant(text !== null, `${code} has words for the way out ${fix.do}`);
  return text;
}

/** A way out of any finding in one sentence. */
export function anyFixText(fix: FixStep, reader: Reader): string {
  const [text] = Object.values(WORDS).flatMap((words) => said(words, fix, reader) ?? []);
  invariant(text !== undefined, `some finding has words for the way out ${fix.do}`);
  return text;
}

function said({ fixes }: FindingWords, fix: FixStep, reader: Reader): string | null {
  // each entry takes the way out of its own name
  const say = fixes[fix.do] as ((fix: FixStep, reader: Reader) => string) | undefined;
  return say === undefined ? null : say(fix, reader);
}
