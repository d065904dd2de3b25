import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { findMouths } from '../outline/mouths.ts';
import { CellFinder } from './cell-finder.ts';
import { ClearLayer } from './clear-layer.ts';
import type { CutLayer } from './cut-layer.ts';
import { heightAt } from './cutter.ts';
import { FollowLayer } from './follow-layer.ts';
import { NearIndex } from './near-index.ts';

/**
 * Depth of several cuts together, asked point by point. Exact to rounding for clearing cutters and for following ones with a true tip; for flat and
 * rounded tips what the cutter leaves from the contact's own normal, which is less than the truth only near ends and corners of strokes.
 */
export class DepthField {
  readonly #axis: MedialAxis;
  readonly #layers: readonly CutLayer[];
  readonly #finder: CellFinder;
  readonly #mouthsOf = new Map<CutLayer, MouthIndex>();

  constructor(axis: MedialAxis, layers: readonly CutLayer[]) {
    this.#axis = axis;
    this.#layers = layers;
    this.#finder = new CellFinder(axis);
  }

  /** Depth in mm at a point, absolute; 0 outside the cut. */
  depthAt(xMm: number, yMm: number): number {
    const { originX, originY } = this.#axis.boundary;
    const [x, y] = [xMm - originX, yMm - originY];
    const place = this.#finder.find(x, y);
    let depth = 0;
    for (const layer of place === undefined ? [] : this.#layers) {
      const { distanceMm, clearanceMm } = place ?? { distanceMm: 0, clearanceMm: 0 };
      if (layer instanceof FollowLayer) {
        depth = Math.max(depth, layer.profile.depthBeside(distanceMm, clearanceMm));
      } else if (layer instanceof ClearLayer && layer.depthMm > depth) {
        const { centreMm } = layer.slices;
        const off =
          clearanceMm >= centreMm
            ? Math.max(0, centreMm - distanceMm)
            : this.#mouths(layer).nearest(x, y, centreMm);
        depth = Math.max(depth, layer.depthMm - heightAt(layer.cutter, off));
      }
    }
    return depth;
  }

  #mouths(layer: ClearLayer): MouthIndex {
    let index = this.#mouthsOf.get(layer);
    if (index === undefined) {
      index = new MouthIndex(this.#axis, layer.slices.centreMm);
      this.#mouthsOf.set(layer, index);
    }
    return index;
  }
}

/** The places where a disc of one radius stops, by nearness. */
class MouthIndex {
  readonly #x: readonly number[];
  readonly #y: readonly number[];
  readonly #index: NearIndex;

  constructor(axis: MedialAxis, centreMm: number) {
    const { x, y } = findMouths(axis, centreMm);
    this.#x = x;
    this.#y = y;
    const boxes = Float64Array.from({ length: 4 * x.length }, (_, k) => ((k & 1) === 0 ? x : y)[k >> 2]);
    this.#index = new NearIndex(boxes, new Float64Array(x.length));
  }

  /** Distance to the nearest mouth, Infinity where none is within `limit`. */
  nearest(px: number, py: number, limit: number): number {
    let best = Infinity;
    this.#index.visit(
      px,
      py,
      (distance) => distance <= limit && distance < best,
      (k) => {
        best = Math.min(best, Math.hypot(this.#x[k] - px, this.#y[k] - py));
      },
    );
    return best;
  }
}
