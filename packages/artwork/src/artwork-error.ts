/** Where in a file reading failed: line and column, both from 1, as far as they are known. */
export interface ErrorPlace {
  readonly line?: number;
  readonly column?: number;
}

/**
 * A file, font or text that could not be read at all. `message` says what is wrong in one sentence, `remedy`
 * what to do about it, `code` is stable kebab-case for programs.
 */
export class ArtworkError extends Error {
  readonly code: string;
  readonly remedy: string;
  readonly line?: number;
  readonly column?: number;

  constructor(code: string, message: string, remedy: string, place: ErrorPlace = {}) {
    super(message);
    this.name = 'ArtworkError';
    this.code = code;
    this.remedy = remedy;
    if (place.line !== undefined) {
      this.line = place.line;
    }
    if (place.column !== undefined) {
      this.column = place.column;
    }
  }
}
