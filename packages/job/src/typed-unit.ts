import type { LengthUnit } from '@pourproof/plane';
import { type JobInput, SETTINGS, type SettingKey } from './settings/table.ts';

/** A number and a unit of length, not of a speed. */
const LENGTH = /[\d.]\s*(?:(mm|cm|m|um|µm)|(inches|inch|in|["″”]|thou|mil|ft))(?![\p{L}\d/])/iu;

/**
 * The unit of the first length in a job, in the order of its keys, so that answers come in it; `undefined`
 * where there is none. How fine a file is read says nothing of how its maker measures.
 */
export function typedUnit(job: JobInput): LengthUnit | undefined {
  for (const [key, value] of Object.entries(job)) {
    const row = Object.hasOwn(SETTINGS, key) ? SETTINGS[key as SettingKey] : undefined;
    const unit = row?.holds.hasWorkLengths === true ? unitIn(value) : undefined;
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
