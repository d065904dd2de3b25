import type { LengthUnit } from '@pourproof/plane';
import type { JobFile } from './job-file.ts';

/** The keys of a job whose text holds lengths of work and artwork. How fine a file is read says nothing of how its maker measures. */
const WITH_LENGTHS: ReadonlySet<string> = new Set<keyof JobFile>([
  'arc',
  'bit',
  'block',
  'board',
  'capHeight',
  'depth',
  'height',
  'keepClear',
  'level',
  'margin',
  'overpour',
  'passDepth',
  'place',
  'reading',
  'tracking',
  'width',
]);

/** A number and a unit of length, not of a speed. */
const LENGTH = /[\d.]\s*(?:(mm|cm|m|um|µm)|(inches|inch|in|["″”]|thou|mil|ft))(?![\p{L}\d/])/iu;

/** The unit of the first length in a job, in the order of its keys, so that answers come in it; `undefined` where none is typed. */
export function typedUnit(job: Partial<JobFile>): LengthUnit | undefined {
  for (const [key, value] of Object.entries(job)) {
    if (!WITH_LENGTHS.has(key)) {
      continue;
    }
    for (const text of Array.isArray(value) ? value : [value]) {
      const found = LENGTH.exec(String(text));
      if (found !== null) {
        return found[1] === undefined ? 'in' : 'mm';
      }
    }
  }
  return undefined;
}
