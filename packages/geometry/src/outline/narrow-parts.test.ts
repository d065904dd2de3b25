import { type CleanRegion, packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { isSecondary } from '../measure/is-secondary.ts';
import { medialAxis } from '../medial-axis/medial-axis.ts';
import { NarrowParts } from './narrow-parts.ts';

/**
 * A band whose width swings along its way, with a pillar in one of its wide places: many bottlenecks, and one
 * loop.
 */
const upper = Array.from({ length: 120 }, (_, i) => [i / 2, 4 + 2 * Math.sin(i / 5) + Math.sin(i / 3)]);
const lower = Array.from({ length: 120 }, (_, i) => [(119 - i) / 2, Math.sin((119 - i) / 7) - 1.5]);
const band = packRings([
  [...lower.toReversed(), ...upper.toReversed()].flat(),
  [4, 2, 4, 2.5, 4.6, 2.5, 4.6, 2],
]) as CleanRegion;
const axis = medialAxis(band);

/**
 * For each node the least node that it hangs together with below a clearance, found by going over all edges
 * until nothing changes.
 */
function leastTogether(mm: number): number[] {
  const least = Array.from(axis.nodeR, (_, k) => k);
  for (let isDone = false; !isDone; ) {
    isDone = true;
    for (let e = 0; e < axis.edgeFrom.length; e++) {
      const [from, to] = [axis.edgeFrom[e]!, axis.edgeTo[e]!];
      if (axis.nodeR[from]! < mm && axis.nodeR[to]! < mm && least[from] !== least[to]) {
        least[from] = Math.min(least[from]!, least[to]!);
        least[to] = least[from]!;
        isDone = false;
      }
    }
  }
  return least;
}

test.each([0.1, 0.5, 1, 1.5, 2, 2.5, 3, 5])(
  'parts narrower than %f mm hang together as their edges do',
  (mm) => {
    const least = leastTogether(mm);
    const bottleneckParts = new Set(least.filter((_, k) => k < axis.bottleneckCount && axis.nodeR[k]! < mm));
    const parts = new NarrowParts(axis, mm);
    const lazily = new NarrowParts(axis, mm);
    const partOf = new Map<number, number>();
    const leastOf = new Map<number, number>();
    for (let e = 0; e < axis.edgeFrom.length; e++) {
      const from = axis.edgeFrom[e]!;
      if (axis.nodeR[from]! >= mm) {
        continue;
      }
      const name = least[from]!;
      if (axis.nodeR[axis.edgeTo[e]!]! >= mm && !isSecondary(axis, e)) {
        expect(parts.closedBy(e) > 0).toBe(bottleneckParts.has(name));
      }
      const part = lazily.of(e);
      expect(partOf.get(name) ?? part).toBe(part);
      expect(leastOf.get(part) ?? name).toBe(name);
      partOf.set(name, part);
      leastOf.set(part, name);
    }
    expect(partOf.size).toBeGreaterThan(0);
  },
);
