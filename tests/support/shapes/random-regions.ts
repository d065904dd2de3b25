import type { CleanRegion } from '@pourproof/plane';
import { cleanFrom, reversed } from './clean-from.ts';

/** Numbers in 0 … 1 that depend on the seed alone (mulberry32, from memory). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A polygon that its middle sees all of, with corners between two radii at even angles: spiky when the radii differ much. */
export function star(
  random: () => number,
  corners: number,
  low: number,
  high: number,
  cx = 0,
  cy = 0,
): number[] {
  const start = random();
  return Array.from({ length: corners }, (_, i) => (2 * Math.PI * (i + start)) / corners).flatMap((t) => {
    const radius = low + (high - low) * random();
    return [cx + radius * Math.cos(t), cy + radius * Math.sin(t)];
  });
}

/** A star with four star-shaped holes. */
export function holed(random: () => number): CleanRegion {
  const holes = [
    [3, 3, 1.4],
    [-3, 3, 1.4],
    [3, -3, 1.4],
    [0, 0, 1.4],
  ].map(([x, y, high]) => star(random, 20, 0.2, high, x, y));
  return cleanFrom([star(random, 200, 9, 10)], holes);
}

/** A simple polygon through random points: crossings are undone by reversing the stretch between until none is left. */
export function untangled(random: () => number, count: number): CleanRegion {
  const p = Array.from({ length: count }, () => [10 * random(), 10 * random()] as const);
  const turn = (
    a: readonly [number, number],
    b: readonly [number, number],
    c: readonly [number, number],
  ): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  const crosses = (i: number, j: number): boolean => {
    const [a, b, c, d] = [p[i], p[i + 1], p[j], p[(j + 1) % count]];
    return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
  };
  for (let changed = true; changed; ) {
    changed = false;
    for (let i = 0; i < count; i++) {
      for (let j = i + 2; j < count; j++) {
        if (!(i === 0 && j === count - 1) && crosses(i, j)) {
          p.splice(i + 1, j - i, ...p.slice(i + 1, j + 1).reverse());
          changed = true;
        }
      }
    }
  }
  return cleanFrom([p.flat()]);
}

/**
 * Random unit cells of a grid, with every cell corner kept as a point: collinear points, level corridors, squares of touching discs
 * everywhere. Cells that meet in a corner only stay apart there.
 */
export function gridCells(random: () => number, size: number, share: number): CleanRegion {
  const cell = Array.from({ length: size + 2 }, (_, x) =>
    Array.from({ length: size + 2 }, (_, y) => x > 0 && y > 0 && x <= size && y <= size && random() < share),
  );
  const from = new Map<string, number[][]>();
  const add = (x: number, y: number, dx: number, dy: number): void => {
    const key = `${x},${y}`;
    from.set(key, [...(from.get(key) ?? []), [x, y, dx, dy]]);
  };
  for (let x = 1; x <= size; x++) {
    for (let y = 1; y <= size; y++) {
      if (cell[x][y]) {
        if (!cell[x][y - 1]) {
          add(x, y, 1, 0);
        }
        if (!cell[x + 1][y]) {
          add(x + 1, y, 0, 1);
        }
        if (!cell[x][y + 1]) {
          add(x + 1, y + 1, -1, 0);
        }
        if (!cell[x - 1][y]) {
          add(x, y + 1, 0, -1);
        }
      }
    }
  }
  const rings: number[][] = [];
  for (const list of from.values()) {
    for (let start = list[0]; start !== undefined; start = list[0]) {
      rings.push(walk(from, start));
    }
  }
  const outer = (ring: number[]): boolean => area(ring) > 0;
  return cleanFrom(rings.filter(outer), rings.filter((ring) => !outer(ring)).map(reversed));
}

/** Takes steps out of the map from a first one on, turning towards the inside where two ways are open, until it is closed. */
function walk(from: Map<string, number[][]>, start: number[]): number[] {
  const ring: number[] = [];
  let step = start;
  for (;;) {
    const [x, y, dx, dy] = step;
    const here = from.get(`${x},${y}`) ?? [];
    here.splice(here.indexOf(step), 1);
    ring.push(x, y);
    const ahead = from.get(`${x + dx},${y + dy}`) ?? [];
    const inward = (s: number[]): number => dx * s[3] - dy * s[2];
    const options = x + dx === start[0] && y + dy === start[1] ? [...ahead, start] : ahead;
    const next = options.reduce((best, s) => (inward(s) > inward(best) ? s : best));
    if (next === start) {
      return ring;
    }
    step = next;
  }
}

function area(ring: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    sum += ring[i] * ring[j + 1] - ring[j] * ring[i + 1];
  }
  return sum / 2;
}
