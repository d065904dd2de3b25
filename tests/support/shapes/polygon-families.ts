import type { CleanRegion } from '@pourproof/plane';
import { cleanFrom } from './clean-from.ts';
import { gridCells, randomFrom, star, untangled } from './random-regions.ts';

/** Families of small random polygons about 20 mm across, each region made from its seed alone and clean. */
export const polygonFamilies: Readonly<Record<string, (seed: number) => CleanRegion>> = {
  spiky: (seed) => {
    const random = randomFrom(seed);
    const corners = 5 + Math.floor(14 * random());
    return random() < 0.5
      ? cleanFrom([star(random, corners, 0.3, 10)])
      : untangled(random, Math.min(12, corners));
  },
  holed: (seed) => {
    const random = randomFrom(seed);
    const holes = Array.from({ length: 1 + Math.floor(3 * random()) }, (_, k) => {
      const turn = (2 * Math.PI * k) / 3 + random();
      return star(random, 3 + Math.floor(5 * random()), 0.3, 2, 4 * Math.cos(turn), 4 * Math.sin(turn));
    });
    return cleanFrom([star(random, 6 + Math.floor(8 * random()), 7.5, 10)], holes);
  },
  'near-touching': (seed) => {
    const random = randomFrom(seed);
    const corners = 4 + Math.floor(6 * random());
    const outer = star(random, corners, 4, 10);
    // a wall from 1 mm down to 0.1 µm all round, and its mirror image as close beside it
    const gap = 10 ** (-1 - 4 * random());
    const right = Math.max(...outer.filter((_, i) => i % 2 === 0));
    const beside = (ring: readonly number[]): number[] =>
      ring.map((v, i) => (i % 2 === 0 ? 2 * right + 10 * gap - v : v));
    const thick = outer.map((v) => 0.6 * v);
    const thin = outer.map((v) => (1 - gap) * v);
    return cleanFrom([outer, beside(outer)], [thick, beside(thin)]);
  },
  'grid-aligned': (seed) => {
    const random = randomFrom(seed);
    return gridCells(random, 4, 0.45 + 0.4 * random());
  },
};
