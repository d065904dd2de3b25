import { SETTING_KEYS, SETTINGS, type SettingKey, type TypedJob } from '@pourproof/job';
import type { ArtworkSource } from './artwork-source.ts';
import { keysOnlyFor } from './keys-only-for.ts';

/**
 * The job for other artwork: without what was said of the artwork before, and with the font of the new one. What was typed before there
 * was any was meant for this one, and a file of the same name is the same drawing, exported again.
 */
export function jobForSource(job: TypedJob, source: ArtworkSource, before: ArtworkSource | null): TypedJob {
  const dropped: readonly string[] = [
    'font',
    // the form of lettering says that a width sizes it
    ...(isSameWork(source, before)
      ? []
      : OF_ARTWORK.filter((key) => key !== 'width' || source.kind === 'file')),
    ...keysOnlyFor(({ formats }) => formats?.some((format) => isOfKind(source, format)) === false),
  ];
  const kept = Object.entries(job).filter(([key]) => !dropped.includes(key));
  return { ...Object.fromEntries(kept), ...(source.font === null ? {} : { font: source.font.name }) };
}

const OF_ARTWORK: readonly SettingKey[] = SETTING_KEYS.filter((key) => SETTINGS[key].isOfArtwork === true);

function isSameWork(source: ArtworkSource, before: ArtworkSource | null): boolean {
  return (
    before === null ||
    (before.kind === source.kind && (source.kind === 'lettering' || before.name === source.name))
  );
}

function isOfKind(source: ArtworkSource, format: 'svg' | 'dxf' | 'lettering'): boolean {
  return (format === 'lettering') === (source.kind === 'lettering');
}
