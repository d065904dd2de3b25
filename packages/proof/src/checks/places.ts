import { type Point, type Rings, ringCoords } from '@pourproof/plane';
import type { FindingPlace } from '../report/finding-schema.ts';

/** Digits kept in places: 0.1 µm, far below what a machine repeats. */
const DIGITS = 4;

/** A place with the rings that show it. */
export function placeOfRings(atMm: Point, rings: Rings): FindingPlace {
  const outline = Array.from(rings.ringEnds, (_, k) => points(ringCoords(rings, k)));
  return { atMm: rounded(atMm), outline };
}

/** A place with the open line that shows it. */
export function placeOfPath(atMm: Point, path: ArrayLike<number>): FindingPlace {
  return { atMm: rounded(atMm), outline: path.length > 0 ? [points(path)] : [] };
}

/** A place that is a point only. */
export function placeOfPoint(atMm: Point): FindingPlace {
  return { atMm: rounded(atMm), outline: [] };
}

function points(coords: ArrayLike<number>): Point[] {
  const out: Point[] = [];
  for (let i = 0; i + 1 < coords.length; i += 2) {
    out.push(rounded([coords[i] as number, coords[i + 1] as number]));
  }
  return out;
}

function rounded([x, y]: Point): Point {
  return [round(x), round(y)];
}

function round(value: number): number {
  const text = Number(value.toFixed(DIGITS));
  return text === 0 ? 0 : text;
}
