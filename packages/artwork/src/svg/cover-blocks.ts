import type { Region } from '@pourproof/plane';
import { uniteRegions } from '../clip/clip-region.ts';

/**
 * Unions of runs of shapes in painter's order, made when first asked for and kept: all that lies above a
 * shape is a few of them, however many shapes that is. A run starts at a multiple of its length, which is a
 * power of two.
 */
export class CoverBlocks {
  readonly #regions: readonly (Region | undefined)[];
  readonly #known = new Map<number, Region>();
  readonly #levels: number;

  /** @param regions what each shape hides, `undefined` for those that hide nothing */
  constructor(regions: readonly (Region | undefined)[]) {
    this.#regions = regions;
    this.#levels = Math.ceil(Math.log2(Math.max(1, regions.length))) + 1;
  }

  /** Regions that together cover what all shapes after number `i` cover. */
  after(i: number): Region[] {
    const out: Region[] = [];
    for (let from = i + 1; from < this.#regions.length; ) {
      let level = 0;
      while (level + 1 < this.#levels && from % 2 ** (level + 1) === 0) {
        level++;
      }
      const union = this.#union(level, from);
      if (union.ringEnds.length > 0) {
        out.push(union);
      }
      from += 2 ** level;
    }
    return out;
  }

  #union(level: number, from: number): Region {
    const key = level * this.#regions.length + from;
    const known = this.#known.get(key);
    if (known !== undefined) {
      return known;
    }
    const half = 2 ** (level - 1);
    const parts =
      level === 0
        ? [this.#regions[from]]
        : [
            this.#union(level - 1, from),
            from + half < this.#regions.length ? this.#union(level - 1, from + half) : undefined,
          ];
    const union = uniteRegions(parts.filter((part) => part !== undefined));
    this.#known.set(key, union);
    return union;
  }
}
