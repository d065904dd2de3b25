import { faultWords, type MaterialsErrorCode, type MaterialsFaults } from './materials-faults.ts';

/**
 * An entry of `materials.json` that cannot be used. `code`, `place` and `parameters` say what is wrong for a
 * program, `what` and `remedy` for a person; `message` is the place with both sentences.
 */
export class MaterialsError<Code extends MaterialsErrorCode = MaterialsErrorCode> extends Error {
  readonly code: Code;
  /** Where in the file: `resins.my-resin.gelMin`. */
  readonly place: string;
  readonly parameters: MaterialsFaults[Code];
  readonly what: string;
  readonly remedy: string;

  constructor(code: Code, place: string, parameters: MaterialsFaults[Code]) {
    const { what, remedy } = faultWords(code, parameters);
    super(`${place}: ${what} ${remedy}`);
    this.name = 'MaterialsError';
    this.code = code;
    this.place = place;
    this.parameters = parameters;
    this.what = what;
    this.remedy = remedy;
  }
}
