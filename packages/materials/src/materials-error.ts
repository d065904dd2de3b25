/** What is wrong with an entry of the maker's materials. */
export type MaterialsErrorCode =
  | 'unknown-like'
  | 'new-needs-like'
  | 'out-of-range'
  | 'curve-order'
  | 'conflict';

/** An entry of `materials.json` that cannot be used: code, place and remedy. */
export class MaterialsError extends Error {
  readonly code: MaterialsErrorCode;
  /** Where in the file: `resins.my-resin.gelMin`. */
  readonly place: string;
  readonly what: string;
  readonly remedy: string;

  constructor(code: MaterialsErrorCode, place: string, what: string, remedy: string) {
    super(`${place}: ${what} ${remedy}`);
    this.name = 'MaterialsError';
    this.code = code;
    this.place = place;
    this.what = what;
    this.remedy = remedy;
  }
}
