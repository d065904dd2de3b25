import { SETTINGS, type SettingKey } from '@pourproof/job';

/** Settings whose fields are not those of the ticket's groups, or that come with a file. */
const OTHERS: Partial<Record<SettingKey, string>> = {
  artwork: 'the drawing',
  text: '“Text”',
  font: '“Font”',
  singleLine: 'single-line letters under “Font”',
  capHeight: '“Height of capitals”',
  align: '“Lines meet at”',
  tracking: '“Room between letters”',
  lineSpacing: '“Line spacing”',
  arc: '“Arc, radius”',
  axis: '“Axes of a variable font”',
  bit: '“Bits, in the order of use”',
  grain: '“Fibres”',
  units: '“Show sizes in”',
  coupons: 'the coupons of the job file',
};

/** What a setting is called on the page: its field as it is labelled, “Depth of the pocket”. */
export function fieldName(key: string): string {
  if (!Object.hasOwn(SETTINGS, key)) {
    return key;
  }
  const { label } = SETTINGS[key as SettingKey];
  return label === undefined
    ? (OTHERS[key as SettingKey] ?? key)
    : `“${label.replace(/, one a line$/u, '')}”`;
}
