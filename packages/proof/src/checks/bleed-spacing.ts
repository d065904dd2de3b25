import type { CleanRegion, Point, Rings } from '@pourproof/plane';
import type { BlockMeasures } from '../board/block-measures.ts';
import { offsetsApart, ownersOf, shiftedRings } from '../fixes/moved-apart.ts';
import type { Measured } from '../measured.ts';
import type { FindingPlace } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import { besideWood, partsOf } from '../slivers/beside-wood.ts';
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
 * any two of them: tried on the cut, whose parts move as they are. Empty where it crosses wood within one letter or part alone.
 */
export function bleedSpacing(
  { drawing, artwork }: Measured,
  blocks: readonly Crossings[],
  where: readonly FindingPlace[],
): Fix[] {
  if (drawing.format === 'lettering') {
    return letteringFixes(
      drawing.shapes.map(({ region }) => region),
      blocks,
    );
  }
  const parts = partsOf(artwork);
  const owners = blocks.map(({ inBlock }) => ownersOf(inBlock.cut, parts));
  const between = where.filter(
    (place) => besideWood(parts, { atMm: place.atMm, widthMm: place.widthMm ?? 0 }) !== null,
  );
  if (between.length === 0) {
    return [];
  }
  const crossesAt = (byMm: number): boolean => {
    const offsets = offsetsApart(parts, byMm, between);
    return blocks.some((block, k) =>
      block
        .in(shiftedRings(block.inBlock.cut, owners[k] as readonly number[], offsets))
        .some(([one, other]) => owners[k]?.[one] !== owners[k]?.[other]),
    );
  };
  const byMm = least(crossesAt, Math.max(...blocks.map(({ reachMm }) => reachMm)));
  return byMm === null ? [] : [{ do: 'move-apart', byMm, clears: true }];
}

/** Two letters with wood between that colour crosses, in one block. */
interface Pair {
  readonly block: Crossings;
  readonly owners: readonly number[];
  readonly one: number;
  readonly other: number;
}

function letteringFixes(letters: readonly Rings[], blocks: readonly Crossings[]): Fix[] {
  const pairs = blocks.flatMap((block) => pairsIn(block, letters));
  const options: Fix[] = [];
  const slides = pairs.filter((pair) => !isAbove(letters, pair)).map((pair) => slideMm(pair, letters, 0));
  if (slides.length > 0 && slides.every((mm) => mm !== null)) {
    options.push({ do: 'track', byMm: Math.max(...slides), clears: true });
  }
  const factors = pairs
    .filter((pair) => isAbove(letters, pair))
    .map((pair) => {
      const mm = slideMm(pair, letters, 1);
      return mm === null ? null : 1 + mm / Math.abs(lineBetween(letters, pair));
    });
  if (factors.length > 0 && factors.every((factor) => factor !== null && Number.isFinite(factor))) {
    const factor = Math.max(...factors.map(Number));
    options.push({ do: 'space-lines', factor: Math.ceil(factor * STEPS) / STEPS, clears: true });
  }
  return options;
}

function pairsIn(block: Crossings, letters: readonly Rings[]): readonly Pair[] {
  const owners = ownersOf(block.inBlock.cut, letters);
  const pairs = new Map<string, Pair>();
  for (const rings of block.in(block.inBlock.cut)) {
    const [one = 0, other = 0] = rings.map((ring) => owners[ring] ?? 0).toSorted((a, b) => a - b);
    if (one !== other) {
      pairs.set(`${one} ${other}`, { block, owners, one, other });
    }
  }
  return [...pairs.values()];
}

function lineBetween(letters: readonly Rings[], { one, other }: Pair): number {
  return bottomOf(letters, other) - bottomOf(letters, one);
}

/** Whether two letters stand in different lines: they share no height. */
function isAbove(letters: readonly Rings[], { one, other }: Pair): boolean {
  const heights = [one, other].map((k) => {
    const ys = Array.from((letters[k] as Rings).coords).filter((_, i) => i % 2 === 1);
    return [ys.reduce((a, b) => Math.min(a, b)), ys.reduce((a, b) => Math.max(a, b))] as const;
  });
  const [[top, bottom], [otherTop, otherBottom]] = heights as [[number, number], [number, number]];
  return top >= otherBottom || otherTop >= bottom;
}

/** How far one of two letters has to slide away from the other, to the side or down. */
function slideMm({ block, owners, one, other }: Pair, letters: readonly Rings[], axis: 0 | 1): number | null {
  const middle = (k: number): number => {
    const along = Array.from((letters[k] as Rings).coords).filter((_, i) => i % 2 === axis);
    return along.reduce((a, b) => Math.min(a, b)) + along.reduce((a, b) => Math.max(a, b));
  };
  const sense = middle(other) >= middle(one) ? 1 : -1;
  const crossesAt = (mm: number): boolean => {
    const by: Point = axis === 0 ? [sense * mm, 0] : [0, sense * mm];
    const offsets = letters.map((_, k): Point => (k === other ? by : [0, 0]));
    return block
      .in(shiftedRings(block.inBlock.cut, owners, offsets))
      .some(
        (rings) => rings.some((ring) => owners[ring] === one) && rings.some((ring) => owners[ring] === other),
      );
  };
  return least(crossesAt, MAX_SLIDE * block.reachMm);
}

/** The least hundredths of a millimetre at which nothing crosses, by halving; `null` where something does at the most. */
function least(crossesAt: (mm: number) => boolean, mostMm: number): number | null {
  let low = 0;
  let high = Math.ceil(mostMm * STEPS) + 1;
  if (crossesAt(high / STEPS)) {
    return null;
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (crossesAt(middle / STEPS)) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return high / STEPS;
}
