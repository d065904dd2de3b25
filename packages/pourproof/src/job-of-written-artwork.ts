import { type JobInput, SETTING_KEYS, SETTINGS, type SettingKey } from '@pourproof/job';

/** How a source is read, besides its size, its outlines and its letters. */
const READING: ReadonlySet<SettingKey> = new Set(['carve', 'fileUnit', 'join']);

/**
 * A job for the artwork that `artworkFile` writes of it: without what made that of the source, as its size, its changed outlines, its letters and
 * how it was read. What is done with it stays.
 *
 * @example
 * jobOfWrittenArtwork({ width: '120mm', widen: '0.4mm', depth: '3mm' }); // { depth: '3mm' }
 */
export function jobOfWrittenArtwork(job: JobInput): JobInput {
  const made = new Set<string>([
    'artwork',
    'text',
    'font',
    ...SETTING_KEYS.filter((key) => READING.has(key) || GROUPS.has(SETTINGS[key].group)),
  ]);
  return Object.fromEntries(Object.entries(job).filter(([key]) => !made.has(key)));
}

const GROUPS: ReadonlySet<string> = new Set(['size', 'outlines', 'lettering']);
