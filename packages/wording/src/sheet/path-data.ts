import { type Rings, ringCoords } from '@pourproof/plane';

/** Digits after the point: 1 µm, below what a machine repeats and a printer shows. */
const DIGITS = 3;

/** SVG path data of closed rings, in mm; draw it with `fill-rule="evenodd"`. */
export function ringsPath(rings: Rings): string {
  return Array.from(rings.ringEnds, (_, k) => `${linePath(ringCoords(rings, k))}Z`).join('');
}

/** SVG path data of an open line, in mm; empty for fewer than one point. */
export function linePath(coords: ArrayLike<number>): string {
  let path = '';
  for (let i = 0; i + 1 < coords.length; i += 2) {
    path += `${i === 0 ? 'M' : 'L'}${digits(coords[i] ?? 0)} ${digits(coords[i + 1] ?? 0)}`;
  }
  return path;
}

/** A number as short as SVG takes it, to 1 µm. */
export function digits(value: number): string {
  const rounded = Number(value.toFixed(DIGITS));
  return String(rounded === 0 ? 0 : rounded);
}
