import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

/**
 * Holds text to the golden file of that name in tests/golden/.
 *
 * Golden files change only under UPDATE_GOLDEN=1, and a run that changed one fails, so that no one takes it for a passed test.
 */
export function expectGolden(name: string, text: string): void {
  const path = fileURLToPath(new URL(name, import.meta.url));
  const golden = existsSync(path) ? readFileSync(path, 'utf8') : '';
  if (process.env.UPDATE_GOLDEN === '1' && golden !== text) {
    writeFileSync(path, text);
    expect.fail(`wrote tests/golden/${name}: look at the difference, then run again without UPDATE_GOLDEN`);
  }
  expect(text).toBe(golden);
}
