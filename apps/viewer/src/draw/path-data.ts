import { type Rings, ringStart } from '@pourproof/plane';
import type { Art, ArtShape } from './art-shapes.ts';

/** Rings as SVG path data in mm, each closed. */
export function ringsPath(rings: Rings): string {
  const parts: string[] = [];
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const ring = rings.coords.subarray(2 * ringStart(rings, k), 2 * (rings.ringEnds[k] ?? 0));
    parts.push(`${linePath(ring)}Z`);
  }
  return parts.join('');
}

/** Lines of a shape of the picture as SVG path data in mm. */
export function artPath({ coords, ends, openCount }: ArtShape, [x0, y0]: Art['originMm']): string {
  const lineAt = (k: number): number[] =>
    Array.from(coords.subarray(k === 0 ? 0 : 2 * (ends[k - 1] ?? 0), 2 * (ends[k] ?? 0)), (value, i) =>
      i % 2 === 0 ? value + x0 : value + y0,
    );
  return Array.from(ends, (_, k) => `${linePath(lineAt(k))}${k < openCount ? '' : 'Z'}`).join('');
}

/** A line of points `[x0,y0,x1,y1,…]` as SVG path data in mm. */
export function linePath(coords: ArrayLike<number>): string {
  let data = '';
  for (let i = 0; i + 1 < coords.length; i += 2) {
    data += `${i === 0 ? 'M' : 'L'}${micron(coords[i])} ${micron(coords[i + 1])}`;
  }
  return data;
}

function micron(mm: number | undefined): number {
  return Math.round((mm ?? 0) * 1000) / 1000;
}
