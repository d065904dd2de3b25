import { type FaultWords, faultWords } from './fault-words.ts';
import type { JobErrorCode, JobFaults } from './job-faults.ts';
import type { SettingName } from './setting-name.ts';

/**
 * A job that cannot be settled. `code` and `parameters` say what is wrong for a program, `what` and `remedy`
 * for a person; `message` is both sentences.
 */
export class JobError<Code extends JobErrorCode = JobErrorCode> extends Error {
  readonly code: Code;
  /**
   * The setting at fault, with its place where it is part of a list: `depth`, `coupons, row 2`; `null` for
   * the job as a whole.
   */
  readonly key: string | null;
  readonly parameters: JobFaults[Code];
  readonly what: string;
  readonly remedy: string;

  constructor(code: Code, key: string | null, parameters: JobFaults[Code]) {
    const { what, remedy } = faultWords(code, key, parameters);
    super(remedy === '' ? what : `${what}${what.includes('\n') ? '\n' : ' '}${remedy}`);
    this.name = 'JobError';
    this.code = code;
    this.key = key;
    this.parameters = parameters;
    this.what = what;
    this.remedy = remedy;
  }

  /** The same sentences with settings under other names: those of flags, or of the fields of a page. */
  wordsIn(name: SettingName): FaultWords {
    return faultWords(this.code, this.key, this.parameters, name);
  }
}
