import { expect, test } from 'vitest';
import { isUnfetched, pageIncomplete } from './page-incomplete.ts';

test('what each browser says of a part that did not come is told from a fault of ours', () => {
  const said = [
    'Failed to fetch dynamically imported module: https://x.invalid/assets/svg.js',
    'error loading dynamically imported module: https://x.invalid/assets/svg.js',
    'Importing a module script failed.',
    'Failed to fetch',
    'NetworkError when attempting to fetch resource.',
    'Load failed',
  ];
  expect(said.map((message) => isUnfetched(new TypeError(message)))).toEqual(said.map(() => true));
  expect(isUnfetched(new TypeError('x is not a function'))).toBe(false);
  expect(isUnfetched('Failed to fetch')).toBe(false);
});

test('it is told with what to do, and is called no fault', () => {
  const { what, remedy } = pageIncomplete('The reader');
  expect(what).toBe('The reader could not be loaded.');
  expect(`${what} ${remedy}`).not.toMatch(/fault|bug|report/u);
  expect(remedy).toContain('Check the connection');
});
