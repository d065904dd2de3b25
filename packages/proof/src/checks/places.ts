import type { NarrowStretch } from '@pourproof/geometry';
import { type Point, packRings, pollStep, type Rings, ringCoords, signedArea } from '@pourproof/plane';
import type { BlockMeasures } from '../board/block-measures.ts';
import type { FindingPlace } from '../report/finding-schema.ts';

/** Digits kept in places: 0.1 µm, far below what a machine repeats. */
const DIGITS = 4;

/** What a place is a part of, and how large that part is. */
export type PlacePart = Omit<FindingPlace, 'atMm' | 'outline'>;

/** A place with the rings that show it. */
export function placeOfRings(atMm: Point, rings: Rings, part: PlacePart): FindingPlace {
  const outline = Array.from(rings.ringEnds, (_, k) => points(ringCoords(rings, k)));
  return { atMm: rounded(atMm), outline, ...part };
}

/** A place with the open line that shows it. */
export function placeOfPath(atMm: Point, path: ArrayLike<number>, part: PlacePart): FindingPlace {
  return { atMm: rounded(atMm), outline: path.length > 0 ? [points(path)] : [], ...part };
}

/** A place that is a point only. */
export function placeOfPoint(atMm: Point, part: PlacePart): FindingPlace {
  return { atMm: rounded(atMm), outline: [], ...part };
}

/** Sides of the polygon that shows a dot. */
const CIRCLE_SIDES = 32;

/** A part without a stroke, by its largest inscribed disc. */
export function placeOfDisc([x, y]: Point, widthMm: number): FindingPlace {
  const ring = Array.from({ length: CIRCLE_SIDES }, (_, k) => (2 * Math.PI * k) / CIRCLE_SIDES).flatMap(
    (angle) => [x + (widthMm / 2) * Math.cos(angle), y + (widthMm / 2) * Math.sin(angle)],
  );
  return placeOfRings([x, y], packRings([ring]), { what: 'dot', widthMm });
}

/** A stretch of stroke, by its length and its least width. */
export function placeOfStretch({ atMm, path, extentMm, narrowestMm }: NarrowStretch): FindingPlace {
  return placeOfPath(atMm, path, {
    what: 'stroke',
    lengthMm: extentMm,
    widthMm: narrowestMm,
  });
}

/** The cut in one block of the board. */
export function placeOfBlock({ cut }: BlockMeasures): FindingPlace {
  return placeOfRings([cut.coords[0] ?? 0, cut.coords[1] ?? 0], cut, {
    what: 'block',
    areaMm2: signedArea(cut),
  });
}

/** Length of an open line, `[x0, y0, x1, y1, …]`. */
export function lengthOf(path: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 2; i + 1 < path.length; i += 2) {
    sum += Math.hypot(
      (path[i] as number) - (path[i - 2] as number),
      (path[i + 1] as number) - (path[i - 1] as number),
    );
  }
  return sum;
}

/** Kinds of which the thinnest is the worst: wood that stays. */
const OF_WOOD: ReadonlySet<FindingPlace['what']> = new Set(['wood', 'island', 'rim']);

/**
 * Places by size, the largest first: by area, then by length, then by width; of wood that stays the thinnest
 * before the thicker. Ties go by position, from top to bottom and left to right. What rounding alone tells
 * apart is equal, so that the order is the same wherever it is computed.
 */
export function sortedBySize(places: readonly FindingPlace[]): FindingPlace[] {
  return places
    .map((place) => ({ place, order: orderOf(place) }))
    .sort(({ order: a }, { order: b }) => {
      pollStep();
      const k = a.findIndex((value, i) => value !== b[i]);
      return k < 0 ? 0 : (a[k] as number) - (b[k] as number);
    })
    .map(({ place }) => place);
}

/** What places are ordered by, ascending, the first that differs. */
function orderOf({ atMm, what, lengthMm = 0, widthMm = 0, areaMm2 = 0 }: FindingPlace): readonly number[] {
  const width = OF_WOOD.has(what) ? widthMm : -widthMm;
  return [round(-areaMm2), round(-lengthMm), round(width), atMm[1], atMm[0]];
}

function points(coords: ArrayLike<number>): Point[] {
  const out: Point[] = [];
  for (let i = 0; i + 1 < coords.length; i += 2) {
    pollStep();
    out.push(rounded([coords[i] as number, coords[i + 1] as number]));
  }
  return out;
}

function rounded([x, y]: Point): Point {
  return [round(x), round(y)];
}

/** Units of the last digit in a mm. */
const SCALE = 10 ** DIGITS;
/** Nearer to the half between two numbers than this, in units of the last digit, or beyond so many of them, the text of a number decides. */
const NEAR_HALF = 1e-3;
const MOST_UNITS = 1e11;

/** As by way of the text, which takes many times as long: the quotient of two exact numbers is the double nearest to the decimal. */
function round(value: number): number {
  const scaled = value * SCALE;
  const units = Math.round(scaled);
  const isClear = Math.abs(Math.abs(scaled - units) - 0.5) > NEAR_HALF && Math.abs(units) < MOST_UNITS;
  const rounded = isClear ? units / SCALE : Number(value.toFixed(DIGITS));
  return rounded === 0 ? 0 : rounded;
}
