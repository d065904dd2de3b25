import { jobFileSchema } from '@pourproof/job';
import { expect, test } from 'vitest';
import { captured } from '../support/cli/captured-run.ts';

/** Keys that only a file can hold: its own name, and the artwork, which the command line takes as a bare word. */
const FILE_ONLY = ['schema', 'artwork'];
/** A key that bears its unit where the flag does not. */
const OTHER_NAMES: Readonly<Record<string, string>> = { accelerationMmPerS2: 'acceleration' };

test.each(Object.keys(jobFileSchema.shape).filter((key) => !FILE_ONLY.includes(key)))(
  'the key "%s" of a job file has a flag',
  async (key) => {
    const flag = `--${(OTHER_NAMES[key] ?? key).replace(/[A-Z]/gu, (letter) => `-${letter.toLowerCase()}`)}`;
    const { out } = await captured(['--help']);
    expect(out).toMatch(new RegExp(`^  ${flag}(?: |$)`, 'mu'));
  },
);
