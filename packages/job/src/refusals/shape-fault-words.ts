import type { FaultWords, WordsFor } from './fault-words.ts';
import type { JobFaults } from './job-faults.ts';
import { type SettingName, spokenPlace } from './setting-name.ts';

/** Words for what has the wrong shape. */
export const shapeFaultWords: WordsFor<
  'unknown-key' | 'wrong-type' | 'wrong-value' | 'empty-list' | 'missing'
> = {
  'unknown-key': shapeWords,
  'wrong-type': shapeWords,
  'wrong-value': shapeWords,
  'empty-list': shapeWords,
  missing: shapeWords,
};

function shapeWords(
  { file, schema, issues }: JobFaults['wrong-type'],
  _: string,
  name: SettingName,
): FaultWords {
  const remedy = `The schema is in docs/schema/${schema.replace('pourproof/', '')}.json.`;
  if (file !== null) {
    const lines = issues.map(({ place, words }) => `  ${place}: ${words}\n`);
    return { what: `${file} is not a ${schema} file:\n${lines.join('').trimEnd()}`, remedy };
  }
  const all = issues.map(({ place, words }) => `${spokenPlace(place, name)} ${words}`).join('; ');
  return { what: all.endsWith('?') ? all : `${all}.`, remedy };
}
