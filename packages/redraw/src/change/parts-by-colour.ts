import { combineShapes } from '@pourproof/arrangement';
import {
  BoxIndex,
  type CleanRegion,
  packRings,
  type Region,
  type Rings,
  ringCoords,
  ringStart,
} from '@pourproof/plane';
import { withoutStraightPoints } from './straight-points.ts';

/** A point lies on an outline where it is nearer than this, mm: the resolution of crossings. */
const ON_OUTLINE_MM = 1e-5;

/** Tips reach at most this many moves. */
const TIP_LIMIT = 4;

/**
 * What each colour has of a whole that has changed: its own, and what lies beside its part of the old outline. Where two colours meet, the border between them
 * goes on straight out from the old outline; none takes what another one had.
 *
 * @param reachMm how far the outline has moved out, 0 where it has not
 */
export function partsByColour(
  visible: readonly CleanRegion[],
  { before, after }: { readonly before: CleanRegion; readonly after: CleanRegion },
  reachMm: number,
): readonly CleanRegion[] {
  const outline = new OutlineIndex(before);
  let given: Region[] = [];
  const parts = visible.map((own, k) => {
    const others = visible.filter((_, other) => other !== k).map(filled);
    const beside = reachMm === 0 ? [] : besideOutline(own, outline, reachMm);
    const near = combineShapes([filled(own), ...beside], [...others, ...given], 'subtract');
    const part = combineShapes([filled(near)], [filled(after)], 'intersect');
    given = [...given, filled(part)];
    return part;
  });
  // corners that are filled reach farther; they go to the first colour
  const rest = combineShapes([filled(after)], given, 'subtract');
  const [first, ...more] = parts;
  const all =
    first === undefined || rest.ringEnds.length === 0
      ? parts
      : [combineShapes([filled(first), filled(rest)], [], 'union'), ...more];
  return all.map(withoutSeams);
}

/** Where strips met, points are left on straight sides: three for each point of the old outline. */
function withoutSeams(region: CleanRegion): CleanRegion {
  const rings = Array.from(region.ringEnds, (_, k) => withoutStraightPoints(ringCoords(region, k)));
  return combineShapes([{ ...packRings(rings), fillRule: 'nonzero' }], [], 'union');
}

/** Strips beside those sides of a region that lie on an outline, and what lies between two of them around a corner. */
function besideOutline(
  { coords, ringEnds }: CleanRegion,
  outline: OutlineIndex,
  reach: number,
): readonly Region[] {
  const rings: number[][] = [];
  for (let k = 0; k < ringEnds.length; k++) {
    const from = ringStart({ coords, ringEnds }, k);
    const n = ringEnds[k] - from;
    const at = (i: number): readonly [number, number] => [
      coords[2 * (from + (i % n))],
      coords[2 * (from + (i % n)) + 1],
    ];
    const sides = Array.from({ length: n }, (_, i) => {
      const [[ax, ay], [bx, by]] = [at(i), at(i + 1)];
      const d = Math.hypot(bx - ax, by - ay);
      // outwards of an outer ring that turns from +x to +y, and of its holes alike
      const normal = [(reach * (by - ay)) / d, (-reach * (bx - ax)) / d] as const;
      return {
        a: [ax, ay] as const,
        b: [bx, by] as const,
        normal,
        isOuter: outline.has((ax + bx) / 2, (ay + by) / 2),
      };
    });
    sides.forEach(({ a, b, normal: [nx, ny], isOuter }, i) => {
      const next = sides[(i + 1) % n];
      if (!isOuter || next === undefined) {
        return;
      }
      rings.push([...a, a[0] + nx, a[1] + ny, b[0] + nx, b[1] + ny, ...b]);
      if (next.isOuter) {
        rings.push(cornerQuad(b, [nx, ny], next.normal, reach));
      }
    });
  }
  return rings
    .filter(({ length }) => length > 0)
    .map((ring) => ({ ...packRings([oriented(ring)]), fillRule: 'nonzero' }));
}

/** Between the strips of two sides around a corner, up to where their outer sides meet; empty where they overlap. */
function cornerQuad(
  [x, y]: readonly [number, number],
  [mx, my]: readonly [number, number],
  [nx, ny]: readonly [number, number],
  reach: number,
): number[] {
  if (mx * ny - my * nx <= 0) {
    return [];
  }
  const square = reach * reach;
  const k = Math.min(square / Math.max(square + mx * nx + my * ny, 1e-9), TIP_LIMIT);
  return [x, y, x + mx, y + my, x + k * (mx + nx), y + k * (my + ny), x + nx, y + ny];
}

/** A ring turned so that it is an outer one. */
function oriented(ring: number[]): number[] {
  let sum = 0;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    sum += ring[i] * ring[j + 1] - ring[j] * ring[i + 1];
  }
  return sum >= 0
    ? ring
    : Array.from({ length: ring.length }, (_, k) => ring[ring.length - 2 - (k - (k % 2)) + (k % 2)] ?? 0);
}

/** Tells whether a point lies on an outline. */
class OutlineIndex {
  readonly #index: BoxIndex;
  readonly #sides: readonly (readonly [number, number, number, number])[];

  constructor({ coords, ringEnds }: Rings) {
    this.#sides = Array.from(ringEnds, (end, k) => {
      const from = ringStart({ coords, ringEnds }, k);
      return Array.from({ length: end - from }, (_, i) => {
        const [a, b] = [from + i, from + i + 1 === end ? from : from + i + 1];
        return [coords[2 * a], coords[2 * a + 1], coords[2 * b], coords[2 * b + 1]] as const;
      });
    }).flat();
    this.#index = new BoxIndex(
      Float64Array.from(
        this.#sides.flatMap(([ax, ay, bx, by]) => [
          Math.min(ax, bx) - ON_OUTLINE_MM,
          Math.min(ay, by) - ON_OUTLINE_MM,
          Math.max(ax, bx) + ON_OUTLINE_MM,
          Math.max(ay, by) + ON_OUTLINE_MM,
        ]),
      ),
    );
  }

  has(x: number, y: number): boolean {
    return this.#index.someIn(x, y, x, y, (item) => {
      const [ax, ay, bx, by] = this.#sides[item] as readonly [number, number, number, number];
      const [dx, dy] = [bx - ax, by - ay];
      const square = dx * dx + dy * dy;
      const t = square > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
      return Math.hypot(x - ax - t * dx, y - ay - t * dy) <= ON_OUTLINE_MM;
    });
  }
}

function filled(region: CleanRegion): Region {
  return { ...region, fillRule: 'nonzero' };
}
