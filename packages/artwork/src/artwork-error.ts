import type { LengthUnit } from '@pourproof/plane';
import type { RefusalWords } from './refusal-words.ts';

/** Where in a file reading failed: line and column, both from 1, as far as they are known. */
export interface ErrorPlace {
  readonly line?: number;
  readonly column?: number;
}

/**
 * A file, font or text that could not be read at all. `code`, stable kebab-case, and `parameters` say what is
 * wrong for programs; `message` says it in one sentence, and `remedy` what to do about it. Each reader makes
 * the sentences from the parameters in one place; those of `message` and `remedy` tell lengths in mm.
 */
export class ArtworkError extends Error {
  readonly code: string;
  /** Plain data; what each code has is listed with its words. */
  readonly parameters: Readonly<Record<string, unknown>>;
  readonly remedy: string;
  readonly line?: number;
  readonly column?: number;
  readonly #words: (unit: LengthUnit) => RefusalWords;

  constructor(
    code: string,
    parameters: Readonly<Record<string, unknown>>,
    words: (unit: LengthUnit) => RefusalWords,
    place: ErrorPlace = {},
  ) {
    super(words('mm').what);
    this.name = 'ArtworkError';
    this.code = code;
    this.parameters = parameters;
    this.remedy = words('mm').remedy;
    this.#words = words;
    if (place.line !== undefined) {
      this.line = place.line;
    }
    if (place.column !== undefined) {
      this.column = place.column;
    }
  }

  /** The sentences with their lengths in a unit. */
  wordsIn(unit: LengthUnit): RefusalWords {
    return this.#words(unit);
  }

  /** The same error with `message` and `remedy` in the maker's unit. */
  inUnit(unit: LengthUnit): ArtworkError {
    return unit === 'mm'
      ? this
      : new ArtworkError(this.code, this.parameters, () => this.wordsIn(unit), this);
  }
}
