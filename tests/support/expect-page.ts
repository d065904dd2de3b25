import { readFileSync, writeFileSync } from 'node:fs';
import { expect } from 'vitest';

/**
 * Compares a page of docs with its rendering. With UPDATE_GOLDEN=1 it writes the page and then fails, so that an update is
 * never mistaken for a pass.
 */
export function expectPage(path: string, rendered: string): void {
  const file = new URL(`../../${path}`, import.meta.url);
  if (process.env.UPDATE_GOLDEN === '1') {
    writeFileSync(file, rendered);
    throw new Error(`${path} was written; run again without UPDATE_GOLDEN.`);
  }
  expect(rendered, `${path} is out of date: run with UPDATE_GOLDEN=1`).toBe(readFileSync(file, 'utf8'));
}
