import { type Rings, ringCoords } from '@pourproof/plane';

/** Digits of coordinates in a drawing: 1 µm. */
const DIGITS = 3;

/** SVG path data of closed rings in mm. */
export function pathOfRings(rings: Rings): string {
  return Array.from(rings.ringEnds, (_, k) => `${pathOfLine(ringCoords(rings, k))}Z`).join('');
}

/** SVG path data of an open line `[x0,y0,x1,y1,…]` in mm. */
export function pathOfLine(coords: ArrayLike<number>): string {
  let text = '';
  for (let i = 0; i + 1 < coords.length; i += 2) {
    const x = coords[i] as number;
    const y = coords[i + 1] as number;
    text += `${i === 0 ? 'M' : 'L'}${x.toFixed(DIGITS)} ${y.toFixed(DIGITS)}`;
  }
  return text;
}
