import { flagOf, SETTING_KEYS, SETTINGS } from '@pourproof/job';
import type { ParsedFlags } from './parse-flags.ts';
import { FLAGS, type FlagCommand } from './tables/flags.ts';
import { UsageError } from './usage-error.ts';

/** What a flag that means nothing for a kind of source does, and the way out. */
const STRAY: Readonly<Record<'file' | 'lettering', { readonly why: string; readonly remedy: string }>> = {
  file: {
    why: 'sets lettering, but a file is vetted',
    remedy: 'Leave it out, or give --text "…".',
  },
  lettering: {
    why: 'says how a file is read, but lettering is vetted',
    remedy: 'Leave it out, or name a file instead of --text.',
  },
};

/**
 * Refuses flags that are surely a slip, rather than ignoring them. (Sizes that do not size lettering have
 * words of their own.)
 *
 * @throws {UsageError} for the first flag that means nothing where a file, or lettering, is vetted
 */
export function refuseStrayFlags(flags: ParsedFlags, vetted: 'file' | 'lettering'): void {
  const stray = SETTING_KEYS.filter((key) => {
    const { only, group } = SETTINGS[key];
    const isForLettering = only?.formats?.includes('lettering');
    return group !== 'size' && isForLettering === (vetted === 'file');
  })
    .map(flagOf)
    .find((name) => name !== null && flags.values.has(name));
  if (stray !== undefined) {
    const { why, remedy } = STRAY[vetted];
    throw new UsageError(`--${stray} ${why}.`, remedy);
  }
}

/**
 * Refuses flags that another command takes.
 *
 * @throws {UsageError} for the first of them
 */
export function refuseStrayOf(command: FlagCommand, flags: ParsedFlags): void {
  const stray = FLAGS.find(
    ({ name, of }) => flags.values.has(name) && of !== undefined && !of.includes(command),
  );
  if (stray !== undefined) {
    throw new UsageError(
      `--${stray.name} is no flag of ${command}.`,
      `It belongs to: ${(stray.of ?? []).map((each) => `pourproof ${each}`).join(', ')}.`,
    );
  }
}
