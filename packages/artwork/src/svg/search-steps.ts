import { svgRefusal } from './svg-refusals.ts';

/**
 * Most looks at elements that the style sheets of one file may take: a drawing of 100,000 elements under a
 * hundred rules stays far below (our choice; some seconds).
 */
const MAX_STEPS = 100_000_000;

/** Counts what the search for rules looks at, so that it is bounded by more than patience. */
export class SearchSteps {
  /** Looks at elements so far. */
  count = 0;
  readonly #most: number;

  constructor(most: number = MAX_STEPS) {
    this.#most = most;
  }

  /**
   * Counts so many looks at elements.
   *
   * @throws {ArtworkError} `svg-styles-too-large` where they become too many
   */
  take(looks = 1): void {
    this.count += looks;
    if (this.count > this.#most) {
      throw svgRefusal('svg-styles-too-large', { most: this.#most });
    }
  }
}
