/** Longest string that is kept once for all its uses; longer ones hardly ever repeat. */
const MAX_LENGTH = 24;

/** Most strings kept; a file with more different short values gets copies of the rest. */
const MAX_STRINGS = 20_000;

/**
 * Gives equal short strings as one, so that names and values that a file repeats a million times are held
 * once.
 */
export class StringPool {
  readonly #known = new Map<string, string>();

  one(text: string): string {
    if (text.length > MAX_LENGTH) {
      return text;
    }
    const known = this.#known.get(text);
    if (known === undefined && this.#known.size < MAX_STRINGS) {
      this.#known.set(text, text);
    }
    return known ?? text;
  }
}
