import { type Rings, ringArea, ringStart } from '@pourproof/plane';
import { orient2d } from 'robust-predicates';

/**
 * What is wrong with rings that claim to be a clean region, in words; empty when nothing is.
 * Checks the definition edge by edge in O(n²): meant for tests, and shares no code with the product.
 */
export function cleanRegionFaults(rings: Rings): string[] {
  const faults: string[] = [];
  const { coords, ringEnds } = rings;
  const next: number[] = [];
  const ringOf: number[] = [];
  for (let k = 0; k < ringEnds.length; k++) {
    const from = ringStart(rings, k);
    if (ringEnds[k] - from < 3) {
      faults.push(`ring ${k} has ${ringEnds[k] - from} points`);
    }
    if (ringArea(coords, from, ringEnds[k]) === 0) {
      faults.push(`ring ${k} has no area`);
    }
    for (let i = from; i < ringEnds[k]; i++) {
      next[i] = i + 1 === ringEnds[k] ? from : i + 1;
      ringOf[i] = k;
    }
  }
  const n = coords.length / 2;
  if (coords.some((c) => !Number.isFinite(c))) {
    faults.push('a coordinate is not finite');
  }
  const px = (i: number) => coords[2 * i];
  const py = (i: number) => coords[2 * i + 1];
  const same = (i: number, j: number) => px(i) === px(j) && py(i) === py(j);
  const side = (a: number, b: number, c: number) =>
    -Math.sign(orient2d(px(a), py(a), px(b), py(b), px(c), py(c)));
  for (let i = 0; i < n; i++) {
    if (same(i, next[i])) {
      faults.push(`point ${i} is repeated`);
    }
  }
  // edges: no crossing, no vertex inside another edge, no overlap
  for (let i = 0; i < n; i++) {
    const i1 = next[i];
    for (let j = i + 1; j < n; j++) {
      const j1 = next[j];
      if (
        Math.max(px(i), px(i1)) < Math.min(px(j), px(j1)) ||
        Math.max(px(j), px(j1)) < Math.min(px(i), px(i1)) ||
        Math.max(py(i), py(i1)) < Math.min(py(j), py(j1)) ||
        Math.max(py(j), py(j1)) < Math.min(py(i), py(i1))
      ) {
        continue;
      }
      const a = side(i, i1, j);
      const b = side(i, i1, j1);
      const c = side(j, j1, i);
      const d = side(j, j1, i1);
      const ends = [same(i, j), same(i, j1), same(i1, j), same(i1, j1)];
      const shared = ends.filter(Boolean).length;
      if (a * b < 0 && c * d < 0) {
        faults.push(`edges ${i} and ${j} cross`);
      } else if (shared >= 2) {
        faults.push(`edges ${i} and ${j} are the same`);
      } else if (shared === 1 && a === 0 && b === 0) {
        const [u, v, w] = ends[0] ? [i, i1, j1] : ends[1] ? [i, i1, j] : ends[2] ? [i1, i, j1] : [i1, i, j];
        const dot = (px(v) - px(u)) * (px(w) - px(u)) + (py(v) - py(u)) * (py(w) - py(u));
        if (dot > 0) {
          faults.push(`edges ${i} and ${j} overlap`);
        }
      } else if (shared === 0 && a * b <= 0 && c * d <= 0) {
        faults.push(`edges ${i} and ${j} touch inside an edge`);
      }
    }
  }
  faults.push(...windingFaults(rings, next), ...wedgeFaults(rings, next));
  return faults;
}

/** Just beside each edge the winding number must be 1 on the inside and 0 on the outside: this is orientation and nesting in one. */
function windingFaults(rings: Rings, next: readonly number[]): string[] {
  const faults: string[] = [];
  const { coords } = rings;
  const n = coords.length / 2;
  for (let i = 0; i < n; i++) {
    const j = next[i];
    // a ray from the middle of the edge towards −y or −x, whichever the edge is steeper against; the edge itself is left out
    const mx = (coords[2 * i] + coords[2 * j]) / 2;
    const my = (coords[2 * i + 1] + coords[2 * j + 1]) / 2;
    const ex = coords[2 * j] - coords[2 * i];
    const ey = coords[2 * j + 1] - coords[2 * i + 1];
    const flat = Math.abs(ex) >= Math.abs(ey);
    const beyond = rayWinding(rings, next, i, flat ? mx : my, flat);
    // flat: an edge towards +x has its inside on +y, so beyond it (−y) is outside; steep: towards +y the inside is on −x
    const inner = flat ? (ex > 0 ? 0 : 1) : ey > 0 ? 1 : 0;
    if (beyond !== inner) {
      faults.push(`beside edge ${i} the winding number is ${beyond}, not ${inner}`);
    }
  }
  return faults;
}

