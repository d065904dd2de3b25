import { flagOf, SETTING_KEYS } from '@pourproof/job';
import { expect, test } from 'vitest';
import { captured } from '../support/cli/captured-run.ts';

test('every setting but the artwork, which is a bare word, has a flag in the help text', async () => {
  const { out } = await captured(['--help']);
  // coupons come from a file of their own
  for (const key of SETTING_KEYS.filter((each) => each !== 'artwork')) {
    const name = key === 'coupons' ? key : flagOf(key);
    expect(out, key).toMatch(new RegExp(`^  --${name}(?: |$)`, 'mu'));
  }
});
