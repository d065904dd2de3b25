import type { JobInput } from './settings/table.ts';
import { typedUnit } from './typed-unit.ts';

/** Settings of which a job has one at a time: a new one takes the place of the others. */
const ALTERNATIVES = [
  ['width', 'height', 'scale'],
  ['artwork', 'text'],
] as const;

/**
 * A job from a file with what was typed beside it: what was typed stands before the file. A size that was
 * typed replaces whichever size the file asks for, and so it is with artwork and text. The answer keeps the unit
 * of the file: one length typed in the other is no reason to turn all of it.
 */
export function mergeJobs(file: JobInput, typed: JobInput): JobInput {
  const replaced = ALTERNATIVES.flatMap((keys) =>
    keys.some((key) => typed[key] !== undefined) ? [...keys] : [],
  );
  const kept = Object.entries(file).filter(([key]) => !replaced.some((each) => each === key));
  const given = Object.entries(typed).filter(([, value]) => value !== undefined);
  const keys = new Set(given.map(([key]) => key));
  const units = typed.units ?? file.units ?? typedUnit(file, typed);
  return Object.fromEntries([
    ...given,
    ...kept.filter(([key]) => !keys.has(key)),
    ...(units === undefined ? [] : [['units', units] as const]),
  ]) as JobInput;
}
