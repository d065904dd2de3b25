import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect } from 'vitest';

/**
 * Holds text to a golden file, which lies beside its suite: `new URL('demo.txt', import.meta.url)`.
 *
 * Golden files change only under UPDATE_GOLDEN=1, and a run that changed one fails, so that no one takes it for a passed test.
 */
export function expectGolden(file: URL, text: string): void {
  const golden = existsSync(file) ? readFileSync(file, 'utf8') : '';
  if (process.env.UPDATE_GOLDEN === '1' && golden !== text) {
    writeFileSync(file, text);
    expect.fail(`wrote ${file.pathname}: look at the difference, then run again without UPDATE_GOLDEN`);
  }
  expect(text).toBe(golden);
}
