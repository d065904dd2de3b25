import { isEmptyBounds, type Region, ringsBounds } from '@pourproof/plane';
import { boxesOf, OverlapIndex } from '../clip/boxes.ts';
import { subtractRegions } from '../clip/clip-region.ts';
import { CoverBlocks } from './cover-blocks.ts';
import { regionsOf } from './preflight.ts';
import type { Painted, SvgNotices } from './scene.ts';
import { placeOf } from './svg-element.ts';

/** The colour of paper: paint in it hides, but is not carved. */
const PAPER = '#ffffff';

/**
 * Where at least this many shapes lie above the average one, those above are united first; for fewer it costs
 * more than it saves.
 */
const MIN_PILE = 32;

/**
 * Unions with fewer coordinates than this, plus so many times the shape's own, are used without listing what
 * lies above one by one.
 */
const MAX_UNION_COORDS = 2000;
const MAX_UNION_RATIO = 8;

/**
 * What can be seen of each shape by painter's order: opaque paint hides what lies beneath. White paint counts
 * as paper, so it leaves wood standing. Translucent paint hides nothing.
 *
 * O(n) where few shapes lie over one another, O(n log n) for piles whose outline stays simple.
 */
export function visiblePaint(notices: SvgNotices, painted: readonly Painted[]): Painted[] {
  const covers = new Covers(painted, new OverlapIndex(boxesOf(regionsOf(painted), painted.length)));
  const out: Painted[] = [];
  painted.forEach((below, i) => {
    const { shape, element } = below;
    if (shape.colour === PAPER) {
      notices.add('paper-left-out', placeOf(element));
      return;
    }
    const region = covers.seenOf(i);
    if (region.ringEnds.length > 0 && !isEmptyBounds(ringsBounds(region))) {
      out.push({ ...below, shape: { ...shape, region } });
    }
  });
  return out;
}

/**
 * Subtracts from each shape what lies above it, shape by shape or by unions of many, whichever has fewer
 * points.
 */
class Covers {
  readonly #painted: readonly Painted[];
  readonly #index: OverlapIndex;
  readonly #blocks: CoverBlocks | undefined;

  constructor(painted: readonly Painted[], index: OverlapIndex) {
    this.#painted = painted;
    this.#index = index;
    this.#blocks = this.#isPiled()
      ? new CoverBlocks(painted.map(({ shape, opaque }) => (opaque ? shape.region : undefined)))
      : undefined;
  }

  seenOf(i: number): Region {
    const { region } = (this.#painted[i] as Painted).shape;
    const together = this.#blocks?.after(i) ?? [];
    // in a pile whose outline stays simple not even the list of what lies above is made
    if (
      this.#blocks !== undefined &&
      points(together) < MAX_UNION_COORDS + MAX_UNION_RATIO * region.coords.length
    ) {
      return subtractRegions(region, together);
    }
    const above = this.#above(i);
    const isLess = this.#blocks !== undefined && points(together) < points(above);
    return subtractRegions(region, isLess ? together : above);
  }

  /** Whether more shapes lie over one another than is usual. */
  #isPiled(): boolean {
    const most = MIN_PILE * this.#painted.length;
    let pairs = 0;
    return this.#painted.some((_, i) =>
      this.#index.some(i, (k) => k > i && (this.#painted[k] as Painted).opaque && ++pairs >= most),
    );
  }

  #above(i: number): Region[] {
    const above: number[] = [];
    this.#index.some(i, (k) => {
      if (k > i && (this.#painted[k] as Painted).opaque) {
        above.push(k);
      }
      return false;
    });
    // in painter's order, so that results do not depend on that of the index
    return above.sort((a, b) => a - b).map((k) => (this.#painted[k] as Painted).shape.region);
  }
}

function points(regions: readonly Region[]): number {
  return regions.reduce((sum, region) => sum + region.coords.length, 0);
}
