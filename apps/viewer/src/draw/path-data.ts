import { type Rings, ringStart } from '@pourproof/plane';

/** Rings as SVG path data in mm, each closed. */
export function ringsPath(rings: Rings): string {
  const parts: string[] = [];
  for (let k = 0; k < rings.ringEnds.length; k++) {
    const ring = rings.coords.subarray(2 * ringStart(rings, k), 2 * (rings.ringEnds[k] ?? 0));
    parts.push(`${linePath(ring)}Z`);
  }
  return parts.join('');
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
