/** A broken invariant of pourproof itself, never the maker's fault. Exit code 70 on the command line. */
export class InternalError extends Error {
  /** What went wrong, without what to do about it. */
  readonly what: string;

  constructor(what: string) {
    super(
      `pourproof broke its own rule: ${what}. This is our bug, not yours; please report it with the artwork and the command.`,
    );
    this.name = 'InternalError';
    this.what = what;
  }
}

/**
 * Stops with an {@link InternalError} unless `condition` holds.
 *
 * @param condition what must be true at this point of the program
 * @param what the rule in words, as it should hold
 * @throws {InternalError} when the condition is false
 */
export function invariant(condition: boolean, what: string): asserts condition {
  if (!condition) {
    throw new InternalError(what);
  }
}
