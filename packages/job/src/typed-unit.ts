import type { LengthUnit } from '@pourproof/plane';
import { type JobInput, SETTINGS, type SettingKey } from './settings/table.ts';

/** A number and a unit of length, not of a speed. */
const LENGTH = /[\d.]\s*(?:(mm|cm|m|um|µm)|(inches|inch|in|["″”]|thou|mil|ft))(?![\p{L}\d/])/iu;

/** Settings whose unit says most: a maker measures the board and the depth. */
const FIRST: readonly SettingKey[] = ['board', 'depth'];
/** Bits are bought in inches and millimetres by all, so that theirs counts only where nothing else does. */
const LAST: readonly SettingKey[] = ['bit'];

/**
 * The unit in which a maker measures, so that answers come in it: that of the board, else of the depth, else
 * of the first other length in the order of the keys, else of the bits; `undefined` where there is no length.
 * How fine a file is read says nothing of how its maker measures.
 *
 * @param jobs what a job is made of, the one that counts most first: its file, then what was typed beside it
 */
export function typedUnit(...jobs: readonly JobInput[]): LengthUnit | undefined {
  return firstOf(jobs, (job) => unitOfWork(job)) ?? firstOf(jobs, (job) => unitOfKeys(job, LAST));
}

function unitOfWork(job: JobInput): LengthUnit | undefined {
  const others = (Object.keys(job) as SettingKey[]).filter(
    (key) => !FIRST.includes(key) && !LAST.includes(key) && Object.hasOwn(SETTINGS, key),
  );
  return unitOfKeys(job, [...FIRST, ...others]);
}

function unitOfKeys(job: JobInput, keys: readonly SettingKey[]): LengthUnit | undefined {
  return firstOf(keys, (key) => (SETTINGS[key].holds.hasWorkLengths === true ? unitIn(job[key]) : undefined));
}

function firstOf<Each>(
  all: readonly Each[],
  unitOf: (each: Each) => LengthUnit | undefined,
): LengthUnit | undefined {
  for (const each of all) {
    const unit = unitOf(each);
    if (unit !== undefined) {
      return unit;
    }
  }
  return undefined;
}

function unitIn(value: unknown): LengthUnit | undefined {
  if (typeof value === 'string') {
    const found = LENGTH.exec(value);
    return found === null ? undefined : found[1] === undefined ? 'in' : 'mm';
  }
  if (typeof value !== 'object' || value === null) {
    return undefined;
  }
  for (const [key, part] of Object.entries(value)) {
    const unit =
      key === 'in' ? 'in' : key === 'mm' || (key.endsWith('Mm') && part !== null) ? 'mm' : unitIn(part);
    if (unit !== undefined) {
      return unit;
    }
  }
  return undefined;
}