function rayWinding(
  rings: Rings,
  next: readonly number[],
  from: number,
  across: number,
  flat: boolean,
): number {
  const { coords } = rings;
  const u = (i: number) => coords[2 * i + (flat ? 0 : 1)];
  const v = (i: number) => coords[2 * i + (flat ? 1 : 0)];
  // on which side of edge i point p lies: 1 towards larger v
  const sideOf = (i: number, p: number): number => {
    const [a, b] = u(i) < u(next[i]) ? [i, next[i]] : [next[i], i];
    return -Math.sign(orient2d(u(a), v(a), u(b), v(b), u(p), v(p)));
  };
  const isPast = (i: number, p: number): boolean =>
    Math.min(u(i), u(next[i])) <= u(p) && u(p) <= Math.max(u(i), u(next[i]));
  // edges that do not cross keep their order, which the ends tell exactly where a middle would have to be rounded
  const isBefore = (i: number): boolean => {
    for (const p of [from, next[from]]) {
      if (isPast(i, p) && sideOf(i, p) !== 0) {
        return sideOf(i, p) > 0;
      }
    }
    for (const p of [i, next[i]]) {
      if (isPast(from, p) && sideOf(from, p) !== 0) {
        return sideOf(from, p) < 0;
      }
    }
    return false;
  };
  let winding = 0;
  for (let i = 0; i < next.length; i++) {
    const j = next[i];
    if (i !== from && u(i) <= across !== u(j) <= across && isBefore(i)) {
      winding += u(j) > u(i) ? 1 : -1;
    }
  }
  return flat ? winding : -winding;
}

/** Where several corners meet in one point, each must be a wedge of inside that no other edge enters. */
function wedgeFaults(rings: Rings, next: readonly number[]): string[] {
  const { coords } = rings;
  const faults: string[] = [];
  const corners = new Map<string, { at: number; into: number; out: number }[]>();
  for (let i = 0; i < next.length; i++) {
    const v = next[i];
    const key = `${coords[2 * v]},${coords[2 * v + 1]}`;
    const list = corners.get(key) ?? [];
    list.push({ at: v, into: i, out: next[v] });
    corners.set(key, list);
  }
  for (const [key, list] of corners) {
    for (const corner of list.length < 2 ? [] : list) {
      const enters = (point: number) => isWithinWedge(coords, corner, point);
      if (list.some((other) => other !== corner && (enters(other.into) || enters(other.out)))) {
        faults.push(`a corner at ${key} has another edge in its inside`);
      }
    }
  }
  return faults;
}

/** Whether the way to a point lies between the way out and the way in, turning from x to y; by exact predicates, for angles round. */
function isWithinWedge(
  coords: Rings['coords'],
  { at, into, out }: { readonly at: number; readonly into: number; readonly out: number },
  point: number,
): boolean {
  const [x, y] = [coords[2 * at], coords[2 * at + 1]];
  const cross = (a: number, b: number) =>
    -orient2d(x, y, coords[2 * a], coords[2 * a + 1], coords[2 * b], coords[2 * b + 1]);
  const dot = (a: number, b: number) =>
    (coords[2 * a] - x) * (coords[2 * b] - x) + (coords[2 * a + 1] - y) * (coords[2 * b + 1] - y);
  /** 0 for turns from the way out below π, 1 from π on. */
  const half = (a: number) => {
    const side = cross(out, a);
    return side > 0 || (side === 0 && dot(out, a) > 0) ? 0 : 1;
  };
  const [own, end] = [half(point), half(into)];
  return own !== end ? own < end : cross(point, into) > 0;
}
