/** From this many pairs on, a map finds them faster than a linear search. */
const MAPPED_FROM = 24;

/**
 * Names with values in order, read like a map: attributes of an element, or declarations. They are kept in
 * one flat list, since a map of its own for each of a million elements takes more memory than the whole file.
 */
export class StringPairs implements Iterable<readonly [string, string]> {
  readonly #flat: readonly string[];
  readonly #map: ReadonlyMap<string, string> | undefined;

  /** @param flat name, value, name, value, …; of equal names the last counts */
  constructor(flat: readonly string[]) {
    this.#flat = flat;
    this.#map = flat.length < 2 * MAPPED_FROM ? undefined : new Map(pairs(flat));
  }

  get(name: string): string | undefined {
    if (this.#map !== undefined) {
      return this.#map.get(name);
    }
    for (let i = this.#flat.length - 2; i >= 0; i -= 2) {
      if (this.#flat[i] === name) {
        return this.#flat[i + 1];
      }
    }
    return undefined;
  }

  has(name: string): boolean {
    return this.get(name) !== undefined;
  }

  [Symbol.iterator](): Iterator<[string, string]> {
    return pairs(this.#flat);
  }
}

function* pairs(flat: readonly string[]): Generator<[string, string]> {
  for (let i = 0; i < flat.length; i += 2) {
    yield [flat[i] as string, flat[i + 1] as string];
  }
}
