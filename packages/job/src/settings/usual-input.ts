import { limits } from '@pourproof/materials';
import { type JobInput, SETTINGS, type SettingKey } from './table.ts';

/**
 * What a setting is, as it would be given, where the job does not give it; `undefined` where nothing is
 * usual.
 */
export function usualInput<Key extends SettingKey>(key: Key, job: JobInput): JobInput[Key] {
  const { usual } = SETTINGS[key];
  if (usual === undefined) {
    return undefined;
  }
  const value =
    'limit' in usual
      ? usual.as(limits[usual.limit].value)
      : 'follows' in usual
        ? usual.follows(job)
        : usual.value;
  return value as JobInput[Key];
}
