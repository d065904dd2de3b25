import type { RefusalWords } from './refusal-words.ts';

/** Where in a file reading failed: line and column, both from 1, as far as they are known. */
export interface ErrorPlace {
  readonly line?: number;
  readonly column?: number;
}

/**
 * A file, font or text that could not be read at all. `code`, stable kebab-case, and `parameters` say what is
 * wrong for programs; `message` says it in one sentence, and `remedy` what to do about it. Each reader makes
 * the sentences from the parameters in one place.
 */
export class ArtworkError extends Error {
  readonly code: string;
  /** Plain data; what each code has is listed with its words. */
  readonly parameters: Readonly<Record<string, unknown>>;
  readonly remedy: string;
  readonly line?: number;
  readonly column?: number;

  constructor(
    code: string,
    parameters: Readonly<Record<string, unknown>>,
    { what, remedy }: RefusalWords,
    place: ErrorPlace = {},
  ) {
    super(what);
    this.name = 'ArtworkError';
    this.code = code;
    this.parameters = parameters;
    this.remedy = remedy;
    if (place.line !== undefined) {
      this.line = place.line;
    }
    if (place.column !== undefined) {
      this.column = place.column;
    }
  }
}
