import { CrossingsError } from '@pourproof/arrangement';
import { ArtworkError } from '@pourproof/artwork/format';
import { JobError, type SettingName, spokenPlace } from '@pourproof/job';
import { MaterialsError } from '@pourproof/materials';
import { MeasureError } from '@pourproof/plane';
import { type Source, sourceName } from './source.ts';

/** Why there is no report, as data: something that the maker can put right. */
export interface Refusal {
  /** Stable kebab-case, for programs. */
  readonly code: string;
  /** What is wrong. */
  readonly what: string;
  /** In which file, on which line, or at which key of the job; `''` where `what` says it. */
  readonly where: string;
  /** What to do about it; `''` where `what` says it. */
  readonly remedy: string;
}

/**
 * The refusal that an error stands for, or `null` for an error that is a fault of pourproof and not of what it was given.
 *
 * @param source what was being read, if anything was
 * @param name what settings are called by who reads it: their keys if left out, as in code and in job files
 */
export function refusalOf(error: unknown, source?: Source, name: SettingName = (key) => key): Refusal | null {
  if (error instanceof ArtworkError) {
    const { code, message, remedy, line, column } = error;
    const place = [
      source === undefined ? '' : placeName(source),
      line === undefined ? '' : `line ${line}`,
      column === undefined ? '' : `column ${column}`,
    ];
    return { code, what: message, where: place.filter((part) => part !== '').join(', '), remedy };
  }
  if (error instanceof CrossingsError) {
    const { code, what, remedy } = error;
    return { code, what, where: source === undefined ? '' : placeName(source), remedy };
  }
  if (error instanceof MaterialsError) {
    const { code, what, place, remedy } = error;
    return { code, what, where: place, remedy };
  }
  if (error instanceof JobError) {
    const { code, key } = error;
    return { code, ...error.wordsIn(name), where: spokenPlace(key ?? '', name) };
  }
  if (error instanceof MeasureError) {
    return { code: 'unreadable-measure', what: error.message, where: '', remedy: '' };
  }
  return null;
}

function placeName(source: Source): string {
  return source.kind === 'file' ? source.name : `"${sourceName(source)}"`;
}

/** A refusal as a message of one or two lines, without a line break at its end. */
export function refusalText({ what, where, remedy }: Refusal): string {
  // most messages name the file or the key themselves
  const line = what.includes(where) ? what : `${where}: ${what}`;
  return remedy === '' ? line : `${line}\n  What to do: ${remedy}`;
}
