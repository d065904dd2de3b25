import type { TypedJob } from '@pourproof/job';
import type { ArtworkSource } from './artwork-source.ts';

const OF_LETTERING = ['capHeight', 'singleLine', 'align', 'tracking', 'lineSpacing', 'arc', 'axis'] as const;
const OF_FILES = ['width', 'height', 'scale', 'carve', 'fileUnit', 'join'] as const;

/**
 * A job as it stands when other artwork is put on the sheet: sizes and ways of reading that were meant for the artwork before are
 * dropped, and the font is that of the new one. A file of the same name is the same drawing, exported again.
 */
export function jobForSource(job: TypedJob, source: ArtworkSource, before: ArtworkSource | null): TypedJob {
  const isAgain = before?.kind === 'file' && before.name === source.name;
  // the width of lettering is set with it, that of a file belongs to the file before
  const dropped: readonly string[] =
    source.kind === 'file'
      ? [...OF_LETTERING, ...(isAgain ? [] : OF_FILES), 'font']
      : [...OF_FILES.filter((key) => key !== 'width'), 'font'];
  const kept = Object.entries(job).filter(([key]) => !dropped.includes(key));
  return { ...Object.fromEntries(kept), ...(source.font === null ? {} : { font: source.font.name }) };
}
