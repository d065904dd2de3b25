/**
 * What a setting is called by whoever reads a message: by its key in code and in a job file, by its flag at
 * the command line, by the label of its field on a page. What is no key of a setting is returned as it is.
 */
export type SettingName = (key: string) => string;

/** Settings by their keys. */
export const settingKeyName: SettingName = (key) => key;

/** A place such as `depth`, `coupons, row 2` or `board: width`, with its setting under its name. */
export function spokenPlace(place: string, name: SettingName): string {
  return place.replace(/^[A-Za-z0-9]+/u, (word) => name(word));
}
