import { type AppliesTo, SETTING_KEYS, SETTINGS, type SettingKey } from '@pourproof/job';

/** The settings that mean something only under a condition of the table of settings. */
export function keysOnlyFor(condition: (only: AppliesTo) => boolean): readonly SettingKey[] {
  return SETTING_KEYS.filter((key) => {
    const { only } = SETTINGS[key];
    return only !== undefined && condition(only);
  });
}
