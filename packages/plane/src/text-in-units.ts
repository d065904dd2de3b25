import type { LengthUnit } from './measure-text.ts';

/** A sentence in each unit that a person may read lengths in; the same in both where it tells none. */
export type TextInUnits = Readonly<Record<LengthUnit, string>>;

/** A sentence in each unit, from how it is said in one. */
export function textInUnits(say: string | ((unit: LengthUnit) => string)): TextInUnits {
  return typeof say === 'string' ? { mm: say, in: say } : { mm: say('mm'), in: say('in') };
}
