import { flagOf, SETTINGS } from '@pourproof/job';
import type { UsualValue } from '../facts/usual-values.ts';
import { wrap } from './wrap.ts';

/** What was taken as usual, or from the shop: all of it, or what most jobs give and a count of the rest. */
export function takenLines(
  all: readonly UsualValue[],
  start: string,
  isWhole: boolean,
  columns: number,
  more = ': --full',
): readonly string[] {
  const told = isWhole ? all : all.filter(({ key }) => SETTINGS[key].group === 'first');
  const left = all.length - told.length;
  const parts = told.map(({ key, value }) => `${flagOf(key) ?? key} ${value}`.replaceAll(' ', '\u00a0'));
  if (left > 0) {
    parts.push(told.length === 0 ? `${left} values${more}` : `${left} more${more}`);
  }
  return parts.length === 0 ? [] : wrap(`${parts.join(', ')}.`, columns, start);
}
