import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cases, seed } from '../support/lane.ts';
import { FUZZ_TARGETS } from './targets.ts';

// `npm run fuzz` draws the same for as long as it is given: docs/method/fuzzing.md
describe(`a little random input of its own structure, seed ${seed}`, () => {
  test.each(FUZZ_TARGETS)('$name', async ({ property, quick }) => {
    const outcome = await fc.check(property, cases(quick));
    expect((await fc.asyncDefaultReportMessage(outcome)) ?? '').toBe('');
  });
});
