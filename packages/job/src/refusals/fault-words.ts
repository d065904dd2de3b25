import { bitFaultWords } from './bit-fault-words.ts';
import { boardFaultWords } from './board-fault-words.ts';
import type { JobErrorCode, JobFaults } from './job-faults.ts';
import { type SettingName, settingKeyName, spokenPlace } from './setting-name.ts';
import { shapeFaultWords } from './shape-fault-words.ts';
import { sourceFaultWords } from './source-fault-words.ts';
import { valueFaultWords } from './value-fault-words.ts';

/** What is wrong, and what to write instead; the remedy is `''` where the first sentence says it. */
export interface FaultWords {
  readonly what: string;
  readonly remedy: string;
}

/**
 * The words for some codes, from the parameters, the name of the setting at fault (`''` for the job as a
 * whole), and the names of all others.
 */
export type WordsFor<Codes extends JobErrorCode> = {
  readonly [Code in Codes]: (parameters: JobFaults[Code], key: string, name: SettingName) => FaultWords;
};

const WORDS: WordsFor<JobErrorCode> = {
  ...shapeFaultWords,
  ...valueFaultWords,
  ...boardFaultWords,
  ...bitFaultWords,
  ...sourceFaultWords,
};

/** The one place where a fault of a job becomes sentences. */
export function faultWords<Code extends JobErrorCode>(
  code: Code,
  key: string | null,
  parameters: JobFaults[Code],
  name: SettingName = settingKeyName,
): FaultWords {
  return WORDS[code](parameters, spokenPlace(key ?? '', name), name);
}
