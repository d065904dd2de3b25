import { type Bounds, type CleanRegion, type Point, packRings, ringCoords } from '@pourproof/plane';
import type { BlockMeasures } from '../board/block-measures.ts';
import { shiftedRings, timesMm, waysApart } from '../fixes/moved-apart.ts';
import type { Measured } from '../measured.ts';
import type { FindingPlace } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import { besideWood, partsOf } from '../slivers/beside-wood.ts';
import { ownersOf, PartIndex } from '../slivers/part-index.ts';
import { leastWhole } from './least-whole.ts';
import { bottomOf } from './spacing-fixes.ts';

/** What is looked for: wood along the fibres that colour crosses, in one block. */
export interface Crossings {
  readonly inBlock: BlockMeasures;
  readonly reachMm: number;
  /** First rings of the parts on both sides of each crossing, in a cut that may have been moved. */
  readonly in: (cut: CleanRegion) => readonly (readonly [number, number])[];
}

/** Steps of a move, a mm, as it is printed. */
const STEPS = 100;
/** Letters may have to move by more than the fibres are long between them, where these run aslant: by this many times the reach at the most (our choice). */
const MAX_SLIDE = 4;

/**
 * Letters and lines set farther apart, or parts of a drawing moved, by the least at which colour no longer crosses the wood between
 * any two of them: each two tried by themselves, on their cut, which moves as they do. Empty where it crosses wood within one letter or
 * part alone.
 */
export function bleedSpacing(
  { drawing, artwork }: Measured,
  blocks: readonly Crossings[],
  where: readonly FindingPlace[],
): Fix[] {
  if (drawing.format === 'lettering') {
    return letteringFixes(new PartIndex(drawing.shapes.map(({ region }) => region)), blocks);
  }
  const parts = new PartIndex(partsOf(artwork));
  const between = where.filter(
    (place) => besideWood(parts, { atMm: place.atMm, widthMm: place.widthMm ?? 0 }) !== null,
  );
  const byMm = between.length === 0 ? null : leastApart(parts, blocks, waysApart(parts, between));
  return byMm === null ? [] : [{ do: 'move-apart', byMm, clears: true }];
}

/** The cut of one block with the part that each of its rings belongs to. */
interface Owned {
  readonly block: Crossings;
  readonly owners: readonly number[];
}

/** Two parts with wood between that colour crosses, in one block. */
interface Pair {
  readonly block: Crossings;
  readonly one: number;
  readonly other: number;
  /** Whether colour crosses between both when they have been moved, mm. */
  readonly crossesAt: (ofOne: Point, ofOther: Point) => boolean;
}

function owned(block: Crossings, parts: PartIndex): Owned {
  return { block, owners: ownersOf(block.inBlock.cut, parts) };
}

/** The parts that colour crosses between in a block. */
function pairsIn({ block, owners }: Owned, cut: CleanRegion): readonly Pair[] {
  const pairs = new Map<string, Pair>();
  for (const rings of block.in(cut)) {
    const [one = 0, other = 0] = rings.map((ring) => owners[ring] ?? 0).toSorted((a, b) => a - b);
    const key = `${one} ${other}`;
    if (one !== other && !pairs.has(key)) {
      pairs.set(key, { block, one, other, crossesAt: crossing({ block, owners }, [one, other]) });
    }
  }
  return [...pairs.values()];
}

/** Whether colour crosses between two parts, moved: nothing else of the cut is looked at. */
function crossing({ block, owners }: Owned, pair: readonly [number, number]): Pair['crossesAt'] {
  const { cut } = block.inBlock;
  const rings = owners.flatMap((owner, k) => (pair.includes(owner) ? [k] : []));
  // whole rings of a clean region are clean
  const both = packRings(rings.map((k) => ringCoords(cut, k))) as CleanRegion;
  const sides = rings.map((k) => (owners[k] === pair[0] ? 0 : 1));
  return (ofOne, ofOther) =>
    block
      .in(shiftedRings(both, sides, [ofOne, ofOther]))
      .some(([a, b]) => sides[a] !== undefined && sides[b] !== undefined && sides[a] !== sides[b]);
}

