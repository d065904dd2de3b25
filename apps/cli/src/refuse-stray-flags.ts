import type { ParsedFlags } from './parse-flags.ts';
import { UsageError } from './usage-error.ts';

/** Flags that mean nothing for a kind of source, what they do, and the way out. */
const STRAY: Readonly<
  Record<
    'file' | 'lettering',
    { readonly names: readonly string[]; readonly why: string; readonly remedy: string }
  >
> = {
  file: {
    names: ['cap-height', 'single-line', 'align', 'tracking', 'line-spacing', 'arc', 'axis'],
    why: 'sets lettering, but a file is vetted',
    remedy: 'Leave it out, or give --text "…".',
  },
  lettering: {
    names: ['carve', 'file-unit', 'join'],
    why: 'says how a file is read, but lettering is vetted',
    remedy: 'Leave it out, or name a file instead of --text.',
  },
};

/**
 * Refuses flags that are surely a slip, rather than ignoring them.
 *
 * @throws {UsageError} for the first flag that means nothing where a file, or lettering, is vetted
 */
export function refuseStrayFlags(flags: ParsedFlags, vetted: keyof typeof STRAY): void {
  const { names, why, remedy } = STRAY[vetted];
  const stray = names.find((name) => flags.values.has(name));
  if (stray !== undefined) {
    throw new UsageError(`--${stray} ${why}.`, remedy);
  }
}
