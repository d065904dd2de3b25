import { SETTINGS, type SettingKey } from './table.ts';

/** The flag of the command line that sets a setting, without its dashes; `null` where there is none. */
export function flagOf(key: SettingKey): string | null {
  const { flag } = SETTINGS[key];
  return flag === undefined ? key.replace(/[A-Z]/gu, (letter) => `-${letter.toLowerCase()}`) : flag;
}

/** The name of a setting at the command line: `--depth`; its key where it has no flag. */
export function flagName(key: string): string {
  const flag = Object.hasOwn(SETTINGS, key) ? flagOf(key as SettingKey) : null;
  return flag === null ? key : `--${flag}`;
}