function letteringFixes(letters: PartIndex, blocks: readonly Crossings[]): Fix[] {
  const pairs = blocks.flatMap((block) => pairsIn(owned(block, letters), block.inBlock.cut));
  const options: Fix[] = [];
  const across = leastOfAll(
    pairs.filter((pair) => !isAbove(letters, pair)).map((pair) => slide(pair, letters, 0)),
  );
  if (across !== null && across > 0) {
    options.push({ do: 'track', byMm: across, clears: true });
  }
  const lines = leastOfAll(
    pairs
      .filter((pair) => isAbove(letters, pair))
      .map((pair) => ({ ...slide(pair, letters, 1), perMm: Math.abs(lineBetween(letters, pair)) })),
  );
  if (lines !== null && lines > 0) {
    options.push({ do: 'space-lines', factor: Math.ceil((1 + lines) * STEPS) / STEPS, clears: true });
  }
  return options;
}

function lineBetween(letters: PartIndex, { one, other }: Pair): number {
  return bottomOf(letters, other) - bottomOf(letters, one);
}

/** Whether two letters stand in different lines: they share no height. */
function isAbove({ boxes }: PartIndex, { one, other }: Pair): boolean {
  const [, top, , bottom] = boxes[one] as Bounds;
  const [, otherTop, , otherBottom] = boxes[other] as Bounds;
  return top >= otherBottom || otherTop >= bottom;
}

/** Something that is moved until nothing crosses: by how much, mm, it is known to do at the most. */
interface Slide {
  readonly crossesAt: (mm: number) => boolean;
  readonly mostMm: number;
  /** How much of what is asked for one millimetre is; 1 if left out. */
  readonly perMm?: number;
}

/** One of two letters sliding away from the other, to the side or down. */
function slide({ block, one, other, crossesAt }: Pair, { boxes }: PartIndex, axis: 0 | 1): Slide {
  const middle = (k: number): number => {
    const box = boxes[k] as Bounds;
    return box[axis] + (axis === 0 ? box[2] : box[3]);
  };
  const sense = middle(other) >= middle(one) ? 1 : -1;
  return {
    crossesAt: (mm) => crossesAt([0, 0], axis === 0 ? [sense * mm, 0] : [0, sense * mm]),
    mostMm: MAX_SLIDE * block.reachMm,
  };
}

/**
 * The least at which none of some crosses, in what {@link Slide.perMm} counts; `null` where one does at its most. One that does not cross at the
 * least of those before it is not looked into.
 */
function leastOfAll(slides: readonly Slide[], from = 0): number | null {
  let found = from;
  for (const { crossesAt, mostMm, perMm = 1 } of slides) {
    const before = found * perMm;
    if (found === 0 || crossesAt(before)) {
      const mm = least(crossesAt, mostMm, before);
      // lines on one height are set no farther apart by any factor
      if (mm === null || perMm === 0) {
        return null;
      }
      found = mm / perMm;
    }
  }
  return found;
}

/**
 * How far parts have to be moved apart, mm; `null` where the reach of the colour is not enough. Where they come nearer to others by that, these
 * count as well.
 */
function leastApart(parts: PartIndex, blocks: readonly Crossings[], ways: readonly Point[]): number | null {
  const cuts = blocks.map((block) => owned(block, parts));
  const mostMm = Math.max(...blocks.map(({ reachMm }) => reachMm));
  let byMm = 0;
  for (;;) {
    const offsets = timesMm(ways, byMm);
    const pairs = cuts.flatMap((each) =>
      pairsIn(each, shiftedRings(each.block.inBlock.cut, each.owners, offsets)),
    );
    if (pairs.length === 0) {
      return byMm;
    }
    const slides = pairs.map(({ one, other, crossesAt }): Slide => {
      const [[ax, ay], [bx, by]] = [ways[one] as Point, ways[other] as Point];
      return { crossesAt: (mm) => crossesAt([mm * ax, mm * ay], [mm * bx, mm * by]), mostMm };
    });
    const found = leastOfAll(slides, byMm);
    if (found === null || found <= byMm) {
      return null;
    }
    byMm = found;
  }
}

/** The least hundredths of a millimetre at which nothing crosses, by halving; `null` where something does at the most. */
function least(crossesAt: (mm: number) => boolean, mostMm: number, fromMm: number): number | null {
  const low = Math.floor(fromMm * STEPS);
  const high = Math.max(low, Math.ceil(mostMm * STEPS)) + 1;
  if (crossesAt(high / STEPS)) {
    return null;
  }
  return leastWhole(low, high, (steps) => !crossesAt(steps / STEPS)) / STEPS;
}
