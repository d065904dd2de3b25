import { expect, test } from 'vitest';
import { colourName } from './colour-name.ts';

test('a paint by its plain word, by its value too where two have the same, a layer by its name', () => {
  expect(colourName('#e30613', ['#e30613', '#0000ff'])).toBe('red');
  expect(colourName('#e30613', ['#e30613', '#ff0000'])).toBe('red #e30613');
  expect(colourName('Letters', ['Letters', '#ff0000'])).toBe('Letters');
  expect(colourName('all', ['all'])).toBe('all');
});
